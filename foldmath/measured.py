"""Where exact numbers end: lengths for hands and for the page, as floats."""

from foldmath.paper.lengths import MILLIMETRES
from foldmath.plane.numbers import Exact, denominator, numerator


def as_float(number: Exact) -> float:
    """Leave the exact numbers, for what is measured or painted."""
    return numerator(number) / denominator(number)


def millimetres(length: Exact, unit: str) -> float:
    """Give a length in mm.

    Args:
        length: in the unit.
        unit: ``in``, ``cm`` or ``mm``.
    """
    return as_float(length * MILLIMETRES[unit])
