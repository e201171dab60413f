"""Rows of a teacher's plan: for each fold or shading what is true of it, and the slip that is likely there.

A slip is a false sentence made from this very fold; none is kept that happens to be true.
"""

from collections.abc import Iterator

from foldmath.lesson.kinds import only_names
from foldmath.lesson.proving import ProvedLesson
from foldmath.paper.moments.moment import Moment
from foldmath.paper.steps import Shade
from foldmath.plane.numbers import exact
from foldmath.statements.composing import equation, plus, times
from foldmath.statements.expressions import Claim, is_true
from foldmath.statements.ratios import Ratio, fraction, whole_number
from foldmath.statements.rules.folds import (
    ADD_FOLDS,
    ALL_SHADED,
    COUNT_FOR_SIZE,
    CUT_ALL,
    ONE_SIZE_FOR_ALL,
)
from foldmath.statements.sentences import ShadedPart, shaded_part, whole_sentence
from foldmath.values import frozen
from foldmath.words.steps import WrittenStep, crosses
from foldmath.worksheets.fold_rows import FoldRow, printable
from foldmath.worksheets.worksheet import Worksheet

MOST_SIZES_ADDED = 4
"""More sizes of panel are told as a tally: their sum would be too long to say."""


SLIP_RULES = {
    "count for size": COUNT_FOR_SIZE,
    "number for size": COUNT_FOR_SIZE,
    "adds": ADD_FOLDS,
    "all cut": CUT_ALL,
    "all alike": ONE_SIZE_FOR_ALL,
    "all shading": ALL_SHADED,
}
"""The rules of the slips that are listened for at a fold or a shading, in their order in the grid."""


@frozen
class LikelySlip:
    """A false sentence that a fold invites.

    Args:
        kind: the thinking behind it, which the template puts in words.
        claim: the sentence, false.
        answer: the number that a pupil with this thinking says.
    """

    kind: str
    claim: Claim
    answer: Ratio


@frozen(kw_only=True)
class StepRow:
    """A row of the plan: a fold or a shading, with the steps that lead to it.

    Args:
        number: of the worksheet's row in which it stands; None for a shading after the last fold.
        before: the steps since the row before, such as "open".
        after: the step right before it; None if there is none.
        step: the fold or shading.
        moment: the index of the step.
        picture: the name of the picture of the sheet after the step.
        panels: how many panels there are after it.
        fold: what the worksheet says of a fold; None for a shading.
        shaded: what is shaded, after a shading; else None.
        whole: the sentence that closes a fold; None where it is too long, or the class multiplies
            no fractions.
        parts: how many equal panels make the whole, for a class that multiplies no fractions; else 0.
        unequal: whether panels differ in size.
        layers: the most layers after it.
        slip: the likeliest slip, or None.
    """

    number: int | None
    before: tuple[WrittenStep, ...]
    after: WrittenStep | None
    step: WrittenStep
    moment: int
    picture: str
    panels: int
    fold: FoldRow | None
    shaded: ShadedPart | None
    whole: Claim | None
    parts: int
    unequal: bool
    layers: int
    slip: LikelySlip | None


def step_rows(proved: ProvedLesson, sheet: Worksheet) -> tuple[StepRow, ...]:
    """Give a row for every fold of which pupils predict the panels, and for every shading."""
    folds = {row.moment: row for row in sheet.folding.rows}
    rows: list[StepRow] = []
    begins = 0
    for index, moment in enumerate(proved.moments):
        if index in folds or isinstance(moment.step, Shade):
            number = next((fold.number for fold in sheet.folding.rows if fold.moment >= index), None)
            rows.append(_row(proved, begins, index, number, folds.get(index)))
            begins = index + 1
    return tuple(rows)


def _row(proved: ProvedLesson, begins: int, index: int, number: int | None, fold: FoldRow | None) -> StepRow:
    """Give the row of a fold or shading, by its index and that of the step with which the row begins."""
    lesson, moment = proved.lesson, proved.moments[index]
    steps, names = lesson.steps, only_names(lesson.grade, lesson.followed)
    previous = steps[index - 1] if index else None
    short = bool(fold) and len(moment.sizes) <= MOST_SIZES_ADDED and printable(moment.sizes)
    panels = len(moment.after.panels)
    return StepRow(
        number=number,
        before=steps[begins:index],
        after=previous,
        step=steps[index],
        moment=index,
        picture=f"show-{index}",
        panels=panels,
        fold=fold,
        shaded=shaded_part(moment.after) if isinstance(moment.step, Shade) else None,
        whole=whole_sentence(moment).claim if short and not names else None,
        parts=panels if short and names and len(moment.sizes) == 1 and panels > 1 else 0,
        unequal=len(moment.sizes) > 1,
        layers=moment.after.table.layers,
        slip=next((slip for slip in _slips(moment, previous, names) if not is_true(slip.claim)), None),
    )


def _slips(moment: Moment, previous: WrittenStep | None, names: bool) -> Iterator[LikelySlip]:
    """Give what a pupil may wrongly say at a step, likeliest first; some of it may happen to be true.

    One who only ``names`` fractions says how many panels there are when asked for the size of one.
    """
    if isinstance(moment.step, Shade):
        yield from _shading_slips(moment, moment.step, previous)
        return
    before, after, parts = len(moment.before.panels), len(moment.after.panels), set(moment.parts)
    cut_into = max(parts)
    if not moment.new_panels:
        yield LikelySlip("no new crease", equation(times(before, 2), after), whole_number(2 * before))
    elif len(parts) > 1:
        claim = equation(times(before, cut_into), after)
        yield LikelySlip("all cut", claim, whole_number(before * cut_into))
    elif len(moment.sizes) > 1:
        smallest = min(moment.sizes)
        if printable([smallest, exact(1, after)]):
            yield LikelySlip("all alike", equation(smallest, fraction(1, after)), fraction(1, after))
    else:
        if before > 1:
            yield LikelySlip("adds", equation(plus(before, cut_into), after), whole_number(before + cut_into))
        claim = equation(times(before, fraction(1, cut_into)), after)
        if names:
            claim = equation(fraction(1, after), after)
        yield LikelySlip("number for size" if names else "count for size", claim, whole_number(after))


def _shading_slips(moment: Moment, shade: Shade, previous: WrittenStep | None) -> Iterator[LikelySlip]:
    """Count strips as panels, every panel shaded at all, or shaded parts against the others.

    Strips that cross those of the step right before are shaded inside them, as pupils are asked to.
    """
    panels = moment.after.panels
    true = shaded_part(moment.after)
    if true.twice:
        shaded = moment.before.panels if previous and crosses(shade, previous.step) else panels
        any_shade = fraction(sum(panel.shaded > 0 for panel in shaded), len(shaded))
        yield LikelySlip("all shading", equation(any_shade, true.area), any_shade)
    else:
        strips = fraction(shade.taken, len(panels))
        yield LikelySlip("strips", equation(strips, true.area), strips)
        if shade.taken < shade.parts:
            other = fraction(shade.taken, shade.parts - shade.taken)
            yield LikelySlip("part to part", equation(other, true.area), other)
