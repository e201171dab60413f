"""Marks made by halvings, stretches that are halved, and lengths told in tenths."""

from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from foldmath.paper.moments.moment import crease_places
from foldmath.paper.state import Sheet, open_sheet
from foldmath.paper.steps import Axis
from foldmath.plane.numbers import ZERO, denominator, exact, numerator
from foldmath.planning.parts.direction import Direction
from foldmath.planning.parts.equal_parts import MOST_PARTS
from foldmath.planning.parts.finishing import MOST_HALVINGS, stretches
from foldmath.planning.parts.halvings import halved_to, odd_part, seed_mark
from foldmath.planning.parts.rounding import tenths, tenths_at_most

LETTER = Sheet(exact(11), exact(17, 2), "in")


@settings(max_examples=40, deadline=None)
@given(st.integers(1, 5).flatmap(lambda power: st.tuples(st.just(2**power), st.integers(1, 2**power - 1))))
def test_any_mark_over_a_power_of_two_takes_as_many_folds_as_the_power(mark):
    below, above = mark
    share = exact(above, below)
    done = halved_to(share, Direction(Axis.WIDTH), ZERO, open_sheet(LETTER))
    assert 2 ** len(done) == denominator(share)
    assert share in {place.at for place in crease_places(done[-1].after)}


@pytest.mark.parametrize("odd", range(3, 100, 2))
def test_the_seed_mark_leads_to_its_number_of_parts_by_both_exact_constructions(odd):
    mark = Fraction(numerator(seed_mark(odd)), denominator(seed_mark(odd)))
    assert 0 < mark < 1
    assert (mark / (1 + mark)).denominator == odd
    assert ((1 - mark) / (1 + mark)).denominator == odd


@pytest.mark.parametrize("parts", range(2, MOST_PARTS + 1))
def test_from_any_part_without_a_common_factor_every_part_can_be_creased(parts):
    odd = odd_part(parts)
    for known in range(1, odd):
        if Fraction(known, odd).denominator != odd:
            continue
        creased = set()
        reached = {0, parts, known * parts // odd}
        for stretch in stretches(
            parts, frozenset({known * parts // odd}) - {0, parts}, Direction(Axis.WIDTH)
        ):
            assert stretch.mark in reached
            assert 1 <= stretch.halvings <= MOST_HALVINGS
            creased |= stretch.creases
            reached |= stretch.creases
        assert creased == set(range(1, parts))


def test_a_mark_with_a_common_factor_is_refused():
    with pytest.raises(ValueError, match="do not lead to 9 parts"):
        stretches(9, frozenset({3}), Direction(Axis.WIDTH))


@pytest.mark.parametrize(
    ("number", "nearest", "most"),
    [
        (exact(1397, 25), "55.9", "55.9"),
        (exact(27), "27", "27"),
        (exact(1, 20), "0.1", "0.1"),
        (exact(1, 25), "0", "0.1"),
        (exact(1397, 1600), "0.9", "0.9"),
        (exact(81, 100), "0.8", "0.9"),
    ],
)
def test_millimetres_are_told_in_tenths_and_the_most_is_never_too_small(number, nearest, most):
    assert (tenths(number), tenths_at_most(number)) == (nearest, most)
