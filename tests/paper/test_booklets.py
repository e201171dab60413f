"""Booklets: every page reads upright and in order, and the paper closes as paper can."""

from itertools import pairwise

import pytest
from creased import A4_UPRIGHT, LETTER, after, creased, papers, ring_sheet
from hypothesis import given, settings
from hypothesis import strategies as st
from paper import laws

from foldmath.lesson.remedies import offered
from foldmath.paper.booklet.booklet import Booklet, Face, Form, Meeting, SlitRoom, WayUp
from foldmath.paper.booklet.gathering import booklet, gather
from foldmath.paper.booklet.grid import slit_limits
from foldmath.paper.folding.hinges import hinges
from foldmath.paper.moments.performing import perform
from foldmath.paper.refusals import NotABooklet, SheetNotOpen, SlitTooShort
from foldmath.paper.state import FoldedState, Sheet, open_sheet
from foldmath.paper.steps import (
    Axis,
    Edge,
    FoldBothEdges,
    FoldEdge,
    Gather,
    Open,
    Pleat,
    Slit,
    TurnOver,
    TurnQuarter,
)
from foldmath.plane.lines import Point
from foldmath.plane.numbers import HALF, ONE, ZERO, exact
from foldmath.plane.polygons import box

TURNS = [TurnOver(), TurnQuarter(left=True), TurnQuarter(left=False)]

rings = st.builds(
    lambda sheet, k, level, turns: after(ring_sheet(sheet, k, level=level), *turns),
    papers,
    st.integers(2, 4),
    st.booleans(),
    st.lists(st.sampled_from(TURNS), max_size=2),
)
"""Sheets with a slit for 8, 12 or 16 pages, either way round, turned on the table."""

halvings = st.builds(FoldEdge, st.sampled_from(Edge), st.just(ZERO), st.booleans()).map(
    lambda fold: FoldEdge(fold.edge, fold.edge.opposite.position, fold.behind)
)
signatures = st.builds(
    lambda sheet, turns, folds: after(open_sheet(sheet), *turns, *folds),
    papers,
    st.lists(st.sampled_from(TURNS), max_size=1),
    st.lists(halvings, min_size=1, max_size=4),
)
"""Sheets halved one to four times, over or behind, for 4 to 32 pages."""

pleats = st.builds(
    lambda sheet, turns, axis, parts: after(open_sheet(sheet), *turns, Pleat(axis, parts)),
    papers,
    st.lists(st.sampled_from(TURNS), max_size=2),
    st.sampled_from(Axis),
    st.integers(3, 8),
)


