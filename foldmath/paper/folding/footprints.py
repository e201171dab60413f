"""How a fold line meets the footprints of panels.

Many panels share one footprint: after ten halvings a thousand panels lie on the same rectangle. So the
line is met once for each footprint, and each panel is cut by the shares found there, on its own corners.
"""

from collections.abc import Callable
from functools import cache
from operator import itemgetter
from typing import Any, NamedTuple, TypeVar

from foldmath.plane import polygons
from foldmath.plane.lines import Line, Point
from foldmath.plane.motions import Motion
from foldmath.plane.numbers import ZERO, Exact
from foldmath.plane.polygons import Polygon
from foldmath.values import frozen, made

E = TypeVar("E")


class Beside(NamedTuple):
    """A footprint that lies on one hand of the line.

    Args:
        moves: whether it is the moving hand.
        lying: the footprint after the fold.
        along: the edges that lie along the line, each by the corner it leaves.
    """

    moves: bool
    lying: Polygon
    along: tuple[int, ...]


class Share:
    """A share of the way from one number to another.

    A line that crosses a hundred panels of one footprint crosses few columns and rows of the sheet: each
    number is worked out once, and kept by the identity of those that it lies between.
    """

    def __init__(self, share: Exact) -> None:
        self.share = share
        self._known: dict[tuple[int, int], Exact] = {}

    def between(self, start: Point, end: Point) -> Point:
        """Give the point at this share of the way between two, which must be kept as long as this is."""
        x, y = start
        end_x, end_y = end
        # Where edges are level or upright, their ends share a number. What is kept as 0 is worked out anew.
        if x is not end_x:
            x = self._known.get((id(x), id(end_x))) or self._between(x, end_x)
        if y is not end_y:
            y = self._known.get((id(y), id(end_y))) or self._between(y, end_y)
        return made(Point, (x, y))

    def _between(self, start: Exact, end: Exact) -> Exact:
        found = start if start == end else start + self.share * (end - start)
        self._known[id(start), id(end)] = found
        return found


class Crossing(NamedTuple):
    """Where the line crosses an edge: at a share of the way between two corners, each told by its place."""

    start: int
    end: int
    share: Share


Picked = Callable[[tuple[E, ...]], tuple[E, ...]]


@frozen(kw_only=True)
class Cut:
    """Where the line crosses a footprint; it is convex, so its corners on the moving hand are one run.

    Both parts begin and end on the line, and are picked from what a panel has, with what is new after it.

    Args:
        crossings: that after the run of moving corners, then that before it; none at a corner on the line.
        staying, moving: pick the corners of each part from the polygon's and the crossings.
        staying_edges, moving_edges: pick what their edges carry from what the polygon's do and the line.
    """

    crossings: tuple[Crossing, ...]
    staying: Picked[Point]
    moving: Picked[Point]
    staying_edges: Picked[Any]
    moving_edges: Picked[Any]

    def parts(self, corners: Polygon) -> tuple[Polygon, Polygon]:
        """Cut a polygon that lies on this footprint: the staying part, then the moving part."""
        for start, end, share in self.crossings:
            corners += (share.between(corners[start], corners[end]),)
        return self.staying(corners), self.moving(corners)

    def edges(self, edges: tuple[E, ...], along_line: E) -> tuple[tuple[E, ...], tuple[E, ...]]:
        """Share out what the edges carry: for the staying part, then for the moving part."""
        edges += (along_line,)
        return self.staying_edges(edges), self.moving_edges(edges)


def _cut(sides: list[Exact]) -> Cut:
    """Tell where a line crosses a footprint, by the hand on which each of its corners lies."""
    count = len(sides)
    first = next(index for index in range(count) if sides[index] > ZERO >= sides[index - 1])
    run = next(steps for steps in range(1, count) if sides[(first + steps) % count] <= ZERO)
    moved = [(first + step) % count for step in range(run)]
    stayed = [(first + step) % count for step in range(run, count)]
    shares = cache(Share)
    crossings = tuple(
        Crossing(start, end, shares(sides[start] / (sides[start] - sides[end])))
        for start, end in ((moved[-1], stayed[0]), (moved[0], stayed[-1]))
        if sides[end]
    )
    # A corner on the line is itself where both parts begin or end.
    leaves, enters = bool(sides[stayed[0]]), bool(sides[stayed[-1]])
    leaving = count if leaves else stayed[0]
    entering = count + len(crossings) - 1 if enters else stayed[-1]
    inside = stayed[0 if leaves else 1 : len(stayed) if enters else -1]
    return Cut(
        crossings=crossings,
        staying=itemgetter(*[leaving, *inside, entering]),
        moving=itemgetter(*[entering, *moved, leaving]),
        staying_edges=itemgetter(*[moved[-1] if leaves else stayed[0], *inside, count]),
        moving_edges=itemgetter(*[stayed[-1], *moved, count]),
    )


class Crossed(NamedTuple):
    """A footprint that the line crosses.

    Args:
        cut: where it crosses.
        moving_share: the moving part's share of the area.
        staying: the staying part's footprint after the fold.
        moving: the moving part's footprint after the fold.
    """

    cut: Cut
    moving_share: Exact
    staying: Polygon
    moving: Polygon


class Footprints:
    """The footprints met in one fold, each met once."""

    def __init__(self, line: Line, mirror: Motion) -> None:
        self.line = line
        self.mirror = mirror
        self._met: dict[int, Beside | Crossed] = {}
        self._shared: dict[Polygon, Polygon] = {}
        self._hands: set[bool] = set()

    def meet(self, lying: Polygon) -> Beside | Crossed:
        """Tell how the line meets a footprint, which must be kept alive while the fold lasts."""
        meeting = self._met.get(id(lying))
        if meeting is None:
            self._met[id(lying)] = meeting = self._meet(lying)
        return meeting

    @property
    def parted(self) -> bool:
        """Whether there was paper on both hands of the line."""
        return self._hands == {True, False}

    def _share(self, lying: Polygon) -> Polygon:
        return self._shared.setdefault(lying, lying)

    def _carried(self, polygon: Polygon) -> Polygon:
        return self._share(tuple(self.mirror.carry(corner) for corner in polygon))

    def _meet(self, lying: Polygon) -> Beside | Crossed:
        sides = [self.line.side(corner) for corner in lying]
        if max(sides) > ZERO > min(sides):
            self._hands |= {True, False}
            return self._cross(lying, sides)
        moves = max(sides) > ZERO
        self._hands.add(moves)
        along = tuple(edge for edge, side in enumerate(sides) if side == ZERO == sides[edge + 1 - len(sides)])
        return Beside(moves, self._carried(lying) if moves else self._share(lying), along)

    def _cross(self, lying: Polygon, sides: list[Exact]) -> Crossed:
        cut = _cut(sides)
        staying, moving = cut.parts(lying)
        share = polygons.area(moving) / polygons.area(lying)
        return Crossed(cut, share, self._share(staying), self._carried(moving))
