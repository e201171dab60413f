"""Kills: runs are killed, or asked to end, at any moment, and what they leave is looked at.

.venv/bin/python tests/robustness/kills.py             # the whole, half an hour; prints its counts
.venv/bin/python tests/robustness/kills.py --seed 2 --kills 20 --signals 10 --placings 20
"""

import argparse
import dataclasses
import os
import random
import shutil
import signal
import subprocess
import sys
import tempfile
import time
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from hashlib import sha256
from pathlib import Path
from uuid import uuid4

sys.path.insert(0, str(Path(__file__).parents[1]))

from making.placed_sets import mended
from robustness import killed_placing

ROOT = Path(__file__).parents[2]
MARK = "FOLDMATH_KILLED_RUN"
"""The variable by which every process of a run is known, children's children too."""

SECONDS_TO_END = 20.0
"""A process that ends with its parent has ended long before, on a busy machine too; others stay for ever."""

LONGEST_PLACING = 0.1
"""Seconds; a placing takes about a third of this."""

ENDINGS = (signal.SIGTERM, signal.SIGINT, signal.SIGHUP)
LESSON = """title = "Seed trays"
grade = 5
paper = "letter"
steps = ["fold left edge to right edge", "fold top edge to bottom edge", "open"]
practice = {{ products = ["2/3 × 4/5"], seed = {seed} }}
"""
KINDS = {"pages": (), "class": ("--pupils", "30")}
FOLDERS = {"pages": "seed-trays", "class": "seed-trays/class-pupils-30"}


@dataclass(kw_only=True)
class Counts:
    """What was done, and what went wrong; all after ``ended`` should be 0.

    Args:
        runs: killed or asked to end, or that ended just before.
        ended: of them, those that were whole before they could be.
        torn: sets with a file missing or not whole.
        mixed: sets with files of two runs.
        lost: files of the teacher's that are gone.
        left: runs of which a process was left.
        beside: folders and files that were left after the next run.
        wrong: exit codes other than those that are documented, and tracebacks.
        seen: examples of what went wrong.
    """

    runs: int = 0
    ended: int = 0
    torn: int = 0
    mixed: int = 0
    lost: int = 0
    left: int = 0
    beside: int = 0
    wrong: int = 0
    seen: list[str] = field(default_factory=list)

    @property
    def faults(self) -> int:
        """How often anything went wrong."""
        return self.torn + self.mixed + self.lost + self.left + self.beside + self.wrong

    def told(self) -> str:
        """Say it in one line."""
        counts = dataclasses.asdict(self)
        seen = counts.pop("seen")
        return ", ".join(f"{name} {count}" for name, count in counts.items()) + "".join(
            f"\n  {line}" for line in seen
        )


Files = dict[str, str]
"""The digests of the files of a set, by name."""


def files_of(folder: Path) -> Files:
    """Give the digests of a set's files; what lies in other sets' folders is not looked at."""
    paths = [path for path in folder.rglob("*") if path.is_file() and path.name != "notes.txt"]
    names = {path.relative_to(folder).as_posix(): path for path in paths}
    return {
        name: sha256(path.read_bytes()).hexdigest()
        for name, path in names.items()
        if not name.startswith("class-pupils")
    }


