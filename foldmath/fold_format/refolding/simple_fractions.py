"""Decimals back into the fractions that they were: 0.333333 into 1/3, 8.333333 into 25/3."""

from fractions import Fraction
from math import ceil, floor
from typing import NamedTuple

from foldmath.plane.numbers import Exact, exact


class Sieve(NamedTuple):
    """How close a fraction must come to a decimal, and how large its denominator may be.

    There are about 3/π² × n² fractions from 0 to 1 with denominators up to n (Hardy and Wright, An
    Introduction to the Theory of Numbers, theorem 331). So a sieve lets 6/π² × nearness × largest² of all
    numbers pass; for each of ``SIEVES`` that is under one in seventy: an irrational one seldom does.
    """

    nearness: Fraction
    largest: int


SIEVES = (Sieve(Fraction(1, 10**6), 150), Sieve(Fraction(1, 10**9), 4_500))
"""For files with six decimals or more, and for files with every decimal that a double has."""


def simple_fraction(number: float) -> Exact | None:
    """Give the simplest fraction close to a finite number, or None if there is none.

    Close is within the nearness of a sieve, of 1 or of the number itself where that is larger.
    """
    value = Fraction(number)
    for nearness, largest in SIEVES:
        room = nearness * max(Fraction(1), abs(value))
        found = simplest_between(value - room, value + room)
        if found.denominator <= largest:
            return exact(found.numerator, found.denominator)
    return None


def simplest_between(low: Fraction, high: Fraction) -> Fraction:
    """Give the fraction of least denominator from ``low`` to ``high``, which must differ.

    Source:
        The walk down the Stern-Brocot tree by continued fractions: Graham, Knuth and Patashnik, Concrete
        Mathematics, 2nd edition (1994), section 4.5.
    """
    whole = ceil(low)
    if whole <= high:
        return Fraction(0) if low <= 0 <= high else Fraction(whole)
    below = floor(low)
    return below + 1 / simplest_between(1 / (high - below), 1 / (low - below))
