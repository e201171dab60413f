"""Cutting a slit: along creases, through every layer that lies there, without parting the sheet."""

from collections.abc import Iterable, Iterator
from dataclasses import replace
from itertools import combinations, islice
from typing import NamedTuple

from foldmath.paper.folding.hinges import pieces
from foldmath.paper.refusals import LineUndefined, NoCreaseThere, SheetParted
from foldmath.paper.state import CUT, Crease, FoldedState, Panel
from foldmath.paper.steps import Axis, Slit
from foldmath.phrases import Phrase, phrase
from foldmath.plane.lines import Point, line_through
from foldmath.plane.numbers import ONE, ZERO, Exact, bit_length, written
from foldmath.plane.polygons import Box, between

MOST_TRIALS = 24
"""How many slits near one that cannot be cut are tried before none is offered."""

MOST_BITS_OFFERED = 10
"""No slit is offered whose places need numbers longer than this: nobody could cut so finely."""


class Span(NamedTuple):
    """A part of a line parallel to an axis, from ``start`` up to ``end``."""

    start: Exact
    end: Exact

    def common(self, other: "Span") -> "Span | None":
        """Give the part that both have, if it has any length."""
        start, end = max(self.start, other.start), min(self.end, other.end)
        return Span(start, end) if start < end else None


class Cutting(NamedTuple):
    """Where the scissors go, in table coordinates: a line on which ``axis`` has one value, and how far."""

    axis: Axis
    at: Exact
    span: Span

    def across(self, point: Point) -> Exact:
        """Give the coordinate that is the same all along the slit."""
        return point.x if self.axis is Axis.WIDTH else point.y

    def along(self, point: Point) -> Exact:
        """Give the coordinate that runs along the slit."""
        return point.y if self.axis is Axis.WIDTH else point.x


def slit(state: FoldedState, step: Slit) -> FoldedState:
    """Cut along existing creases, through every layer that lies there; panels stay, creases become cuts.

    A slit may end inside a crease: there both panels get a corner on their straight edge.

    Raises:
        LineUndefined: the slit has no length, or leaves the box of the paper.
        NoCreaseThere: on a part of it there is a layer without a crease, or no paper to cut.
        SheetParted: it would part the sheet in two.
    """
    if not (ZERO <= step.at <= ONE and ZERO <= step.start < step.end <= ONE):
        near = _nearest_slit(state, _inside(step))
        raise LineUndefined(phrase("a slit runs between two places on the paper"), _advice(state), near)
    cutting = _cutting(state.table.box, step)
    missing = _without(cutting.span, _creased(state.panels, cutting))
    if missing:
        raise _no_crease(state, step, missing[0])
    panels = _cut_all(state, cutting)
    if panels == state.panels:
        raise NoCreaseThere(phrase("this slit is cut already"), phrase("leave this step out"))
    if len(pieces(panels)) > 1:
        near = _nearest_slit(state, step)
        raise SheetParted(
            phrase("this slit would part the sheet in two"), phrase("leave a part of the crease uncut"), near
        )
    return replace(state, panels=panels, parents=tuple(range(len(panels))))


def slit_between(state: FoldedState, start: Point, end: Point) -> Slit:
    """Give the step that cuts between two points of the opened sheet, which lies open, turned or not."""
    motion, box = state.panels[0].placements[-1].motion, state.table.box
    ends = [motion.carry(point) for point in (start, end)]
    across = [(point.x - box.left) / box.width for point in ends]
    up = [(point.y - box.bottom) / box.height for point in ends]
    if across[0] == across[1]:
        return Slit(Axis.WIDTH, across[0], min(up), max(up))
    return Slit(Axis.HEIGHT, up[0], min(across), max(across))


def _inside(step: Slit) -> Slit:
    at, start, end = (min(max(number, ZERO), ONE) for number in (step.at, step.start, step.end))
    return (
        Slit(step.axis, at, min(start, end), max(start, end))
        if start != end
        else replace(step, at=at, start=ZERO, end=ONE)
    )


def _cutting(box: Box, step: Slit) -> Cutting:
    if step.axis is Axis.WIDTH:
        at, low, length = box.left + step.at * box.width, box.bottom, box.height
    else:
        at, low, length = box.bottom + step.at * box.height, box.left, box.width
    return Cutting(step.axis, at, Span(low + step.start * length, low + step.end * length))


def _edges_along(panel: Panel, cutting: Cutting) -> Iterator[tuple[Span, Crease | None]]:
    """Give the parts of the line along which a panel has an edge, and what that edge carries."""
    for index, crease in enumerate(panel.edges):
        ends = panel.lying[index], panel.lying[index + 1 - len(panel.lying)]
        if all(cutting.across(end) == cutting.at for end in ends):
            yield Span(*sorted(cutting.along(end) for end in ends)), crease


def _inside_panel(panel: Panel, cutting: Cutting) -> Span | None:
    """Give the part of the line that runs through the inside of a panel, which has no crease there."""
    sides = [cutting.across(corner) - cutting.at for corner in panel.lying]
    if not max(sides) > ZERO > min(sides):
        return None
    meetings = []
    for index, side in enumerate(sides):
        corner, before = panel.lying[index], panel.lying[index - 1]
        if side == ZERO:
            meetings.append(cutting.along(corner))
        elif side * sides[index - 1] < ZERO:
            share = sides[index - 1] / (sides[index - 1] - side)
            meetings.append(cutting.along(between(before, corner, share)))
    return Span(min(meetings), max(meetings))


def _creased(panels: Iterable[Panel], cutting: Cutting) -> list[Span]:
    """Give the parts of the line, joined, where every layer that lies across it has a crease or a cut."""
    creased: list[Span] = []
    bare: list[Span] = []
    for panel in panels:
        creased += (span for span, crease in _edges_along(panel, cutting) if crease)
        through = _inside_panel(panel, cutting)
        bare += [through] if through else []
    joined = _joined(creased)
    for span in bare:
        joined = [part for whole in joined for part in _without(whole, [span])]
    return joined


