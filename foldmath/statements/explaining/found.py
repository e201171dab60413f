"""A sentence found in a step, not yet judged, labelled or put in order; and the few ways to build one."""

from dataclasses import dataclass
from enum import IntEnum

from foldmath.plane.numbers import ONE, Exact
from foldmath.statements.expressions import Claim, Comparison, Expression, Operation, Power, Sign
from foldmath.statements.products import LARGEST
from foldmath.statements.ratios import Ratio, lowest_terms


class Family(IntEnum):
    """What kind of sentence it is, the plainest first."""

    COUNT = 0
    SIZE = 1
    WHOLE = 2
    EQUIVALENT = 3
    PRODUCT = 4
    COMPARISON = 5
    SUM = 6
    QUOTIENT = 7
    POWER = 8


@dataclass(frozen=True)
class Found:
    """A sentence.

    Args:
        family: its kind.
        claim: what it says.
        of: the same with "of", read before the sign; empty if it has none.
    """

    family: Family
    claim: Claim
    of: str = ""


def equation(left: Expression, right: Expression) -> Claim:
    """Say that two expressions are worth the same."""
    return Claim((left, right), (Comparison.EQUAL,))


def less(left: Expression, right: Expression) -> Claim:
    """Say that one expression is worth less than the other."""
    return Claim((left, right), (Comparison.LESS,))


def times(first: Exact | Ratio, second: Exact | Ratio) -> Operation:
    """Multiply two numbers, written in lowest terms unless they come with terms of their own."""
    return Operation(Sign.TIMES, _number(first), _number(second))


def divided(first: Exact | Ratio, second: Exact | Ratio) -> Operation:
    """Divide one number by another."""
    return Operation(Sign.DIVIDE, _number(first), _number(second))


def joined(sign: Sign, terms: list[Ratio]) -> Expression:
    """Join numbers by one sign, from the left."""
    expression: Expression = terms[0]
    for term in terms[1:]:
        expression = Operation(sign, expression, term)
    return expression


def reduced(claim: Claim) -> Claim:
    """Write every number of a sentence in lowest terms, by which sentences are known to be the same."""
    return Claim(tuple(_reduced(side) for side in claim.sides), claim.comparisons)


def numbers_in(expression: Expression) -> list[Ratio]:
    """Give the numbers of an expression, from the left."""
    if isinstance(expression, Ratio):
        return [expression]
    if isinstance(expression, Operation):
        return numbers_in(expression.left) + numbers_in(expression.right)
    return numbers_in(expression.base if isinstance(expression, Power) else expression.inner)


def has_small_numbers(found: Found) -> bool:
    """Tell whether no number of a sentence is longer than a class can read aloud."""
    numbers = [number for side in found.claim.sides for number in numbers_in(side)]
    return all(max(number.numerator, number.denominator) <= LARGEST for number in numbers)


def says_little(found: Found) -> bool:
    """Tell whether a number is only multiplied or divided by 1, or divided by itself.

    A step's own two sentences say it all the same: ``1 × 2 = 2`` panels.
    """
    worked = found.claim.sides[0]
    if found.family in (Family.COUNT, Family.SIZE) or not isinstance(worked, Operation):
        return False
    left, right = reduced(Claim((worked.left, worked.right), (Comparison.EQUAL,))).sides
    one = lowest_terms(ONE)
    if worked.sign is Sign.DIVIDE:
        return right in (one, left)
    return worked.sign is Sign.TIMES and one in (left, right)


def _reduced(expression: Expression) -> Expression:
    if isinstance(expression, Ratio):
        return lowest_terms(expression.value)
    if isinstance(expression, Operation):
        return Operation(expression.sign, _reduced(expression.left), _reduced(expression.right))
    return (
        Power(_reduced(expression.base), expression.exponent) if isinstance(expression, Power) else expression
    )


def _number(number: Exact | Ratio) -> Ratio:
    return number if isinstance(number, Ratio) else lowest_terms(number)
