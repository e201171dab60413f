"""Exact numbers against Python's own ``fractions``."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st
from strategies import often_enough

from foldmath.plane.numbers import (
    bit_length,
    denominator,
    exact,
    nearest_whole,
    numerator,
    whole_part,
    written,
)

pairs = st.tuples(st.integers(-(10**30), 10**30), st.integers(1, 10**30))


def as_fraction(number):
    return Fraction(numerator(number), denominator(number))


@given(pairs, pairs)
@often_enough
def test_arithmetic_agrees_with_fractions(one, other):
    a, b = exact(*one), exact(*other)
    p, q = Fraction(*one), Fraction(*other)
    assert as_fraction(a + b) == p + q
    assert as_fraction(a - b) == p - q
    assert as_fraction(a * b) == p * q
    assert as_fraction(-a) == -p
    assert as_fraction(abs(a)) == abs(p)
    assert ((a < b), (a <= b), (a == b)) == ((p < q), (p <= q), (p == q))
    if q:
        assert as_fraction(a / b) == p / q


@given(pairs, st.integers(1, 10**6))
@often_enough
def test_equal_numbers_are_alike_however_they_were_made(pair, factor):
    above, below = pair
    number, same = exact(above, below), exact(above * factor, below * factor)
    assert number == same
    assert hash(number) == hash(same)
    assert (numerator(number), denominator(number)) == (numerator(same), denominator(same))


@given(pairs)
@often_enough
def test_numbers_are_written_in_lowest_terms_as_fractions_are(pair):
    assert written(exact(*pair)) == str(Fraction(*pair))


@pytest.mark.parametrize(
    ("pair", "text"), [((34, 4), "17/2"), ((6, 2), "3"), ((-1, 4), "-1/4"), ((0, 7), "0")]
)
def test_numbers_are_written_as_a_teacher_would_type_them(pair, text):
    assert written(exact(*pair)) == text


@given(pairs)
@often_enough
def test_bit_length_is_that_of_the_longer_part(pair):
    fraction = Fraction(*pair)
    longer = max(abs(fraction.numerator), fraction.denominator)
    assert bit_length(exact(*pair)) == len(bin(longer)) - 2


def test_nothing_can_be_divided_into_zero_parts():
    with pytest.raises(ZeroDivisionError):
        exact(1, 0)


@pytest.mark.parametrize(
    ("number", "down", "nearest"),
    [
        (exact(7, 2), 3, 4),
        (exact(10, 3), 3, 3),
        (exact(5), 5, 5),
        (exact(-7, 2), -4, -3),
        (exact(-10, 3), -4, -3),
    ],
)
def test_numbers_are_rounded_down_or_to_the_nearest_with_a_half_going_up(number, down, nearest):
    assert (whole_part(number), nearest_whole(number)) == (down, nearest)
