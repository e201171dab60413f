"""The star of the sheet's bottom left corner: how large it is, its outline, and its place in a corner."""

from math import atan2, cos, pi, sin

from foldmath.drawing.scenes import Spot, Star

PICTURE_STAR_MM, GUIDE_STAR_MM, SAMPLE_STAR_MM = 1.5, 3.0, 2.2
"""Its radius in a printed picture, on a guide sheet at its exact size, and as a sample beside its meaning."""

SLIDE_STAR_MM = 1.9
"""On the slides: from tip to tip at least 1/40 of a screen's height, on a phone held upright too."""

POINTS, WAIST = 5, 0.42
"""How many points a star has, and its inner radius as a share of the outer one."""

INSET = 1.5
"""How far its middle is from both edges of its corner, in its own radii."""


BESIDE_LINE_MM, CLEAR = 1.2, 1.3
"""Its radius beside a line that runs through its corner, and how far its middle keeps from it, in radii."""


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
    corner: Spot, inside: Spot, radius_mm: float = PICTURE_STAR_MM, *, hollow: bool = False
) -> Star:
    """Put the star just inside a corner of the paper, on the side where ``inside`` is."""
    inset = INSET * radius_mm
    middle = Spot(
        corner.x + (inset if inside.x >= corner.x else -inset),
        corner.y + (inset if inside.y >= corner.y else -inset),
    )
    return Star(middle, radius_mm, hollow=hollow)


def star_beside_line(corner: Spot, inside: Spot, way: Spot) -> Star:
    """Put the star clear of a line that runs through its corner, in the wider of the two angles there.

    ``way`` is the way of the line, across and up.
    """
    rises = atan2(abs(way.y), abs(way.x))
    half = max(rises, pi / 2 - rises) / 2
    towards = half if rises > pi / 4 else pi / 2 - half
    distance = CLEAR * BESIDE_LINE_MM / sin(half)
    middle = Spot(
        corner.x + (1 if inside.x >= corner.x else -1) * distance * cos(towards),
        corner.y + (1 if inside.y >= corner.y else -1) * distance * sin(towards),
    )
    return Star(middle, BESIDE_LINE_MM)
