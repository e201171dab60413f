"""The slits of a crease pattern as steps, and gathering where its creases are those of a booklet."""

from foldmath.fold_format.refolding.wanted_creases import Span, WantedCreases
from foldmath.fold_format.refusals import PatternRefused
from foldmath.lesson.remedies import offered
from foldmath.paper.folding.slitting import slit_between
from foldmath.paper.moments.performing import perform
from foldmath.paper.refusals import StepRefused
from foldmath.paper.state import FoldedState, Sheet, open_sheet
from foldmath.paper.steps import Gather, Step
from foldmath.phrases import phrase
from foldmath.plane.lines import line_through
from foldmath.plane.numbers import ZERO


def cutting(sheet: Sheet, steps: list[Step], wanted: WantedCreases) -> tuple[Step, ...]:
    """Give the steps after folding: a slit for each cut, and gathering, if it leaves every crease as it is.

    Args:
        sheet: the sheet.
        steps: those that make the creases and leave the sheet open.
        wanted: tells which of its pieces are cuts.

    Raises:
        PatternRefused: a cut is slanted, or parts the sheet.
    """
    if not wanted.cuts:
        return ()
    state = open_sheet(sheet)
    for step in steps:
        state = perform(step, state)
    slits: list[Step] = []
    for start, end in _runs(wanted.cuts):
        if start.x != end.x and start.y != end.y:
            raise PatternRefused(phrase("has a slanted slit"), phrase("slits here are level or upright"))
        slits.append(slit_between(state, start, end))
        try:
            state = perform(slits[-1], state)
        except StepRefused as refusal:
            raise PatternRefused(
                phrase("has a slit that cannot be cut: {message}", message=refusal.message),
                offered(refusal) or phrase("leave it out"),
            ) from None
    return (*slits, *_gathering(state))


def _gathering(state: FoldedState) -> tuple[Step, ...]:
    """Find the booklet, by the column of its cover, whose creases are folded just so."""
    creased = {line[:3] for line in state.creases}
    for column in (None, *range(len(state.panels) // 2)):
        try:
            gathered = perform(Gather(column), state)
        except StepRefused:
            continue
        if {line[:3] for line in gathered.creases} == creased:
            return (Gather(column),)
    return ()


def _runs(cuts: list[Span]) -> list[Span]:
    """Join cuts that follow one another on a line; they come line by line, in order."""
    runs: list[Span] = []
    for start, end in cuts:
        if runs and runs[-1][1] == start and line_through(*runs[-1]).side(end) == ZERO:
            runs[-1] = (runs[-1][0], end)
        else:
            runs.append((start, end))
    return runs
