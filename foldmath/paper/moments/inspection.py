"""What the laws of folding look at, found afresh from the panels alone.

Nothing here uses the code that folds, cuts or counts layers, so that a law can find that code wrong.
"""

from collections import defaultdict
from collections.abc import Iterator, Sequence
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


def counter_clockwise(polygon: Polygon) -> Polygon:
    """Give a polygon with its corners counter-clockwise."""
    return polygon if signed_area(polygon) > ZERO else tuple(reversed(polygon))


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
    return any(all(turning(*ends(one, edge), corner) <= ZERO for corner in other) for edge in range(len(one)))


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
