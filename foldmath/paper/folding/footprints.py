"""How a fold line meets the footprints of panels.

Many panels share one footprint: after ten halvings a thousand panels lie on the same rectangle. So the
line is met once for each footprint, and each panel is cut by the shares found there, on its own corners.
"""

from typing import NamedTuple, TypeVar

from foldmath.plane import polygons
from foldmath.plane.lines import Line
from foldmath.plane.motions import Motion
from foldmath.plane.numbers import ZERO, Exact
from foldmath.plane.polygons import Polygon

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


class Cut(NamedTuple):
    """Where the line crosses a footprint; it is convex, so its corners on the moving hand are one run.

    The outline enters that run where it meets the line going ``inward`` and leaves it going ``outward``.

    Args:
        first: the first corner of the run.
        run: how many corners it has.
        outward: the share of the edge after the run at which it crosses the line; None if it ends on it.
        inward: the share of the edge before the run, taken backwards from the run; None likewise.
    """

    first: int
    run: int
    outward: Exact | None
    inward: Exact | None

    def parts(self, corners: Polygon) -> tuple[Polygon, Polygon]:
        """Cut a polygon that lies on this footprint: the staying part, then the moving part."""
        first, run, outward, inward = self
        corners = corners[first:] + corners[:first]
        if outward is None:
            leaving, begin = corners[run], run + 1
        else:
            leaving, begin = polygons.between(corners[run - 1], corners[run], outward), run
        if inward is None:
            entering, end = corners[-1], -1
        else:
            entering, end = polygons.between(corners[0], corners[-1], inward), len(corners)
        return (leaving, *corners[begin:end], entering), (entering, *corners[:run], leaving)

    def edges(self, edges: tuple[E, ...], along_line: E) -> tuple[tuple[E, ...], tuple[E, ...]]:
        """Share out what the edges carry: for the staying part, then for the moving part."""
        first, run, outward, inward = self
        edges = edges[first:] + edges[:first]
        begin = run - 1 if outward is not None else run
        end = len(edges) if inward is not None else -1
        return (*edges[begin:end], along_line), (edges[-1], *edges[:run], along_line)


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

    def meet(self, lying: Polygon) -> Beside | Crossed:
        """Tell how the line meets a footprint, which must be kept alive while the fold lasts."""
        meeting = self._met.get(id(lying))
        if meeting is None:
            self._met[id(lying)] = meeting = self._meet(lying)
        return meeting

    def _share(self, lying: Polygon) -> Polygon:
        return self._shared.setdefault(lying, lying)

    def _carried(self, polygon: Polygon) -> Polygon:
        return self._share(tuple(self.mirror.carry(corner) for corner in polygon))

    def _meet(self, lying: Polygon) -> Beside | Crossed:
        sides = [self.line.side(corner) for corner in lying]
        if max(sides) > ZERO > min(sides):
            return self._cross(lying, sides)
        moves = max(sides) > ZERO
        along = tuple(edge for edge, side in enumerate(sides) if side == ZERO == sides[edge + 1 - len(sides)])
        return Beside(moves, self._carried(lying) if moves else self._share(lying), along)

    def _cross(self, lying: Polygon, sides: list[Exact]) -> Crossed:
        count = len(sides)
        first = next(index for index in range(count) if sides[index] > ZERO >= sides[index - 1])
        run = next(steps for steps in range(1, count) if sides[(first + steps) % count] <= ZERO)
        last, beyond = sides[(first + run - 1) % count], sides[(first + run) % count]
        start, before = sides[first], sides[first - 1]
        outward = last / (last - beyond) if beyond else None
        inward = start / (start - before) if before else None
        cut = Cut(first, run, outward, inward)
        staying, moving = cut.parts(lying)
        share = polygons.area(moving) / polygons.area(lying)
        return Crossed(cut, share, self._share(staying), self._carried(moving))
