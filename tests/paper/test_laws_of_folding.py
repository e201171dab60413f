"""Every law of folding, after every step of random foldings."""

import pytest
from hypothesis import given, settings
from paper import laws
from strategies import folded, foldings, inside_fractions, sheets, step_lists

from foldmath.paper.state import Sheet, open_sheet
from foldmath.paper.steps import Axis, Edge, FoldAlong, FoldAt, FoldEdge, FoldPoint, OpenLast, Pleat, TurnOver
from foldmath.plane.lines import Point
from foldmath.plane.numbers import HALF, ONE, ZERO, exact

BOTTOM_LEFT, TOP_LEFT, TOP_RIGHT = Point(ZERO, ZERO), Point(ZERO, ONE), Point(ONE, ONE)
LETTER = Sheet(exact(11), exact(17, 2), "in")

OUR_FOLDINGS = {
    "pleat across a diagonal": [
        FoldAlong(BOTTOM_LEFT, TOP_RIGHT, TOP_LEFT),
        Pleat(Axis.WIDTH, 5),
        Pleat(Axis.HEIGHT, 3),
    ],
    "pleat, turned over, halved behind": [
        Pleat(Axis.WIDTH, 4),
        TurnOver(),
        FoldEdge(Edge.TOP, ZERO, behind=True),
        FoldPoint(BOTTOM_LEFT, TOP_RIGHT),
    ],
    "folded twice, opened once, folded across": [
        FoldEdge(Edge.LEFT, ONE),
        FoldAt(exact(1, 3), Edge.TOP, behind=True),
        OpenLast(),
        FoldPoint(TOP_RIGHT, BOTTOM_LEFT),
        FoldEdge(Edge.RIGHT, HALF),
    ],
    "seven halvings": [FoldEdge(Edge.LEFT, ONE), FoldEdge(Edge.TOP, ZERO, behind=True)] * 3
    + [FoldEdge(Edge.LEFT, ONE)],
}


@given(sheets, step_lists)
@settings(max_examples=120, deadline=None)
def test_every_law_holds_after_every_step(sheet, steps):
    for move in foldings(open_sheet(sheet), steps):
        assert laws.breaches(move.after) == ()


@pytest.mark.parametrize("name", OUR_FOLDINGS)
def test_every_law_holds_for_foldings_chosen_to_be_awkward(name):
    state = folded(LETTER, OUR_FOLDINGS[name])
    assert len(state.panels) > 5
    assert laws.breaches(state) == ()


@given(sheets, step_lists, inside_fractions)
@settings(max_examples=30, deadline=None)
def test_layers_and_area_on_the_table_never_exceed_the_paper(sheet, steps, share):
    state = folded(sheet, [*steps, FoldAt(share, Edge.LEFT)])
    assert 1 <= state.table.layers <= len(state.panels)
    assert state.table.area <= sheet.area <= state.table.area * state.table.layers
