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
class Picks:
    """What the parts of a cut footprint take of it; it is convex, so its moving corners are one run.

    Both parts begin and end on the line.

    Args:
        crossed: the edges crossed after that run and before it, moving corner first; none at one on the line.
        staying, moving: pick the corners of each part from the footprint's and the crossings after them.
        staying_edges, moving_edges: pick what their edges carry, from what the footprint's do and the line.
    """

    crossed: tuple[tuple[int, int], ...]
    staying: Picked[Point]
    moving: Picked[Point]
    staying_edges: Picked[Any]
    moving_edges: Picked[Any]


@cache
def _picks(hands: tuple[int, ...]) -> Picks:
    """Tell what the parts take, by the hand of the line on which each corner lies: 1 moves, 0 is on it."""
    count = len(hands)
    first = next(index for index in range(count) if hands[index] > 0 >= hands[index - 1])
    run = next(steps for steps in range(1, count) if hands[(first + steps) % count] <= 0)
    moved = [(first + step) % count for step in range(run)]
    stayed = [(first + step) % count for step in range(run, count)]
    crossed = [ends for ends in ((moved[-1], stayed[0]), (moved[0], stayed[-1])) if hands[ends[1]]]
    # A corner on the line is itself where both parts begin or end.
    leaves, enters = hands[stayed[0]], hands[stayed[-1]]
    leaving = count if leaves else stayed[0]
    entering = count + len(crossed) - 1 if enters else stayed[-1]
    inside = stayed[0 if leaves else 1 : len(stayed) if enters else -1]
    return Picks(
        crossed=tuple(crossed),
        staying=itemgetter(*[leaving, *inside, entering]),
        moving=itemgetter(*[entering, *moved, leaving]),
        staying_edges=itemgetter(*[moved[-1] if leaves else stayed[0], *inside, count]),
        moving_edges=itemgetter(*[stayed[-1], *moved, count]),
    )


class Cut(NamedTuple):
    """Where the line crosses a footprint, and what the parts take of it."""

    crossings: list[Crossing]
    picks: Picks

    def parts(self, corners: Polygon) -> tuple[Polygon, Polygon]:
        """Cut a polygon that lies on this footprint: the staying part, then the moving part."""
        for start, end, share in self.crossings:
            corners += (share.between(corners[start], corners[end]),)
        return self.picks.staying(corners), self.picks.moving(corners)

    def edges(self, edges: tuple[E, ...], along_line: E) -> tuple[tuple[E, ...], tuple[E, ...]]:
        """Share out what the edges carry: for the staying part, then for the moving part."""
        edges += (along_line,)
        return self.picks.staying_edges(edges), self.picks.moving_edges(edges)


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
        self._shares: dict[Exact, Share] = {}
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

    def _share_of(self, way: Exact) -> Share:
        if way not in self._shares:
            self._shares[way] = Share(way)
        return self._shares[way]

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
        picks = _picks(tuple((side > ZERO) - (side < ZERO) for side in sides))
        crossings = [
            Crossing(start, end, self._share_of(sides[start] / (sides[start] - sides[end])))
            for start, end in picks.crossed
        ]
        cut = Cut(crossings, picks)
        staying, moving = cut.parts(lying)
        share = polygons.area(moving) / polygons.area(lying)
        return Crossed(cut, share, self._share(staying), self._carried(moving))
