"""What the worksheets of all levels and pupils share: takes a proved lesson, gives the rows of its folding.

Nothing here is worded for a reader; sentences come from the model, words from the template.
"""

from dataclasses import dataclass

from foldmath.lesson.kinds import reach
from foldmath.lesson.lesson import Lesson
from foldmath.lesson.proving import ProvedLesson
from foldmath.paper.folding.folding import Turn
from foldmath.paper.moments.moment import Moment
from foldmath.paper.moments.performing import fold_lines
from foldmath.paper.steps import FoldStep, Open, Slit
from foldmath.plane.numbers import Exact, denominator
from foldmath.statements.composing import equation, times
from foldmath.statements.expressions import Claim, Expression, is_true, terms
from foldmath.statements.items import Reach
from foldmath.statements.ratios import LARGEST_DENOMINATOR, Ratio, lowest_terms
from foldmath.statements.sentences import count_sentence, shaded_part, size_sentences, whole_sentence
from foldmath.words.steps import WrittenStep

MOST_SIZE_SENTENCES = 2
"""More different cuts in one fold are told as a tally, panel size by panel size."""

MOST_SIZES_ADDED = 2
"""With more sizes of panel, the boxes for adding them to a whole fill more than a line."""

WHOLE = 1
"""A panel that no crease crosses stays one part."""


@dataclass(frozen=True, kw_only=True)
class FoldRow:
    """A row of "predict, fold, record".

    Args:
        number: of the row, from 1.
        step: the fold.
        before: the steps since the fold before, such as "open".
        moment: the index of the step, which names its pictures.
        panels: how many panels there are after it.
        cut: whether the step made new panels.
        count: the count sentence; None if nothing was cut.
        sizes: size sentences in their "of" reading; empty where a tally tells more.
        each: the fraction of the sheet that every panel is; None where they differ.
        tally: how many panels of which area, where there are several sizes.
    """

    number: int
    step: WrittenStep
    before: tuple[WrittenStep, ...]
    moment: int
    panels: int
    cut: bool
    count: Claim | None
    sizes: tuple[Claim, ...]
    each: Ratio | None
    tally: tuple[tuple[int, Ratio], ...]

    @property
    def areas(self) -> tuple[Ratio, ...]:
        """The fractions of the sheet that its new panels are, so far as pupils are told of them."""
        areas = [area for _, area in self.tally]
        told: list[Expression] = [*areas, *(size.answer for size in self.sizes)]
        return tuple(area for area in told if isinstance(area, Ratio))

    @property
    def several_sizes(self) -> bool:
        """Whether its panels are of several sizes, which take the width of the page."""
        return bool(self.tally) or len(self.sizes) > 1


@dataclass(frozen=True, kw_only=True)
class Slip:
    """The count/size slip, made from a fold of this lesson: a false claim, and the two true sentences.

    Args:
        row: the number of the fold's row, from 1.
        step: the fold.
        panels: how many panels there are after it.
        claim: the count with the share, which is false.
        count, size: what is true.
        rejoined: true too: so many of the new panels make an old one, ``2 × 1/8 = 1/4``.
    """

    row: int
    step: WrittenStep
    panels: int
    claim: Claim
    count: Claim
    size: Claim
    rejoined: Claim


@dataclass(frozen=True, kw_only=True)
class FoldingPart:
    """Everything of a worksheet that no level and no pupil has for its own.

    Args:
        lesson: the lesson.
        rows: of "predict, fold, record".
        afterwards: the steps after the last fold.
        shaded: the panels shaded twice over all panels; None if none are.
        whole: the sentence that panels make a whole; None if it is too long for boxes.
        slips: the count/size slips that this lesson's folds lead to, the last fold's first.
        smaller: whether any fold made panels smaller.
        cuts_some: whether a fold cut some panels and left others whole.
        legend: the line styles in the pictures.
        multiplies: whether this class multiplies fractions by fractions.
    """

    lesson: Lesson
    rows: tuple[FoldRow, ...]
    afterwards: tuple[WrittenStep, ...]
    shaded: Ratio | None
    whole: Claim | None
    slips: tuple[Slip, ...]
    smaller: bool
    cuts_some: bool
    legend: tuple[str, ...]
    multiplies: bool

    @property
    def whole_is_sum(self) -> bool:
        """Whether panels of several sizes are added to the whole."""
        return self.whole is not None and len(terms(self.whole.asked)) > 1

    @property
    def only_opens(self) -> bool:
        """Whether all that follows the last fold is opening the sheet."""
        return len(self.afterwards) == 1 and isinstance(self.afterwards[0].step, Open)

    @property
    def cuts(self) -> bool:
        """Whether pupils use scissors."""
        return self.lesson.has(Slit)

    @property
    def adds_twos(self) -> bool:
        """Whether the first three folds halve every panel, so that adding twos predicts 6 and not 8."""
        return [row.panels for row in self.rows[:3]] == [2, 4, 8]


