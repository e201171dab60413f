"""Where scissors start and stop: takes the slits of a lesson, gives marks on the opened sheet."""

from collections.abc import Iterator
from itertools import pairwise

from foldmath.guides.marks.fold_lines import line_of
from foldmath.guides.marks.ticks import edges_at
from foldmath.lesson.proving import ProvedLesson
from foldmath.paper.moments.moment import Moment
from foldmath.paper.state import Kind, Sheet
from foldmath.paper.steps import Axis, Slit
from foldmath.plane.lines import Point
from foldmath.plane.numbers import HALF, Exact
from foldmath.plane.polygons import between
from foldmath.values import frozen


@frozen
class Cut:
    """A slit on the opened sheet, in sheet units.

    Args:
        start, end: its ends.
        begins: where scissors start: on the folded edge, at the edge of the sheet, or, where the slit is told
            on the open sheet, at its middle, over which the sheet is folded in half to cut.
        stops: where they stop; none if both ends are at edges.
    """

    start: Point
    end: Point
    begins: tuple[Point, ...]
    stops: tuple[Point, ...]


@frozen
class _Part:
    """One newly cut edge: its ends on the opened sheet, and how far along the slit they lay then."""

    start: Point
    end: Point
    along: tuple[Exact, Exact]


def cuts(proved: ProvedLesson) -> tuple[Cut, ...]:
    """Give every slit of a lesson, in the order of the steps, then from the left."""
    return tuple(
        cut
        for moment in proved.moments
        if isinstance(moment.step, Slit)
        for cut in _cuts_of(moment, moment.step.axis)
    )


def _cuts_of(moment: Moment, axis: Axis) -> Iterator[Cut]:
    parts = sorted(_parts(moment, axis), key=lambda part: (line_of(part.start, part.end), part.start))
    run: list[_Part] = []
    for part in parts:
        if run and (run[-1].end != part.start or not _in_line(run[-1], part)):
            yield _cut(moment.after.sheet, run)
            run = []
        run.append(part)
    if run:
        yield _cut(moment.after.sheet, run)


def _parts(moment: Moment, axis: Axis) -> Iterator[_Part]:
    before = {(crease.start, crease.end) for crease in moment.before.creases if crease.kind is Kind.CUT}
    for panel in moment.after.panels:
        carry = panel.placements[-1].motion.carry
        ends = zip(panel.corners, (*panel.corners[1:], panel.corners[0]), panel.edges, strict=True)
        for start, end, crease in ends:
            if crease and crease.kind is Kind.CUT and start < end and (start, end) not in before:
                along = (carry(start), carry(end))
                yield _Part(start, end, (_along(along[0], axis), _along(along[1], axis)))


def _along(point: Point, axis: Axis) -> Exact:
    return point.y if axis is Axis.WIDTH else point.x


def _in_line(one: _Part, other: _Part) -> bool:
    return line_of(one.start, one.end) == line_of(other.start, other.end)


def _cut(sheet: Sheet, run: list[_Part]) -> Cut:
    start, end = run[0].start, run[-1].end
    at_edge = tuple(point for point in (start, end) if edges_at(sheet, point))
    begins = _turns(run) or at_edge[:1] or (between(start, end, HALF),)
    stops = tuple(point for point in (start, end) if point not in at_edge)
    return Cut(start, end, begins, stops)


def _turns(run: list[_Part]) -> tuple[Point, ...]:
    """Give the places where the paper turned back while it was cut, at the side where scissors enter.

    A fan turns back at both sides; scissors enter where no end of the cut lies.
    """
    turned = [
        (part.end, part.along[1])
        for part, following in pairwise(run)
        if (part.along[1] > part.along[0]) != (following.along[1] > following.along[0])
    ]
    ends = {run[0].along[0], run[-1].along[1]}
    entered = tuple(point for point, along in turned if along not in ends)
    return entered or tuple(point for point, _ in turned)
