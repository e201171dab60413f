"""A slit cuts creases through every layer, leaves the panels, and never parts the sheet."""

from dataclasses import replace

import pytest
from creased import A4_UPRIGHT, LETTER, after, creased
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from paper import laws
from strategies import fold_steps, folded, foldings, inside_fractions, often_enough, sheets, step_lists

from foldmath.lesson.grammar.sentences import parse_step
from foldmath.paper.folding.slitting import slit_between
from foldmath.paper.moments.performing import perform
from foldmath.paper.refusals import LineUndefined, NoCreaseThere, SheetParted, StepRefused
from foldmath.paper.state import CUT, Crease, FoldedState, Kind, open_sheet
from foldmath.paper.steps import Axis, Edge, FoldAt, FoldEdge, Gather, Open, Slit, TurnOver, TurnQuarter
from foldmath.plane.lines import Point, line_through
from foldmath.plane.numbers import HALF, ONE, ZERO, exact

QUARTER, THREE_QUARTERS = exact(1, 4), exact(3, 4)
EIGHT = creased(LETTER, 4, 2)
MIDDLE = Slit(Axis.HEIGHT, HALF, QUARTER, THREE_QUARTERS)


def cuts(state: FoldedState) -> set[tuple[Point, Point]]:
    return {(line.start, line.end) for line in state.creases if line.kind is Kind.CUT}


def cut_length(state: FoldedState):
    """Give the length of all cuts on the opened sheet, if they are level or upright."""
    return sum((end.x - start.x + abs(end.y - start.y) for start, end in cuts(state)), ZERO)


def along_some_crease(state: FoldedState, data) -> Slit | None:
    """Choose a slit on the line of some crease that lies level or upright, from anywhere to anywhere."""
    box = state.table.box
    lines = set()
    for panel in state.panels:
        for edge, crease in enumerate(panel.edges):
            start, end = panel.lying[edge], panel.lying[edge + 1 - len(panel.lying)]
            if crease and start.y == end.y:
                lines.add((Axis.HEIGHT.value, (start.y - box.bottom) / box.height))
            elif crease and start.x == end.x:
                lines.add((Axis.WIDTH.value, (start.x - box.left) / box.width))
    if not lines:
        return None
    axis, at = data.draw(st.sampled_from(sorted(lines)))
    places = st.integers(0, 12).map(lambda part: exact(part, 12))
    start, end = sorted(data.draw(st.lists(places, min_size=2, max_size=2, unique=True)))
    return Slit(Axis(axis), at, start, end)


def slit_somewhere(state: FoldedState, data) -> FoldedState:
    """Cut along some crease, if the paper allows it."""
    step = along_some_crease(state, data)
    try:
        return perform(step, state) if step else state
    except StepRefused:
        return state


@given(sheets, step_lists, st.lists(fold_steps, max_size=3), st.data())
@settings(max_examples=30, deadline=None)
def test_every_law_holds_after_a_slit_and_after_every_fold_made_since(sheet, steps, later, data):
    state = slit_somewhere(folded(sheet, steps), data)
    assert laws.breaches(state) == ()
    for move in foldings(state, [*later, Open()]):
        assert laws.breaches(move.after) == ()


@given(sheets, step_lists, st.lists(fold_steps, max_size=3), st.data())
@often_enough
def test_a_slit_changes_nothing_about_how_the_paper_folds(sheet, steps, later, data):
    whole = folded(sheet, steps)
    slit = slit_somewhere(whole, data)
    for move in foldings(whole, later):
        slit, whole = perform(move.step, slit), move.after
    assert slit.table == whole.table
    assert sorted(panel.area for panel in slit.panels) == sorted(panel.area for panel in whole.panels)
    assert [panel.placements for panel in slit.panels] == [panel.placements for panel in whole.panels]


@given(sheets, step_lists, st.data())
@often_enough
def test_a_slit_keeps_every_panel_and_cuts_each_crease_that_lies_along_it(sheet, steps, data):
    before = folded(sheet, steps)
    cut = slit_somewhere(before, data)
    assume(cut is not before)
    assert [panel.area for panel in cut.panels] == [panel.area for panel in before.panels]
    assert cut.parents == tuple(range(len(before.panels)))
    assert cuts(cut)
    known = {(line.start, line.end) for line in before.creases}
    for start, end in cuts(cut):
        assert any(_within(start, end, *ends) for ends in known)


