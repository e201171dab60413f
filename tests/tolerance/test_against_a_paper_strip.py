"""Errors by coefficients are what a strip shows that is really folded, slip by slip."""

import pytest
from hypothesis import given
from hypothesis import strategies as st
from lessons_in_words import LETTER, moments
from strategies import often_enough
from tolerance.paper_strip import PaperStrip

from foldmath.tolerance.accuracy import jacobian
from foldmath.tolerance.landmarks.freezing import freeze

LENGTH_MM = 279.4
"""Letter paper on its long side."""

slips = st.floats(-0.05, 0.05, allow_nan=False)
halvings = st.tuples(st.booleans(), st.booleans(), st.booleans(), slips)


def foreseen(steps: list[str], slip: list[float]) -> list[float]:
    """Give where the upright creases fall by coefficients, in mm."""
    frozen = freeze(moments(*steps, sheet=LETTER))
    rows = jacobian(frozen)
    assert len(frozen.sources) == len(slip)
    return [
        25.4 * crease.at.numerator / crease.at.denominator
        + sum(factor * error for factor, error in zip(rows[crease.error], slip, strict=True))
        for crease in frozen.creases
    ]


@given(st.lists(halvings, min_size=1, max_size=4))
@often_enough
def test_halvings_through_all_layers_crease_where_a_real_strip_is_creased(folds):
    strip = PaperStrip(LENGTH_MM)
    steps = []
    for turned, left_moves, behind, slip in folds:
        if turned:
            strip.turn_over()
            steps.append("turn over")
        strip.halve(left_moves=left_moves, behind=behind, slip=slip)
        sides = ("left", "right") if left_moves else ("right", "left")
        steps.append(f"fold {sides[0]} edge to {sides[1]} edge{', behind' * behind}")
    assert foreseen(steps, [slip for *_, slip in folds]) == pytest.approx(sorted(strip.creases), abs=1e-9)


@given(slips, slips, slips, slips)
@often_enough
def test_folds_of_an_edge_to_a_crease_fall_where_a_real_strip_is_creased(first, second, third, fourth):
    strip = PaperStrip(LENGTH_MM)
    strip.halve(left_moves=True, behind=False, slip=first)
    strip.open()
    (middle,) = strip.creases
    strip.edge_to_crease(middle, left_moves=True, slip=second)
    strip.open()
    strip.edge_to_crease(middle, left_moves=False, slip=third)
    strip.open()
    strip.edge_to_crease(strip.creases[1], left_moves=True, slip=fourth)
    steps = ["fold left edge to right edge", "open", "fold left edge to middle", "open"]
    steps += ["fold right edge to middle", "open", "fold left edge to 1/4"]
    assert foreseen(steps, [first, second, third, fourth]) == pytest.approx(sorted(strip.creases), abs=1e-9)
