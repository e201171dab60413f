"""The star of the sheet's bottom left corner: its outline, and where it stands in a corner of the paper."""

from math import cos, pi, sin

from foldmath.drawing.look import STAR_RADIUS_MM
from foldmath.drawing.scenes import Spot, Star

POINTS, WAIST = 5, 0.42
"""How many points a star has, and its inner radius as a share of the outer one."""

INSET = 1.5
"""How far its middle is from both edges of its corner, in its own radii."""


def star_outline(middle: Spot, radius_mm: float) -> tuple[Spot, ...]:
    """Give the corners of a star that points up, counter-clockwise from its tip."""
    return tuple(
        Spot(
            middle.x + radius_mm * (WAIST if number % 2 else 1) * cos(pi / 2 + number * pi / POINTS),
            middle.y + radius_mm * (WAIST if number % 2 else 1) * sin(pi / 2 + number * pi / POINTS),
        )
        for number in range(2 * POINTS)
    )


def star_in_corner(
    corner: Spot, inside: Spot, radius_mm: float = STAR_RADIUS_MM, *, hollow: bool = False
) -> Star:
    """Put the star just inside a corner of the paper, on the side where ``inside`` is."""
    inset = INSET * radius_mm
    middle = Spot(
        corner.x + (inset if inside.x >= corner.x else -inset),
        corner.y + (inset if inside.y >= corner.y else -inset),
    )
    return Star(middle, radius_mm, hollow=hollow)
