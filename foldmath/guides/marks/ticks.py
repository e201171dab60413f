"""Ticks near the edges, where creases end, and where to measure for them."""

from collections import defaultdict
from collections.abc import Iterable
from typing import NamedTuple

from foldmath.guides.marks.fold_lines import FoldLine
from foldmath.paper.lengths import nearest_sixteenth
from foldmath.paper.state import Sheet
from foldmath.paper.steps import Axis, Edge
from foldmath.plane.lines import Point
from foldmath.plane.numbers import HALF, ONE, ZERO, Exact, exact, nearest_whole
from foldmath.plane.polygons import between
from foldmath.values import frozen

NEAREST_MM, FARTHEST_MM = exact(7), exact(15)
"""A tick lies so far inside its edge: printers cannot reach it, and copiers shift by 2 to 3 mm (common
practice, no source)."""

LONGEST_MM = exact(16)
"""How far a tick reaches along either side of the sheet, for creases that leave an edge at a low angle."""


class Tick(NamedTuple):
    """A short line along a crease near the edge where it ends, in sheet units."""

    start: Point
    end: Point
    at_middle: bool


@frozen
class EdgeMark:
    """A place to mark on an edge.

    Args:
        edge: the edge it is on.
        at: its share of the edge, from the left or from the bottom.
        distance: the same in millimetres, exact.
        folds: the folds whose creases end there; none for a middle without a crease.
    """

    edge: Edge
    at: Exact
    distance: Exact
    folds: tuple[int, ...]

    @property
    def at_middle(self) -> bool:
        """Whether it halves its edge."""
        return self.at == HALF

    @property
    def tenths_mm(self) -> int:
        """The distance to the nearest tenth of a millimetre, in tenths."""
        return tenths_mm(self.distance)

    @property
    def inches(self) -> Exact:
        """The distance in inches, to the nearest sixteenth."""
        return nearest_sixteenth(self.distance)


def tenths_mm(distance: Exact) -> int:
    """Give how many tenths of a millimetre a distance in exact mm is nearest to."""
    return nearest_whole(distance * 10)


def ticks(sheet: Sheet, lines: Iterable[FoldLine]) -> tuple[Tick, ...]:
    """Give the ticks of a sheet, from the left, then from the bottom; a crease too short for one has none."""
    found = set()
    for line in lines:
        for end, other in ((line.start, line.end), (line.end, line.start)):
            tick = _tick(sheet, end, other)
            if tick:
                found.add(tick)
    return tuple(sorted(found))


def edge_marks(sheet: Sheet, lines: Iterable[FoldLine]) -> tuple[EdgeMark, ...]:
    """Give every place to mark on the four edges, their middles among them; corners need no mark."""
    folds: dict[tuple[Edge, Exact], set[int]] = defaultdict(set)
    for edge in Edge:
        folds[edge, HALF] = set()
    for line in lines:
        for end in (line.start, line.end):
            for edge in edges_at(sheet, end):
                folds[edge, _share(sheet, edge, end)].add(line.fold)
    marks = [
        EdgeMark(edge, at, at * _length(sheet, edge) * sheet.unit_mm, tuple(sorted(numbers)))
        for (edge, at), numbers in folds.items()
        if ZERO < at < ONE
    ]
    return tuple(sorted(marks, key=lambda mark: (list(Edge).index(mark.edge), mark.at)))


def edges_at(sheet: Sheet, point: Point) -> tuple[Edge, ...]:
    """Give the edges of the opened sheet that a point lies on: none inside, two at a corner."""
    on = {
        Edge.LEFT: point.x == ZERO,
        Edge.RIGHT: point.x == sheet.width,
        Edge.TOP: point.y == sheet.height,
        Edge.BOTTOM: point.y == ZERO,
    }
    return tuple(edge for edge, there in on.items() if there)


def _length(sheet: Sheet, edge: Edge) -> Exact:
    return sheet.height if edge.axis is Axis.WIDTH else sheet.width


def _share(sheet: Sheet, edge: Edge, point: Point) -> Exact:
    return point.y / sheet.height if edge.axis is Axis.WIDTH else point.x / sheet.width


def _tick(sheet: Sheet, end: Point, other: Point) -> Tick | None:
    """Give the tick of a crease at one of its ends, or none where that is not on an edge."""
    edges = edges_at(sheet, end)
    if not edges:
        return None
    unit = sheet.unit_mm
    across, up = abs(other.x - end.x) * unit, abs(other.y - end.y) * unit
    inward = min(across if edge.axis is Axis.WIDTH else up for edge in edges)
    if inward == ZERO:
        return None
    near = NEAREST_MM / inward
    far = min(FARTHEST_MM / inward, near + LONGEST_MM / max(across, up), ONE)
    if near >= far:
        return None
    start, stop = sorted((between(end, other, near), between(end, other, far)))
    return Tick(start, stop, len(edges) == 1 and _share(sheet, edges[0], end) == HALF)
