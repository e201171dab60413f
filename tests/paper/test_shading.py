"""Shading parts of an open sheet."""

import pytest
from hypothesis import given
from hypothesis import strategies as st
from strategies import folded, often_enough

from foldmath.paper.moments.performing import perform
from foldmath.paper.state import Sheet
from foldmath.paper.steps import Axis, Edge, FoldAlong, FoldEdge, Open, Pleat, Shade, TurnOver, TurnQuarter
from foldmath.plane.lines import Point
from foldmath.plane.numbers import ONE, ZERO, exact

SHEET = Sheet(exact(11), exact(17, 2), "in")
THIRDS = [Pleat(Axis.WIDTH, 3), Open()]


def shaded_share(state, times):
    return sum((panel.area for panel in state.panels if panel.shaded == times), ZERO)


parts_and_taken = st.integers(2, 12).flatmap(lambda parts: st.tuples(st.just(parts), st.integers(1, parts)))


@given(parts_and_taken, st.sampled_from(Axis))
@often_enough
def test_shading_a_of_b_shades_that_fraction_of_the_sheet(parts_taken, axis):
    parts, taken = parts_taken
    state = folded(SHEET, [Pleat(axis, parts), Open(), Shade(taken, parts, axis)])
    assert shaded_share(state, 1) == exact(taken, parts)


def test_columns_are_counted_from_the_left_and_rows_from_the_bottom():
    state = folded(SHEET, [*THIRDS, Pleat(Axis.HEIGHT, 2), Open(), Shade(1, 3, Axis.WIDTH)])
    assert {max(panel.corners).x for panel in state.panels if panel.shaded} == {SHEET.width / 3}
    state = perform(Shade(1, 2, Axis.HEIGHT), state)
    twice = [panel for panel in state.panels if panel.shaded == 2]
    assert [min(panel.corners) for panel in twice] == [Point(ZERO, ZERO)]


def test_more_creases_than_the_shading_needs_may_be_there():
    diagonal = FoldAlong(Point(ZERO, ZERO), Point(ONE, ONE), Point(ZERO, ONE))
    state = folded(SHEET, [Pleat(Axis.WIDTH, 4), diagonal, Open(), Shade(1, 2, Axis.WIDTH)])
    assert len(state.panels) > 4
    assert shaded_share(state, 1) == exact(1, 2)


def test_left_means_the_left_of_the_sheet_as_it_lies():
    turned = folded(SHEET, [*THIRDS, TurnOver(), Shade(1, 3, Axis.WIDTH)])
    assert {min(panel.corners).x for panel in turned.panels if panel.shaded} == {SHEET.width * 2 / 3}
    quarter = folded(SHEET, [*THIRDS, TurnQuarter(left=True), Shade(1, 3, Axis.HEIGHT)])
    assert {min(panel.corners).x for panel in quarter.panels if panel.shaded} == {ZERO}


def test_shading_moves_no_paper():
    before = folded(SHEET, THIRDS)
    after = perform(Shade(2, 3, Axis.WIDTH), before)
    assert after.tables == before.tables
    assert [panel.lying for panel in after.panels] == [panel.lying for panel in before.panels]
    assert after.creases == before.creases


@pytest.mark.parametrize("fold", [FoldEdge(Edge.TOP, ZERO), FoldEdge(Edge.LEFT, exact(1, 2))])
def test_panels_cut_from_a_shaded_panel_are_shaded(fold):
    """Half of 2/3, taken by folding a shaded sheet, is 2/6."""
    state = folded(SHEET, [*THIRDS, Shade(2, 3, Axis.WIDTH), fold])
    assert shaded_share(state, 1) == exact(2, 3)
