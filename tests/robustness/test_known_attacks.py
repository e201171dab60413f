"""What once took minutes or ended in a traceback is read or refused within the bounds."""

import json
import sys
from concurrent.futures import ProcessPoolExecutor
from multiprocessing import get_context

import pytest
from exchanged import crossing_lines
from robustness.enduring import faults
from robustness.hostile import Attack

pytestmark = pytest.mark.skipif(sys.platform == "win32", reason="processes are forked")

LESSON = 'title = "T"\ngrade = 5\npaper = "letter"\nsteps = [{steps}]\n'
FANS = ", ".join(f'"pleat {("width", "height")[fan % 2]} into {2 + fan % 11}", "open"' for fan in range(44))
GRID = crossing_lines(64, 64, dict.fromkeys(range(1, 64), "V"), dict.fromkeys(range(1, 64), "V"))


def of_lesson(command: str, text: str) -> Attack:
    return Attack((command, "{here}/lesson.toml"), {"lesson.toml": text.encode()})


KNOWN = [
    of_lesson("trace", LESSON.format(steps=FANS)),
    of_lesson("trace", f"{'.'.join('a' * 990)} = 1\n"),
    of_lesson("trace", LESSON.format(steps=f'"open{" " * 25_000}x"')),
    Attack(("roster", "{here}/class.csv"), {"class.csv": b"name,level\n" + b"x" * 131_073 + b",core\n"}),
    Attack(("import", "{here}/grid.fold"), {"grid.fold": json.dumps(GRID).encode()}),
    Attack(("plan", "1/2 × 1/2", "--size-at-least", f"1{' ' * 25_000}x"), {}),
]


def test_fans_deep_keys_blanks_long_cells_and_fine_grids_end_within_the_bounds():
    """All in one fresh process, which imports the program once for its children."""
    with ProcessPoolExecutor(1, mp_context=get_context("spawn")) as fresh:
        assert fresh.submit(faults, KNOWN).result() == []