def _within(start, end, low, high):
    line = line_through(low, high)
    return line.side(start) == line.side(end) == ZERO and low <= start < end <= high


def offered_for(step: Slit, state: FoldedState) -> Slit | None:
    try:
        perform(step, state)
    except StepRefused as refusal:
        return refusal.instead
    return None


@given(sheets, step_lists, st.data())
@often_enough
def test_a_slit_that_is_refused_is_answered_by_one_that_can_be_cut_or_by_advice(sheet, steps, data):
    state = folded(sheet, steps)
    step = along_some_crease(state, data) or Slit(Axis.WIDTH, HALF, QUARTER, HALF)
    offered = offered_for(step, state)
    if offered:
        assert perform(offered, state).panels != state.panels


def test_the_middle_crease_of_an_open_sheet_is_cut_between_the_outer_columns():
    slit = perform(MIDDLE, EIGHT)
    assert cuts(slit) == {
        (Point(exact(11, 4), exact(17, 4)), Point(exact(11, 2), exact(17, 4))),
        (Point(exact(11, 2), exact(17, 4)), Point(exact(33, 4), exact(17, 4))),
    }
    assert slit.table == EIGHT.table


def test_cutting_from_the_folded_edge_to_the_next_crease_makes_the_same_slit():
    halved = after(EIGHT, FoldEdge(Edge.LEFT, ONE))
    from_fold = after(halved, Slit(Axis.HEIGHT, HALF, ZERO, HALF), Open())
    assert cuts(from_fold) == cuts(perform(MIDDLE, EIGHT))


def test_cutting_from_the_folded_edge_with_the_right_half_on_top_begins_at_the_right():
    halved = after(EIGHT, FoldEdge(Edge.RIGHT, ZERO))
    from_fold = after(halved, Slit(Axis.HEIGHT, HALF, HALF, ONE), Open())
    assert cuts(from_fold) == cuts(perform(MIDDLE, EIGHT))


def test_a_slit_through_four_layers_makes_four_cuts():
    folded_twice = after(creased(LETTER, 4, 4), FoldEdge(Edge.LEFT, ONE), FoldEdge(Edge.TOP, ZERO))
    slit = perform(Slit(Axis.HEIGHT, HALF, ZERO, HALF), folded_twice)
    assert folded_twice.table.layers == 4
    assert cut_length(slit) == 4 * exact(11, 4)
    assert laws.breaches(slit) == ()


def test_a_slit_may_end_inside_a_crease_and_be_cut_further():
    short = perform(Slit(Axis.HEIGHT, HALF, QUARTER, exact(2, 3)), EIGHT)
    assert cut_length(short) == 11 * exact(5, 12)
    assert laws.breaches(short) == ()
    longer = perform(Slit(Axis.HEIGHT, HALF, HALF, THREE_QUARTERS), short)
    assert longer == perform(MIDDLE, EIGHT)


def test_a_fold_along_a_slit_makes_no_crease_of_it():
    slit = perform(MIDDLE, EIGHT)
    halved = perform(FoldEdge(Edge.TOP, ZERO), slit)
    assert cuts(halved) == cuts(slit)
    assert {line.kind for line in halved.creases if line.folded} == {Kind.VALLEY}
    assert laws.breaches(halved) == ()


def test_a_folded_edge_is_cut_open():
    crossed = after(creased(LETTER, 2, 2), FoldEdge(Edge.TOP, ZERO))
    opened_edge = perform(Slit(Axis.HEIGHT, ONE, ZERO, HALF), crossed)
    assert cut_length(opened_edge) == exact(11, 2)
    assert laws.breaches(opened_edge) == ()


