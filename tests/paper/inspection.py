"""What the laws of folding look at, found afresh from the panels alone.

Nothing here uses the code that folds, cuts or counts layers, so that a law can find that code wrong.
"""

from collections import defaultdict
from dataclasses import dataclass
from typing import NamedTuple, TypeAlias

from foldmath.paper.state import Crease, FoldedState, Kind, Panel
from foldmath.plane.lines import Point
from foldmath.plane.motions import Motion
from foldmath.plane.numbers import HALF, ONE, ZERO, Exact
from foldmath.plane.polygons import Polygon


@dataclass(frozen=True)
class Breach:
    """Where a law of folding is broken.

    Args:
        law: the law, as a sentence that should have been true.
        panels: the panels concerned, by their index in the state.
        at: the points concerned, on the opened sheet or on the table as the law says.
    """

    law: str
    panels: tuple[int, ...] = ()
    at: tuple[Point, ...] = ()


class Side(NamedTuple):
    """One panel's side of an edge: the panel, which of its edges, and the crease that edge carries."""

    panel: int
    edge: int
    crease: Crease | None


class Hinge(NamedTuple):
    """An edge that two panels share, each on its own side."""

    one: Side
    other: Side


DirectedEdge: TypeAlias = tuple[Point, Point]


def ends(corners: Polygon, edge: int) -> DirectedEdge:
    """Give the two ends of the edge that leaves a corner."""
    return corners[edge], corners[(edge + 1) % len(corners)]


def edges_on_sheet(state: FoldedState) -> dict[DirectedEdge, list[Side]]:
    """Give every edge on the opened sheet, run counter-clockwise about its panel, with the panels on it."""
    found: dict[DirectedEdge, list[Side]] = defaultdict(list)
    for index, panel in enumerate(state.panels):
        for edge, crease in enumerate(panel.edges):
            found[ends(panel.corners, edge)].append(Side(index, edge, crease))
    return dict(found)


def hinges(state: FoldedState) -> list[Hinge]:
    """Give every pair of panels that share an edge, each pair once for each edge; a cut joins none."""
    edges = edges_on_sheet(state)
    return [
        Hinge(one, other)
        for (start, end), sides in edges.items()
        if start < end
        for one in sides
        for other in edges.get((end, start), ())
        if one.crease is None or one.crease.kind is not Kind.CUT
    ]


def carried(motion: Motion, point: Point) -> Point:
    """Carry a point by the matrix (c, -s; s, c), or (c, s; s, -c) if it turns over, then by the shift."""
    c, s, x, y, upright = motion
    hand = ONE if upright else -ONE
    return Point(c * point.x - hand * s * point.y + x, s * point.x + hand * c * point.y + y)


def lying_at(panel: Panel, fold: int) -> Polygon:
    """Give where a panel would lie if only the first ``fold`` folds still folded were folded."""
    return tuple(carried(panel.placements[fold].motion, corner) for corner in panel.corners)


def turning(start: Point, end: Point, point: Point) -> Exact:
    """Give twice the area of a triangle: positive if its three corners run counter-clockwise."""
    return (end.x - start.x) * (point.y - start.y) - (end.y - start.y) * (point.x - start.x)


def signed_area(polygon: Polygon) -> Exact:
    """Give the area by the shoelace formula, negative if the corners run clockwise."""
    total = ZERO
    for edge in range(len(polygon)):
        start, end = ends(polygon, edge)
        total = total + (start.x * end.y - end.x * start.y)
    return total * HALF


def runs_through(segment: DirectedEdge, polygon: Polygon) -> bool:
    """Tell whether a segment passes through the inside of a convex, counter-clockwise polygon."""
    entering, leaving = ZERO, ONE
    for edge in range(len(polygon)):
        start, end = ends(polygon, edge)
        first, last = turning(start, end, segment[0]), turning(start, end, segment[1])
        if first <= ZERO and last <= ZERO:
            return False
        if first < ZERO:
            entering = max(entering, first / (first - last))
        elif last < ZERO:
            leaving = min(leaving, first / (first - last))
    return entering < leaving