class Bench:
    """A folder in which runs of one lesson, as it is and as it was before, take each other's place."""

    def __init__(self, folder: Path, rng: random.Random) -> None:
        self.folder, self.rng, self.counts = folder, rng, Counts()
        self.out = folder / "out"
        self.lessons = []
        for seed in (1, 2):
            lesson = folder / str(seed) / "seed-trays.toml"
            lesson.parent.mkdir(parents=True)
            lesson.write_text(LESSON.format(seed=seed), encoding="utf-8")
            self.lessons.append(lesson)
        self.whole: dict[str, list[Files]] = {}
        self.seconds: dict[str, float] = {}
        for kind in KINDS:
            self._learn(kind)

    def _learn(self, kind: str) -> None:
        """Make every set of a kind once, undisturbed, to know how it looks and how long it takes."""
        began = time.monotonic()
        self.whole[kind] = []
        for lesson in self.lessons:
            subprocess.run(self._command(kind, lesson), env=environment(""), check=True, capture_output=True)
            self.whole[kind].append(files_of(self.out / FOLDERS[kind]))
        self.seconds[kind] = (time.monotonic() - began) / len(self.lessons)
        assert self.whole[kind][0].keys() == self.whole[kind][1].keys()
        (self.out / FOLDERS[kind] / "notes.txt").write_text(killed_placing.NOTES, encoding="utf-8")

    def _command(self, kind: str, lesson: Path) -> list[str]:
        return [sys.executable, "-m", "foldmath", "make", str(lesson), "--out", str(self.out), *KINDS[kind]]

    def killed(self, number: int) -> None:
        """Kill a run, every fourth time two at once, and look at what is left."""
        kind = "class" if number % 3 == 2 else "pages"
        with marked() as mark:
            lessons = self.lessons if number % 4 == 3 else [self.lessons[number % 2]]
            runs = [self._begin(kind, lesson, mark) for lesson in lessons]
            time.sleep(self.rng.uniform(0, len(runs) * self.seconds[kind]))
            for run in runs:
                self.counts.ended += run.poll() is not None
                run.kill()
                run.communicate()
            self._look(kind, mark)
        self.counts.runs += 1

    def asked_to_end(self, number: int) -> None:
        """Ask a run to end, or all its processes as a terminal does, and look at what it says and leaves."""
        kind, ending = "class" if number % 2 else "pages", ENDINGS[number % 3]
        with marked() as mark:
            run = self._begin(kind, self.lessons[number % 2], mark)
            time.sleep(self.rng.uniform(0, self.seconds[kind]))
            self.counts.ended += run.poll() is not None
            if number % 4 < 2:
                run.send_signal(ending)
            elif run.poll() is None:
                os.killpg(run.pid, ending)
            said = run.communicate()[1].decode()
            self._look_at_code(run.returncode, ending, said)
            self._look(kind, mark)
            self.counts.beside += self._count(self._beside(), f"{ending.name} left {{}}")
        self.counts.runs += 1

    def _begin(self, kind: str, lesson: Path, mark: str) -> "subprocess.Popen[bytes]":
        return subprocess.Popen(
            self._command(kind, lesson),
            stdout=subprocess.DEVNULL,
            stderr=subprocess.PIPE,
            env=environment(mark),
            start_new_session=True,
        )

    def _look_at_code(self, code: int, ending: signal.Signals, said: str) -> None:
        """Before Python has come to the program, the signal itself ends it, which shells tell alike."""
        if code not in (0, 128 + ending, -ending) or ("Traceback" in said and code != -ending):
            self.counts.wrong += 1
            self.counts.seen.append(f"{ending.name}: exit code {code}: {said[-800:]}")

    def _look(self, kind: str, mark: str) -> None:
        self.counts.left += self._count(left_of(mark), f"{kind}: left process {{}}")
        folder = self.out / FOLDERS[kind]
        found, whole = files_of(folder), self.whole[kind]
        if found not in whole:
            known = found.keys() == whole[0].keys() and all(
                found[name] in (whole[0][name], whole[1][name]) for name in found
            )
            self.counts.mixed += known
            self.counts.torn += not known
            self.counts.seen.append(f"{kind}: {'mixed' if known else 'torn'}: {sorted(found)}")
        self.counts.lost += sum(not (self.out / name / "notes.txt").is_file() for name in FOLDERS.values())

    def _count(self, things: list[str], told: str) -> int:
        self.counts.seen += [told.format(thing) for thing in things]
        return len(things)

    def _beside(self) -> list[str]:
        return [
            str(path) for path in self.out.rglob("*") if ".foldmath" in path.name and path.suffix != ".json"
        ]

    def ended_well(self) -> Counts:
        """Make one more set, undisturbed, and see that nothing is left beside any; give the counts so far."""
        subprocess.run(
            self._command("pages", self.lessons[0]), env=environment(""), check=True, capture_output=True
        )
        self._look("pages", "none")
        self.counts.beside += self._count(self._beside(), "beside: {}")
        counts, self.counts = self.counts, Counts()
        return counts


