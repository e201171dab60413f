"""Numbers in sentences of steps: read exactly, and refused where no hand could follow."""

from fractions import Fraction

from lark import Token

from foldmath.lesson.grammar.refusals import at_token
from foldmath.paper.lengths import NumberRefused, read_number
from foldmath.paper.steps import (
    MOST_PLEATS,
)
from foldmath.phrases import Said, phrase
from foldmath.plane.numbers import Exact, denominator, numerator

LARGEST_NUMBER = 10_000
"""No numerator or denominator in a step is larger: no crease is placed more finely by hand."""

MOST_SHADED_PARTS = MOST_PLEATS * MOST_PLEATS
"""A pleat of a pleat makes this many parts at most."""


def whole(token: Token, fewest: int, most: int, of_what: Said) -> int:
    """Read a whole number within bounds.

    Raises:
        StepUnreadable: it is less or more.
    """
    number = int(token.replace("−", "-")) if len(token) <= len(str(LARGEST_NUMBER)) else LARGEST_NUMBER + 1
    if not fewest <= number <= most:
        nearest = fewest if number < fewest else most
        raise at_token(
            phrase("{of_what} must be from {fewest} to {most}", of_what=of_what, fewest=fewest, most=most),
            token,
            str(nearest),
        )
    return number


def position(token: Token) -> Exact:
    """Read a position, and refuse what is too fine to fold."""
    try:
        number = read_number(token.replace(",", "."))
    except NumberRefused as error:
        raise at_token(error.message, token, "1/2") from None
    above, below = numerator(number), denominator(number)
    if max(abs(above), below) > LARGEST_NUMBER:
        near = Fraction(above, below).limit_denominator(MOST_PLEATS)
        near = near if 0 < near < 1 else Fraction(1, 2)
        raise at_token(
            phrase("numbers in a step go up to {largest_number}", largest_number=f"{LARGEST_NUMBER:,}"),
            token,
            str(near),
        )
    return number
