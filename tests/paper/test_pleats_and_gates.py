"""Pleats, gates and halvings on an open sheet: what each does to the count and to the size."""

import pytest
from strategies import folded

from foldmath.paper.moments.performing import perform
from foldmath.paper.state import Kind, Sheet, open_sheet
from foldmath.paper.steps import Axis, Edge, FoldAt, FoldBothEdges, FoldEdge, OpenLast, Pleat
from foldmath.plane.numbers import HALF, ONE, ZERO, exact

SHEET = Sheet(exact(11), exact(17, 2), "in")


def crease_places(state, axis):
    """Give where creases that run straight across an axis are, as fractions of the sheet."""
    if axis is Axis.WIDTH:
        return {c.start.x / SHEET.width for c in state.creases if c.start.x == c.end.x}
    return {c.start.y / SHEET.height for c in state.creases if c.start.y == c.end.y}


@pytest.mark.parametrize("parts", range(2, 13))
@pytest.mark.parametrize("axis", Axis)
def test_a_pleat_into_n_makes_n_equal_panels_in_n_layers(axis, parts):
    state = perform(Pleat(axis, parts), open_sheet(SHEET))
    assert [panel.area for panel in state.panels] == [exact(1, parts)] * parts
    assert state.table.layers == parts
    assert state.table.area == SHEET.area / parts
    assert crease_places(state, axis) == {exact(part, parts) for part in range(1, parts)}
    assert len({panel.placements[-1].place for panel in state.panels}) == parts


@pytest.mark.parametrize("parts", range(2, 13))
def test_a_pleat_alternates_valley_and_mountain_beginning_with_a_valley(parts):
    state = perform(Pleat(Axis.WIDTH, parts), open_sheet(SHEET))
    kinds = [crease.kind for crease in sorted(state.creases, key=lambda crease: crease.start.x)]
    assert kinds == [Kind.VALLEY if part % 2 else Kind.MOUNTAIN for part in range(1, parts)]


@pytest.mark.parametrize(("across", "up"), [(2, 3), (5, 3), (4, 4), (12, 2)])
def test_a_second_pleat_across_the_first_multiplies_the_panels(across, up):
    state = folded(SHEET, [Pleat(Axis.WIDTH, across), Pleat(Axis.HEIGHT, up)])
    assert len(state.panels) == state.table.layers == across * up
    assert {panel.area for panel in state.panels} == {exact(1, across * up)}


def test_one_open_last_undoes_a_whole_pleat_and_no_more():
    pleated = folded(SHEET, [FoldEdge(Edge.TOP, ZERO), Pleat(Axis.WIDTH, 5)])
    opened = perform(OpenLast(), pleated)
    assert opened.folds == 1
    assert opened.table.layers == 2
    assert opened.table.area == SHEET.area / 2


@pytest.mark.parametrize("behind", [False, True])
@pytest.mark.parametrize("axis", Axis)
def test_both_edges_to_the_middle_crease_at_one_fourth_and_three_fourths(axis, behind):
    state = perform(FoldBothEdges(axis, behind), open_sheet(SHEET))
    assert crease_places(state, axis) == {exact(1, 4), exact(3, 4)}
    assert sorted(panel.area for panel in state.panels) == [exact(1, 4), exact(1, 4), HALF]
    assert {crease.kind for crease in state.creases} == {Kind.MOUNTAIN if behind else Kind.VALLEY}
    assert state.table.layers == 2


@pytest.mark.parametrize("halvings", range(1, 8))
def test_every_halving_doubles_the_panels_and_halves_each(halvings):
    turns = [FoldEdge(Edge.RIGHT, ZERO), FoldEdge(Edge.BOTTOM, ONE, behind=True)]
    state = folded(SHEET, [turns[number % 2] for number in range(halvings)])
    assert [panel.area for panel in state.panels] == [exact(1, 2**halvings)] * 2**halvings
    assert state.table.layers == 2**halvings


def test_an_edge_folded_past_the_middle_hangs_over_nothing():
    state = perform(FoldAt(exact(2, 3), Edge.LEFT), open_sheet(SHEET))
    assert (state.table.box.left, state.table.box.right) == (SHEET.width * 2 / 3, SHEET.width * 4 / 3)
    assert state.table.layers == 2


@pytest.mark.parametrize(
    "steps", [[FoldEdge(Edge.RIGHT, ZERO)] * 6, [Pleat(Axis.WIDTH, 8), Pleat(Axis.HEIGHT, 4)]]
)
def test_panels_that_lie_alike_share_their_footprint(steps):
    """A fold meets each footprint once, so that a thousand panels in one stack cost little more than one."""
    panels = folded(SHEET, steps).panels
    assert (
        len({id(panel.lying) for panel in panels})
        == len({panel.lying for panel in panels})
        <= 4
        < len(panels)
    )
