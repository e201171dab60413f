"""Facts that anyone who folds paper with a class knows. [common practice, no source]"""

import pytest
from hypothesis import given
from hypothesis import strategies as st
from strategies import edge_folds, folded, folds_at, gates, often_enough, pleats, sheets

from foldmath.paper.state import Sheet
from foldmath.paper.steps import Axis, Edge, FoldAlong, FoldBothEdges, FoldEdge, Open, Pleat
from foldmath.plane.lines import Point
from foldmath.plane.numbers import HALF, ONE, ZERO, exact

LETTER = Sheet(exact(11), exact(17, 2), "in")
PAPERS = [
    LETTER,
    Sheet(exact(210), exact(297), "mm"),
    Sheet(exact(12), exact(18), "in"),
    Sheet(ONE, ONE, "in"),
]


def areas(state):
    return sorted(panel.area for panel in state.panels)


def creases_across(state):
    return sorted(crease.start.x / state.sheet.width for crease in state.creases)


@pytest.mark.parametrize("paper", PAPERS)
@pytest.mark.parametrize("second", [FoldEdge(Edge.LEFT, ONE), FoldEdge(Edge.TOP, ZERO)])
def test_halving_twice_gives_fourths(paper, second):
    assert areas(folded(paper, [FoldEdge(Edge.LEFT, ONE), second])) == [exact(1, 4)] * 4


@pytest.mark.parametrize("paper", PAPERS)
def test_fourths_across_halved_the_other_way_make_two_rows_of_four(paper):
    state = folded(paper, [Pleat(Axis.WIDTH, 4), FoldEdge(Edge.TOP, ZERO), Open()])
    bottom_row = [panel for panel in state.panels if max(y for _, y in panel.corners) == paper.height / 2]
    assert len(bottom_row) == 4
    assert areas(state) == [exact(1, 8)] * 8


@pytest.mark.parametrize("paper", PAPERS)
def test_a_diagonal_of_a_corner_to_a_corner_cuts_the_sheet_in_equal_halves(paper):
    diagonal = FoldAlong(Point(ZERO, ZERO), Point(ONE, ONE), Point(ZERO, ONE))
    assert areas(folded(paper, [diagonal])) == [HALF, HALF]


@given(sheets, st.lists(st.one_of(edge_folds, folds_at, gates, pleats, st.just(Open())), max_size=5))
@often_enough
def test_any_size_of_paper_gives_the_same_fractions(paper, steps):
    assert areas(folded(paper, steps)) == areas(folded(LETTER, steps))


def test_edges_to_the_middle_one_after_the_other_do_not_make_a_gate():
    """The second middle is that of the folded sheet, so the right crease is at 13/16 and not at 3/4."""
    wrong = folded(LETTER, [FoldEdge(Edge.LEFT, HALF), FoldEdge(Edge.RIGHT, HALF)])
    assert creases_across(wrong) == [exact(1, 4), exact(13, 16)]
    assert creases_across(folded(LETTER, [FoldBothEdges(Axis.WIDTH)])) == [exact(1, 4), exact(3, 4)]


def test_an_edge_taken_to_one_third_creases_at_one_sixth():
    assert creases_across(folded(LETTER, [FoldEdge(Edge.LEFT, exact(1, 3))])) == [exact(1, 6)]


def test_the_right_edge_to_one_third_and_then_the_left_edge_to_the_new_edge_makes_thirds():
    """A letter fold: the right third over, the left third over that."""
    state = folded(LETTER, [FoldEdge(Edge.RIGHT, exact(1, 3)), FoldEdge(Edge.LEFT, ONE)])
    assert areas(state) == [exact(1, 3)] * 3
    assert state.table.layers == 3


@pytest.mark.parametrize("paper", PAPERS)
@pytest.mark.parametrize("parts", [2, 3, 4])
def test_crossing_diagonals_find_the_next_unit_fraction(paper, parts):
    """The line from (0, 1) to (1/n, 0) crosses the diagonal from (0, 0) at 1/(n + 1).

    From memory: R. J. Lang, Origami and Geometric Constructions (1996-2015), "Crossing Diagonals".
    """
    diagonal = FoldAlong(Point(ZERO, ZERO), Point(ONE, ONE), Point(ZERO, ONE))
    slant = FoldAlong(Point(ZERO, ONE), Point(exact(1, parts), ZERO), Point(ZERO, ZERO))
    state = folded(paper, [diagonal, Open(), slant, Open()])
    ends = {end for crease in state.creases for end in (crease.start, crease.end)}
    inside = [end for end in ends if ZERO < end.x < paper.width and ZERO < end.y < paper.height]
    assert [(end.x / paper.width, end.y / paper.height) for end in inside] == [(exact(1, parts + 1),) * 2]
