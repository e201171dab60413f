"""Equals signs that run on: ``1/2 × 1/2 = 1/4 × 1/2 = 1/8``, where each step goes on from the one before."""

from dataclasses import replace
from itertools import pairwise

from foldmath.statements.expressions import (
    Claim,
    Comparison,
    Expression,
    Operation,
    Sign,
    value,
)
from foldmath.statements.ratios import Ratio


def steps_in_one(claim: Claim) -> Expression | None:
    """Put what a false sentence works out step by step into one; None where no equals sign of it runs on.

    A sign runs on if what stands before it is no more than the first number after it.
    """
    if set(claim.comparisons) != {Comparison.EQUAL}:
        return None
    *sides, answer = claim.sides
    whole, ran_on = sides[0], False
    for before, side in pairwise(sides):
        if value(before) == value(side):
            continue
        if value(_beginning(side)) != value(before):
            return None
        whole, ran_on = _going_on(side, whole), True
    return whole if ran_on and isinstance(answer, Ratio) else None


def _beginning(side: Expression) -> Expression:
    """Give the number with which a side begins."""
    while isinstance(side, Operation) and side.sign is not Sign.BAR:
        side = side.left
    return side


def _going_on(side: Expression, begun: Expression) -> Expression:
    """Put what was begun in place of the number with which a side begins."""
    if isinstance(side, Operation) and side.sign is not Sign.BAR:
        return replace(side, left=_going_on(side.left, begun))
    return begun
