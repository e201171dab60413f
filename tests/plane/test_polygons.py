"""Polygons: area, boxes, cutting, and laying one over another."""

from hypothesis import given
from plane.drawn_in_the_plane import lines, motions, polygons
from strategies import often_enough

from foldmath.plane.lines import Point
from foldmath.plane.numbers import HALF, ONE, ZERO, exact
from foldmath.plane.polygons import (
    area,
    between,
    box,
    boxes_overlap,
    cut,
    edge_lines,
    from_lowest,
    overlay,
    turned_counter_clockwise,
)

UNIT_SQUARE = (Point(ZERO, ZERO), Point(ONE, ZERO), Point(ONE, ONE), Point(ZERO, ONE))
TALL = tuple(Point(x * exact(3), y * exact(5)) for x, y in UNIT_SQUARE)


def shoelace(polygon):
    pairs = zip(polygon, (*polygon[1:], polygon[0]), strict=True)
    return sum((one.x * two.y - two.x * one.y for one, two in pairs), ZERO) * HALF


@given(polygons())
@often_enough
def test_area_is_that_of_the_shoelace_formula(polygon):
    assert area(polygon) == shoelace(polygon) > ZERO
    assert area(polygon[::-1]) == -area(polygon)


@given(polygons(), lines())
@often_enough
def test_the_two_parts_of_a_cut_make_up_the_whole_each_on_its_hand(polygon, line):
    positive, negative = cut(polygon, line)
    assert sum((area(part) for part in (positive, negative) if part), ZERO) == area(polygon)
    assert all(line.side(corner) >= ZERO for corner in positive)
    assert all(line.side(corner) <= ZERO for corner in negative)
    assert all(area(part) > ZERO for part in (positive, negative) if part)


@given(polygons(), lines())
@often_enough
def test_parts_of_a_cut_have_no_corner_on_a_straight_edge(polygon, line):
    for part in cut(polygon, line):
        for index, corner in enumerate(part):
            assert area((part[index - 2], part[index - 1], corner)) > ZERO


@given(polygons())
@often_enough
def test_a_line_along_an_edge_cuts_nothing_off(polygon):
    for line in edge_lines(polygon):
        assert cut(polygon, line) == (polygon, ())
        assert cut(polygon, line.reversed()) == ((), polygon)


@given(polygons(), polygons())
@often_enough
def test_what_is_common_and_what_is_left_make_up_the_polygon_beneath(over, under):
    common, left = overlay(over, under)
    parts = [part for part in (common, *left) if part]
    assert sum((area(part) for part in parts), ZERO) == area(under)
    assert all(line.side(corner) >= ZERO for line in edge_lines(over) for corner in common)
    for piece in left:
        assert overlay(over, piece)[0] == ()


@given(polygons(), polygons())
@often_enough
def test_two_polygons_have_in_common_the_same_area_whichever_lies_over(one, other):
    areas = [area(common) if common else ZERO for common in (overlay(one, other)[0], overlay(other, one)[0])]
    assert areas[0] == areas[1]
    if areas[0] > ZERO:
        assert boxes_overlap(box(one), box(other))


@given(polygons())
@often_enough
def test_a_polygon_laid_over_itself_leaves_nothing(polygon):
    common, left = overlay(polygon, polygon)
    assert set(common) == set(polygon)
    assert left == []


@given(polygons())
@often_enough
def test_a_box_holds_every_corner_and_touches_some_on_each_side(polygon):
    bounds = box(polygon)
    assert {min(x for x, _ in polygon), max(x for x, _ in polygon)} == {bounds.left, bounds.right}
    assert {min(y for _, y in polygon), max(y for _, y in polygon)} == {bounds.bottom, bounds.top}


def test_positions_in_a_box_are_counted_from_the_left_and_from_the_bottom():
    bounds = box(TALL)
    assert (bounds.width, bounds.height) == (3, 5)
    assert bounds.at(exact(1, 3), exact(4, 5)) == Point(exact(1), exact(4))


def test_boxes_that_only_touch_do_not_overlap():
    aside = tuple(Point(x + ONE, y) for x, y in UNIT_SQUARE)
    assert not boxes_overlap(box(UNIT_SQUARE), box(aside))
    assert boxes_overlap(box(UNIT_SQUARE), box(TALL))


def test_a_share_of_the_way_is_counted_from_the_start():
    assert between(Point(ZERO, ONE), Point(exact(4), exact(3)), exact(1, 4)) == Point(ONE, exact(3, 2))


@given(polygons(), motions())
@often_enough
def test_a_polygon_turned_over_is_put_back_counter_clockwise(polygon, motion):
    landed = tuple(motion.carry(corner) for corner in polygon)
    assert area(landed if motion.upright else turned_counter_clockwise(landed)) == area(polygon)


@given(polygons())
@often_enough
def test_corners_are_counted_from_the_lowest_then_leftmost(polygon):
    started = from_lowest(polygon)
    assert (started[0].y, started[0].x) == min((y, x) for x, y in polygon)
    assert area(started) == area(polygon)
    assert set(started) == set(polygon)
