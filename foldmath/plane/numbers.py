"""Exact rational numbers: elements of sympy's ``QQ``.

They are gmpy2 or python-flint numbers where one of them is installed and sympy's own
otherwise; this module is the only one that knows.
"""

from typing import Any, Protocol, Self

from foldmath.plane.rational_of_sympy import rational

_RATIONAL = rational()
"""What the domain makes its elements with; asked for through the domain, one takes twice as long."""


class Exact(Protocol):
    """A rational number, as the kernel sees it."""

    numerator: Any
    denominator: Any

    def __add__(self, other: Any, /) -> Self: ...
    def __radd__(self, other: Any, /) -> Self: ...
    def __sub__(self, other: Any, /) -> Self: ...
    def __rsub__(self, other: Any, /) -> Self: ...
    def __mul__(self, other: Any, /) -> Self: ...
    def __rmul__(self, other: Any, /) -> Self: ...
    def __truediv__(self, other: Any, /) -> Self: ...
    def __rtruediv__(self, other: Any, /) -> Self: ...
    def __neg__(self) -> Self: ...
    def __abs__(self) -> Self: ...
    def __lt__(self, other: Any, /) -> bool: ...
    def __le__(self, other: Any, /) -> bool: ...
    def __gt__(self, other: Any, /) -> bool: ...
    def __ge__(self, other: Any, /) -> bool: ...
    def __hash__(self) -> int: ...


def exact(numerator: int, denominator: int = 1) -> Exact:
    """Make ``numerator/denominator``.

    Raises:
        ZeroDivisionError: the denominator is zero.
    """
    number: Exact = _RATIONAL(numerator, denominator)
    return number


ZERO = exact(0)
ONE = exact(1)
HALF = exact(1, 2)


def numerator(number: Exact) -> int:
    """Give the numerator in lowest terms, as a plain int."""
    return int(number.numerator)


def denominator(number: Exact) -> int:
    """Give the positive denominator in lowest terms, as a plain int."""
    return int(number.denominator)


def whole_part(number: Exact) -> int:
    """Round down to a whole number."""
    return numerator(number) // denominator(number)


def nearest_whole(number: Exact) -> int:
    """Round to the nearest whole number; a half goes up."""
    return whole_part(number + HALF)


def written(number: Exact) -> str:
    """Write a number as the trace does: ``"17/2"``, ``"3"``, ``"-1/4"``."""
    above, below = numerator(number), denominator(number)
    return str(above) if below == 1 else f"{above}/{below}"


def mixed(number: Exact) -> str:
    """Write a number as people read it on a ruler: ``"8 1/2"``, ``"3"``, ``"-1/4"``."""
    above, below = abs(numerator(number)), denominator(number)
    wholes, rest = divmod(above, below)
    parts = ([str(wholes)] if wholes or not rest else []) + ([f"{rest}/{below}"] if rest else [])
    return ("-" if numerator(number) < 0 else "") + " ".join(parts)


def bit_length(number: Exact) -> int:
    """Give the bits of the longer of numerator and denominator."""
    return max(numerator(number).bit_length(), denominator(number).bit_length())
