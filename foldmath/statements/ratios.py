"""Numbers as they are written: ``2/4`` stays ``2/4``, ``1 1/2`` stays mixed, and each has its exact value."""

from enum import Enum
from functools import cached_property
from math import lcm
from typing import assert_never

from foldmath.plane import numbers
from foldmath.plane.numbers import Exact, exact
from foldmath.values import frozen

LARGEST_DENOMINATOR = 24
"""Of what pupils read or write: no class has names for smaller parts (common practice, no source)."""


class Form(Enum):
    """How a number is written."""

    WHOLE = "3"
    FRACTION = "2/4"
    MIXED = "1 1/2"
    DECIMAL = "0.375"
    PERCENT = "50%"


@frozen
class Ratio:
    """A number as written, over the denominator that it is written with.

    Args:
        numerator: of the whole number; 3 for ``1 1/2``.
        denominator: 1 or more; 1 for a whole number, a power of 10 for a decimal, 100 for a percentage.
        form: how it is written.
        wholes: what stands before the fraction of a mixed number; else 0.
    """

    numerator: int
    denominator: int
    form: Form
    wholes: int = 0

    @cached_property
    def value(self) -> Exact:
        """The number itself."""
        return exact(self.numerator, self.denominator)

    @property
    def as_fraction(self) -> "Ratio":
        """A decimal or percentage as a fraction in lowest terms; any other number as it is written."""
        return lowest_terms(self.value) if self.form in (Form.DECIMAL, Form.PERCENT) else self

    @property
    def whole(self) -> bool:
        """Whether it is written as a whole number, without a bar."""
        return self.form is Form.WHOLE

    @property
    def unit_fraction(self) -> bool:
        """Whether it is written as one part of two or more."""
        return self.numerator == 1 < self.denominator

    @property
    def above(self) -> int:
        """What stands above the bar: 1 for ``1 1/2``."""
        return self.numerator - self.wholes * self.denominator

    @cached_property
    def text(self) -> str:
        """The number as a teacher writes it: ``3``, ``2/4``, ``1 1/2``, ``0.375``."""
        match self.form:
            case Form.WHOLE:
                return str(self.numerator)
            case Form.FRACTION:
                return f"{self.numerator}/{self.denominator}"
            case Form.MIXED:
                return f"{self.wholes} {self.above}/{self.denominator}"
            case Form.DECIMAL:
                return self._decimal
            case Form.PERCENT:
                return f"{self.numerator}%"
        assert_never(self.form)

    @property
    def _decimal(self) -> str:
        wholes, rest = divmod(self.numerator, self.denominator)
        places = len(str(self.denominator)) - 1
        return f"{wholes}.{rest:0{places}}"

    def __str__(self) -> str:
        return self.text


def whole_number(number: int) -> Ratio:
    """Write a whole number."""
    return Ratio(number, 1, Form.WHOLE)


def fraction(numerator: int, denominator: int) -> Ratio:
    """Write a fraction as it stands, not reduced.

    Raises:
        ZeroDivisionError: the denominator is zero.
    """
    if not denominator:
        raise ZeroDivisionError("no fraction has 0 as its denominator")
    return Ratio(numerator, denominator, Form.FRACTION)


def mixed_number(wholes: int, numerator: int, denominator: int) -> Ratio:
    """Write a whole number and a fraction beside it.

    Raises:
        ZeroDivisionError: the denominator is zero.
    """
    part = fraction(numerator, denominator)
    return Ratio(wholes * denominator + part.numerator, denominator, Form.MIXED, wholes)


def decimal(digits: str) -> Ratio:
    """Write a decimal number, from digits with one point among them."""
    wholes, _, decimals = digits.partition(".")
    return Ratio(int(wholes + decimals), 10 ** len(decimals), Form.DECIMAL)


def percentage(number: int) -> Ratio:
    """Write a number of hundredths with the sign for percent."""
    return Ratio(number, 100, Form.PERCENT)


def lowest_terms(number: Exact) -> Ratio:
    """Write a number that is not negative as a whole number, or as a fraction in lowest terms."""
    above, below = numbers.numerator(number), numbers.denominator(number)
    return whole_number(above) if below == 1 else fraction(above, below)


def mixed_form(number: Exact) -> Ratio:
    """Write a number that is not negative as teachers do: whole, proper, or mixed, in lowest terms."""
    above, below = numbers.numerator(number), numbers.denominator(number)
    wholes, rest = divmod(above, below)
    if not rest:
        return whole_number(wholes)
    return mixed_number(wholes, rest, below) if wholes else fraction(rest, below)


def to_common_denominator(first: Ratio, second: Ratio) -> tuple[int, int, int]:
    """Give two numerators over the least common denominator, and that denominator."""
    common = lcm(first.denominator, second.denominator)
    return (
        first.numerator * (common // first.denominator),
        second.numerator * (common // second.denominator),
        common,
    )
