"""Folding by pointing: every fold that is offered can be said, and does what it shows before it is done."""

from dataclasses import replace

import pytest
from hypothesis import given, settings
from numpy import array
from shapely import Polygon, area, intersection
from strategies import folded, sheets, step_lists

from foldmath.lesson.grammar.sentences import parse_step
from foldmath.paper.folding import folding
from foldmath.paper.moments.performing import MOST_HANDLED, fold_lines, perform
from foldmath.paper.refusals import StepRefused
from foldmath.paper.state import FoldedState, Sheet, open_sheet
from foldmath.paper.steps import (
    Axis,
    Edge,
    FoldAlong,
    FoldAt,
    FoldEdge,
    FoldPoint,
    FoldStep,
    Gather,
    Open,
    Pleat,
    Slit,
)
from foldmath.plane.lines import Line, Point
from foldmath.plane.motions import reflection
from foldmath.plane.numbers import HALF, ONE, ZERO, exact
from foldmath.pointing import foresight
from foldmath.pointing.folds import MOST_FOLDS, HeldCorner, HeldEdge, held_things, offered_folds
from foldmath.words.steps import step_sentence

LETTER = Sheet(exact(11), exact(17, 2), "in")


now_and_then = settings(max_examples=8, deadline=None)


def some(offered, count):
    """Give so many of the folds, plain and fine ones: all of every random paper would take minutes."""
    return offered[:: max(1, len(offered) // count)]


def paper(*steps, sheet=LETTER) -> FoldedState:
    state = open_sheet(sheet)
    for step in steps:
        state = perform(step, state)
    return state


IN_EIGHTS = (FoldEdge(Edge.LEFT, ONE), FoldEdge(Edge.TOP, ZERO), FoldEdge(Edge.LEFT, ONE))


def offered_of(state: FoldedState, held) -> list[FoldStep]:
    return [fold.step for fold in offered_folds(state) if fold.held == held]


GRID = 1e-9
"""In plain floats GEOS may take a corner a billionth of a billionth beside an edge for one across it."""


def pieces(polygons, within=None):
    """Give polygons as shapely has them, those that have area in another one."""
    drawn = array([Polygon([(float(x), float(y)) for x, y in corners]) for corners in polygons])
    cut = drawn if within is None else intersection(drawn, within, grid_size=GRID)
    return cut[area(cut) > 0]


def common(some, others):
    """Give the area that two lots of pieces share, each lot without overlaps."""
    return area(intersection(some[:, None], others[None, :], grid_size=GRID)).sum()


def same_line(one: Line, other: Line) -> bool:
    """Tell whether two lines are one, with the same hand positive."""
    scale = one.a / other.a if other.a else one.b / other.b
    return scale > ZERO and one == Line(*(scale * number for number in other))


class TestTheLaw:
    @given(sheets, step_lists)
    @now_and_then
    def test_what_is_offered_reads_back_as_the_same_step_over_and_behind(self, sheet, steps):
        for fold in some(offered_folds(folded(sheet, steps)), 40):
            assert parse_step(step_sentence(fold.step)) == fold.step
            assert parse_step(step_sentence(fold.behind)) == fold.behind
            assert parse_step(step_sentence(fold.step, "es")) == fold.step

    @given(sheets, step_lists)
    @now_and_then
    def test_a_preview_has_the_line_of_the_fold_and_the_same_hand_moves(self, sheet, steps):
        state = folded(sheet, steps)
        for fold in some(offered_folds(state), 40):
            ((line, _),) = fold_lines(fold.step, state)
            assert same_line(line, fold.line(state.table.box))

    @given(sheets, step_lists)
    @now_and_then
    def test_letting_go_does_what_the_preview_showed(self, sheet, steps):
        state = folded(sheet, steps)
        for number, fold in enumerate(some(offered_folds(state), 6)):
            for step in (fold.step, fold.behind)[number % 2 :]:
                after = perform(step, state)
                line = fold.line(state.table.box)
                self.check_crease(line, state, after)
                self.check_flap(line, state, after)

    def check_crease(self, line, before, after):
        """What moved meets what stayed on the line, and nowhere else is there a new edge between panels."""
        for panel, parent in zip(after.panels, after.parents, strict=True):
            was, edges = before.panels[parent], zip(panel.edges, panel.lying, strict=True)
            if panel.area != was.area:
                assert any(crease and line.side(corner) == ZERO for crease, corner in edges)

    def check_flap(self, line, before, after):
        """What stays and what is carried over lie in the paper after it, which has no more than both.

        Two convex pieces at a time: of many at once, GEOS may lose a part where outlines run along one line.
        """
        mirror = reflection(line)
        covers = [cover.polygon for cover in before.table.covers]
        shadows = [[mirror.carry(corner) for corner in corners] for corners in covers]
        staying = half_plane(line, 10 * float(max(before.sheet.width, before.sheet.height)))
        kept, carried = (pieces(polygons, staying) for polygons in (covers, shadows))
        now = pieces([cover.polygon for cover in after.table.covers])
        tiny = 1e-6 * area(now).sum()
        shown = area(kept).sum() + area(carried).sum() - common(kept, carried)
        assert abs(area(now).sum() - shown) < tiny
        for shape in (kept, carried):
            assert abs(common(shape, now) - area(shape).sum()) < tiny

    @given(sheets, step_lists)
    @now_and_then
    def test_what_is_held_comes_to_lie_where_it_was_said(self, sheet, steps):
        state = folded(sheet, steps)
        box = state.table.box
        for fold in some(offered_folds(state), 40):
            mirror = reflection(fold.line(box))
            assert mirror.carry(box.at(*fold.held.grip)) == box.at(*fold.lands)

    @given(sheets, step_lists)
    @now_and_then
    def test_only_what_a_hand_can_take_travels_and_no_two_land_alike(self, sheet, steps):
        state = folded(sheet, steps)
        offered = offered_folds(state)
        assert {fold.held for fold in offered} <= set(held_things(state))
        assert len({(fold.held, fold.lands) for fold in offered}) == len(offered) <= MOST_FOLDS


def half_plane(line, far):
    """Give the negative hand of a line, as far as any paper lies."""
    a, b, c = map(float, line)
    length = (a * a + b * b) ** 0.5
    a, b, c = a / length, b / length, c / length
    foot = (-a * c, -b * c)
    ends = [(foot[0] - b * far * way, foot[1] + a * far * way) for way in (1, -1)]
    back = [(x - a * far, y - b * far) for x, y in reversed(ends)]
    return Polygon([*ends, *back])


class TestEdges:
    def test_an_edge_goes_to_the_opposite_edge_first_then_to_the_middle(self):
        assert offered_of(paper(), HeldEdge(Edge.LEFT))[:2] == [
            FoldEdge(Edge.LEFT, ONE),
            FoldEdge(Edge.LEFT, HALF),
        ]

    def test_an_edge_goes_to_every_simple_part_of_the_side_up_to_twelfths(self):
        box = paper().table.box
        landings = {fold.lands.x for fold in offered_folds(paper()) if fold.held == HeldEdge(Edge.LEFT)}
        assert box.left == ZERO
        assert {exact(part, parts) for parts in range(2, 13) for part in range(1, parts)} < landings
        assert exact(1, 13) not in landings

    def test_a_fold_is_named_by_the_smaller_denominator_and_by_its_crease_where_both_are_alike(self):
        said = offered_of(paper(), HeldEdge(Edge.RIGHT))
        assert parse_step("fold right edge to 2/3") in said  # creases at 5/6
        assert parse_step("fold at 2/3 moving right") in said  # carries the edge to 1/3
        assert parse_step("fold right edge to 1/3") not in said

    def test_an_edge_may_go_past_the_paper_where_its_crease_is_simple(self):
        assert parse_step("fold at 3/4 moving left") in offered_of(paper(), HeldEdge(Edge.LEFT))

    def test_an_edge_goes_onto_a_crease_and_a_crease_is_folded_along_however_odd_its_place(self):
        creased = paper(FoldAt(exact(2, 17), Edge.LEFT), Open())
        said = offered_of(creased, HeldEdge(Edge.RIGHT))
        assert parse_step("fold right edge to 2/17") in said
        assert parse_step("fold at 2/17 moving right") in said

    def test_a_place_that_is_seen_is_as_plain_as_one_of_half_its_denominator(self):
        creased = paper(FoldAt(exact(1, 5), Edge.LEFT), Open())
        plain = {
            fold.step: fold.plainness for fold in offered_folds(creased) if isinstance(fold.held, HeldEdge)
        }
        assert (
            plain[parse_step("fold at 1/5 moving left")] == plain[parse_step("fold right edge to 1/5")] == 3
        )
        assert (
            plain[parse_step("fold at 4/5 moving right")] == plain[parse_step("fold at 4/5 moving left")] == 5
        )


class TestCorners:
    def corner(self, across, up):
        return HeldCorner(Point(exact(across), exact(up)))

    def test_a_corner_goes_to_corners_middles_and_crossings_of_thirds_and_fourths(self):
        said = offered_of(paper(), self.corner(0, 0))
        assert parse_step("fold bottom left corner to top right corner") in said
        assert parse_step("fold bottom left corner to (1/2, 1)") in said
        assert parse_step("fold bottom left corner to (1/2, 1/2)") in said
        assert parse_step("fold bottom left corner to (1/3, 2/3)") in said
        assert parse_step("fold bottom left corner to (3/4, 1/4)") in said
        assert parse_step("fold bottom left corner to (1/3, 1/4)") not in said

    def test_a_corner_that_travels_along_an_edge_is_said_as_the_edge_beside_it(self):
        said = offered_of(paper(), self.corner(0, 0))
        assert parse_step("fold left edge to right edge") in said
        assert parse_step("fold bottom edge to middle") in said
        assert FoldPoint(Point(ZERO, ZERO), Point(ONE, ZERO)) not in said

    def test_a_corner_goes_onto_the_crossing_of_two_creases(self):
        creased = paper(Pleat(Axis.WIDTH, 5), Open(), Pleat(Axis.HEIGHT, 7), Open())
        assert parse_step("fold bottom left corner to (2/5, 3/7)") in offered_of(creased, self.corner(0, 0))

    def test_the_paper_folds_along_its_diagonals_the_corner_beside_each_in_the_hand(self):
        said = offered_of(paper(), self.corner(0, 1))
        assert parse_step("fold along (0, 0) (1, 1) moving (0, 1)") in said

    def test_on_a_square_a_diagonal_is_said_from_corner_to_corner(self):
        said = offered_of(paper(sheet=Sheet(ONE, ONE, "in")), self.corner(0, 1))
        assert parse_step("fold top left corner to bottom right corner") in said
        assert parse_step("fold along (0, 0) (1, 1) moving (0, 1)") not in said

    def test_the_paper_folds_along_a_slanted_crease(self):
        creased = paper(
            FoldAlong(Point(ZERO, exact(1, 5)), Point(exact(1, 7), ZERO), Point(ZERO, ZERO)), Open()
        )
        assert parse_step("fold along (0, 1/5) (1/7, 0) moving (0, 0)") in offered_of(
            creased, self.corner(0, 0)
        )

    def test_the_corners_of_slanted_paper_are_where_it_sticks_out(self):
        triangle = paper(FoldPoint(Point(ZERO, ZERO), Point(ONE, ONE)), sheet=Sheet(ONE, ONE, "in"))
        corners = {held.grip for held in held_things(triangle) if isinstance(held, HeldCorner)}
        assert corners == {Point(ONE, ZERO), Point(ONE, ONE), Point(ZERO, ONE)}


class TestLimits:
    def test_a_booklet_offers_nothing_to_take(self):
        eighths = paper(*IN_EIGHTS, Open())
        booklet = perform(Gather(), perform(Slit(Axis.HEIGHT, HALF, exact(1, 4), exact(3, 4)), eighths))
        assert offered_folds(booklet) == held_things(booklet) == ()

    def test_a_thousand_steps_of_creasing_leave_at_most_five_hundred_folds_the_plainest(self):
        creased = paper(Pleat(Axis.WIDTH, 8), Open(), Pleat(Axis.HEIGHT, 8), Open())
        plain = [fold.plainness for fold in offered_folds(creased)]
        assert len(plain) == MOST_FOLDS
        assert plain == sorted(plain)

    @pytest.mark.parametrize("left", [16, 17, 19, 24, 30])
    def test_a_fold_that_would_go_through_too_many_panels_is_not_offered_and_others_are(self, left):
        """Eight panels are left as they are by some folds, and cut into up to sixteen by others."""
        creased = paper(Pleat(Axis.WIDTH, 4), Open(), Pleat(Axis.HEIGHT, 2), Open())
        state = replace(creased, handled=MOST_HANDLED - left + 8)
        steps = {fold.step for fold in offered_folds(creased)}
        assert {fold.step for fold in offered_folds(state)} == {
            fold for fold in steps if is_possible(fold, state)
        }

    @pytest.mark.parametrize("most", [9, 12, 16])
    def test_a_fold_that_would_make_too_many_panels_is_not_offered_and_others_are(self, monkeypatch, most):
        for module in (folding, foresight):
            monkeypatch.setattr(module, "MOST_PANELS", most)
        state = paper(Pleat(Axis.WIDTH, 4), Open(), Pleat(Axis.HEIGHT, 2), Open())
        possible = {fold.step for fold in offered_folds(state)}
        assert {fold for fold in SOME_FOLDS if is_possible(fold, state)} == possible & SOME_FOLDS

    def test_a_crease_of_too_many_digits_is_not_offered(self):
        """The box has numbers of 300 bits; each line of a corner needs twice that."""
        long = exact(1, 3**190)
        state = open_sheet(Sheet(exact(11) + long, exact(17, 2), "in"))
        offered = {fold.step for fold in offered_folds(state)}
        for fold in SOME_FOLDS:
            assert (fold in offered) is is_possible(fold, state)
        assert 0 < len(offered & SOME_FOLDS) < len(SOME_FOLDS)


SOME_FOLDS = {
    FoldEdge(Edge.LEFT, ONE),
    FoldEdge(Edge.LEFT, HALF),
    FoldAt(exact(1, 5), Edge.LEFT),
    FoldAt(exact(1, 3), Edge.TOP),
    FoldPoint(Point(ZERO, ZERO), Point(ONE, ONE)),
    FoldPoint(Point(ZERO, ZERO), Point(HALF, ONE)),
}


def is_possible(step, state) -> bool:
    try:
        perform(step, state)
    except StepRefused:
        return False
    return True
