"""Lines: through two points, half-way between two points, and their hands."""

from hypothesis import assume, given
from plane.drawn_in_the_plane import lines, points
from strategies import often_enough

from foldmath.plane.lines import bisector, line_through
from foldmath.plane.numbers import HALF, ZERO
from foldmath.plane.polygons import between


@given(points, points)
@often_enough
def test_a_line_goes_through_its_two_points_and_all_between(start, end):
    assume(start != end)
    line = line_through(start, end)
    assert line.side(start) == line.side(end) == line.side(between(start, end, HALF)) == ZERO


@given(points, points, points)
@often_enough
def test_the_left_of_the_way_from_start_to_end_is_positive(start, end, point):
    assume(start != end)
    turning = (end.x - start.x) * (point.y - start.y) - (end.y - start.y) * (point.x - start.x)
    assert line_through(start, end).side(point) == turning


@given(points, points, points)
@often_enough
def test_a_bisector_has_the_points_that_are_as_near_to_one_end_as_to_the_other(start, end, point):
    assume(start != end)
    to_start = (point.x - start.x) * (point.x - start.x) + (point.y - start.y) * (point.y - start.y)
    to_end = (point.x - end.x) * (point.x - end.x) + (point.y - end.y) * (point.y - end.y)
    side = bisector(start, end).side(point)
    assert (side > ZERO, side == ZERO) == (to_start < to_end, to_start == to_end)


@given(lines(), points)
@often_enough
def test_reversing_a_line_changes_over_its_hands(line, point):
    assert line.reversed().side(point) == -line.side(point)
    assert line.with_positive(point).side(point) == abs(line.side(point))
