"""Which convex polygons share area: takes many, gives the pairs."""

from collections.abc import Iterator, Sequence
from typing import NamedTuple

from foldmath.plane.lines import Point
from foldmath.plane.numbers import ZERO, Exact
from foldmath.plane.polygons import Polygon, area, edge_lines


def counter_clockwise(polygon: Polygon) -> Polygon:
    """Give a polygon with its corners counter-clockwise."""
    return polygon if area(polygon) > ZERO else tuple(reversed(polygon))


def share_area(one: Polygon, other: Polygon) -> bool:
    """Tell whether two convex polygons, both counter-clockwise, share area.

    They do unless some edge of either has the whole of the other on its outer hand (separating axes).
    """
    return not (_separates(one, other) or _separates(other, one))


def pairs_that_share_area(polygons: Sequence[Polygon]) -> Iterator[tuple[int, int]]:
    """Give every two of the convex, counter-clockwise polygons that share area, each pair once, by index.

    Swept from left to right, with only those at hand that reach so far: a grid has millions of other pairs.
    """
    reaching: list[tuple[Span, Span, int]] = []
    for across, up, index in sorted((*spans(polygon), index) for index, polygon in enumerate(polygons)):
        reaching = [one for one in reaching if one[0].end > across.start]
        for _, other_up, other in reaching:
            if meet(up, other_up) and share_area(polygons[other], polygons[index]):
                yield other, index
        reaching.append((across, up, index))


class Span(NamedTuple):
    """How far something reaches along one axis."""

    start: Exact
    end: Exact


def spans(points: Sequence[Point]) -> tuple[Span, Span]:
    """Give how far points reach across and up."""
    across, up = [point.x for point in points], [point.y for point in points]
    return Span(min(across), max(across)), Span(min(up), max(up))


def meet(one: Span, other: Span) -> bool:
    """Tell whether two spans have more than an end in common; a span of no length, whether it lies inside."""
    return one.start < other.end and other.start < one.end


def _separates(one: Polygon, other: Polygon) -> bool:
    return any(all(line.side(corner) <= ZERO for corner in other) for line in edge_lines(one))
