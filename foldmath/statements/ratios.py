"""Numbers as they are written: ``2/4`` stays ``2/4``, ``1 1/2`` stays mixed, and each has its exact value."""

from dataclasses import dataclass
from math import lcm

from foldmath.plane import numbers
from foldmath.plane.numbers import Exact, exact


@dataclass(frozen=True)
class Ratio:
    """A number as written, over the denominator that it is written with.

    Args:
        numerator: of the whole number; 3 for ``1 1/2``.
        denominator: 1 or more; 1 for a whole number.
        text: as a teacher writes it: ``3``, ``2/4``, ``1 1/2``, ``0.375``.
    """

    numerator: int
    denominator: int
    text: str

    @property
    def value(self) -> Exact:
        """The number itself."""
        return exact(self.numerator, self.denominator)

    @property
    def whole(self) -> bool:
        """Whether it is written as a whole number, without a bar."""
        return self.text.isdecimal()

    @property
    def unit_fraction(self) -> bool:
        """Whether it is written as one part of two or more."""
        return self.numerator == 1 < self.denominator

    def __str__(self) -> str:
        return self.text


def whole_number(number: int) -> Ratio:
    """Write a whole number."""
    return Ratio(number, 1, str(number))


def fraction(numerator: int, denominator: int) -> Ratio:
    """Write a fraction as it stands, not reduced.

    Raises:
        ZeroDivisionError: the denominator is zero.
    """
    if not denominator:
        raise ZeroDivisionError("no fraction has 0 as its denominator")
    return Ratio(numerator, denominator, f"{numerator}/{denominator}")


def mixed_number(wholes: int, numerator: int, denominator: int) -> Ratio:
    """Write a whole number and a fraction beside it.

    Raises:
        ZeroDivisionError: the denominator is zero.
    """
    part = fraction(numerator, denominator)
    return Ratio(wholes * denominator + numerator, denominator, f"{wholes} {part}")


def decimal(digits: str) -> Ratio:
    """Write a decimal number, from digits with one point among them."""
    wholes, _, decimals = digits.partition(".")
    return Ratio(int(wholes + decimals), 10 ** len(decimals), digits)


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
