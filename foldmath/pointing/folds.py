"""The folds that the step language can say of the paper as it lies: what travels, and where it lands."""

from collections.abc import Iterable, Iterator
from dataclasses import replace
from functools import cache
from itertools import chain
from typing import TypeAlias

from foldmath.paper.state import FoldedState
from foldmath.paper.steps import Axis, Edge, FoldAlong, FoldAt, FoldEdge, FoldPoint
from foldmath.plane.lines import Line, Point, bisector, line_through
from foldmath.plane.motions import reflection
from foldmath.plane.numbers import HALF, ONE, ZERO, Exact, denominator
from foldmath.plane.polygons import Box
from foldmath.pointing.foresight import Foresight
from foldmath.pointing.places import (
    BOX_CORNERS,
    COARSE,
    DIAGONALS,
    MIDDLE,
    SIMPLE,
    Seen,
    is_sayable,
    plainness,
    plainness_seen,
    share_of,
)
from foldmath.values import frozen

MOST_FOLDS = 500
"""More than this a hand cannot tell apart, and a page need not be told; the plainest are kept."""

MOST_CORNERS = 12
"""A hand finds its way among so many corners; the paper of a class has four to eight."""


@frozen
class HeldEdge:
    """An edge of the paper's box, taken in the hand."""

    edge: Edge

    @property
    def grip(self) -> Point:
        """Where the hand has it, as shares of the box: at its middle."""
        at = self.edge.position
        return Point(at, HALF) if self.edge.axis is Axis.WIDTH else Point(HALF, at)


@frozen
class HeldCorner:
    """A corner of the paper, taken in the hand; shares of the box."""

    grip: Point


Held: TypeAlias = HeldEdge | HeldCorner
OneLineFold: TypeAlias = FoldEdge | FoldAt | FoldPoint | FoldAlong


@frozen
class OfferedFold:
    """A fold that can be done now, over and behind alike.

    Args:
        step: the fold over.
        held: what travels.
        lands: where its grip comes to lie, as shares of the box.
        plainness: the plainest have the smallest number; the larger, the finer the place to find.
    """

    step: OneLineFold
    held: Held
    lands: Point
    plainness: int

    @property
    def behind(self) -> OneLineFold:
        """The same fold, the moving part travelling underneath."""
        return replace(self.step, behind=True)

    def line(self, box: Box) -> Line:
        """Give where the crease falls, in table coordinates, the moving paper on its positive hand."""
        return bisector(box.at(*self.held.grip), box.at(*self.lands))


Offers: TypeAlias = dict[tuple[Held, Point], OfferedFold]


def offered_folds(state: FoldedState) -> tuple[OfferedFold, ...]:
    """Give the folds that a hand can do with the paper as it lies, plainest first; none of a booklet.

    Every one can be done and can be said in a sentence; of two that carry the same to the same place, the
    plainer is kept.
    """
    if state.gathered:
        return ()
    foresight = Foresight(state)
    seen = Seen(foresight)
    fills = foresight.fills_its_box
    offers: Offers = dict(_usual_folds() if fills else _usual_edges())
    _add(offers, _edges_to_seen(seen))
    _add(offers, _corners(foresight, seen, COARSE if not fills else ()))
    plainest = sorted(offers.values(), key=lambda fold: fold.plainness)
    if not (foresight.is_easy and fills):
        plainest = [fold for fold in plainest if _can_be_done(fold, foresight)]
    return tuple(plainest[:MOST_FOLDS])


def _can_be_done(fold: OfferedFold, foresight: Foresight) -> bool:
    """Tell whether a fold can be done; a line inside the box always has paper on both hands."""
    if foresight.is_easy:
        return isinstance(fold.held, HeldEdge) or foresight.is_parted_by(fold.line(foresight.box))
    return foresight.allows(fold.line(foresight.box))


def held_things(state: FoldedState) -> tuple[Held, ...]:
    """Give what a hand can take of the paper as it lies: its edges, then its corners, counter-clockwise."""
    if state.gathered:
        return ()
    edges = map(HeldEdge, (Edge.LEFT, Edge.BOTTOM, Edge.RIGHT, Edge.TOP))
    return (*edges, *map(HeldCorner, _graspable(Foresight(state))))


def _add(offers: Offers, folds: Iterable[OfferedFold]) -> None:
    for fold in folds:
        known = offers.get((fold.held, fold.lands))
        if known is None or fold.plainness < known.plainness:
            offers[fold.held, fold.lands] = fold


