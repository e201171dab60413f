"""Places sets and is killed: at every single step in turn, or at any moment by whoever began it.

python killed_placing.py OUT exchange|rename steps      # prints how many steps there are
python killed_placing.py OUT exchange|rename forever    # prints a line once it is about to begin
"""

import itertools
import json
import os
import signal
import sys
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[1]))

from making.placed_sets import RUNS, mended, run_of, set_of

from foldmath.making.sets import exchanging
from foldmath.making.sets.placing import place

NOTES = "ask Bo about thirds"
STEPS = ("open", "os.", "shutil.")
"""How the names of the events begin that Python reports before it asks the system for something."""


def prepared(out: Path) -> None:
    """Place a first set, with a file of the teacher's in it and another set beside it."""
    place(set_of(RUNS[0], out))
    (out / "seed-trays" / "notes.txt").write_text(NOTES, encoding="utf-8")
    place(set_of(RUNS[0], out, "class-4b"))


def looked_at(out: Path) -> None:
    """Make sure that each set is of one run, and that the teacher's file is there."""
    assert run_of(out / "seed-trays") in RUNS
    assert run_of(out / "seed-trays" / "class-4b") == RUNS[0]
    assert (out / "seed-trays" / "notes.txt").read_text("utf-8") == NOTES


def killed_at(step: int, out: Path, run: str) -> bool:
    """Place a set in a process that is killed before one of its steps; tell whether it came so far."""
    process = os.fork()
    if process == 0:
        steps = itertools.count()

        def count(event: str, _: object) -> None:
            if event.startswith(STEPS) and next(steps) == step:
                os.kill(os.getpid(), signal.SIGKILL)

        sys.addaudithook(count)
        place(set_of(run, out))
        os._exit(0)
    status = os.waitpid(process, 0)[1]
    assert status in (0, signal.SIGKILL), status
    return status != 0


def every_step(out: Path, *, in_one_step: bool) -> int:
    """Kill placing before each of its steps in turn, and look at what is left; give the number of steps."""
    prepared(out)
    for step, run in zip(itertools.count(), itertools.cycle(reversed(RUNS))):
        killed = killed_at(step, out, run)
        if in_one_step or not killed:
            looked_at(out)
        mended(out)
        looked_at(out)
        lying = {path.name for path in out.iterdir()}
        assert lying <= {"seed-trays", ".seed-trays.foldmath-lock"}, lying
        if not killed:
            assert lying == {"seed-trays"}
            assert run_of(out / "seed-trays") == run
            return step
    raise AssertionError


def forever(out: Path) -> None:
    """Place one set and the other in turn."""
    print("ready", flush=True)
    for run in itertools.cycle(reversed(RUNS)):
        place(set_of(run, out))


if __name__ == "__main__":
    folder, way, how = Path(sys.argv[1]), sys.argv[2], sys.argv[3]
    if way == "rename":
        exchanging._renameat2 = lambda: None
    if how == "steps":
        print(json.dumps(every_step(folder, in_one_step=way == "exchange")))
    else:
        forever(folder)
