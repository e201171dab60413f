"""The numbers of word problems: takes the ranges of a story, gives every sensible choice, worked out."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from enum import Enum
from functools import cache
from math import gcd

from foldmath.plane.numbers import ONE, Exact, denominator, exact
from foldmath.statements.composing import equation, minus, times
from foldmath.statements.expressions import Claim
from foldmath.statements.products import Product
from foldmath.statements.ratios import Ratio, fraction, lowest_terms, mixed_form, whole_number

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


@dataclass(frozen=True, kw_only=True)
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


@dataclass(frozen=True)
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


@dataclass(frozen=True)
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
    return _WORKING[asks](filling)


def _product(first: Ratio, second: Ratio) -> Worked:
    """2/3 × 3/4 = 6/12 = 1/2, and 5 × 3/8 = 15/8 = 1 7/8."""
    product = Product(first, second)
    forms = dict.fromkeys([product.unreduced, product.mixed])
    return Worked(product, product.value, equation(product.asked, *forms))


def _portions(filling: Filling) -> Worked:
    return _product(whole_number(filling.total), filling.amount)


def _part(filling: Filling) -> Worked:
    return _product(filling.take, filling.amount)


def _quantity(filling: Filling) -> Worked:
    return _product(filling.take, whole_number(filling.total))


def _fleet(filling: Filling) -> Worked:
    """3/4 × 2/3 × 36 = 3/4 × 24 = 18."""
    product = Product(filling.take, filling.amount)
    total = exact(filling.total)
    first_part = lowest_terms(filling.amount.value * total)
    value = product.value * total
    asked, then = times(product.asked, filling.total), times(filling.take, first_part)
    return Worked(product, value, equation(asked, then, mixed_form(value)))


def _left(filling: Filling) -> Worked:
    """3/4 − 1/3 × 3/4 = 1/2."""
    product = Product(filling.take, filling.amount)
    value = filling.amount.value - product.value
    return Worked(product, value, equation(minus(filling.amount, product.asked), mixed_form(value)))


def _more(filling: Filling) -> Worked:
    """2/3 − 2/3 × 3/4 = 1/6: a part of a unit against the same part of less than a unit."""
    product = Product(filling.take, filling.amount)
    value = filling.take.value - product.value
    return Worked(product, value, equation(minus(filling.take, product.asked), mixed_form(value)))


_WORKING: dict[Asks, Callable[[Filling], Worked]] = {
    Asks.PORTIONS: _portions,
    Asks.PART: _part,
    Asks.AREA: _part,
    Asks.QUANTITY: _quantity,
    Asks.FLEET: _fleet,
    Asks.MINUTES: _fleet,
    Asks.LEFT: _left,
    Asks.MORE: _more,
}


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
    told = worked(asks, filling)
    short = max(told.product.unreduced.denominator, denominator(told.value)) <= ranges.largest
    # Two equal numbers in one story cannot be told apart in what a pupil writes.
    if not short or filling.take == filling.amount or not _telling(asks, filling, told):
        return False
    whole = [exact(ranges.steps) * number for number in (filling.amount.value, told.value) if ranges.steps]
    if asks in (Asks.FLEET, Asks.MINUTES, Asks.QUANTITY):
        # A denominator that is no factor of the number makes parts of things even where the answer is whole.
        total = exact(filling.total)
        whole += [total * filling.amount.value, total * filling.take.value, told.value]
    return all(denominator(number) == 1 for number in whole)


def _telling(asks: Asks, filling: Filling, told: Worked) -> bool:
    """Tell whether the answer tells a pupil who understands from one who does not."""
    if asks is Asks.PORTIONS:
        return told.value > ONE
    if asks is Asks.LEFT:
        return told.value != told.product.value
    if asks is Asks.MORE:
        return told.value != told.product.value and filling.take.value < filling.amount.value
    return True
