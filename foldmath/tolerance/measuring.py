"""Lengths as hands have them: from exact numbers in the sheet's unit to mm, no longer exact."""

from foldmath.paper.lengths import MILLIMETRES
from foldmath.plane.numbers import Exact, denominator, numerator


def as_float(number: Exact) -> float:
    """Leave the exact numbers: errors and thicknesses are never exact."""
    return numerator(number) / denominator(number)


def millimetres(length: Exact, unit: str) -> float:
    """Give a length in mm.

    Args:
        length: in the unit.
        unit: ``in``, ``cm`` or ``mm``.
    """
    return as_float(length * MILLIMETRES[unit])
