"""What once took long or ended in a traceback is read or refused within the bounds of any input."""

import json
import sys
from concurrent.futures import ProcessPoolExecutor
from multiprocessing import get_context

import pytest
from exchanged import crossing_lines
from robustness.enduring import faults
from robustness.hostile import Attack

pytestmark = pytest.mark.skipif(sys.platform == "win32", reason="processes are forked")

GRID = crossing_lines(64, 64, dict.fromkeys(range(1, 64), "V"), dict.fromkeys(range(1, 64), "V"))
KNOWN = [
    Attack(("roster", "{here}/class.csv"), {"class.csv": b"name,level\n" + b"x" * 131_073 + b",core\n"}),
    Attack(("import", "{here}/grid.fold"), {"grid.fold": json.dumps(GRID).encode()}),
]


@pytest.mark.sweep
def test_a_cell_longer_than_any_and_a_pattern_of_64_by_64_end_within_the_bounds():
    with ProcessPoolExecutor(1, mp_context=get_context("spawn")) as fresh:
        assert fresh.submit(faults, KNOWN).result() == []
