"""Decimals become the fractions that they were, and numbers that are none are seen to be none."""

from fractions import Fraction
from math import sqrt

import pytest
from hypothesis import given
from hypothesis import strategies as st

from foldmath.fold_format.refolding.simple_fractions import simple_fraction, simplest_between
from foldmath.plane.numbers import exact, written


@pytest.mark.parametrize(
    ("decimal", "fraction"),
    [
        (8.333333, "25/3"),
        (0.333333, "1/3"),
        (8.5, "17/2"),
        (11.69, "1169/100"),
        (0.0, "0"),
        (1e-9, "0"),
        (0.9999999, "1"),
        (0.142857, "1/7"),
        (210 / 25.4, "1050/127"),
        (100 / 729, "100/729"),
        (4999.0, "4999"),
    ],
)
def test_a_decimal_is_the_fraction_that_it_was_rounded_from(decimal, fraction):
    assert written(simple_fraction(decimal)) == fraction


@given(st.integers(1, 150), st.data())
def test_six_decimals_tell_any_denominator_up_to_150(below, data):
    above = data.draw(st.integers(0, below))
    assert simple_fraction(round(above / below, 6)) == exact(above, below)


@given(st.integers(1, 4_500), st.data())
def test_a_double_of_any_denominator_up_to_4500_comes_back_within_a_millionth(below, data):
    above = data.draw(st.integers(0, below))
    found = simple_fraction(above / below)
    assert abs(Fraction(written(found)) - Fraction(above, below)) <= Fraction(1, 10**6)


@pytest.mark.parametrize(
    "number", [sqrt(2) - 1, sqrt(2) / 2, sqrt(3) / 2, (sqrt(5) - 1) / 2, sqrt(2), sqrt(7)]
)
def test_square_roots_are_no_simple_fractions(number):
    assert simple_fraction(number) is None


@given(st.fractions(0, 20), st.fractions(Fraction(1, 10**6), 1))
def test_no_fraction_between_two_numbers_is_simpler(low, room):
    """Source: ``fractions.Fraction.limit_denominator`` of the standard library finds none."""
    found = simplest_between(low, low + room)
    assert low <= found <= low + room
    if found.denominator > 1:
        nearest = (low + room / 2).limit_denominator(found.denominator - 1)
        assert not low <= nearest <= low + room
