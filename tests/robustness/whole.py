"""The whole attack by one command, shared out and resumable; its counts are printed.

    .venv/bin/python tests/robustness/whole.py --seed 1
    .venv/bin/python tests/robustness/whole.py --sequences 1000000 --log sequences.log

Every fault is a line. A log holds which blocks of work are done, so that a run that was stopped goes on.
"""

import argparse
import os
import sys
import time
from collections.abc import Callable, Iterator
from concurrent.futures import ProcessPoolExecutor, as_completed
from functools import partial
from pathlib import Path
from typing import NamedTuple

sys.path[:0] = [str(Path(__file__).parents[1])]

BLOCK = {"sequences": 500}
USUAL_BLOCK = 20
"""So many attacks are done between two lines of the log."""


class Done(NamedTuple):
    """One block of work.

    Args:
        kind: of attack, or ``sequences``.
        first: the number of its first attack.
        count: how many attacks.
        good: how many were read or could be done: exit code 0, or steps done.
        faults: one line each.
        seconds, megabytes: the most that one attack took.
    """

    kind: str
    first: int
    count: int
    good: int
    faults: tuple[str, ...]
    seconds: float
    megabytes: int


def attacks(kind: str, seed: int, first: int, count: int) -> Done:
    """Make a block of attacks."""
    from robustness.attacks import attack
    from robustness.enduring import endured

    good, faults, seconds, megabytes = 0, [], 0.0, 0
    for number in range(first, first + count):
        hostile = attack(kind, seed, number)
        end = endured(hostile)
        good += not end.code
        seconds, megabytes = max(seconds, end.seconds), max(megabytes, end.megabytes)
        fault = end.fault(hostile.words)
        if fault:
            faults.append(f"{kind} {number}: {fault}: {hostile.words!r:.200}: {end.said[-300:]!r}")
    return Done(kind, first, count, good, tuple(faults), seconds, megabytes)


def sequences(seed: int, first: int, count: int) -> Done:
    """Hold a block of sequences of steps to the laws."""
    from robustness.sequences import broken

    good, faults, most = 0, [], 0.0
    for number in range(first, first + count):
        began = time.process_time()
        steps, fault = broken(seed, number)
        most, good = max(most, time.process_time() - began), good + steps
        if fault:
            faults.append(f"sequences {number}: {fault}")
    return Done("sequences", first, count, good, tuple(faults), most, 0)


def blocks(kind: str, total: int) -> Iterator[tuple[int, int]]:
    """Give the blocks of a kind: the first number, and how many."""
    size = BLOCK.get(kind, USUAL_BLOCK)
    return ((first, min(size, total - first)) for first in range(0, total, size))


def done_before(log: Path | None, seed: int) -> set[tuple[str, int, int]]:
    """Read from a log which blocks are done."""
    if log is None or not log.exists():
        return set()
    lines = (line.split() for line in log.read_text("utf-8").splitlines() if line.startswith("done "))
    return {(kind, int(first), int(count)) for _, told, kind, first, count, *_ in lines if int(told) == seed}


def run(wanted: dict[str, int], seed: int, log: Path | None, processes: int) -> int:
    """Make all attacks that are not done yet; print the counts, and give the number of faults."""
    known, faults = done_before(log, seed), 0
    counts = {kind: [0, 0, 0.0, 0, 0] for kind in wanted}
    with ProcessPoolExecutor(processes) as pool:
        waiting = [
            pool.submit(_work(kind, seed), first, count)
            for kind, total in wanted.items()
            for first, count in blocks(kind, total)
            if (kind, first, count) not in known
        ]
        for future in as_completed(waiting):
            block = future.result()
            faults += len(block.faults)
            for told in block.faults:
                print(told, flush=True)
            _note(log, seed, block)
            tally = counts[block.kind]
            tally[0] += block.count
            tally[1] += block.good
            tally[2] = max(tally[2], block.seconds)
            tally[3] = max(tally[3], block.megabytes)
            tally[4] += len(block.faults)
    for kind, (count, good, seconds, megabytes, wrong) in counts.items():
        told = "steps done" if kind == "sequences" else "read"
        print(f"{kind}: {count} ({good} {told}), most {seconds:.1f} s, {megabytes} MB, {wrong} faults")
    return faults


def _work(kind: str, seed: int) -> Callable[[int, int], Done]:
    return partial(sequences, seed) if kind == "sequences" else partial(attacks, kind, seed)


def _note(log: Path | None, seed: int, block: Done) -> None:
    if log is not None:
        with log.open("a", encoding="utf-8") as stream:
            figures = f"{block.good} {block.seconds:.2f} {block.megabytes} {len(block.faults)}"
            stream.write(f"done {seed} {block.kind} {block.first} {block.count} {figures}\n")
            stream.writelines(f"{told}\n" for told in block.faults)


def main() -> int:
    """Read the words of the shell, and run."""
    from robustness.attacks import KINDS

    reader = argparse.ArgumentParser(
        description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter
    )
    reader.add_argument("--seed", type=int, default=1)
    reader.add_argument("--part", type=int, default=1, metavar="N", help="one N-th of every kind of attack")
    reader.add_argument("--sequences", type=int, default=0, metavar="N", help="N sequences of steps instead")
    reader.add_argument("--log", type=Path, help="where to go on from, and what was done")
    reader.add_argument("--processes", type=int, default=os.cpu_count() or 1)
    words = reader.parse_args()
    wanted = {kind: total // words.part for kind, (_, total) in KINDS.items()}
    if words.sequences:
        wanted = {"sequences": words.sequences}
    return min(run(wanted, words.seed, words.log, words.processes), 1)


if __name__ == "__main__":
    sys.exit(main())
