"""What would work in the place of a step that cannot be done: every remedy is tried on the paper first."""

from collections.abc import Iterator
from dataclasses import replace
from itertools import islice
from typing import assert_never

from foldmath.lesson.grammar.numerals import LARGEST_NUMBER
from foldmath.paper.moments.performing import perform
from foldmath.paper.refusals import (
    BookletClosed,
    NotABooklet,
    NothingFolded,
    SheetNotOpen,
    SlitTooLong,
    SlitTooShort,
    StepRefused,
    TooManyPanels,
    TooMuchFolding,
)
from foldmath.paper.state import FoldedState
from foldmath.paper.steps import (
    MOST_PLEATS,
    Axis,
    Edge,
    FoldAlong,
    FoldAt,
    FoldBothEdges,
    FoldEdge,
    FoldPoint,
    FoldStep,
    Gather,
    Open,
    OpenLast,
    OpenStep,
    Pleat,
    Shade,
    Slit,
    Step,
    TurnOver,
    TurnQuarter,
    TurnStep,
)
from foldmath.phrases import Said, phrase
from foldmath.plane.lines import Point
from foldmath.plane.numbers import HALF, ONE, ZERO, Exact, denominator, exact, numerator
from foldmath.words.languages import DEFAULT
from foldmath.words.steps import step_sentence

MOST_TRIALS = 60
"""How many steps are tried on the paper before only advice is given."""

MOST_TRIED_PANELS = 16_384
"""How many panels those trials may fold in all: two or three seconds, and four trials of the finest paper."""

SIMPLE_POSITIONS = sorted({exact(part, parts) for parts in range(2, 9) for part in range(1, parts)})

_CORNERS = [Point(across, up) for across in (ZERO, ONE) for up in (ZERO, ONE)]


