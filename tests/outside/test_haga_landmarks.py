"""Haga's first theorem as the ways to fold equal parts use it: the landmark is a crease's end on the model.

Source: K. Haga, Origamics (World Scientific, 2008; published 1979). A corner of a square is taken to
distance x along the opposite edge; the moved edge then cuts the next edge at y5 = (1-x)/(1+x) from its near
end, and y2 = 2x/(1+x) from its far end. The values for x = 1/2 and 2/3 are worked at
wild.maths.org/folding-fractions-explained (University of Cambridge); y1 to y5 at
takayaiwamoto.com/Greek_Math/Delian/Haga_Delian.html; the other rows are these formulas written out.
"""

from fractions import Fraction

import pytest

from foldmath.paper.state import Sheet, open_sheet
from foldmath.paper.steps import Axis
from foldmath.plane.lines import Point
from foldmath.plane.numbers import ONE, denominator, exact, numerator
from foldmath.planning.parts.direction import Direction
from foldmath.planning.parts.haga import corner_taken_to
from foldmath.planning.parts.instructions import vertices

SQUARE = Sheet(exact(1), exact(1), "in")

TABLE = """
    x    y2     y5
    1/2  2/3    1/3
    1/3  1/2    1/2
    2/3  4/5    1/5
    1/4  2/5    3/5
    3/4  6/7    1/7
    1/5  1/3    2/3
    1/6  2/7    5/7
    1/8  2/9    7/9
    3/8  6/11   5/11
    5/8  10/13  3/13
    7/8  14/15  1/15
"""
ROWS = [[Fraction(cell) for cell in line.split()] for line in TABLE.strip().splitlines()[1:]]


@pytest.mark.parametrize(("x", "y2", "y5"), ROWS, ids=[str(row[0]) for row in ROWS])
@pytest.mark.parametrize("axis", Axis)
def test_the_crease_along_the_moved_edge_ends_where_haga_says(x, y2, y5, axis):
    direction = Direction(axis)
    done, landmark = corner_taken_to(exact(x.numerator, x.denominator), direction, open_sheet(SQUARE))
    along = direction.along(landmark)
    assert Fraction(numerator(along), denominator(along)) == y5 == 1 - y2
    assert direction.across.along(landmark) == ONE
    assert landmark in vertices(done[-1].after)


@pytest.mark.parametrize(("x", "y2", "y5"), ROWS, ids=[str(row[0]) for row in ROWS])
def test_its_other_end_is_where_the_corner_was_taken(x, y2, y5):
    mark = exact(x.numerator, x.denominator)
    done, _ = corner_taken_to(mark, Direction(Axis.HEIGHT), open_sheet(SQUARE))
    assert Point(mark, ONE) in vertices(done[-1].after)
