"""From the exact plane to the page: places paper in a picture of a given size, and sets figures in panels."""

from collections.abc import Iterable
from dataclasses import replace
from itertools import pairwise

from foldmath.drawing.look import BAR_OVERHANG, DIGIT_HEIGHT, DIGIT_WIDTH, FIGURE_GAP
from foldmath.drawing.scenes import Figure, Spot
from foldmath.measured import as_float
from foldmath.plane.lines import Point
from foldmath.plane.numbers import Exact, denominator, numerator
from foldmath.plane.polygons import Box
from foldmath.values import frozen

FILLS = 0.8
"""How much of the room in a panel its number may fill."""


@frozen(kw_only=True)
class View:
    """A scale and a shift that carry the exact plane into a picture.

    Args:
        scale: mm in the picture for one sheet unit.
        left, bottom: the plane's point at ``margin_mm`` from the picture's bottom left corner.
        margin_mm: room kept free round the paper.
        width_mm, height_mm: the picture's size.
    """

    scale: float
    left: float
    bottom: float
    margin_mm: float
    width_mm: float
    height_mm: float

    def spot(self, point: Point) -> Spot:
        """Carry a point."""
        return Spot(
            self.margin_mm + (as_float(point.x) - self.left) * self.scale,
            self.margin_mm + (as_float(point.y) - self.bottom) * self.scale,
        )

    def spots(self, points: Iterable[Point]) -> tuple[Spot, ...]:
        """Carry points."""
        return tuple(self.spot(point) for point in points)


def spot(point: Point) -> Spot:
    """Leave the exact numbers: a point in exact mm becomes a place on the page."""
    return Spot(as_float(point.x), as_float(point.y))


def view_of(bounds: Box, width_mm: float, most_height_mm: float, margin_mm: float) -> View:
    """Fit a box of the plane into a picture of a given width, or narrower if it would be too high."""
    across, up = as_float(bounds.width), as_float(bounds.height)
    scale = min((width_mm - 2 * margin_mm) / across, (most_height_mm - 2 * margin_mm) / up)
    return View(
        scale=scale,
        left=as_float(bounds.left),
        bottom=as_float(bounds.bottom),
        margin_mm=margin_mm,
        width_mm=across * scale + 2 * margin_mm,
        height_mm=up * scale + 2 * margin_mm,
    )


def joined_boxes(one: Box, other: Box) -> Box:
    """Give the box that holds both."""
    return Box(
        min(one.left, other.left),
        min(one.bottom, other.bottom),
        max(one.right, other.right),
        max(one.top, other.top),
    )


def middle(spots: tuple[Spot, ...]) -> Spot:
    """Give the centroid of a polygon's area."""
    first = spots[0]
    total = x = y = 0.0
    for one, two in pairwise(spots[1:]):
        cross = (one.x - first.x) * (two.y - first.y) - (one.y - first.y) * (two.x - first.x)
        total += cross
        x += cross * (first.x + one.x + two.x) / 3
        y += cross * (first.y + one.y + two.y) / 3
    return Spot(x / total, y / total)


def figure_in(spots: tuple[Spot, ...], number: Exact, largest_mm: float, smallest_mm: float) -> Figure | None:
    """Set a number in the middle of a polygon, as large as it fits; None if it would be too small to read."""
    place = middle(spots)
    above, below = str(numerator(number)), str(denominator(number))
    figure = Figure(place, above, "" if below == "1" else below, 1)
    size = min(largest_mm, FILLS * _fit_in_box(place, spots, *reach(figure)))
    return None if size < smallest_mm else replace(figure, size_mm=size)


def reach(figure: Figure) -> tuple[float, float]:
    """Give how far a number reaches from its middle, across and up."""
    digits = max(len(figure.numerator), len(figure.denominator))
    across = digits * DIGIT_WIDTH / 2 + BAR_OVERHANG
    up = DIGIT_HEIGHT + FIGURE_GAP if figure.denominator else DIGIT_HEIGHT / 2
    return figure.size_mm * across, figure.size_mm * up


def _fit_in_box(place: Spot, spots: tuple[Spot, ...], half_width: float, half_height: float) -> float:
    """Give the largest size whose box, centred on a spot, stays inside a convex polygon."""
    size = float("inf")
    for index, (x, y) in enumerate(spots):
        before = spots[index - 1]
        nx, ny = y - before.y, before.x - x
        reach = abs(nx) * half_width + abs(ny) * half_height
        distance = abs(nx * (place.x - before.x) + ny * (place.y - before.y))
        size = min(size, distance / reach)
    return size
