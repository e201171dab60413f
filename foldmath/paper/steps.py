"""The steps of the step language, as values: what a sentence asks for, before any paper is folded.

Positions are fractions of the folded sheet's bounding box as it lies, from the left or from the bottom.
"""

from enum import Enum
from typing import TypeAlias, assert_never

from foldmath.plane.lines import Point
from foldmath.plane.numbers import ONE, ZERO, Exact
from foldmath.values import frozen


class Axis(Enum):
    """Along which side parts are counted: the width, from the left, or the height, from the bottom."""

    WIDTH = "width"
    HEIGHT = "height"


class Edge(Enum):
    """An edge of the bounding box of the paper as it lies."""

    LEFT = "left"
    RIGHT = "right"
    TOP = "top"
    BOTTOM = "bottom"

    @property
    def axis(self) -> Axis:
        """The axis on which this edge is an end."""
        return Axis.WIDTH if self in (Edge.LEFT, Edge.RIGHT) else Axis.HEIGHT

    @property
    def position(self) -> Exact:
        """Where the edge is on its axis: 0 for left and bottom, 1 for right and top."""
        return ZERO if self in (Edge.LEFT, Edge.BOTTOM) else ONE

    @property
    def opposite(self) -> "Edge":
        """The edge across the paper."""
        return {
            Edge.LEFT: Edge.RIGHT,
            Edge.RIGHT: Edge.LEFT,
            Edge.TOP: Edge.BOTTOM,
            Edge.BOTTOM: Edge.TOP,
        }[self]


def point_on(edge: Edge, at: Exact) -> Point:
    """Give a point on an edge of the box, by its share of the edge from the left or from the bottom."""
    return Point(edge.position, at) if edge.axis is Axis.WIDTH else Point(at, edge.position)


@frozen
class FoldEdge:
    """``fold left edge to 1/3``: the edge travels onto the line at ``to`` of its axis."""

    edge: Edge
    to: Exact
    behind: bool = False


@frozen
class FoldBothEdges:
    """``fold both edges to middle``: the two folds of a gate, both measured before the first."""

    axis: Axis
    behind: bool = False


@frozen
class FoldAt:
    """``fold at 1/3 moving left``: the crease is at ``at`` of the moving edge's axis."""

    at: Exact
    moving: Edge
    behind: bool = False


@frozen
class FoldPoint:
    """``fold bottom left corner to top right corner``: ``point`` travels onto ``to``."""

    point: Point
    to: Point
    behind: bool = False


@frozen
class FoldAlong:
    """``fold along (0, 0) (1, 1) moving (0, 1)``: the crease goes through two points."""

    start: Point
    end: Point
    moving: Point
    behind: bool = False


@frozen
class Pleat:
    """``pleat width into 5``: equal parts, folded to and fro."""

    axis: Axis
    parts: int


@frozen
class OpenLast:
    """``open last``: undo the newest fold or pleat still folded."""


@frozen
class Open:
    """``open``: open the sheet flat."""


@frozen
class TurnOver:
    """``turn over``: flip about the vertical middle."""


@frozen
class TurnQuarter:
    """``turn left`` or ``turn right``: a quarter turn; left is counter-clockwise."""

    left: bool


@frozen
class Shade:
    """``shade 2 of 3 across``: columns from the left (width) or rows from the bottom (height)."""

    taken: int
    parts: int
    axis: Axis


@frozen
class Slit:
    """``slit at height 1/2 from 1/4 to 3/4``: a cut along creases, through every layer that lies there.

    Args:
        axis: the axis on which the slit has one place, ``at``; it runs along the other.
        at: a fraction of the box on that axis.
        start: where it begins, a fraction of the box on the other axis, below ``end``.
        end: where it ends.
    """

    axis: Axis
    at: Exact
    start: Exact
    end: Exact


@frozen
class Gather:
    """``gather into booklet with cover at column 3``: close the ring of panels round a slit, or the layers.

    Args:
        column: of page 1 in the bottom row, counted from 0; None if it was not said.
    """

    column: int | None = None


FoldStep: TypeAlias = FoldEdge | FoldBothEdges | FoldAt | FoldPoint | FoldAlong | Pleat
OpenStep: TypeAlias = OpenLast | Open
TurnStep: TypeAlias = TurnOver | TurnQuarter

Step: TypeAlias = FoldStep | OpenStep | TurnStep | Shade | Slit | Gather
"""Every kind of step. Who asks for more than one kind closes with ``assert_never``, so that mypy names
every branch that a new kind must have."""

FEWEST_PLEATS, MOST_PLEATS = 2, 12
"""A pleat into one part is no fold; past twelve, parts of a sheet are narrower than a finger."""


def fold_into(axis: Axis, parts: int) -> FoldEdge | Pleat:
    """Give the step that folds the paper into equal parts: halves from edge to edge, more by a pleat."""
    if parts > FEWEST_PLEATS:
        return Pleat(axis, parts)
    edge = Edge.LEFT if axis is Axis.WIDTH else Edge.TOP
    return FoldEdge(edge, edge.opposite.position)


def passes(step: Step) -> int:
    """Tell how many times a step goes through the panels: once for each fold."""
    match step:
        case Pleat(parts=parts):
            return parts - 1
        case FoldBothEdges():
            return 2
        case FoldEdge() | FoldAt() | FoldPoint() | FoldAlong():
            return 1
        case Open() | OpenLast() | TurnOver() | TurnQuarter() | Shade() | Slit() | Gather():
            return 1
        case _:
            assert_never(step)