def column_for(state: FoldedState, data) -> int:
    return data.draw(st.sampled_from(range(1, len(state.panels) // 2, 2)))


def page_corners(made: Booklet, number: int, state: FoldedState) -> set[Point]:
    page = made.page(number)
    return {page.motion.carry(corner) for corner in box_corners(state.panels[page.panel].corners)}


def box_corners(corners):
    bounds = box(corners)
    return {Point(x, y) for x in (bounds.left, bounds.right) for y in (bounds.bottom, bounds.top)}


def assert_pages_are_upright_rectangles(made: Booklet, state: FoldedState):
    rectangle = {Point(x, y) for x in (ZERO, made.width) for y in (ZERO, made.height)}
    assert [page.number for page in made.pages] == list(range(1, len(made.pages) + 1))
    for page in made.pages:
        assert page_corners(made, page.number, state) == rectangle
        assert page.motion.upright is (page.face is Face.PRINTED)


def on_table(made: Booklet, number: int, closed: FoldedState, across, up) -> Point:
    """Tell where a place on a page, as shares of its width and height, lies when the booklet is closed."""
    page = made.page(number)
    on_sheet = page.motion.carry_back(Point(across * made.width, up * made.height))
    return closed.panels[page.panel].placements[-1].motion.carry(on_sheet)


def assert_closed_pages_lie_over_one_another(made: Booklet, closed: FoldedState):
    """Odd pages lie as page 1 does, and even pages are seen from behind: left and right change over."""
    for across, up in ((ZERO, ZERO), (ONE, ZERO), (ZERO, ONE), (exact(1, 3), exact(1, 5))):
        for page in made.pages:
            mirrored = across if page.number % 2 else ONE - across
            assert on_table(made, page.number, closed, across, up) == on_table(made, 1, closed, mirrored, up)


def assert_openings_meet(made: Booklet, state: FoldedState):
    """Facing pages on one hinge meet along it: the left page's right edge on the right page's left edge."""
    joined = {frozenset((hinge.one, hinge.other)): hinge for hinge in hinges(state.panels)}
    for opening in made.openings:
        left, right = made.page(opening.left), made.page(opening.right)
        assert opening.right == opening.left + 1
        if opening.meeting is Meeting.HINGED:
            hinge = joined[frozenset((left.panel, right.panel))]
            assert left.face is right.face
            for end in (hinge.start, hinge.end):
                assert left.motion.carry(end).x == made.width
                assert right.motion.carry(end).x == ZERO
                assert left.motion.carry(end).y == right.motion.carry(end).y


@given(rings, st.data())
@settings(max_examples=30, deadline=None)
def test_a_ring_closes_flat_on_one_panel_and_breaks_no_law(state, data):
    closed = gather(state, column_for(state, data))
    assert {frozenset(panel.lying) & box_corners(panel.lying) for panel in closed.panels} == {
        frozenset(box_corners(closed.panels[0].lying))
    }
    assert closed.table.layers == len(state.panels)
    assert closed.table.area * len(state.panels) == state.sheet.area
    assert laws.breaches(closed) == ()
    opened = perform(Open(), closed)
    assert laws.breaches(opened) == ()
    assert opened.table == state.table


@given(rings, st.data())
@settings(max_examples=30, deadline=None)
def test_every_page_of_a_ring_is_upright_on_the_printed_side_and_meets_its_neighbour(state, data):
    column = column_for(state, data)
    made, closed = booklet(state, column), gather(state, column)
    assert made.form is Form.RING
    assert sorted(page.panel for page in made.pages) == list(range(len(state.panels)))
    assert {page.face for page in made.pages} == {Face.PRINTED}
    assert_pages_are_upright_rectangles(made, state)
    assert_closed_pages_lie_over_one_another(made, closed)
    assert_openings_meet(made, state)


@given(rings, st.data())
@settings(max_examples=30, deadline=None)
def test_leaves_lie_back_to_back_and_openings_face_to_face_in_the_closed_stack(state, data):
    column = column_for(state, data)
    made, closed = booklet(state, column), gather(state, column)
    lying = [closed.panels[page.panel].placements[-1] for page in made.pages]
    steps = {later.place - earlier.place for earlier, later in pairwise(lying)}
    assert steps in ({1}, {-1})
    for leaf in made.leaves:
        front, back = lying[leaf.front - 1], lying[leaf.back - 1]
        upper, lower = (front, back) if front.place > back.place else (back, front)
        assert upper.printed_side_up
        assert not lower.printed_side_up
    for opening in made.openings:
        left, right = lying[opening.left - 1], lying[opening.right - 1]
        upper, lower = (left, right) if left.place > right.place else (right, left)
        assert not upper.printed_side_up
        assert lower.printed_side_up


@given(signatures)
@settings(max_examples=30, deadline=None)
def test_a_sheet_halved_again_and_again_is_a_signature_that_reads_upright(state):
    made = booklet(state)
    count = len(state.panels)
    assert made.form is Form.SIGNATURE
    assert len(made.pages) == 2 * count
    assert {(page.panel, page.face) for page in made.pages} == {
        (i, face) for i in range(count) for face in Face
    }
    assert_pages_are_upright_rectangles(made, state)
    assert_closed_pages_lie_over_one_another(made, gather(state))
    assert_openings_meet(made, state)
    assert all(spine.left + spine.right == 2 * count + 1 and spine.left % 2 == 0 for spine in made.spines)
    assert len(made.trims) == len(hinges(state.panels)) - count // 2


@given(signatures)
@settings(max_examples=30, deadline=None)
def test_the_openings_of_a_signature_are_hinged_or_lie_next_to_each_other(state):
    made, places = booklet(state), [panel.placements[-1].place for panel in state.panels]
    order = sorted(range(len(places)), key=places.__getitem__)
    for opening in made.openings:
        panels = [made.page(number).panel for number in (opening.left, opening.right)]
        assert abs(order.index(panels[0]) - order.index(panels[1])) == 1


@given(pleats)
@settings(max_examples=20, deadline=None)
def test_a_pleat_is_read_along_one_side_and_then_along_the_other(state):
    made, count = booklet(state), len(state.panels)
    assert made.form is Form.PLEAT
    assert [page.face for page in made.pages] == [Face.PRINTED] * count + [Face.BACK] * count
    assert_pages_are_upright_rectangles(made, state)
    assert_openings_meet(made, state)
    assert all(made.page(leaf.front).panel == made.page(leaf.back).panel for leaf in made.leaves)
    assert len(made.openings) == 2 * (count - 1)
    assert laws.breaches(gather(state)) == ()


@pytest.mark.parametrize(
    ("steps", "pages"),
    [
        ([FoldEdge(Edge.LEFT, ONE)], 4),
        ([Pleat(Axis.WIDTH, 3)], 6),
        ([Pleat(Axis.WIDTH, 4)], 8),
        ([Pleat(Axis.HEIGHT, 3)], 6),
        ([FoldEdge(Edge.TOP, ZERO), FoldEdge(Edge.LEFT, ONE)], 8),
        ([FoldEdge(Edge.RIGHT, ZERO), FoldEdge(Edge.TOP, ZERO), FoldEdge(Edge.LEFT, ONE)], 16),
    ],
)
def test_uncut_sheets_have_two_pages_a_layer(steps, pages):
    state = after(open_sheet(LETTER), *steps)
    closed = gather(state)
    assert len(booklet(state).pages) == pages
    assert closed.table == state.table
    assert closed.gathered
    assert perform(Open(), closed).table == open_sheet(LETTER).table


def test_a_sheet_halved_towards_its_bottom_edge_is_held_so_that_the_fold_is_at_the_left():
    made = booklet(after(open_sheet(A4_UPRIGHT), FoldEdge(Edge.TOP, ZERO, behind=True)))
    assert (made.width, made.height) == (exact(297, 2), exact(210))
    assert {page.way_up for page in made.pages} == {WayUp.RIGHT}


@pytest.mark.parametrize("k", [2, 3, 4, 5])
def test_there_are_k_layouts_by_the_column_of_the_cover(k):
    state = ring_sheet(LETTER, k)
    layouts = set()
    for column in range(-1, 2 * k + 1):
        try:
            made = booklet(state, column)
        except NotABooklet as refusal:
            perform(refusal.instead, state)
        else:
            layouts.add(tuple(page.panel for page in made.pages))
    assert len(layouts) == k


@pytest.mark.parametrize(("k", "warnings"), [(2, 0), (3, 0), (4, 1), (6, 1)])
def test_past_three_the_thick_fan_is_warned_of(k, warnings):
    made = booklet(ring_sheet(LETTER, k))
    assert len(made.pages) == 4 * k
    assert len(made.warnings) == warnings
    assert made.refolded_as_fan is (k > 2)


class TestTheLengthOfTheSlit:
    SHORT = exact(1, 20)

    @pytest.mark.parametrize(
        ("beyond", "said"),
        [
            ((-SHORT, ZERO), r"from 1/4 to 3/10 of the width \(11/20 in more to cut\)"),
            ((ZERO, -SHORT), r"from 7/10 to 3/4 of the width \(11/20 in more to cut\)"),
            ((-SHORT, -SHORT), r"3/10 of the width .* and from 7/10 to 3/4 of the width"),
            ((ZERO, -exact(1, 4)), r"from 1/2 to 3/4 of the width \(2 3/4 in more to cut\)"),
        ],
    )
    def test_a_slit_too_short_leaves_a_hinge_that_blocks_the_closing(self, beyond, said):
        with pytest.raises(SlitTooShort, match=said) as caught:
            booklet(ring_sheet(LETTER, 2, beyond=beyond))
        assert caught.value.needed == Slit(Axis.HEIGHT, HALF, exact(1, 4), exact(3, 4))

    @given(rings, st.sampled_from([(1, 3), (1, 2), (2, 3)]), st.lists(st.sampled_from(TURNS), max_size=2))
    @settings(max_examples=20, deadline=None)
    def test_what_the_message_says_is_enough_however_the_sheet_lies(self, state, share, turns):
        sheet, k = state.sheet, len(state.panels) // 4
        short = ring_sheet(sheet, k, beyond=(ZERO, -exact(*share) / (2 * k)))
        short = after(short, *turns)
        with pytest.raises(SlitTooShort) as caught:
            booklet(short)
        assert booklet(perform(caught.value.needed, short)).pages

    def test_a_sheet_without_a_slit_is_told_where_to_cut(self):
        with pytest.raises(SlitTooShort, match=r"there is no slit: .* from 1/4 to 3/4 of the width"):
            booklet(creased(LETTER, 4, 2))

    @given(rings, st.integers(1, 9), st.integers(0, 9), st.booleans())
    @settings(max_examples=20, deadline=None)
    def test_a_little_too_long_is_harmless_and_the_pages_are_the_same(self, state, left, right, level):
        k = len(state.panels) // 4
        beyond = (exact(left, 20) / (2 * k), exact(right, 20) / (2 * k))
        long = ring_sheet(state.sheet, k, level=level, beyond=beyond)
        exactly = booklet(ring_sheet(state.sheet, k, level=level))
        assert booklet(long).pages == exactly.pages
        assert booklet(long).warnings == exactly.warnings
        assert laws.breaches(gather(long)) == ()

    def test_past_half_of_the_end_hinge_the_leaf_may_tear(self):
        made = booklet(ring_sheet(LETTER, 2, beyond=(exact(3, 16), ZERO)))
        assert tuple(map(str, made.warnings)) == (
            "the slit leaves 11/16 in of the hinge in an end leaf; below half it may tear",
        )

    def test_a_slit_too_long_alike_at_both_ends_is_warned_of_once(self):
        both = (exact(3, 16), exact(3, 16))
        assert len(booklet(ring_sheet(LETTER, 2, beyond=both)).warnings) == 1

    @given(rings)
    @settings(max_examples=10, deadline=None)
    def test_the_booklet_says_how_much_too_long_its_slit_may_be_whichever_way_it_lies(self, state):
        made = booklet(state)
        assert made.slit_room == SlitRoom(made.width / 2, made.width)

    def test_a_slit_to_the_end_of_the_sheet_makes_no_booklet(self):
        with pytest.raises(NotABooklet, match="an end leaf comes apart"):
            booklet(ring_sheet(LETTER, 2, beyond=(exact(1, 4), ZERO)))

    def test_the_limits_of_the_slit_are_told_in_the_units_of_the_sheet(self):
        limits = slit_limits(ring_sheet(LETTER, 2, beyond=(exact(1, 8), -self.SHORT)))
        assert limits.needed == (exact(11, 4), exact(33, 4))
        assert limits.strong == (exact(11, 8), exact(77, 8))
        assert (limits.harmless, limits.tearing) == (exact(11, 8), exact(11, 4))
        assert limits.too_short == ((exact(77, 10), exact(33, 4)),)
        assert limits.left_of_end_hinges() == (exact(11, 8), exact(11, 4))


@pytest.mark.parametrize(
    "state",
    [
        open_sheet(LETTER),
        creased(LETTER, 2, 2),
        creased(LETTER, 3, 2),
        creased(LETTER, 4, 3),
        after(open_sheet(LETTER), FoldBothEdges(Axis.WIDTH)),
        after(open_sheet(LETTER), FoldEdge(Edge.LEFT, HALF)),
        after(creased(LETTER, 4, 2), FoldEdge(Edge.LEFT, ONE)),
        after(ring_sheet(LETTER, 2), Slit(Axis.WIDTH, exact(1, 4), ZERO, HALF)),
    ],
    ids=["plain", "2 by 2", "3 by 2", "4 by 3", "gate", "flap", "two panels a layer", "another cut"],
)
def test_other_paper_is_no_booklet_and_the_message_says_why(state):
    with pytest.raises(NotABooklet) as caught:
        gather(state)
    assert offered(caught.value)


def test_a_folded_sheet_with_a_slit_must_be_opened_to_be_gathered():
    with pytest.raises(SheetNotOpen):
        gather(after(ring_sheet(LETTER, 2), FoldEdge(Edge.LEFT, ONE), FoldEdge(Edge.LEFT, ONE)))


def test_only_a_ring_has_a_choice_of_covers():
    with pytest.raises(NotABooklet, match="choice of covers"):
        perform(Gather(1), after(open_sheet(Sheet(ONE, ONE, "in")), FoldEdge(Edge.LEFT, ONE)))
