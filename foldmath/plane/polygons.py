"""Convex polygons: area, box, cutting by a line, and laying one over another.

A polygon is its corners, counter-clockwise; a corner may stand on a straight edge where a slit ends.
"""

from itertools import pairwise
from typing import NamedTuple, TypeAlias

from foldmath.plane.lines import Line, Point, line_through
from foldmath.plane.numbers import HALF, ZERO, Exact

Polygon: TypeAlias = tuple[Point, ...]


class Box(NamedTuple):
    """An upright rectangle, its sides parallel to the axes."""

    left: Exact
    bottom: Exact
    right: Exact
    top: Exact

    @property
    def width(self) -> Exact:
        """The extent along x."""
        return self.right - self.left

    @property
    def height(self) -> Exact:
        """The extent along y."""
        return self.top - self.bottom

    def at(self, across: Exact, up: Exact) -> Point:
        """Give the point at a fraction of the width from the left and of the height from the bottom."""
        return Point(self.left + across * self.width, self.bottom + up * self.height)


def area(polygon: Polygon) -> Exact:
    """Give the area enclosed, positive for counter-clockwise corners: the triangles seen from one corner."""
    (first_x, first_y), *others = polygon
    arms = [(x - first_x, y - first_y) for x, y in others]
    total = ZERO
    for (x, y), (next_x, next_y) in pairwise(arms):
        total = total + (x * next_y - next_x * y)
    return total * HALF


def box(corners: Polygon) -> Box:
    """Give the smallest box that holds the corners."""
    xs = [corner.x for corner in corners]
    ys = [corner.y for corner in corners]
    return Box(min(xs), min(ys), max(xs), max(ys))


def between(start: Point, end: Point, share: Exact) -> Point:
    """Give the point at a share of the way from one point to another."""
    x, y = start
    end_x, end_y = end
    # Edges of most panels are level or upright.
    return Point(x if x == end_x else x + share * (end_x - x), y if y == end_y else y + share * (end_y - y))


def cut(polygon: Polygon, line: Line) -> tuple[Polygon, Polygon]:
    """Cut a polygon along a line: the part on the positive hand, then the rest; either may be empty."""
    sides = [line.side(corner) for corner in polygon]
    if min(sides) >= 0:
        return polygon, ()
    if max(sides) <= 0:
        return (), polygon
    positive: list[Point] = []
    negative: list[Point] = []
    for index, corner in enumerate(polygon):
        side, before = sides[index], sides[index - 1]
        if (side > 0 > before) or (side < 0 < before):
            meeting = between(polygon[index - 1], corner, before / (before - side))
            positive.append(meeting)
            negative.append(meeting)
        if side >= 0:
            positive.append(corner)
        if side <= 0:
            negative.append(corner)
    return tuple(positive), tuple(negative)


def edge_lines(polygon: Polygon) -> list[Line]:
    """Give the lines along a polygon's edges, the polygon on the positive hand of each."""
    return [line_through(polygon[index - 1], corner) for index, corner in enumerate(polygon)]


def overlay(over: Polygon, under: Polygon) -> tuple[Polygon, list[Polygon]]:
    """Lay one polygon over another.

    Returns:
        The region common to both (empty if they share no area), and the pieces of ``under`` left outside it.
    """
    if same(over, under):
        return under, []
    inside, outside = under, []
    for line in edge_lines(over):
        inside, beyond = cut(inside, line)
        if beyond:
            outside.append(beyond)
        if not inside:
            return (), [under]
    return inside, outside


def same(one: Polygon, other: Polygon) -> bool:
    """Tell whether two polygons have the same corners, whichever each begins with."""
    if len(one) != len(other) or one[0] not in other:
        return False
    first = other.index(one[0])
    return one == other[first:] + other[:first]


def boxes_overlap(one: Box, other: Box) -> bool:
    """Tell whether two boxes share area."""
    return (
        one.left < other.right
        and other.left < one.right
        and one.bottom < other.top
        and other.bottom < one.top
    )


def turned_counter_clockwise(corners: Polygon) -> Polygon:
    """Put the corners of a polygon that was turned over back into counter-clockwise order."""
    return corners[::-1]


def from_lowest(polygon: Polygon) -> Polygon:
    """Start a polygon at its lowest, then leftmost corner."""
    first = min(range(len(polygon)), key=lambda index: (polygon[index].y, polygon[index].x))
    return polygon[first:] + polygon[:first]
