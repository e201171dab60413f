"""Hatches: the slanting lines that fill a polygon."""

from math import sqrt

from foldmath.drawing.scenes import Lean, Spot

DIAGONAL = sqrt(2)


def hatch_lines(spots: tuple[Spot, ...], lean: Lean, pitch_mm: float) -> list[tuple[Spot, Spot]]:
    """Give the lines at 45° that fill a convex polygon.

    Lines keep one register over the whole picture, so that neighbouring panels hatch as one.

    Args:
        spots: the polygon, in mm.
        lean: RIGHT for lines that rise to the right, LEFT for lines that rise to the left.
        pitch_mm: the distance between lines, measured across them.
    """
    sign = 1 if lean is Lean.RIGHT else -1
    offsets = [y - sign * x for x, y in spots]
    step = pitch_mm * DIAGONAL
    lines = []
    number = int(min(offsets) // step) + 1
    while number * step < max(offsets):
        ends = _meetings(spots, offsets, number * step)
        if len(ends) >= 2:
            lines.append((min(ends), max(ends)))
        number += 1
    return lines


def _meetings(spots: tuple[Spot, ...], offsets: list[float], level: float) -> list[Spot]:
    ends = []
    for index, (x, y) in enumerate(spots):
        before, here = offsets[index - 1] - level, offsets[index] - level
        if (before < 0) != (here < 0):
            share = before / (before - here)
            other = spots[index - 1]
            ends.append(Spot(other.x + share * (x - other.x), other.y + share * (y - other.y)))
    return ends
