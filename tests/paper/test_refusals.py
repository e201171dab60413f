"""Steps that cannot be done on this paper: each kind of refusal, and what it says."""

from typing import get_args

import pytest
from hypothesis import given
from strategies import fold_steps, folded, foldings, often_enough, sheets, step_lists

from foldmath.paper.folding import folding
from foldmath.paper.moments import performing
from foldmath.paper.moments.performing import perform
from foldmath.paper.refusals import (
    LineUndefined,
    NoPaperMoves,
    NothingFolded,
    NumbersTooLong,
    PanelAcrossLine,
    PointOffPaper,
    SheetNotOpen,
    StepRefused,
    TooManyPanels,
    TooMuchFolding,
)
from foldmath.paper.state import Sheet, open_sheet
from foldmath.paper.steps import (
    Axis,
    Edge,
    FoldAlong,
    FoldAt,
    FoldBothEdges,
    FoldEdge,
    FoldPoint,
    Open,
    OpenLast,
    Pleat,
    Shade,
    Step,
    TurnOver,
)
from foldmath.plane.lines import Point
from foldmath.plane.numbers import ONE, ZERO, exact

SHEET = Sheet(exact(11), exact(17, 2), "in")
OPEN = open_sheet(SHEET)


def at(x, y):
    return Point(
        exact(*x) if isinstance(x, tuple) else exact(x), exact(*y) if isinstance(y, tuple) else exact(y)
    )


def states(sheet, steps):
    """Give the open sheet and the paper after each step."""
    done = [open_sheet(sheet)]
    for step in steps:
        done.append(perform(step, done[-1]))
    return done


CORNER_CUT_OFF = [FoldPoint(at(0, 0), at(1, 1))]
"""Folded along a diagonal, so that some corners of the box are bare."""

REFUSED = [
    (NoPaperMoves, [], FoldAlong(at(0, 0), at(1, 0), at(0, 1))),
    (NoPaperMoves, [], FoldAlong(at(-1, 0), at(0, 2), at(-1, 1))),
    (NoPaperMoves, [FoldEdge(Edge.LEFT, ONE)], FoldAlong(at(0, 0), at(0, 1), at(1, 1))),
    (PointOffPaper, [], FoldPoint(at(0, 2), at(1, 1))),
    (PointOffPaper, [], FoldPoint(at(0, 0), at((3, 2), 1))),
    (PointOffPaper, CORNER_CUT_OFF, FoldPoint(at(0, 0), at(1, 1))),
    (LineUndefined, [], FoldEdge(Edge.LEFT, ZERO)),
    (LineUndefined, [], FoldEdge(Edge.TOP, ONE)),
    (LineUndefined, [], FoldEdge(Edge.LEFT, exact(3, 2))),
    (LineUndefined, [], FoldAt(ZERO, Edge.LEFT)),
    (LineUndefined, [], FoldAt(ONE, Edge.TOP)),
    (LineUndefined, [], FoldPoint(at((1, 2), 1), at((1, 2), 1))),
    (LineUndefined, [], FoldAlong(at(1, 1), at(1, 1), at(0, 1))),
    (LineUndefined, [], FoldAlong(at(0, 0), at(1, 1), at((1, 3), (1, 3)))),
    (NothingFolded, [], Open()),
    (NothingFolded, [], OpenLast()),
    (NothingFolded, [FoldEdge(Edge.LEFT, ONE), Open()], OpenLast()),
    (SheetNotOpen, [Pleat(Axis.WIDTH, 3)], Shade(2, 3, Axis.WIDTH)),
    (PanelAcrossLine, [], Shade(1, 2, Axis.WIDTH)),
    (PanelAcrossLine, [Pleat(Axis.WIDTH, 3), Open()], Shade(2, 3, Axis.HEIGHT)),
    (PanelAcrossLine, [Pleat(Axis.WIDTH, 3), Open()], Shade(1, 2, Axis.WIDTH)),
    (PanelAcrossLine, [FoldAlong(at(0, 0), at(1, 1), at(0, 1)), Open()], Shade(1, 2, Axis.WIDTH)),
]


@pytest.mark.parametrize(("kind", "before", "step"), REFUSED)
def test_a_step_that_cannot_be_done_is_refused_with_its_reason_and_a_remedy(kind, before, step):
    state = folded(SHEET, before)
    with pytest.raises(StepRefused) as refusal:
        perform(step, state)
    assert type(refusal.value) is kind
    assert refusal.value.message
    reason, _, remedy = str(refusal.value).partition("\n    try:  ")
    assert (reason, remedy) == (str(refusal.value.message), str(refusal.value.hint))


@pytest.mark.parametrize(("kind", "before", "step"), REFUSED)
def test_what_a_refusal_offers_instead_is_a_step_and_not_the_one_refused(kind, before, step):
    with pytest.raises(kind) as refusal:
        perform(step, folded(SHEET, before))
    assert refusal.value.instead is None or isinstance(refusal.value.instead, get_args(Step))
    assert refusal.value.instead != step


