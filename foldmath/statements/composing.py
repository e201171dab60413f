"""Putting sentences together: takes numbers and expressions, gives expressions and claims.

A bare number is written in lowest terms; a ``Ratio`` keeps its own.
"""

from typing import TypeAlias

from foldmath.plane.numbers import ZERO, Exact
from foldmath.statements.expressions import (
    Claim,
    Comparison,
    Expression,
    Negative,
    Operation,
    Power,
    Sign,
)
from foldmath.statements.ratios import Ratio, lowest_terms, whole_number

Part: TypeAlias = Expression | Exact | int


def equation(*sides: Part) -> Claim:
    """Say that expressions are worth the same: ``2/3 × 3/4 = 6/12 = 1/2``."""
    return Claim(tuple(map(expression, sides)), (Comparison.EQUAL,) * (len(sides) - 1))


def compared(left: Part, comparison: Comparison, right: Part) -> Claim:
    """Say how one expression stands to another."""
    return Claim((expression(left), expression(right)), (comparison,))


def less(left: Part, right: Part) -> Claim:
    """Say that one expression is worth less than the other."""
    return compared(left, Comparison.LESS, right)


def times(*factors: Part) -> Expression:
    """Multiply, from the left."""
    return joined(Sign.TIMES, *factors)


def part_of(share: Part, whole: Part) -> Expression:
    """Take a part of something: ``1/2 of 1/4``."""
    return joined(Sign.OF, share, whole)


def divided(whole: Part, by: Part) -> Expression:
    """Divide one expression by another."""
    return joined(Sign.DIVIDE, whole, by)


def plus(*terms: Part) -> Expression:
    """Add, from the left."""
    return joined(Sign.PLUS, *terms)


def minus(whole: Part, part: Part) -> Expression:
    """Take one expression from another."""
    return joined(Sign.MINUS, whole, part)


def joined(sign: Sign, *parts: Part) -> Expression:
    """Join expressions by one sign, from the left."""
    first, *rest = map(expression, parts)
    for part in rest:
        first = Operation(sign, first, part)
    return first


def expression(part: Part) -> Expression:
    """Write a number in lowest terms, with a minus sign if it is below zero; leave an expression as it is."""
    if isinstance(part, Ratio | Operation | Negative | Power):
        return part
    if isinstance(part, int):
        return whole_number(part)
    return lowest_terms(part) if part >= ZERO else Negative(lowest_terms(-part))