def remedy(step: Step, refusal: StepRefused, state: FoldedState, language: str = DEFAULT) -> Said:
    """Give the nearest sentence that works on the paper as it lies, or what to do before this step.

    Args:
        step: what cannot be done.
        refusal: why.
        state: the paper before it.
        language: of sentences that would do, as the lesson's.
    """
    if isinstance(refusal, NothingFolded):
        return phrase("leave this step out")
    if isinstance(refusal, BookletClosed):
        return phrase("leave this step out, or open the booklet before it")
    if isinstance(refusal, NotABooklet | TooMuchFolding) or isinstance(step, Slit):
        return offered(refusal, language)
    if isinstance(refusal, SheetNotOpen):
        opened = perform(Open(), state)
        return (
            phrase('put the step "{open}" before this one', open=step_sentence(Open(), language))
            if _works(step, opened)
            else _before(step, opened, [Open()], language)
        )
    trials = min(MOST_TRIALS, MOST_TRIED_PANELS // len(state.panels))
    for other in islice(_instead(step, refusal, state), trials):
        if other != step and _works(other, state):
            return step_sentence(other, language)
    return _before(step, state, [], language)


def offered(refusal: StepRefused, language: str = DEFAULT) -> Said:
    """Say what a refusal itself offers: its step, or else its advice; empty if it has neither."""
    if isinstance(refusal, SlitTooShort):
        return phrase('put "{slit}" before this step', slit=step_sentence(refusal.needed, language))
    if isinstance(refusal, SlitTooLong):
        slit = step_sentence(refusal.needed, language)
        return phrase('cut only "{slit}", or up to {room} past each end', slit=slit, room=refusal.room)
    return step_sentence(refusal.instead, language) if refusal.instead else refusal.hint


def _instead(step: Step, refusal: StepRefused, state: FoldedState) -> Iterator[Step]:
    """Give steps for the place of this one, nearest first."""
    largest = _largest_number(refusal.instead) if refusal.instead else 0
    if refusal.instead and largest <= MOST_PLEATS:
        yield refusal.instead
    yield from _with_fewer_parts(step) if isinstance(refusal, TooManyPanels) else near_steps(step)
    if state.folds and not isinstance(step, Shade):
        yield Open()
    if refusal.instead and MOST_PLEATS < largest <= LARGEST_NUMBER:
        yield refusal.instead


def _largest_number(fold: Step) -> int:
    """Give the largest numerator or denominator by which a step names its places; 1 if it names none."""
    return max((max(abs(numerator(place)), denominator(place)) for place in _places(fold)), default=1)


def _places(step: Step) -> tuple[Exact, ...]:
    """Give the numbers by which a step names its places."""
    match step:
        case FoldEdge(to=place) | FoldAt(at=place):
            return (place,)
        case FoldPoint(point, to):
            return (*point, *to)
        case FoldAlong(start, end, moving):
            return (*start, *end, *moving)
        case Slit(at=at, start=start_at, end=end_at):
            return (at, start_at, end_at)
        case FoldBothEdges() | Pleat() | Shade() | Gather():
            return ()
        case OpenLast() | Open() | TurnOver() | TurnQuarter():
            return ()
        case _:
            assert_never(step)


def _with_fewer_parts(step: Step) -> Iterator[Step]:
    """Give what makes fewer panels: of all steps, only a pleat says into how many parts it folds."""
    return near_steps(step) if isinstance(step, Pleat) else iter(())


def _works(step: Step, state: FoldedState) -> bool:
    try:
        perform(step, state)
    except StepRefused:
        return False
    return True


def _before(step: Step, state: FoldedState, first: list[Step], language: str) -> Said:
    """Say which steps to put before a shading that lacks its creases."""
    if isinstance(step, Shade) and 2 <= step.parts <= MOST_PLEATS:
        missing: list[Step] = [Pleat(step.axis, step.parts), Open()]
        try:
            creased = perform(Open(), perform(missing[0], state))
        except StepRefused:
            return phrase("shade a part that has creases on both sides")
        if _works(step, creased):
            sentences = ", ".join(f'"{step_sentence(other, language)}"' for other in first + missing)
            return phrase("put these steps before this one: {sentences}", sentences=sentences)
    if isinstance(step, Shade):
        return phrase("shade fewer parts, and make their creases first")
    return phrase("leave this step out, or open the sheet before it")


def near_steps(step: Step) -> Iterator[Step]:
    """Give steps that ask for nearly the same, nearest first."""
    if isinstance(step, FoldStep):
        yield from _near_fold(step)
    elif isinstance(step, Shade):
        yield from _near_shade(step)
    elif isinstance(step, OpenStep | TurnStep | Slit | Gather):
        return
    else:
        assert_never(step)


def _near_fold(step: FoldStep) -> Iterator[Step]:
    match step:
        case FoldEdge():
            yield from _near_edge(step)
        case FoldAt():
            for position in _near(step.at):
                yield replace(step, at=position)
        case FoldPoint():
            yield from _near_point(step)
        case FoldAlong():
            yield from _near_along(step)
        case Pleat():
            for parts in range(step.parts - 1, 1, -1):
                yield Pleat(step.axis, parts)
        case FoldBothEdges():
            return
        case _:
            assert_never(step)


def _near_edge(step: FoldEdge) -> Iterator[Step]:
    for position in _near(step.to):
        yield replace(step, to=position)
    yield replace(step, to=step.edge.opposite.position)
    for edge in Edge:
        yield FoldEdge(edge, edge.opposite.position, step.behind)


def _near_point(step: FoldPoint) -> Iterator[Step]:
    held = Point(_within(step.point.x), _within(step.point.y))
    aim = Point(_within(step.to.x), _within(step.to.y))
    yield replace(step, point=held, to=aim)
    for corner in _nearest_corners(aim):
        yield replace(step, point=held, to=corner)
    for corner in _nearest_corners(held):
        yield replace(step, point=corner, to=aim)
        yield replace(step, point=corner, to=Point(ONE - corner.x, ONE - corner.y))


def _near_along(step: FoldAlong) -> Iterator[Step]:
    for corner in _nearest_corners(step.moving):
        yield replace(step, moving=corner)
    start, end = (Point(_within(point.x), _within(point.y)) for point in (step.start, step.end))
    for point in (end, *_nearest_corners(end)):
        for corner in _nearest_corners(step.moving):
            yield FoldAlong(start, point, corner, step.behind)
    yield FoldAlong(Point(HALF, ZERO), Point(HALF, ONE), Point(ZERO, ZERO), step.behind)


def _near_shade(step: Shade) -> Iterator[Step]:
    offers = [
        Shade(taken, parts, step.axis) for parts in range(2, 2 * MOST_PLEATS) for taken in range(1, parts)
    ]
    # One offer for each number of parts, the nearest fraction first, then the nearest number of parts.
    nearest = sorted(offers, key=lambda offer: _distance(offer, step))
    seen: set[int] = set()
    for offer in nearest:
        if offer.parts not in seen:
            seen.add(offer.parts)
            yield offer
    across = step.axis is Axis.WIDTH
    yield replace(step, axis=Axis.HEIGHT if across else Axis.WIDTH)


def _distance(offer: Shade, step: Shade) -> tuple[Exact, int, int]:
    share = exact(offer.taken, offer.parts) - exact(step.taken, step.parts)
    return abs(share), abs(offer.parts - step.parts), abs(offer.taken - step.taken)


def _near(position: Exact) -> list[Exact]:
    return sorted(SIMPLE_POSITIONS, key=lambda simple: abs(simple - position))


def _within(number: Exact) -> Exact:
    return min(max(number, ZERO), ONE)


def _nearest_corners(point: Point) -> list[Point]:
    return sorted(_CORNERS, key=lambda corner: abs(corner.x - point.x) + abs(corner.y - point.y))