@cache
def _usual_edges() -> Offers:
    """Give the folds of edges that every paper has; they hold for shares of any box, and so are made once."""
    offers: Offers = {}
    for edge in Edge:
        creases = {*SIMPLE, *((edge.position + landing) * HALF for landing in SIMPLE)}
        _add(offers, (_edge_fold(edge, at) for at in sorted(creases) if ZERO < at < ONE))
    return offers


@cache
def _usual_folds() -> Offers:
    """Give the folds that every paper has that fills its box."""
    offers = dict(_usual_edges())
    for held in BOX_CORNERS:
        _add(offers, (_corner_fold(held, aim, _finer(aim)) for aim in COARSE if aim != held))
    return offers


def _finer(point: Point) -> int:
    return max(plainness(point.x), plainness(point.y))


def _edges_to_seen(seen: Seen) -> Iterator[OfferedFold]:
    """Give the folds that carry an edge onto a line that is seen, and those that crease along one."""
    for edge in Edge:
        for share in seen.lines[edge.axis]:
            plain = plainness_seen(share)
            onto = (edge.position + share) * HALF
            if share != edge.position and is_sayable(onto):
                yield replace(_edge_fold(edge, onto), step=FoldEdge(edge, share), plainness=plain)
            if ZERO < share < ONE:
                yield replace(_edge_fold(edge, share), plainness=plain)


def _edge_fold(edge: Edge, at: Exact) -> OfferedFold:
    held, step = HeldEdge(edge), edge_step(edge, at)
    across, up = held.grip
    lands = at + at - edge.position
    landing = Point(lands, up) if edge.axis is Axis.WIDTH else Point(across, lands)
    return OfferedFold(step, held, landing, plainness(step.to if isinstance(step, FoldEdge) else at))


def edge_step(edge: Edge, at: Exact) -> FoldEdge | FoldAt:
    """Name the fold of an edge that creases at a share of its axis.

    By where the edge goes, if that is an edge, the middle, or has a smaller denominator; else by the crease.
    """
    lands = at + at - edge.position
    inside = ZERO <= lands <= ONE
    if lands in (edge.opposite.position, HALF) or (inside and denominator(lands) < denominator(at)):
        return FoldEdge(edge, lands)
    return FoldAt(at, edge)


def _corners(foresight: Foresight, seen: Seen, others: Iterable[Point]) -> Iterator[OfferedFold]:
    """Give the folds of corners: onto crossings that are seen and other places, and along slanted lines."""
    box, corners = foresight.box, _graspable(foresight)
    for held in corners:
        aims = chain(
            ((aim, _finer_seen(aim)) for aim in seen.crossings), ((aim, _finer(aim)) for aim in others)
        )
        yield from (_corner_fold(held, aim, plain) for aim, plain in aims if aim != held)
    for slant in dict.fromkeys((*DIAGONALS, *seen.slants)):
        line = line_through(*(box.at(*place) for place in slant))
        plain = MIDDLE if slant in DIAGONALS else max(map(_finer_seen, slant))
        for hand in (line, line.reversed()):
            sides = [(hand.side(box.at(*corner)), corner) for corner in corners]
            farthest, held = max(sides, default=(ZERO, Point(ZERO, ZERO)))
            if farthest > ZERO:
                lands = share_of(reflection(line).carry(box.at(*held)), box)
                yield OfferedFold(FoldAlong(*slant, moving=held), HeldCorner(held), lands, max(MIDDLE, plain))


def _finer_seen(point: Point) -> int:
    return max(plainness_seen(point.x), plainness_seen(point.y))


def _graspable(foresight: Foresight) -> list[Point]:
    corners = [share_of(corner, foresight.box) for corner in foresight.corners]
    return [corner for corner in corners if is_sayable(*corner)][:MOST_CORNERS]


def _corner_fold(held: Point, aim: Point, plain: int) -> OfferedFold:
    return OfferedFold(_corner_step(held, aim), HeldCorner(held), aim, plain)


def _corner_step(held: Point, aim: Point) -> OneLineFold:
    """Name the fold of a corner: where its crease is upright or level, as the fold of the edge on its side.

    Half-way between two places that can be said may be one that cannot: then the corner is named.
    """
    middle = Point((held.x + aim.x) * HALF, (held.y + aim.y) * HALF)
    if held.y == aim.y and is_sayable(middle.x):
        return edge_step(Edge.LEFT if held.x < aim.x else Edge.RIGHT, middle.x)
    if held.x == aim.x and is_sayable(middle.y):
        return edge_step(Edge.BOTTOM if held.y < aim.y else Edge.TOP, middle.y)
    return FoldPoint(held, aim)
