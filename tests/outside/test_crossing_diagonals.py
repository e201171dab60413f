"""Crossing diagonals, folded.

Source: R. J. Lang, Origami and Geometric Constructions (1996-2015), chapter "Rational Fractions", section
"Crossing Diagonals" (contents page). The rule, from memory and checked by coordinates: the line from
(0, 0) to (1, 1) meets the line from (0, 1) to (a, 0) at a/(1 + a) of the width, on any rectangle; so 1/2
gives 1/3, 1/3 gives 1/4, 1/4 gives 1/5.
"""

from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from foldmath.paper.state import Sheet, open_sheet
from foldmath.paper.steps import Axis
from foldmath.plane.numbers import ONE, ZERO, denominator, exact, numerator
from foldmath.planning.parts.crossing_diagonals import crossed_from
from foldmath.planning.parts.direction import Direction
from foldmath.planning.parts.instructions import vertices

STATED = [("1/2", "1/3"), ("1/3", "1/4"), ("1/4", "1/5")]

sides = st.fractions(min_value=Fraction(1, 2), max_value=40, max_denominator=16)
marks = st.fractions(min_value=Fraction(1, 20), max_value=Fraction(19, 20), max_denominator=20)


def crossing(mark: Fraction, sheet: Sheet, axis: Axis) -> tuple[Fraction, Fraction]:
    """Fold both creases, and read the crossing as fractions of width and height."""
    given_mark = exact(mark.numerator, mark.denominator)
    done, point = crossed_from(given_mark, ZERO, Direction(axis), open_sheet(sheet))
    assert point in vertices(done[-1].after)
    shares = (point.x / sheet.width, point.y / sheet.height)
    return tuple(Fraction(numerator(share), denominator(share)) for share in shares)


@pytest.mark.parametrize("axis", Axis)
@pytest.mark.parametrize(("mark", "part"), STATED)
def test_the_stated_marks_give_the_stated_parts_on_letter_paper(mark, part, axis):
    letter = Sheet(exact(11), exact(17, 2), "in")
    assert crossing(Fraction(mark), letter, axis) == (Fraction(part), Fraction(part))


@settings(max_examples=40, deadline=None)
@given(marks, sides, sides, st.sampled_from(Axis))
def test_on_any_rectangle_the_creases_cross_at_a_over_one_plus_a(mark, width, height, axis):
    sheet = Sheet(*(exact(side.numerator, side.denominator) for side in (width, height)), "mm")
    assert crossing(mark, sheet, axis) == (mark / (1 + mark), mark / (1 + mark))


@settings(max_examples=20, deadline=None)
@given(marks)
def test_from_the_other_corner_they_cross_at_the_mirror_image(mark):
    sheet, direction = Sheet(exact(297), exact(210), "mm"), Direction(Axis.WIDTH)
    given_mark = exact(mark.numerator, mark.denominator)
    _, near = crossed_from(given_mark, ZERO, direction, open_sheet(sheet))
    _, far = crossed_from(given_mark, ONE, direction, open_sheet(sheet))
    assert (far.x, far.y) == (sheet.width - near.x, near.y)
