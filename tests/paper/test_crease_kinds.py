"""Valley or mountain, as seen on the printed side of the opened sheet."""

import pytest
from hypothesis import given
from strategies import fold_steps, folded, foldings, often_enough, sheets, step_lists

from foldmath.paper.moments.performing import perform
from foldmath.paper.state import Kind, Sheet, open_sheet
from foldmath.paper.steps import Edge, FoldBothEdges, FoldEdge, Open, Pleat, TurnOver
from foldmath.plane.numbers import ONE, ZERO, exact

SHEET = Sheet(exact(11), exact(17, 2), "in")


def is_one_line(step: object) -> bool:
    return not isinstance(step, FoldBothEdges | Pleat)


@given(sheets, step_lists, fold_steps.filter(is_one_line))
@often_enough
def test_over_is_a_valley_on_panels_printed_side_up_and_a_mountain_on_the_others(sheet, steps, step):
    """And behind is the other way round."""
    before = folded(sheet, steps)
    for move in foldings(before, [step]):
        newest = move.after.folds
        for panel, parent in zip(move.after.panels, move.after.parents, strict=True):
            printed_side_up = before.panels[parent].placements[-1].printed_side_up
            for crease in filter(None, panel.edges):
                if crease.fold == newest:
                    assert (crease.kind is Kind.VALLEY) is (printed_side_up is not step.behind)


@given(sheets, step_lists, fold_steps.filter(is_one_line))
@often_enough
def test_a_fold_changes_no_crease_off_its_own_line(sheet, steps, step):
    before = folded(sheet, steps)
    for move in foldings(before, [step]):
        newest = move.after.folds
        for panel, parent in zip(move.after.panels, move.after.parents, strict=True):
            kept = {crease for crease in panel.edges if crease is None or crease.fold != newest}
            assert kept <= set(before.panels[parent].edges)


def test_the_first_fold_over_is_a_valley_and_behind_a_mountain():
    for behind, kind in ((False, Kind.VALLEY), (True, Kind.MOUNTAIN)):
        (crease,) = perform(FoldEdge(Edge.LEFT, ONE, behind), open_sheet(SHEET)).creases
        assert (crease.kind, crease.folded) == (kind, True)


def test_one_fold_through_layers_that_face_both_ways_leaves_both_kinds():
    state = folded(SHEET, [FoldEdge(Edge.LEFT, ONE), FoldEdge(Edge.TOP, ZERO)])
    level = {crease.start.x: crease.kind for crease in state.creases if crease.start.y == crease.end.y}
    assert level == {ZERO: Kind.MOUNTAIN, SHEET.width / 2: Kind.VALLEY}


def test_a_fold_over_after_turning_over_is_a_mountain():
    (crease,) = folded(SHEET, [TurnOver(), FoldEdge(Edge.LEFT, ONE)]).creases
    assert crease.kind is Kind.MOUNTAIN


@pytest.mark.parametrize("behind", [False, True])
def test_the_last_fold_along_a_crease_decides_its_kind(behind):
    first, second = FoldEdge(Edge.LEFT, ONE, not behind), FoldEdge(Edge.LEFT, ONE, behind)
    (crease,) = folded(SHEET, [first, Open(), second, Open()]).creases
    assert crease.kind is (Kind.MOUNTAIN if behind else Kind.VALLEY)
    assert not crease.folded
