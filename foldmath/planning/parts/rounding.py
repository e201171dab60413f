"""Millimetres in tenths, for people: from exact numbers to a few digits."""

from foldmath.plane.numbers import Exact, exact, nearest_whole, whole_part


def tenths(number: Exact) -> str:
    """Write a positive number to the nearest tenth: ``55.9``, ``27``."""
    return _with_point(nearest_whole(number * exact(10)))


def tenths_at_most(number: Exact) -> str:
    """Write a positive number rounded up to a tenth, where it is said to be the most."""
    return _with_point(-whole_part(number * exact(-10)))


def _with_point(tenths_of_one: int) -> str:
    return f"{tenths_of_one // 10}.{tenths_of_one % 10}" if tenths_of_one % 10 else str(tenths_of_one // 10)