def folding_part(proved: ProvedLesson) -> FoldingPart:
    """Gather what the folding of a proved lesson gives to its pages."""
    lesson = proved.lesson
    stage = reach(lesson.grade, lesson.followed)
    folding = [
        (index, moment) for index, moment in enumerate(proved.moments) if isinstance(moment.step, FoldStep)
    ]
    ends = [0, *(index + 1 for index, _ in folding)]
    between = [
        lesson.steps[end:index]
        for end, index in zip(ends, [*(index for index, _ in folding), len(lesson.steps)], strict=True)
    ]
    rows = tuple(
        _fold_row(number, index, moment, lesson.steps[index], between[number - 1])
        for number, (index, moment) in enumerate(folding, start=1)
    )
    return FoldingPart(
        lesson=lesson,
        rows=rows,
        afterwards=between[-1],
        shaded=_shaded(proved),
        whole=_whole(folding[-1][1]) if folding and stage > Reach.NAMING else None,
        slips=_slips(folding, lesson) if stage > Reach.NAMING else (),
        smaller=any(moment.new_panels for _, moment in folding),
        cuts_some=any(moment.new_panels and WHOLE in moment.parts for _, moment in folding),
        legend=_legend([moment for _, moment in folding]),
        multiplies=stage is Reach.PAIRS,
    )


def _shaded(proved: ProvedLesson) -> Ratio | None:
    """Give the panels shaded twice over all panels, or nothing if no panel is."""
    last = shaded_part(proved.states[-1])
    return last.counted if last.twice else None


def _whole(last: Moment) -> Claim | None:
    """Give the whole sentence of the last fold, unless it is too long for boxes in one line."""
    short = len(last.sizes) <= MOST_SIZES_ADDED and _printable(last.sizes)
    return whole_sentence(last).claim if short else None


def _printable(numbers: "dict[Exact, int] | list[Exact]") -> bool:
    return all(denominator(number) <= LARGEST_DENOMINATOR for number in numbers)


def _fold_row(
    number: int, index: int, moment: Moment, step: WrittenStep, before: tuple[WrittenStep, ...]
) -> FoldRow:
    counts = count_sentence(moment)
    cuts = moment.cuts
    tally: tuple[tuple[int, Ratio], ...] = ()
    sizes: tuple[Claim, ...] = ()
    if len(cuts) <= MOST_SIZE_SENTENCES and _printable([part for cut in cuts for part in cut]):
        sizes = tuple(sentence.read for sentence in size_sentences(moment))
    elif _printable(moment.sizes):
        tally = tuple((count, lowest_terms(area)) for area, count in moment.sizes.items())
    return FoldRow(
        number=number,
        step=step,
        before=before,
        moment=index,
        panels=len(moment.after.panels),
        cut=moment.new_panels > 0,
        count=counts[0].claim if counts else None,
        sizes=sizes,
        each=_each(moment),
        tally=tally,
    )


def _each(moment: Moment) -> Ratio | None:
    alike = len(moment.sizes) == 1 and _printable(moment.sizes)
    return lowest_terms(next(iter(moment.sizes))) if alike else None


def _slips(folding: list[tuple[int, Moment]], lesson: Lesson) -> tuple[Slip, ...]:
    """Find the folds that cut every panel alike, and write the count with the share: a false claim."""
    slips = []
    for row, (index, moment) in reversed(list(enumerate(folding, start=1))):
        if len(set(moment.parts)) == 1 and moment.new_panels and len(moment.cuts) == 1:
            (panel, part), before = moment.cuts[0], len(moment.before.panels)
            claim = equation(times(before, part / panel), len(moment.after.panels))
            if _printable([panel, part]) and not is_true(claim):
                count, size = count_sentence(moment)[0].claim, size_sentences(moment)[0].read
                slips.append(
                    Slip(
                        row=row,
                        step=lesson.steps[index],
                        panels=len(moment.after.panels),
                        claim=claim,
                        count=count,
                        size=size,
                        rejoined=equation(times(panel / part, part), panel),
                    )
                )
    return tuple(slips)


def _legend(moments: list[Moment]) -> tuple[str, ...]:
    """Name the line styles that the pictures of these moments use."""
    folds = [(moment.step, moment.before) for moment in moments if isinstance(moment.step, FoldStep)]
    turns = {turn for step, before in folds for _, turn in fold_lines(step, before)}
    creased = any(not crease.folded for moment in moments for crease in moment.before.creases)
    used = {"valley": Turn.OVER in turns, "mountain": Turn.BEHIND in turns, "crease": creased}
    return tuple(name for name, shown in used.items() if shown)