def environment(mark: str) -> dict[str, str]:
    """Give the variables of a run."""
    return {**os.environ, "PYTHONPATH": str(ROOT), MARK: mark}


@contextmanager
def marked() -> Iterator[str]:
    """Give a mark for the processes of a run, and end what is left of them."""
    mark = uuid4().hex
    try:
        yield mark
    finally:
        for process in processes_of(mark):
            os.kill(process, signal.SIGKILL)


def processes_of(mark: str) -> list[int]:
    """Find the processes of a run, wherever they have gone."""
    found = []
    for folder in Path("/proc").glob("[0-9]*"):
        try:
            variables = (folder / "environ").read_bytes().split(b"\0")
            state = (folder / "stat").read_text().rpartition(")")[2].split()[0]
        except OSError:
            continue
        if f"{MARK}={mark}".encode() in variables and state != "Z":
            found.append(int(folder.name))
    return found


def left_of(mark: str) -> list[str]:
    """Name the processes of a run that do not end soon after it."""
    latest = time.monotonic() + SECONDS_TO_END
    while (processes := processes_of(mark)) and time.monotonic() < latest:
        time.sleep(0.02)
    return [str(process) for process in processes]


def killed_while_placing(out: Path, way: str, times: int, rng: random.Random) -> Counts:
    """Kill a process that does nothing but place sets, again and again."""
    counts = Counts()
    killed_placing.prepared(out)
    command = [sys.executable, killed_placing.__file__, str(out), way, "forever"]
    for _ in range(times):
        with subprocess.Popen(command, stdout=subprocess.PIPE, env=environment("")) as run:
            assert run.stdout is not None
            run.stdout.readline()
            time.sleep(rng.uniform(0, LONGEST_PLACING))
            run.kill()
        counts.runs += 1
        try:
            if way == "exchange":
                killed_placing.looked_at(out)
            mended(out)
            killed_placing.looked_at(out)
        except (AssertionError, OSError) as error:
            counts.torn += 1
            counts.seen.append(repr(error))
    lying = {path.name for path in out.iterdir()} - {"seed-trays", ".seed-trays.foldmath-lock"}
    counts.beside += len(lying)
    return counts


def all_of(seed: int, kills: int, signals: int, placings: int, folder: Path) -> Iterator[tuple[str, Counts]]:
    """Kill whole runs, ask whole runs to end, and kill placings; give the counts of each as it is done."""
    rng = random.Random(seed)
    bench = Bench(folder / "whole", rng)
    for number in range(kills):
        bench.killed(number)
    yield "killed", bench.ended_well()
    for number in range(signals):
        bench.asked_to_end(number)
    yield "asked to end", bench.ended_well()
    for way in ("exchange", "rename"):
        yield f"killed while placing ({way})", killed_while_placing(folder / way, way, placings, rng)


def main() -> int:
    """Do it all, and say how it went."""
    words = argparse.ArgumentParser(description="Kill runs at any moment and look at what they leave.")
    words.add_argument("--seed", type=int, default=1)
    words.add_argument("--kills", type=int, default=200, help="of whole runs (200)")
    words.add_argument("--signals", type=int, default=100, help="to whole runs (100)")
    words.add_argument("--placings", type=int, default=200, help="kills of placing, for each way (200)")
    wanted = words.parse_args()
    folder = Path(tempfile.mkdtemp(prefix="foldmath-kills-"))
    faults = 0
    try:
        for name, count in all_of(wanted.seed, wanted.kills, wanted.signals, wanted.placings, folder):
            print(f"{name}: {count.told()}", flush=True)
            faults += count.faults
    finally:
        shutil.rmtree(folder)
    return int(faults > 0)


if __name__ == "__main__":
    sys.exit(main())
