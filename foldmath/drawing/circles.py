"""Circles as polygons: takes a middle and a radius, gives as many corners as the eye needs."""

from math import cos, pi, sin

from foldmath.drawing.scenes import Spot


def circle(middle: Spot, radius_mm: float, corners: int) -> tuple[Spot, ...]:
    """Give a circle as a polygon of so many corners, enough of them for the eye."""
    angles = [2 * pi * corner / corners for corner in range(corners)]
    return tuple(
        Spot(middle.x + radius_mm * cos(angle), middle.y + radius_mm * sin(angle)) for angle in angles
    )
