"""What hands can do besides folding along one line: fans, opening, turning, shading, cutting, a booklet."""

from collections.abc import Iterable, Iterator
from enum import Enum
from itertools import combinations, islice

from foldmath.paper.moments.performing import fold_lines, perform
from foldmath.paper.refusals import StepRefused
from foldmath.paper.state import FoldedState, Kind
from foldmath.paper.steps import (
    FEWEST_PLEATS,
    MOST_PLEATS,
    Axis,
    Gather,
    Open,
    OpenLast,
    Pleat,
    Shade,
    Slit,
    Step,
    TurnOver,
    TurnQuarter,
)
from foldmath.plane.lines import Point
from foldmath.plane.numbers import HALF, ONE, ZERO, Exact, denominator, exact
from foldmath.pointing.foresight import Foresight
from foldmath.pointing.places import is_sayable, share_of
from foldmath.values import frozen

MOST_SHADED = 24
"""Parts of a side that are offered to be shaded: a fan of twelve folded in half; no class shades finer."""

MOST_CUTS, MOST_CUTS_TRIED = 24, 60
"""The simplest cuts are offered; each must be tried on the paper, since it must not part the sheet."""


class Act(Enum):
    """What can be done with the paper by other means than carrying an edge or corner."""

    FAN = "fan"
    OPEN_LAST = "open last"
    OPEN = "open"
    TURN_OVER = "turn over"
    TURN_LEFT = "turn left"
    TURN_RIGHT = "turn right"
    SHADE = "shade"
    CUT = "cut"
    BOOKLET = "booklet"


@frozen
class Choice:
    """The ways to do an act now, plainest first; or, where there is none, why not."""

    steps: tuple[Step, ...]
    refusal: StepRefused | None = None


def choices(state: FoldedState) -> dict[Act, Choice]:
    """Give for every act the ways to do it with the paper as it lies, or why it cannot be done.

    Of cuts only the first is looked for, since each must be tried; ``cuts`` gives the others.
    """
    return {act: _choice(_ways(act, state), _EXAMPLES[act], state) for act in Act}


def cuts(state: FoldedState) -> tuple[Slit, ...]:
    """Give the cuts that can be made now along creases, plainest first."""
    return tuple(islice(_cuts(state), MOST_CUTS))


_EXAMPLES: dict[Act, Step] = {
    Act.FAN: Pleat(Axis.WIDTH, FEWEST_PLEATS),
    Act.OPEN_LAST: OpenLast(),
    Act.OPEN: Open(),
    Act.TURN_OVER: TurnOver(),
    Act.TURN_LEFT: TurnQuarter(left=True),
    Act.TURN_RIGHT: TurnQuarter(left=False),
    Act.SHADE: Shade(1, FEWEST_PLEATS, Axis.WIDTH),
    Act.CUT: Slit(Axis.HEIGHT, HALF, exact(1, 4), exact(3, 4)),
    Act.BOOKLET: Gather(),
}
"""What the paper is asked to do, to hear why it cannot."""


def _choice(ways: Iterable[Step], example: Step, state: FoldedState) -> Choice:
    steps = tuple(ways)
    if steps:
        return Choice(steps)
    refusal = refusal_of(example, state)
    # A slit may end between creases too, so that the example can be cut where no two of them cross.
    return Choice((), refusal) if refusal else Choice((example,))


def refusal_of(step: Step, state: FoldedState) -> StepRefused | None:
    """Give why a step cannot be done; None if it can."""
    try:
        perform(step, state)
    except StepRefused as refusal:
        return refusal
    return None


def _ways(act: Act, state: FoldedState) -> Iterator[Step]:
    if act is Act.FAN:
        return _fans(state)
    if act is Act.SHADE:
        return _shadings(state)
    if act is Act.CUT:
        return islice(_cuts(state), 1)
    example = _EXAMPLES[act]
    return iter(() if refusal_of(example, state) else (example,))


def _fans(state: FoldedState) -> Iterator[Pleat]:
    """Give the fans that keep within the limits; what they crease is foreseen, not folded."""
    if state.gathered:
        return
    foresight = Foresight(state)
    for axis in Axis:
        for parts in range(FEWEST_PLEATS, MOST_PLEATS + 1):
            fan = Pleat(axis, parts)
            if foresight.is_easy_for_fans or foresight.allows(*(line for line, _ in fold_lines(fan, state))):
                yield fan


def _shadings(state: FoldedState) -> Iterator[Shade]:
    """Give every number of every kind of parts whose creases are there; not the whole sheet."""
    for axis in Axis:
        for parts in range(FEWEST_PLEATS, MOST_SHADED + 1):
            if refusal_of(Shade(1, parts, axis), state) is None:
                yield from (Shade(taken, parts, axis) for taken in range(1, parts))


def _cuts(state: FoldedState) -> Iterator[Slit]:
    for cut in islice(_cuts_along_creases(state), MOST_CUTS_TRIED):
        if refusal_of(cut, state) is None:
            yield cut


def _cuts_along_creases(state: FoldedState) -> Iterator[Slit]:
    """Give the cuts between two places where creases meet on a line, plainest first, then longest."""
    found = []
    for (axis, at), along in _crease_lines(state).items():
        for start, end in combinations(sorted(along), 2):
            if is_sayable(at, start, end) and not (start == ZERO and end == ONE):
                found.append(Slit(axis, at, start, end))
    return iter(sorted(found, key=_cut_rank))


def _cut_rank(cut: Slit) -> tuple[int, int, Exact]:
    return denominator(cut.at), max(denominator(cut.start), denominator(cut.end)), cut.start - cut.end


def _crease_lines(state: FoldedState) -> dict[tuple[Axis, Exact], set[Exact]]:
    """Give the upright and level creases as they lie: for the place of each, the places along it."""
    box = state.table.box
    found: dict[tuple[Axis, Exact], set[Exact]] = {}
    for panel in state.panels:
        corners = [share_of(corner, box) for corner in panel.lying]
        for index, crease in enumerate(panel.edges):
            start, end = corners[index], corners[index + 1 - len(corners)]
            if crease is None or crease.kind is Kind.CUT:
                continue
            for axis, at in _axes(start, end):
                if at in (ZERO, ONE):
                    continue  # Along the paper's own edge nobody cuts.
                along = {start.y, end.y} if axis is Axis.WIDTH else {start.x, end.x}
                found.setdefault((axis, at), set()).update(along)
    return found


def _axes(start: Point, end: Point) -> Iterator[tuple[Axis, Exact]]:
    if start.x == end.x:
        yield Axis.WIDTH, start.x
    elif start.y == end.y:
        yield Axis.HEIGHT, start.y
