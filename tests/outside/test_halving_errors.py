"""Fujimoto's approximation against published numbers.

Sources: that each fold halves the error, two pages after T. Hull, Project Origami. The thirds worked from
1/2 at ivanky.wordpress.com, 19 February 2016 (the page prints 0.3475 for 0.34375, a slip); exactly, the k-th
is 1/3 + (1/6)/4^k. The cycles of thirds, fifths and sevenths, 2, 4 and 3 folds, are computed from the rule.
"""

from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from foldmath.paper.state import Sheet
from foldmath.paper.steps import Axis
from foldmath.plane.numbers import HALF, denominator, exact, numerator
from foldmath.planning.parts.direction import Direction
from foldmath.planning.parts.halving_errors import (
    cycle,
    errors,
    factor,
    neared,
    rounds_needed,
)

LETTER = Sheet(exact(11), exact(17, 2), "in")
LEFT_THIRDS = ["0.5", "0.375", "0.34375", "0.3359375", "0.333984375", "0.333496094"]
RIGHT_THIRDS = ["0.75", "0.6875", "0.671875", "0.66796875", "0.666992188"]


def fraction(number) -> Fraction:
    return Fraction(numerator(number), denominator(number))


def rounded(number) -> Fraction:
    """Round as the page does, to nine decimals, halves up."""
    return Fraction(int(fraction(number) * 10**9 + Fraction(1, 2)), 10**9)


def creases_neared(guess, odd, rounds):
    """Give the places of all creases, the guess first, as fractions of the side, by arithmetic alone."""
    places = [guess]
    for far in cycle(odd) * rounds:
        places.append((places[-1] + (1 if far else 0)) / 2)
    return places


def test_thirds_from_one_half_are_the_published_ones():
    places = creases_neared(HALF, 3, 5)
    assert [rounded(place) for place in places[0::2]] == [Fraction(digits) for digits in LEFT_THIRDS]
    assert [rounded(place) for place in places[1::2]] == [Fraction(digits) for digits in RIGHT_THIRDS]


def test_thirds_from_one_half_are_a_third_and_a_sixth_over_powers_of_four():
    places = creases_neared(HALF, 3, 9)[0::2]
    assert [fraction(place) for place in places] == [
        Fraction(1, 3) + Fraction(1, 6) / 4**round_ for round_ in range(10)
    ]


@pytest.mark.parametrize(("odd", "folds", "divides"), [(3, 2, 4), (5, 4, 16), (7, 3, 8)])
def test_a_cycle_divides_the_error_as_computed_from_the_rule(odd, folds, divides):
    assert (len(cycle(odd)), factor(odd)) == (folds, divides)


@pytest.mark.parametrize("odd", range(3, 40, 2))
def test_a_cycle_is_as_long_as_the_order_of_two(odd):
    folds = len(cycle(odd))
    assert pow(2, folds, odd) == 1
    assert all(pow(2, fewer, odd) != 1 for fewer in range(1, folds))


@settings(max_examples=30, deadline=None)
@given(st.sampled_from([3, 5, 7, 9, 11]), st.fractions(Fraction(-1), Fraction(1), max_denominator=50))
def test_on_the_model_a_round_divides_the_error_of_any_guess_exactly(odd, off):
    guess = Fraction(1, odd) + off / (2 * odd)
    near = neared(exact(guess.numerator, guess.denominator), odd, 1, Direction(Axis.WIDTH), LETTER)
    assert fraction(near.last) - Fraction(1, odd) == (guess - Fraction(1, odd)) / 2 ** len(cycle(odd))


@pytest.mark.parametrize("axis", Axis)
@pytest.mark.parametrize("odd", [3, 5, 7, 9, 11])
def test_the_model_makes_the_creases_that_the_halvings_say(odd, axis):
    guess = exact(5, 4 * odd)
    assert neared(guess, odd, 2, Direction(axis), LETTER).last == creases_neared(guess, odd, 2)[-1]


def test_thirds_off_by_a_sixth_of_120_mm_need_three_rounds_for_a_millimetre():
    assert [fraction(error) for error in errors(exact(20), 3, 3)] == [
        20,
        5,
        Fraction(5, 4),
        Fraction(5, 16),
    ]
    assert rounds_needed(exact(20), exact(1), 3) == 3
    assert rounds_needed(exact(20), exact(5), 3) == 1
    assert rounds_needed(exact(20), exact(20), 3) == 0
