"""The same folding on whichever arithmetic sympy finds: gmpy2, python-flint, or its own."""

import os
import subprocess
import sys
from pathlib import Path

TESTS = str(Path(__file__).parents[1])

FOLDINGS = """
from sympy.external.gmpy import GROUND_TYPES
from paper.laws import breaches
from foldmath.paper.moments.performing import perform
from foldmath.paper.state import Sheet, open_sheet
from foldmath.paper.steps import *
from foldmath.plane.lines import Point
from foldmath.plane.numbers import HALF, ONE, ZERO, exact, written

def digest(steps):
    state = open_sheet(Sheet(exact(11), exact(17, 2), "in"))
    for step in steps:
        state = perform(step, state)
    assert breaches(state) == ()
    for panel in state.panels:
        print(*(f"{written(x)},{written(y)}" for x, y in (*panel.corners, *panel.lying)), written(panel.area),
              panel.placements[-1].place, panel.shaded)
    for start, end, kind, folded in sorted(state.creases):
        print(*map(written, (*start, *end)), kind.value, folded)
    print(written(state.table.area), state.table.layers)

diagonal = FoldAlong(Point(ZERO, ZERO), Point(ONE, ONE), Point(ZERO, ONE))
digest([FoldEdge(Edge.LEFT, ONE), FoldEdge(Edge.TOP, exact(1, 3), behind=True), TurnOver()])
digest([FoldPoint(Point(ONE, ZERO), Point(HALF, exact(1, 3))), diagonal, Pleat(Axis.WIDTH, 3)])
digest([Pleat(Axis.WIDTH, 3), Open(), Pleat(Axis.HEIGHT, 5), Open(), Shade(2, 3, Axis.WIDTH)])
print("arithmetic:", GROUND_TYPES)
"""


def told(**environment: str) -> tuple[list[str], str]:
    """Give what the foldings print, and the arithmetic they used."""
    ran = subprocess.run(
        [sys.executable, "-c", FOLDINGS],
        env=os.environ | environment | {"PYTHONPATH": TESTS},
        capture_output=True,
        text=True,
        check=True,
    )
    *lines, arithmetic = ran.stdout.splitlines()
    return lines, arithmetic.removeprefix("arithmetic: ")


def test_pure_python_arithmetic_gives_the_same_paper():
    lines, arithmetic = told(SYMPY_GROUND_TYPES="python")
    assert arithmetic == "python"
    assert len(lines) > 40
    assert lines == told(SYMPY_GROUND_TYPES="auto")[0]
