"""The pictures by which a sheet is folded into its booklet: what each shows, from the sheet's own steps.

Pupils cut from a folded edge, so a slit of the open sheet is told as a fold, a cut and an opening; and
gathering is told in the moves of the hands, from the open sheet to the closed booklet.
"""

from collections.abc import Iterator, Sequence
from enum import Enum
from typing import TypeAlias, assert_never

from foldmath.drawing.booklets.closed_booklets import closed_booklet
from foldmath.drawing.booklets.gathering_pictures import closing, fan, pushing, to_and_fro
from foldmath.drawing.scenes import Scene
from foldmath.drawing.sheets.folded_sheets import folded_sheet
from foldmath.drawing.sheets.scissors import cut_open, cut_to_come, fold_along_slit
from foldmath.paper.booklet.booklet import Booklet, Form
from foldmath.paper.booklet.gathering import booklet
from foldmath.paper.booklet.grid import grid
from foldmath.paper.moments.performing import perform
from foldmath.paper.refusals import StepRefused
from foldmath.paper.state import CUT, FoldedState, Sheet, open_sheet
from foldmath.paper.steps import (
    Axis,
    Edge,
    FoldEdge,
    FoldStep,
    Gather,
    Open,
    OpenLast,
    OpenStep,
    Shade,
    Slit,
    TurnOver,
    TurnQuarter,
    TurnStep,
)
from foldmath.plane.numbers import ONE, ZERO
from foldmath.values import frozen
from foldmath.words.steps import WrittenStep, as_written

HALVINGS = {Axis.HEIGHT: FoldEdge(Edge.LEFT, ONE), Axis.WIDTH: FoldEdge(Edge.TOP, ZERO)}
"""How an open sheet is halved for a slit across it, by the axis on which the slit has one place."""

FOLD_ALONG_SLIT = FoldEdge(Edge.TOP, ZERO, behind=True)


class Shows(Enum):
    """What a picture shows; the template says each in words."""

    FOLD = "fold"
    OPEN = "open"
    OPEN_LAST = "open last"
    TURN = "turn"
    CUT = "cut"
    CUT_INSIDE = "cut inside"
    HALVE = "halve along the slit"
    REFOLD = "refold as a fan"
    STAND = "stand"
    BOX = "box"
    MEET = "meet"
    LEAVES = "leaves"
    CLOSED = "closed"
    BACK_LEFT = "back at the left"
    TRIM = "trim"
    FAN = "fan"


ShownStep: TypeAlias = FoldStep | OpenStep | TurnStep | Slit | Gather
"""What has a picture: every step but a shading, since shades do not matter to a booklet."""

PUSHED = (Shows.STAND, Shows.BOX, Shows.MEET)


@frozen
class FoldingStep:
    """One picture.

    Args:
        shows: what it shows.
        state: the paper that it is drawn from.
        step: what is done to that paper; for what gathering shows, the step that gathers.
        written: the step as it was written, for folds and turns; else None.
    """

    shows: Shows
    state: FoldedState
    step: ShownStep
    written: WrittenStep | None = None


def folding_steps(sheet: Sheet, steps: Sequence[WrittenStep]) -> tuple[FoldingStep, ...]:
    """Tell the pictures that lead from an open sheet to its booklet.

    Args:
        sheet: the sheet.
        steps: what comes after the sheet is gathered is passed over.

    Raises:
        StepRefused: a step cannot be done.
        ValueError: no step gathers the sheet.
    """
    return tuple(_told(open_sheet(sheet), steps))


def _told(state: FoldedState, steps: Sequence[WrittenStep]) -> Iterator[FoldingStep]:
    for written in steps:
        shown = _shown(state, written)
        yield from shown
        if isinstance(written.step, Gather):
            return
        state = perform(shown[-1].step, shown[-1].state) if shown else perform(written.step, state)
    raise ValueError("no step gathers the sheet into a booklet")


def _shown(state: FoldedState, written: WrittenStep) -> list[FoldingStep]:
    """Give the pictures of a step; none for a shading."""
    step = written.step
    if isinstance(step, FoldStep):
        return [FoldingStep(Shows.FOLD, state, step, written)]
    match step:
        case Open():
            return [FoldingStep(Shows.OPEN, state, step)]
        case OpenLast():
            return [FoldingStep(Shows.OPEN_LAST, state, step)]
        case TurnOver() | TurnQuarter():
            return [FoldingStep(Shows.TURN, state, step, written)]
        case Slit():
            return _slit(state, step)
        case Gather():
            return list(gathering_steps(state, step))
        case Shade():
            return []
        case _:
            assert_never(step)


