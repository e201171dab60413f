"""No layer passes through another: the laws of the stack, for the paper as it lies now.

Source:
    The conditions where creases and layers overlap: J. Justin, "Towards a mathematical theory of origami",
    in Origami Science and Art (1997) 15-29; named taco-taco, taco-tortilla and tortilla-tortilla since.
"""

from collections import defaultdict
from itertools import combinations
from typing import NamedTuple, TypeAlias

from paper.inspection import Breach, DirectedEdge, Side, ends, hinges, runs_through, turning

from foldmath.paper.state import FoldedState, Kind, Panel
from foldmath.plane.lines import Point
from foldmath.plane.numbers import ONE, ZERO, Exact
from foldmath.plane.overlaps import counter_clockwise, meet, pairs_that_share_area, spans
from foldmath.plane.polygons import Polygon

Footprints: TypeAlias = dict[Polygon, list[int]]
LineName: TypeAlias = tuple[Exact, Exact, Exact]

OWN_PLACES = "panels that overlap have places of their own"
NO_CROSSING = "no layer passes through another"
KIND_SHOWS = "a valley fold holds printed sides together, a mountain fold the backs"


class Strand(NamedTuple):
    """Paper that meets a line on the table, seen end on: the place of each panel, and whether it lies left.

    Args:
        segment: the part of the line where it does, in order.
        panels: the two panels of a hinge, or twice the one panel that the line runs through.
        left: for each of the two, whether it lies to the left of the segment.
        places: for each of the two, its place in the stack.
    """

    segment: DirectedEdge
    panels: tuple[int, int]
    left: tuple[bool, bool]
    places: tuple[int, int]


def overlapping_panels_have_own_places(state: FoldedState) -> tuple[Breach, ...]:
    """Find panels that lie over one another and claim the same place in the stack."""
    footprints = _footprints(state)
    breaches = [
        Breach(OWN_PLACES, pair, state.panels[pair[0]].lying)
        for panels in footprints.values()
        for pair in combinations(panels, 2)
        if _place(state, pair[0]) == _place(state, pair[1])
    ]
    shapes, stacks = list(footprints), list(footprints.values())
    for one, other in pairs_that_share_area(shapes):
        over, under = stacks[one], stacks[other]
        if not {_place(state, index) for index in over}.isdisjoint(_place(state, index) for index in under):
            breaches.append(Breach(OWN_PLACES, (*over, *under), shapes[one]))
    return tuple(breaches)


def no_layer_passes_through_another(state: FoldedState) -> tuple[Breach, ...]:
    """Find hinges whose paper cannot lie as their places say without passing through other paper."""
    strands = _hinge_strands(state)
    on_line: dict[LineName, list[Strand]] = defaultdict(list)
    on_segment: dict[DirectedEdge, list[Strand]] = defaultdict(list)
    for strand in strands:
        on_line[_line_name(strand.segment)].append(strand)
        on_segment[strand.segment].append(strand)
    pairs = [
        (one, other)
        for together in on_line.values()
        for one, other in combinations(together, 2)
        if max(one.segment[0], other.segment[0]) < min(one.segment[1], other.segment[1])
    ]
    reach = {segment: spans(segment) for segment in on_segment}
    for footprint, panels in _footprints(state).items():
        across, up = spans(footprint)
        for segment, there in on_segment.items():
            if all(map(meet, reach[segment], (across, up))) and runs_through(segment, footprint):
                through = [_through(segment, state, index) for index in panels]
                pairs += [(strand, other) for strand in there for other in through]
    return tuple(
        Breach(NO_CROSSING, (*one.panels, *other.panels), one.segment)
        for one, other in pairs
        if _cross(one, other)
    )


def kinds_agree_with_the_stack(state: FoldedState) -> tuple[Breach, ...]:
    """Find creases folded now whose kind, seen on the printed side, is not the one that the stack shows.

    Of the two panels, the one with its printed side up lies below the other just when the printed sides
    look at each other, and that is a valley.
    """
    breaches = []
    for one, other in hinges(state):
        if not (one.crease and one.crease.fold):
            continue
        up, down = (one, other) if _printed_side_up(state, one) else (other, one)
        shown = Kind.VALLEY if _place(state, up.panel) < _place(state, down.panel) else Kind.MOUNTAIN
        if one.crease.kind is not shown:
            breaches.append(Breach(KIND_SHOWS, (one.panel, other.panel)))
    return tuple(breaches)


def _printed_side_up(state: FoldedState, side: Side) -> bool:
    return state.panels[side.panel].placements[-1].motion.upright


def _place(state: FoldedState, index: int) -> int:
    return state.panels[index].placements[-1].place


def _footprints(state: FoldedState) -> Footprints:
    """Gather the panels that lie on exactly the same part of the table, to look at each part once."""
    found: dict[frozenset[Point], list[int]] = defaultdict(list)
    for index, panel in enumerate(state.panels):
        found[frozenset(panel.lying)].append(index)
    return {counter_clockwise(state.panels[panels[0]].lying): panels for panels in found.values()}


def _hinge_strands(state: FoldedState) -> list[Strand]:
    strands = []
    for hinge in hinges(state):
        start, end = sorted(ends(state.panels[hinge.one.panel].lying, hinge.one.edge))
        segment = (start, end)
        one, other = hinge.one.panel, hinge.other.panel
        strands.append(
            Strand(
                segment,
                (one, other),
                (_lies_left(segment, state.panels[one]), _lies_left(segment, state.panels[other])),
                (_place(state, one), _place(state, other)),
            )
        )
    return strands


def _lies_left(segment: DirectedEdge, panel: Panel) -> bool:
    return any(turning(*segment, corner) > ZERO for corner in panel.lying)


def _through(segment: DirectedEdge, state: FoldedState, index: int) -> Strand:
    place = _place(state, index)
    return Strand(segment, (index, index), (True, False), (place, place))


def _line_name(segment: DirectedEdge) -> LineName:
    """Name the line through a segment, alike for all segments on it: x = c or y = slope x + c."""
    start, end = segment
    if start.x == end.x:
        return ONE, ZERO, start.x
    slope = (end.y - start.y) / (end.x - start.x)
    return slope, ONE, start.y - slope * start.x


def _cross(one: Strand, other: Strand) -> bool:
    """Tell whether two strands on the same part of a line pass through each other."""
    if _bends(one) and _bends(other):
        if one.left[0] is not other.left[0]:
            return False
        return len({_between(place, one.places) for place in other.places}) == 2
    if _bends(one):
        return _between(_place_on(other, left=one.left[0]), one.places)
    if _bends(other):
        return _between(_place_on(one, left=other.left[0]), other.places)
    orders = {_place_on(one, left=left) < _place_on(other, left=left) for left in (True, False)}
    return len(orders) == 2


def _bends(strand: Strand) -> bool:
    return strand.left[0] is strand.left[1]


def _place_on(strand: Strand, *, left: bool) -> int:
    return strand.places[strand.left.index(left)]


def _between(place: int, places: tuple[int, int]) -> bool:
    return min(places) < place < max(places)
