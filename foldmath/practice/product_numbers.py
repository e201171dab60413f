"""Numbers that are multiplied: takes what a class can be asked, gives factors and products in sorts."""

from functools import cache

from foldmath.practice.fold_candidates import parts_of_one
from foldmath.practice.scope import Scope
from foldmath.statements.expressions import Sign
from foldmath.statements.items import Level, Reach
from foldmath.statements.products import Product
from foldmath.statements.ratios import LARGEST_DENOMINATOR, Ratio, fraction, mixed_number, whole_number

MOST_PARTS_OVER_ONE = 6
"""A factor of one whole or more has no smaller parts, unless a lesson names only smaller ones."""


def paired(first: list[Ratio], second: list[Ratio], sign: Sign = Sign.TIMES) -> list[Product]:
    """Give the products of two lists whose denominators a pupil can write and a picture can show."""
    return [
        Product(one, other, sign)
        for one in first
        for other in second
        if one.denominator * other.denominator <= LARGEST_DENOMINATOR and one != other
    ]


def wholes_to(most: int) -> list[Ratio]:
    """Give 2, 3 and so on."""
    return [whole_number(number) for number in range(2, most + 1)]


def just_over_one(denominators: tuple[int, ...]) -> list[Ratio]:
    """Give 3/2, 4/3 and so on."""
    return [fraction(below + 1, below) for below in _few(denominators)]


def written_as_one(denominators: tuple[int, ...]) -> list[Ratio]:
    """Give 3/3, 4/4 and so on; 2/2 only where a lesson names no other denominators."""
    few = _few(denominators)
    return [fraction(below, below) for below in few if below > 2 or len(few) == 1]


def _few(denominators: tuple[int, ...]) -> tuple[int, ...]:
    small = tuple(below for below in denominators if below <= MOST_PARTS_OVER_ONE)
    return small or denominators


@cache
def products(scope: Scope) -> tuple[list[Product], ...]:
    """Give products in sorts, easy to hard: by whole numbers, of unit fractions, of others, over one."""
    units = [fraction(1, below) for below in scope.denominators]
    others = parts_of_one(scope.denominators, units=False) or units
    by_wholes = paired(wholes_to(3 if scope.level is Level.GUIDED else 4), others)
    if scope.reach < Reach.PAIRS:
        mixed = [mixed_number(1, 1, below) for below in scope.denominators if below <= 4]
        return by_wholes, paired(wholes_to(3), units), paired(wholes_to(2), mixed)
    over_one = paired(just_over_one(scope.denominators), others)
    return by_wholes, paired(units, units), paired(units, others), paired(others, others), over_one
