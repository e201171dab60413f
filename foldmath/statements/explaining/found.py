"""A sentence found in a step, not yet judged, labelled or put in order."""

from enum import IntEnum

from foldmath.paper.measures import is_plain
from foldmath.phrases import Phrase, phrase
from foldmath.plane.numbers import ONE
from foldmath.statements.expressions import Claim, Comparison, Expression, Operation, Power, Sign, numbers_in
from foldmath.statements.products import LARGEST
from foldmath.statements.ratios import Ratio, lowest_terms
from foldmath.values import frozen


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

    @property
    def said(self) -> Phrase:
        """What people call it."""
        return _NAMES[self]


_NAMES = {
    Family.COUNT: phrase("count"),
    Family.SIZE: phrase("size"),
    Family.WHOLE: phrase("whole"),
    Family.EQUIVALENT: phrase("same size"),
    Family.PRODUCT: phrase("product"),
    Family.COMPARISON: phrase("comparison"),
    Family.SUM: phrase("sum"),
    Family.QUOTIENT: phrase("quotient"),
    Family.POWER: phrase("power"),
}


@frozen
class Found:
    """A sentence.

    Args:
        family: its kind.
        claim: what it says.
        of: the same with "of", read before the sign; None if it has none.
    """

    family: Family
    claim: Claim
    of: Claim | None = None


def reduced(claim: Claim) -> Claim:
    """Write every number of a sentence in lowest terms, by which sentences are known to be the same."""
    return Claim(tuple(_reduced(side) for side in claim.sides), claim.comparisons)


def has_small_numbers(found: Found) -> bool:
    """Tell whether every number of a sentence says by itself how large it is."""
    numbers = [number for side in found.claim.sides for number in numbers_in(side)]
    return all(number.numerator <= LARGEST and is_plain(number.value) for number in numbers)


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
