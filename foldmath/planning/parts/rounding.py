"""Millimetres in tenths, for people: from exact numbers to a few digits."""

from foldmath.plane.numbers import Exact, denominator, exact, numerator


def tenths(number: Exact) -> str:
    """Write a positive number to the nearest tenth: ``55.9``, ``27``."""
    ten = number * exact(10)
    return _with_point((2 * numerator(ten) + denominator(ten)) // (2 * denominator(ten)))


def tenths_at_most(number: Exact) -> str:
    """Write a positive number rounded up to a tenth, where it is said to be the most."""
    ten = number * exact(10)
    return _with_point(-(-numerator(ten) // denominator(ten)))


def _with_point(tens: int) -> str:
    return f"{tens // 10}.{tens % 10}" if tens % 10 else str(tens // 10)