def test_a_point_off_the_paper_is_answered_with_a_fold_that_works():
    state = folded(SHEET, CORNER_CUT_OFF)
    with pytest.raises(PointOffPaper, match=r"no paper at \(0, 0\)") as refusal:
        perform(FoldPoint(at(0, 0), at((1, 3), 1)), state)
    assert refusal.value.instead.to == at((1, 3), 1)
    assert perform(refusal.value.instead, state).folds == 2


def test_twelve_halvings_make_the_most_panels_and_a_thirteenth_is_refused():
    halvings = [FoldEdge(Edge.RIGHT, ZERO), FoldEdge(Edge.BOTTOM, ONE)] * 6
    state = OPEN
    for step in halvings:
        state = perform(step, state)
    assert len(state.panels) == folding.MOST_PANELS == 4096
    with pytest.raises(TooManyPanels):
        perform(FoldEdge(Edge.RIGHT, ZERO), state)


def test_the_steps_of_a_folding_go_through_so_many_panels_and_no_more(monkeypatch):
    """A fan of five folds four times through the panels that there are after it, a gate twice."""
    steps = [Pleat(Axis.WIDTH, 5), Open(), FoldBothEdges(Axis.HEIGHT), TurnOver(), Open()]
    steps.append(Shade(1, 5, Axis.WIDTH))
    assert [state.handled for state in states(SHEET, steps)] == [0, 4 * 5, 25, 25 + 2 * 15, 70, 85, 100]
    monkeypatch.setattr(performing, "MOST_HANDLED", 100)
    assert states(SHEET, steps)[-1].handled == 100
    with pytest.raises(TooMuchFolding, match="more than 100 panels in all"):
        perform(TurnOver(), states(SHEET, steps)[-1])


def test_fans_opened_again_and_again_are_refused_before_they_fill_an_hour():
    fans = [step for fan in range(44) for step in (Pleat(list(Axis)[fan % 2], 2 + fan % 11), Open())]
    with pytest.raises(TooMuchFolding):
        states(SHEET, fans)


def test_how_far_steps_went_makes_no_two_states_differ():
    over, over_again = states(SHEET, [TurnOver(), TurnOver(), TurnOver()])[1::2]
    assert over_again == over
    assert (over.handled, over_again.handled) == (1, 3)


def test_too_many_panels_are_refused_while_the_paper_is_being_cut(monkeypatch):
    """Of a thousand panels all to be cut, only as many are cut as the limit leaves room for."""
    state = OPEN
    for _ in range(5):
        state = perform(FoldEdge(Edge.BOTTOM, ONE), perform(FoldEdge(Edge.RIGHT, ZERO), state))
    monkeypatch.setattr(folding, "MOST_PANELS", len(state.panels) + 5)
    cuts, cut = [], folding._Creasing.cut
    monkeypatch.setattr(folding._Creasing, "cut", lambda *parts: (cuts.append(1), cut(*parts)))
    with pytest.raises(TooManyPanels):
        perform(FoldEdge(Edge.RIGHT, ZERO), state)
    assert len(cuts) == 6


def test_slanting_folds_repeated_until_their_numbers_explode_are_refused():
    one = FoldAlong(at((1, 3), 0), at((3, 5), 1), at(0, 0))
    other = FoldAlong(at(0, (2, 7)), at(1, (4, 7)), at(0, 0))
    state = folded(SHEET, [one, other, one])
    assert len(state.panels) == 8
    with pytest.raises(NumbersTooLong, match=str(folding.MOST_BITS)):
        perform(other, state)


def test_points_folded_onto_points_until_their_numbers_explode_are_refused():
    state, refusals = OPEN, []
    for number in range(12):
        corner = state.table.covers[0].polygon[0]
        box = state.table.box
        start = Point((corner.x - box.left) / box.width, (corner.y - box.bottom) / box.height)
        try:
            state = perform(FoldPoint(start, at((1, 2 + number % 3), (2, 5))), state)
        except StepRefused as refusal:
            refusals.append(type(refusal))
    assert NumbersTooLong in refusals
    assert state.folds > 1


@given(sheets, step_lists, fold_steps)
@often_enough
def test_a_fold_that_is_not_refused_moves_some_paper_and_leaves_some(sheet, steps, step):
    before = folded(sheet, steps)
    for move in foldings(before, [step]):
        moved = {
            panel.placements[-1].motion != before.panels[parent].placements[-1].motion
            for panel, parent in zip(move.after.panels, move.after.parents, strict=True)
        }
        assert moved == {True, False}


def test_only_steps_are_performed():
    with pytest.raises(AssertionError, match="fold left edge"):
        perform("fold left edge to right edge", OPEN)
