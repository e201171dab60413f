"""Where the paper of a leaf ends, and what runs inside it: panels share whole edges, each way once."""

from collections.abc import Iterable, Sequence
from typing import NamedTuple

from foldmath.paper.state import Crease, Panel
from foldmath.plane.lines import Point
from foldmath.plane.numbers import ZERO
from foldmath.plane.polygons import Polygon


class InnerEdge(NamedTuple):
    """An edge with panels of the leaf on both sides, on the opened sheet, and what it carries."""

    start: Point
    end: Point
    crease: Crease


def inner_edges(panels: Sequence[Panel]) -> list[InnerEdge]:
    """Give every edge between two of some panels once."""
    found = {
        (start, end): crease
        for corners, edges, *_ in panels
        for start, end, crease in zip(corners, (*corners[1:], corners[0]), edges, strict=True)
    }
    return [
        InnerEdge(start, end, crease)
        for (start, end), crease in found.items()
        if crease and start < end and (end, start) in found
    ]


def outlines(polygons: Iterable[Polygon]) -> list[Polygon]:
    """Give the borders of the region that polygons with whole common edges cover, without straight corners.

    Args:
        polygons: all the same way round.
    """
    edges = {edge for corners in polygons for edge in zip(corners, (*corners[1:], corners[0]), strict=True)}
    onward: dict[Point, list[Point]] = {}
    for start, end in sorted(edges):
        if (end, start) not in edges:
            onward.setdefault(start, []).append(end)
    found = []
    while onward:
        loop = [next(iter(onward))]
        while loop[-1] in onward:
            ways = onward[loop[-1]]
            loop.append(ways.pop())
            if not ways:
                del onward[loop[-2]]
        found.append(_without_straight_corners(loop[:-1]))
    return found


def _without_straight_corners(loop: list[Point]) -> Polygon:
    around = zip((loop[-1], *loop[:-1]), loop, (*loop[1:], loop[0]), strict=True)
    return tuple(here for before, here, after in around if _turn(before, here, after) != ZERO)


def _turn(before: Point, here: Point, after: Point) -> object:
    return (here.x - before.x) * (after.y - here.y) - (here.y - before.y) * (after.x - here.x)
