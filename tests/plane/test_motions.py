"""Motions: they keep lengths, they follow one another, and reflections undo themselves."""

import pytest
from hypothesis import assume, given
from plane.drawn_in_the_plane import lines, motions, points, polygons
from strategies import often_enough

from foldmath.plane.lines import Point, bisector
from foldmath.plane.motions import AT_REST, quarter_turn, reflection, three_quarter_turn
from foldmath.plane.numbers import ONE, ZERO, exact
from foldmath.plane.polygons import area


def squared_distance(one, other):
    return (one.x - other.x) * (one.x - other.x) + (one.y - other.y) * (one.y - other.y)


@given(motions(), points, points)
@often_enough
def test_a_motion_keeps_every_distance(motion, one, other):
    assert squared_distance(motion.carry(one), motion.carry(other)) == squared_distance(one, other)


@given(motions())
@often_enough
def test_a_motion_is_rigid_in_its_coefficients(motion):
    assert motion.c * motion.c + motion.s * motion.s == ONE


@given(motions(), polygons())
@often_enough
def test_a_motion_keeps_area_and_turns_it_over_unless_upright(motion, polygon):
    landed = area(tuple(motion.carry(corner) for corner in polygon))
    assert landed == (area(polygon) if motion.upright else -area(polygon))


@given(motions(), motions(), points)
@often_enough
def test_then_does_one_motion_after_the_other(first, second, point):
    assert first.then(second).carry(point) == second.carry(first.carry(point))


@given(motions(), points)
@often_enough
def test_carrying_back_undoes_carrying(motion, point):
    assert motion.carry_back(motion.carry(point)) == point
    assert motion.carry(motion.carry_back(point)) == point


@given(motions(), motions(), motions())
@often_enough
def test_three_motions_in_a_row_need_no_brackets(one, two, three):
    assert one.then(two).then(three) == one.then(two.then(three))


@given(lines(), points)
@often_enough
def test_a_reflection_undoes_itself_and_changes_over_the_hands(line, point):
    mirror = reflection(line)
    assert mirror.then(mirror) == AT_REST
    assert line.side(mirror.carry(point)) == -line.side(point)
    if line.side(point) == ZERO:
        assert mirror.carry(point) == point


@given(points, points)
@often_enough
def test_reflecting_in_the_bisector_carries_one_point_onto_the_other(one, other):
    assume(one != other)
    assert reflection(bisector(one, other)).carry(one) == other


@given(points, points)
@often_enough
def test_four_quarter_turns_and_one_each_way_come_back(centre, point):
    turn = quarter_turn(centre)
    assert turn.then(turn).then(turn) == three_quarter_turn(centre)
    assert turn.then(three_quarter_turn(centre)) == AT_REST
    assert turn.carry(centre) == centre
    assert turn.then(turn).carry(point) == Point(centre.x + centre.x - point.x, centre.y + centre.y - point.y)


@pytest.mark.parametrize(("turn", "lands"), [(quarter_turn, (-1, 2)), (three_quarter_turn, (1, -2))])
def test_a_quarter_turn_is_counter_clockwise(turn, lands):
    assert turn(Point(ZERO, ZERO)).carry(Point(exact(2), exact(1))) == Point(*map(exact, lands))