@pytest.mark.parametrize(
    ("refusal", "step", "hint"),
    [
        (NoCreaseThere, Slit(Axis.HEIGHT, exact(1, 3), QUARTER, HALF), "slit at height 1/2 from 1/4 to 1/2"),
        (SheetParted, Slit(Axis.HEIGHT, HALF, ZERO, ONE), "slit at height 1/2 from left edge to 3/4"),
        (SheetParted, Slit(Axis.WIDTH, QUARTER, ZERO, ONE), "slit at width 1/4 from bottom edge to 1/2"),
        (
            LineUndefined,
            Slit(Axis.HEIGHT, HALF, HALF, exact(3, 2)),
            "slit at height 1/2 from 1/2 to right edge",
        ),
        (LineUndefined, Slit(Axis.HEIGHT, HALF, HALF, HALF), "slit at height 1/2 from left edge to 3/4"),
    ],
)
def test_a_slit_that_cannot_be_cut_is_answered_by_the_nearest_one_that_can(refusal, step, hint):
    with pytest.raises(refusal) as caught:
        perform(step, EIGHT)
    assert caught.value.instead == parse_step(hint)
    perform(caught.value.instead, EIGHT)


def test_the_part_of_a_slit_without_a_crease_is_named():
    partly = after(open_sheet(LETTER), FoldEdge(Edge.LEFT, exact(1, 2)))
    partly = after(partly, FoldAt(HALF, Edge.TOP), Open())
    layered = after(partly, FoldAt(HALF, Edge.LEFT))
    with pytest.raises(NoCreaseThere, match="there is no crease through every layer"):
        perform(Slit(Axis.WIDTH, HALF, ZERO, ONE), layered)
    with pytest.raises(NoCreaseThere, match="from 0 to 1 there is no crease through the sheet"):
        perform(Slit(Axis.WIDTH, HALF, ZERO, ONE), creased(LETTER, 3, 1))


def test_a_slit_that_was_cut_is_not_cut_again():
    with pytest.raises(NoCreaseThere, match="cut already"):
        perform(MIDDLE, perform(MIDDLE, EIGHT))


@pytest.mark.parametrize("turns", [[], [TurnOver()], [TurnQuarter(True)], [TurnQuarter(False), TurnOver()]])
@pytest.mark.parametrize("sheet", [LETTER, A4_UPRIGHT])
def test_two_points_of_the_sheet_name_a_slit_however_the_sheet_lies(sheet, turns):
    lying = after(creased(sheet, 4, 2), *turns)
    ends = (Point(sheet.width * QUARTER, sheet.height * HALF), Point(sheet.width * HALF, sheet.height * HALF))
    assert cuts(perform(slit_between(lying, *ends), lying)) == {ends}


@given(st.integers(2, 5), st.integers(2, 4), inside_fractions, st.booleans())
@often_enough
def test_a_slit_from_an_edge_never_parts_the_sheet_until_it_reaches_the_other(columns, rows, share, level):
    state = creased(LETTER, columns, rows)
    axis, parts = (Axis.HEIGHT, rows) if level else (Axis.WIDTH, columns)
    slit = perform(Slit(axis, exact(1, parts), ZERO, share), state)
    assert any(CUT in panel.edges for panel in slit.panels)
    with pytest.raises(SheetParted):
        perform(Slit(axis, exact(1, parts), share, ONE), slit)


def test_only_opening_may_follow_gathering():
    booklet = after(EIGHT, MIDDLE, Gather())
    for step in (FoldEdge(Edge.LEFT, ONE), TurnOver(), MIDDLE, Gather()):
        with pytest.raises(StepRefused, match="can only be opened"):
            perform(step, booklet)
    opened = perform(Open(), booklet)
    assert not opened.gathered
    assert perform(FoldEdge(Edge.LEFT, ONE), opened).folds == 1


def test_the_laws_find_a_slit_that_only_one_panel_knows_of():
    slit = perform(MIDDLE, EIGHT)
    index = next(index for index, panel in enumerate(slit.panels) if CUT in panel.edges)
    panels = list(slit.panels)
    panels[index] = EIGHT.panels[index]
    (breach, *_) = laws.breaches(replace(slit, panels=tuple(panels)))
    assert breach.law == laws.EDGES


def test_the_laws_find_a_straight_corner_where_no_slit_ends():
    short = perform(Slit(Axis.HEIGHT, HALF, QUARTER, exact(2, 3)), EIGHT)
    mended = tuple(
        panel._replace(edges=tuple(edge and Crease(Kind.VALLEY, 0) for edge in panel.edges))
        for panel in short.panels
    )
    assert {breach.law for breach in laws.breaches(replace(short, panels=mended))} == {laws.TILES}
