"""Sheets and step lists drawn at random, for tests that hold for any folding."""

from collections.abc import Iterator
from typing import NamedTuple

from hypothesis import settings
from hypothesis import strategies as st

from foldmath.paper.moments.performing import perform
from foldmath.paper.refusals import StepRefused
from foldmath.paper.state import FoldedState, Sheet, open_sheet
from foldmath.paper.steps import (
    Axis,
    Edge,
    FoldAlong,
    FoldAt,
    FoldBothEdges,
    FoldEdge,
    FoldPoint,
    FoldStep,
    Open,
    OpenLast,
    Pleat,
    Step,
    TurnOver,
    TurnQuarter,
)
from foldmath.plane.lines import Point
from foldmath.plane.numbers import exact

MANY_PANELS = 130
"""Random foldings stop growing here, so that every law can be looked at after every step."""

often_enough = settings(max_examples=30, deadline=None)


class Move(NamedTuple):
    """A step that could be done, with the paper before and after it."""

    step: Step
    before: FoldedState
    after: FoldedState


def foldings(state: FoldedState, steps: list[Step]) -> Iterator[Move]:
    """Do the steps that can be done, leaving out those refused and those that would cut too finely."""
    for step in steps:
        try:
            after = perform(step, state)
        except StepRefused:
            continue
        if len(after.panels) > MANY_PANELS:
            continue
        yield Move(step, state, after)
        state = after


def folded(sheet: Sheet, steps: list[Step]) -> FoldedState:
    """Give the paper after all the steps that can be done."""
    state = open_sheet(sheet)
    for move in foldings(state, steps):
        state = move.after
    return state


def _fractions(most: int, *, inside: bool) -> st.SearchStrategy:
    """Draw n/d with 0 <= n <= d, or 0 < n < d if ``inside``."""
    return st.integers(2, most).flatmap(
        lambda d: (
            st.integers(1, d - 1).map(lambda n: exact(n, d))
            if inside
            else st.integers(0, d).map(lambda n: exact(n, d))
        )
    )


inside_fractions = _fractions(6, inside=True)
fractions = _fractions(4, inside=False)
points = st.builds(Point, fractions, fractions)
edges = st.sampled_from(Edge)
axes = st.sampled_from(Axis)
behind = st.booleans()

sheets = st.one_of(
    st.sampled_from(
        [
            Sheet(exact(11), exact(17, 2), "in"),
            Sheet(exact(210), exact(297), "mm"),
            Sheet(exact(1), exact(1), "in"),
        ]
    ),
    st.builds(lambda w, h: Sheet(exact(w, 2), exact(h, 3), "in"), st.integers(1, 40), st.integers(1, 40)),
)

edge_folds = st.builds(FoldEdge, edges, inside_fractions, behind)
halvings = edges.flatmap(
    lambda edge: st.builds(FoldEdge, st.just(edge), st.just(edge.opposite.position), behind)
)
gates = st.builds(FoldBothEdges, axes, behind)
folds_at = st.builds(FoldAt, inside_fractions, edges, behind)
point_folds = st.builds(FoldPoint, points, points, behind)
diagonal_folds = st.builds(FoldAlong, points, points, points, behind)
pleats = st.builds(Pleat, axes, st.integers(2, 5))

fold_steps: st.SearchStrategy[FoldStep] = st.one_of(
    edge_folds, halvings, gates, folds_at, point_folds, diagonal_folds, pleats
)
"""Every kind of fold, over and behind."""

other_steps: st.SearchStrategy[Step] = st.one_of(
    st.just(OpenLast()), st.just(Open()), st.just(TurnOver()), st.builds(TurnQuarter, st.booleans())
)
"""Opening and turning."""

step_lists: st.SearchStrategy[list[Step]] = st.lists(
    st.one_of(fold_steps, fold_steps, other_steps), min_size=1, max_size=6
)
"""One to six steps, of which about two in three fold."""
