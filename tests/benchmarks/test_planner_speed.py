"""How fast planning is; left out of the normal run.

The seconds of a cold run stand in the extra information, beside those of the imports alone; nothing here
fails for being slow.
"""

import subprocess
import sys
from statistics import median
from time import perf_counter

import pytest

from foldmath.paper.sizes import paper_named
from foldmath.planning.planner import plan
from foldmath.planning.strip_search import fewest_folds, moves_from, shortest_ways
from foldmath.planning.wanted import wanted_panels, wanted_product, wanted_sizes
from foldmath.tolerance.assumed.spread import default_spread
from foldmath.tolerance.assumed.stock import DEFAULT_STOCK

WISHES = {
    "2/3 × 4/5": wanted_product("2/3 × 4/5"),
    "5/8 × 3/4": wanted_product("5/8 × 3/4"),
    "5/12 × 7/10": wanted_product("5/12 × 7/10"),
    "24 panels": wanted_panels(24),
    "1/6, 1/6, 2/3": wanted_sizes("1/6, 1/6, 2/3"),
}
COLD = """\
from foldmath.cli.doors.planning import tell_plans
tell_plans("2/3 × 4/5")
"""
TURNS = 5


@pytest.mark.usefixtures("_as_a_command")
@pytest.mark.parametrize("wish", WISHES)
def test_a_wish_is_planned(benchmark, wish):
    def planned():
        for known in (shortest_ways, fewest_folds, moves_from):
            known.cache_clear()
        letter = paper_named("letter")
        return plan(WISHES[wish], letter, "landscape", default_spread(5), DEFAULT_STOCK)

    assert benchmark.pedantic(planned, rounds=3).ranked


def seconds(program):
    start = perf_counter()
    subprocess.run([sys.executable, "-c", program], capture_output=True, check=True)
    return perf_counter() - start


def test_a_product_is_planned_cold_beside_the_time_of_importing_sympy(benchmark):
    benchmark.pedantic(seconds, args=(COLD,), rounds=1)
    for name, program in (("seconds", COLD), ("seconds of importing sympy", "import sympy")):
        benchmark.extra_info[name] = round(median(seconds(program) for _ in range(TURNS)), 2)
