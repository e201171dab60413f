"""Opening, turning and folding again: what the paper remembers."""

from contextlib import suppress

import pytest
from hypothesis import given
from strategies import fold_steps, folded, foldings, often_enough, sheets, step_lists

from foldmath.paper.moments.performing import perform
from foldmath.paper.refusals import StepRefused
from foldmath.paper.state import FoldedState, open_sheet
from foldmath.paper.steps import FoldBothEdges, Open, OpenLast, TurnOver, TurnQuarter
from foldmath.plane.motions import AT_REST

TURNS = (TurnOver, TurnQuarter)


def only_one_fold(step: object) -> bool:
    return not isinstance(step, FoldBothEdges)


def creases_without_folds(state: FoldedState) -> set[tuple[object, ...]]:
    return {(crease.start, crease.end, crease.kind) for crease in state.creases}


def undone(state: FoldedState, folds: int) -> FoldedState:
    while state.folds > folds:
        state = perform(OpenLast(), state)
    return state


@given(sheets, step_lists)
@often_enough
def test_opening_lays_every_panel_at_rest_up_to_turns(sheet, steps):
    state = folded(sheet, steps)
    if state.folds:
        state = perform(Open(), state)
    (flat,) = {panel.placements for panel in state.panels}
    assert len(flat) == 1
    assert state.table.layers == 1
    assert state.table.area == sheet.area
    if not any(isinstance(step, TURNS) for step in steps):
        assert flat[0].motion == AT_REST
        assert all(panel.lying == panel.corners for panel in state.panels)


@given(sheets, step_lists)
@often_enough
def test_opening_keeps_every_crease_and_its_kind_and_lays_it_flat(sheet, steps):
    state = folded(sheet, steps)
    opened = undone(state, 0)
    assert creases_without_folds(opened) == creases_without_folds(state)
    assert not any(crease.folded for crease in opened.creases)


@given(sheets, step_lists)
@often_enough
def test_opening_one_by_one_comes_to_the_same_as_opening_at_once(sheet, steps):
    state = folded(sheet, steps)
    if state.folds:
        at_once = perform(Open(), state)
        assert undone(state, 0) == at_once


@given(sheets, step_lists, fold_steps)
@often_enough
def test_a_fold_or_pleat_and_then_open_last_puts_every_panel_back(sheet, steps, step):
    before = folded(sheet, steps)
    for move in foldings(before, [step]):
        opened = undone(move.after, before.folds)
        assert opened.tables == before.tables
        for panel, parent in zip(opened.panels, move.after.parents, strict=True):
            assert panel.placements == before.panels[parent].placements


@given(sheets, step_lists, fold_steps.filter(only_one_fold))
@often_enough
def test_one_open_last_undoes_one_fold_or_one_whole_pleat(sheet, steps, step):
    before = folded(sheet, steps)
    for move in foldings(before, [step]):
        assert move.after.folds == before.folds + 1
        assert perform(OpenLast(), move.after).folds == before.folds


@given(sheets, step_lists, fold_steps)
@often_enough
def test_folding_again_along_the_same_creases_makes_no_new_panel(sheet, steps, step):
    before = folded(sheet, steps)
    for move in foldings(before, [step]):
        again = perform(step, undone(move.after, before.folds))
        assert again.parents == tuple(range(len(move.after.panels)))
        assert again.panels == move.after.panels
        assert again.table.area == move.after.table.area
        assert again.table.layers == move.after.table.layers


@given(sheets, step_lists)
@often_enough
def test_turning_over_twice_changes_nothing(sheet, steps):
    state = folded(sheet, steps)
    again = perform(TurnOver(), perform(TurnOver(), state))
    assert (again.panels, again.tables) == (state.panels, state.tables)


@pytest.mark.parametrize("left", [True, False])
@given(sheets, step_lists)
@often_enough
def test_four_quarter_turns_change_nothing(left, sheet, steps):
    state = turned = folded(sheet, steps)
    for _ in range(4):
        turned = perform(TurnQuarter(left), turned)
    assert (turned.panels, turned.tables) == (state.panels, state.tables)


@given(sheets, step_lists)
@often_enough
def test_a_quarter_turn_exchanges_the_width_and_the_height_of_the_paper_as_it_lies(sheet, steps):
    state = folded(sheet, steps)
    box, turned = state.table.box, perform(TurnQuarter(left=True), state).table.box
    assert (turned.width, turned.height) == (box.height, box.width)


@given(sheets, step_lists)
@often_enough
def test_a_turn_changes_no_panel_no_crease_and_no_layer(sheet, steps):
    state = folded(sheet, steps)
    for turn in (TurnOver(), TurnQuarter(left=True), TurnQuarter(left=False)):
        turned = perform(turn, state)
        assert turned.creases == state.creases
        assert [panel.corners for panel in turned.panels] == [panel.corners for panel in state.panels]
        assert turned.table.layers == state.table.layers
        assert turned.parents == tuple(range(len(state.panels)))


@given(sheets, step_lists, fold_steps)
@often_enough
def test_a_step_leaves_the_paper_that_it_was_given_as_it_was(sheet, steps, step):
    before = folded(sheet, steps)
    seen = repr(before)
    for move in (step, TurnOver(), Open()):
        with suppress(StepRefused):
            perform(move, before)
        assert repr(before) == seen


@given(sheets, step_lists)
@often_enough
def test_parents_are_the_panels_that_the_new_ones_were_cut_from(sheet, steps):
    for move in foldings(open_sheet(sheet), steps):
        shares = [[] for _ in move.before.panels]
        for panel, parent in zip(move.after.panels, move.after.parents, strict=True):
            shares[parent].append(panel.area)
        assert [sum(share) for share in shares] == [panel.area for panel in move.before.panels]
