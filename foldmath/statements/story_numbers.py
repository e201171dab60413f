"""The numbers of word problems: takes the ranges of a story, gives every sensible choice, worked out."""

from collections.abc import Iterator
from enum import Enum
from functools import cache
from math import gcd

from foldmath.plane.numbers import ONE, Exact, denominator, exact
from foldmath.statements.composing import equation, minus, times
from foldmath.statements.expressions import Claim
from foldmath.statements.products import Product
from foldmath.statements.ratios import Ratio, fraction, lowest_terms, mixed_form, whole_number
from foldmath.values import frozen

DENOMINATORS = (2, 3, 4, 5, 6, 8, 10)
"""What things are parted into if a story says nothing: no sevenths of a rope (common practice, no source)."""


class Asks(Enum):
    """What the numbers of a story do."""

    PORTIONS = "equal portions"
    PART = "part of a part"
    AREA = "area"
    QUANTITY = "part of a quantity"
    FLEET = "part of a part of a number"
    MINUTES = "part of an hour in minutes"
    LEFT = "what is left"
    MORE = "part of it against part of a unit"

    @property
    def one_product(self) -> bool:
        """Whether it is a product of two fractions, or of a number and a fraction, and nothing more."""
        return self in (Asks.PORTIONS, Asks.PART, Asks.AREA)

    @property
    def counted(self) -> bool:
        """Whether the answer counts things, so that only a whole number can be meant."""
        return self in (Asks.FLEET, Asks.MINUTES)


@frozen(kw_only=True)
class Ranges:
    """What the numbers of a story may be.

    Args:
        amount: the least and the largest of the first fraction told; None where none is told.
        take: the least and the largest part taken of it; None where none is.
        totals: how many there are of what is counted or weighed; empty where nothing is.
        parts: the denominators that the things have.
        largest: the largest denominator of a product as it is multiplied.
        steps: of a unit; the amount and the answer are whole steps. 0 where any fraction will do.
    """

    amount: tuple[Exact, Exact] | None
    take: tuple[Exact, Exact] | None
    totals: tuple[int, ...]
    parts: tuple[int, ...]
    largest: int
    steps: int


@frozen
class Filling:
    """The numbers of one telling; what a story does not tell is 1.

    Args:
        take: the part taken, or the second side of an area.
        amount: the fraction told first.
        total: of things, portions, kilograms.
    """

    take: Ratio
    amount: Ratio
    total: int


@frozen
class Worked:
    """A telling worked out.

    Args:
        product: the product at its heart, its factors in the order of "take of amount".
        value: what is asked for.
        working: a true sentence that ends with the answer.
    """

    product: Product
    value: Exact
    working: Claim


_ONE = whole_number(1)


def worked(asks: Asks, filling: Filling) -> Worked:
    """Work a telling out."""
    product = _heart(asks, filling)
    value = _value(asks, filling, product)
    return Worked(product, value, _working(asks, filling, product, value))


def _heart(asks: Asks, filling: Filling) -> Product:
    match asks:
        case Asks.PORTIONS:
            return Product(whole_number(filling.total), filling.amount)
        case Asks.QUANTITY:
            return Product(filling.take, whole_number(filling.total))
        case _:
            return Product(filling.take, filling.amount)


def _value(asks: Asks, filling: Filling, product: Product) -> Exact:
    match asks:
        case Asks.FLEET | Asks.MINUTES:
            return product.value * exact(filling.total)
        case Asks.LEFT:
            return filling.amount.value - product.value
        case Asks.MORE:
            return filling.take.value - product.value
        case _:
            return product.value


def _working(asks: Asks, filling: Filling, product: Product, value: Exact) -> Claim:
    """Say how it is worked out.

    2/3 × 3/4 = 6/12 = 1/2, and 5 × 3/8 = 15/8 = 1 7/8; 3/4 × 2/3 × 36 = 3/4 × 24 = 18; what is left:
    3/4 − 1/3 × 3/4 = 1/2; a part of a unit against the same part of less: 2/3 − 2/3 × 3/4 = 1/6.
    """
    match asks:
        case Asks.FLEET | Asks.MINUTES:
            first_part = lowest_terms(filling.amount.value * exact(filling.total))
            asked, then = times(product.asked, filling.total), times(filling.take, first_part)
            return equation(asked, then, mixed_form(value))
        case Asks.LEFT:
            return equation(minus(filling.amount, product.asked), mixed_form(value))
        case Asks.MORE:
            return equation(minus(filling.take, product.asked), mixed_form(value))
        case _:
            return equation(product.asked, *dict.fromkeys([product.unreduced, product.mixed]))


@cache
def fillings(asks: Asks, ranges: Ranges) -> tuple[Filling, ...]:
    """Give every sensible choice of numbers, smallest denominators first."""
    return tuple(filling for filling in _choices(ranges) if _sensible(asks, ranges, filling))


def _choices(ranges: Ranges) -> Iterator[Filling]:
    for total in ranges.totals or (1,):
        for amount in fractions_within(ranges.amount, ranges.parts):
            for take in fractions_within(ranges.take, ranges.parts):
                yield Filling(take, amount, total)


@cache
def fractions_within(bounds: tuple[Exact, Exact] | None, parts: tuple[int, ...]) -> tuple[Ratio, ...]:
    """Give the fractions in lowest terms from one bound to another; 1 alone where there are no bounds."""
    if bounds is None:
        return (_ONE,)
    least, largest = bounds
    return tuple(
        fraction(above, below)
        for below in parts
        for above in range(1, below)
        if gcd(above, below) == 1 and least <= exact(above, below) <= largest
    )


def _sensible(asks: Asks, ranges: Ranges, filling: Filling) -> bool:
    """Tell whether things can be so: whole boats, whole minutes, no part larger than its whole."""
    # Two equal numbers in one story cannot be told apart in what a pupil writes.
    if filling.take == filling.amount:
        return False
    product = _heart(asks, filling)
    value = _value(asks, filling, product)
    short = max(product.unreduced.denominator, denominator(value)) <= ranges.largest
    if not short or not _telling(asks, filling, product.value, value):
        return False
    whole = [exact(ranges.steps) * number for number in (filling.amount.value, value) if ranges.steps]
    if asks in (Asks.FLEET, Asks.MINUTES, Asks.QUANTITY):
        # A denominator that is no factor of the number makes parts of things even where the answer is whole.
        total = exact(filling.total)
        whole += [total * filling.amount.value, total * filling.take.value, value]
    return all(denominator(number) == 1 for number in whole)


def _telling(asks: Asks, filling: Filling, taken: Exact, value: Exact) -> bool:
    """Tell whether the answer tells a pupil who understands from one who does not."""
    if asks is Asks.PORTIONS:
        return value > ONE
    if asks is Asks.LEFT:
        return value != taken
    if asks is Asks.MORE:
        return value != taken and filling.take.value < filling.amount.value
    return True
