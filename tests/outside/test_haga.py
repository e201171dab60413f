"""Haga's first theorem, folded.

Source: K. Haga, Origamics (World Scientific, 2008; published 1979). A corner of a square is taken to a point
at distance x along the opposite edge. The values for x = 1/2 and 2/3 are worked at
wild.maths.org/folding-fractions-explained (University of Cambridge); y1 = (1-x²)/2, y2 = 2x/(1+x),
y3 = (1+x²)/(1+x), y4 = (1-x)²/2, y5 = 1-y2 at takayaiwamoto.com/Greek_Math/Delian/Haga_Delian.html.
The other rows of the table are these formulas written out.
"""

from fractions import Fraction

import pytest

from foldmath.paper.moments.performing import perform
from foldmath.paper.state import Sheet, open_sheet
from foldmath.paper.steps import FoldPoint
from foldmath.plane.lines import Point
from foldmath.plane.numbers import ONE, ZERO, denominator, exact, numerator

SQUARE = Sheet(exact(1), exact(1), "in")

TABLE = """
    x    y2     y5    y1      y3       y4
    1/2  2/3    1/3   3/8     5/6      1/8
    1/3  1/2    1/2   4/9     5/6      2/9
    2/3  4/5    1/5   5/18    13/15    1/18
    1/4  2/5    3/5   15/32   17/20    9/32
    3/4  6/7    1/7   7/32    25/28    1/32
    1/5  1/3    2/3   12/25   13/15    8/25
    1/6  2/7    5/7   35/72   37/42    25/72
    1/8  2/9    7/9   63/128  65/72    49/128
    3/8  6/11   5/11  55/128  73/88    25/128
    5/8  10/13  3/13  39/128  89/104   9/128
    7/8  14/15  1/15  15/128  113/120  1/128
"""
ROWS = [[Fraction(cell) for cell in line.split()] for line in TABLE.strip().splitlines()[1:]]


def fraction(number) -> Fraction:
    return Fraction(numerator(number), denominator(number))


class Folded:
    """The square with its bottom left corner on the top edge, and what a ruler would read off it."""

    def __init__(self, x: Fraction) -> None:
        target = Point(exact(x.numerator, x.denominator), ONE)
        state = perform(FoldPoint(Point(ZERO, ZERO), target), open_sheet(SQUARE))
        (self.crease,) = state.creases
        flap = next(panel for panel in state.panels if Point(ZERO, ZERO) in panel.corners)
        landed = dict(zip(flap.corners, flap.lying, strict=True))
        self.corner, far = landed[Point(ZERO, ZERO)], landed[Point(ONE, ZERO)]
        assert self.corner == target
        # The flap's edge, the old bottom edge, is 1 long; it meets the right edge this share of it along.
        self.along = (ONE - self.corner.x) / (far.x - self.corner.x)
        self.meeting = self.corner.y + self.along * (far.y - self.corner.y)

    @property
    def crease_ends(self) -> dict[Fraction, Fraction]:
        return {fraction(end.x): fraction(end.y) for end in (self.crease.start, self.crease.end)}


@pytest.mark.parametrize(("x", "y2", "y5", "y1", "y3", "y4"), ROWS, ids=[str(row[0]) for row in ROWS])
def test_a_corner_on_the_opposite_edge_divides_the_square_as_haga_says(x, y2, y5, y1, y3, y4):
    square = Folded(x)
    assert 1 - square.crease_ends[Fraction(0)] == y1
    assert square.crease_ends[Fraction(1)] == y4
    assert 1 - fraction(square.meeting) == y2
    assert fraction(square.meeting) == y5
    assert fraction(square.along) == y3