def _joined(spans: list[Span]) -> list[Span]:
    joined: list[Span] = []
    for span in sorted(spans):
        if joined and span.start <= joined[-1].end:
            joined[-1] = Span(joined[-1].start, max(joined[-1].end, span.end))
        else:
            joined.append(span)
    return joined


def _without(whole: Span, taken: Iterable[Span]) -> list[Span]:
    """Give the parts of a span that others do not cover."""
    left = [whole]
    for span in taken:
        sides = (
            (part.common(Span(part.start, span.start)), part.common(Span(span.end, part.end)))
            for part in left
        )
        left = [side for both in sides for side in both if side]
    return left


def _cut_all(state: FoldedState, cutting: Cutting) -> tuple[Panel, ...]:
    return tuple(_cut(panel, cutting) for panel in state.panels)


def _cut(panel: Panel, cutting: Cutting) -> Panel:
    """Cut the creases of one panel along the line, and give its edges a corner where the slit ends."""
    corners: list[Point] = []
    lying: list[Point] = []
    edges: list[Crease | None] = []
    for index, crease in enumerate(panel.edges):
        following = index + 1 - len(panel.edges)
        start, end = panel.lying[index], panel.lying[following]
        along = crease and cutting.across(start) == cutting.at == cutting.across(end)
        shares = [ZERO, *(_shares_at_ends(cutting, start, end) if along else ())]
        for share, next_share in zip(shares, [*shares[1:], ONE], strict=True):
            middle = cutting.along(between(start, end, (share + next_share) / 2))
            inside = cutting.span.start < middle < cutting.span.end
            corners.append(between(panel.corners[index], panel.corners[following], share))
            lying.append(between(start, end, share))
            edges.append(CUT if along and inside else crease)
    if tuple(edges) == panel.edges:
        return panel
    return _without_needless_corners(
        panel._replace(corners=tuple(corners), lying=tuple(lying), edges=tuple(edges))
    )


def _shares_at_ends(cutting: Cutting, start: Point, end: Point) -> list[Exact]:
    """Give the shares of an edge, in order, at which the slit begins or ends inside it."""
    first, last = cutting.along(start), cutting.along(end)
    shares = ((point - first) / (last - first) for point in cutting.span)
    return sorted(share for share in shares if ZERO < share < ONE)


def _without_needless_corners(panel: Panel) -> Panel:
    """Leave out corners on a straight edge that is cut on both sides, as where a slit was cut further."""
    count = len(panel.corners)
    kept = [
        index
        for index, corner in enumerate(panel.corners)
        if not (
            panel.edges[index] == panel.edges[index - 1] == CUT
            and line_through(panel.corners[index - 1], corner).side(panel.corners[index + 1 - count]) == ZERO
        )
    ]
    return panel._replace(
        corners=tuple(panel.corners[index] for index in kept),
        lying=tuple(panel.lying[index] for index in kept),
        edges=tuple(panel.edges[index] for index in kept),
    )


def _no_crease(state: FoldedState, step: Slit, missing: Span) -> NoCreaseThere:
    box = state.table.box
    low, length = (box.bottom, box.height) if step.axis is Axis.WIDTH else (box.left, box.width)
    start, end = (written((number - low) / length) for number in missing)
    places = {"start": start, "end": end}
    text = (
        phrase("from {start} to {end} there is no crease through every layer to cut along", **places)
        if state.table.layers > 1
        else phrase("from {start} to {end} there is no crease through the sheet to cut along", **places)
    )
    return NoCreaseThere(
        text,
        _advice(state),
        _nearest_slit(state, step),
    )


def _advice(state: FoldedState) -> Phrase:
    return (
        phrase("make a crease there first")
        if state.folds
        else phrase("make a crease there first, then open the sheet")
    )


def _nearest_slit(state: FoldedState, step: Slit) -> Slit | None:
    """Give the nearest slit that can be cut, tried on the paper."""
    for other in islice(_near(state, step), MOST_TRIALS):
        panels = _cut_all(state, _cutting(state.table.box, other))
        if panels != state.panels and len(pieces(panels)) == 1:
            return other
    return None


def _near(state: FoldedState, step: Slit) -> Iterator[Slit]:
    """Give slits from crossing to crossing along creases, nearest first, those on this line before others."""
    box = state.table.box
    low, length = (box.left, box.width) if step.axis is Axis.WIDTH else (box.bottom, box.height)
    whole = _cutting(box, Slit(step.axis, step.at, ZERO, ONE))
    places = {whole.across(corner) for panel in state.panels for corner in panel.lying} | {whole.at}
    for place in sorted(places, key=lambda place: (abs(place - whole.at), place)):
        yield from _on_line(state, step, whole._replace(at=place), (place - low) / length)


def _on_line(state: FoldedState, step: Slit, whole: Cutting, at: Exact) -> list[Slit]:
    length = whole.span.end - whole.span.start
    creased = _creased(state.panels, whole)
    ends = {end for panel in state.panels for span, _ in _edges_along(panel, whole) for end in span}
    slits = [
        Slit(step.axis, at, (start - whole.span.start) / length, (end - whole.span.start) / length)
        for start, end in combinations(sorted(ends), 2)
        if any(part.start <= start and end <= part.end for part in creased)
    ]
    slits = [
        other for other in slits if max(map(bit_length, (at, other.start, other.end))) <= MOST_BITS_OFFERED
    ]
    return sorted(slits, key=lambda other: abs(other.start - step.start) + abs(other.end - step.end))[:8]