def _slit(state: FoldedState, step: Slit) -> list[FoldingStep]:
    """Tell a slit: from a folded edge where that can be, else as it was said."""
    if ZERO in (step.start, ONE - step.end) and state.folds:
        return [FoldingStep(Shows.CUT, state, step)]
    if not state.folds and step.start + step.end == ONE:
        halving = HALVINGS[step.axis]
        low, high = (ZERO, 2 * step.end - 1) if step.axis is Axis.HEIGHT else (2 * step.start, ONE)
        short = Slit(step.axis, step.at, low, high)
        try:
            halved = perform(halving, state)
            cut = perform(short, halved)
        except StepRefused:
            return [FoldingStep(Shows.CUT_INSIDE, state, step)]
        return [
            FoldingStep(Shows.FOLD, state, halving, as_written(halving)),
            FoldingStep(Shows.CUT, halved, short),
            FoldingStep(Shows.OPEN, cut, Open()),
        ]
    return [FoldingStep(Shows.CUT_INSIDE, state, step)]


def gathering_steps(state: FoldedState, step: Gather) -> tuple[FoldingStep, ...]:
    """Tell the pictures that lead from the paper before it is gathered to the booklet.

    Raises:
        StepRefused: it cannot be gathered.
    """
    return tuple(_gathered(state, step))


def _gathered(state: FoldedState, step: Gather) -> Iterator[FoldingStep]:
    made = booklet(state, step.column)
    if made.form is Form.RING:
        yield from _closed_round_slit(state, step, made)
    elif made.form is Form.PLEAT:
        yield FoldingStep(Shows.FAN, state, step)
    else:
        yield FoldingStep(Shows.BACK_LEFT, state, step)
        if made.trims:
            yield FoldingStep(Shows.TRIM, state, step)


def _closed_round_slit(state: FoldedState, step: Gather, made: Booklet) -> Iterator[FoldingStep]:
    for turn in _turns(state):
        yield FoldingStep(Shows.TURN, state, turn, as_written(turn))
        state = perform(turn, state)
    yield FoldingStep(Shows.HALVE, state, FOLD_ALONG_SLIT)
    if made.refolded_as_fan:
        yield FoldingStep(Shows.REFOLD, state, step)
    yield from (FoldingStep(shows, state, step) for shows in (*PUSHED, Shows.LEAVES, Shows.CLOSED))


def _turns(state: FoldedState) -> Iterator[TurnStep]:
    """Give the turns that lay the sheet with its printed side up and the slit across, its cover below."""
    seen = grid(state).seen
    motion = state.panels[0].placements[-1].motion
    if not motion.upright:
        state = perform(TurnOver(), state)
        yield TurnOver()
        motion = state.panels[0].placements[-1].motion
    turns = 0
    while (motion.c, motion.s) != (seen.c, seen.s):
        turns += 1
        state = perform(TurnQuarter(left=True), state)
        motion = state.panels[0].placements[-1].motion
    yield from [TurnQuarter(left=True)] * turns if turns < 3 else [TurnQuarter(left=False)]


def folding_picture(step_shown: FoldingStep, width_mm: float, height_mm: float) -> Scene:
    """Draw one picture, no larger than said; pictures of standing paper have just that size."""
    state, step, size = step_shown.state, step_shown.step, (width_mm, height_mm)
    if isinstance(step, FoldStep):
        drawn = fold_along_slit if step_shown.shows is Shows.HALVE else folded_sheet
        return drawn(state, step, *size)
    if isinstance(step, OpenStep | TurnStep):
        return _opened(perform(step, state), size)
    match step:
        case Slit():
            return cut_to_come(state, step, *size)
        case Gather():
            return _gathering_picture(step_shown, step, size)
        case _:
            assert_never(step)


def _opened(state: FoldedState, size: tuple[float, float]) -> Scene:
    slit = any(CUT in panel.edges for panel in state.panels)
    return cut_open(state, *size) if slit and not state.folds else folded_sheet(state, None, *size)


def _gathering_picture(step_shown: FoldingStep, step: Gather, size: tuple[float, float]) -> Scene:
    state, column = step_shown.state, step.column
    if step_shown.shows in PUSHED:
        return pushing(state, column, *size)[PUSHED.index(step_shown.shows)]
    if step_shown.shows is Shows.REFOLD:
        return to_and_fro(state, column, *size)
    if step_shown.shows is Shows.LEAVES:
        return closing(state, column, *size)
    made = booklet(state, column)
    if step_shown.shows is Shows.FAN:
        return fan(state, made, *size)
    return closed_booklet(state, made, *size, trimming=step_shown.shows is Shows.TRIM)
