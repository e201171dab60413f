"""What the worksheets of all levels and pupils share: takes a proved lesson, gives the rows of its folding.

Nothing here is worded for a reader; sentences come from the model, words from the template.
"""

from foldmath.lesson.kinds import reach
from foldmath.lesson.lesson import Lesson
from foldmath.lesson.proving import ProvedLesson
from foldmath.paper.folding.folding import Turn
from foldmath.paper.moments.moment import Moment
from foldmath.paper.moments.performing import fold_lines
from foldmath.paper.steps import FoldStep, Gather, Open, Slit
from foldmath.statements.composing import equation, times
from foldmath.statements.expressions import Claim, is_true, terms
from foldmath.statements.items import Reach
from foldmath.statements.ratios import Ratio
from foldmath.statements.sentences import count_sentence, shaded_part, size_sentences, whole_sentence
from foldmath.values import frozen
from foldmath.words.steps import WrittenStep
from foldmath.worksheets.fold_rows import FoldRow, SomeCut, fold_row, printable, some_cut

MOST_SIZES_ADDED = 2
"""With more sizes of panel, boxes for adding them to a whole fill more than a line: pupils write the sum."""


@frozen(kw_only=True)
class Slip:
    """The count/size slip, made from a fold of this lesson: a false claim, and the two true sentences.

    Args:
        row: the number of the fold's row, from 1.
        step: the fold.
        panels: how many panels there are after it.
        claim: the count with the share, which is false.
        count, size: what is true.
        rejoined: true too: so many of the new panels make an old one, ``2 × 1/8 = 1/4``.
        whole: true as well: all new panels make the sheet, ``8 × 1/8 = 1``.
        outgrown: false: as many panels of the size before the fold, ``8 × 1/4 = 1``.
        corrections: what is true of the fold, the count, and of what stands there, ``4 × 1/2 = 2``.
    """

    row: int
    step: WrittenStep
    panels: int
    claim: Claim
    count: Claim
    size: Claim
    rejoined: Claim
    whole: Claim
    outgrown: Claim
    corrections: tuple[Claim, ...]


@frozen(kw_only=True)
class Talk:
    """A sentence about a fold that the whole class talks about: is it true or false?

    Args:
        kind: ``mixed`` of count and share, ``outgrown`` of new count and old size, or ``rejoined``, if true.
        slip: what is true of that fold.
        claim: what a student writes.
        really: what is true in its place; the sentence itself if it is true.
    """

    kind: str
    slip: Slip
    claim: Claim
    really: Claim

    @property
    def true(self) -> bool:
        """Whether it is true."""
        return self.claim == self.really


@frozen(kw_only=True)
class FoldingPart:
    """Everything of a worksheet that no level and no pupil has for its own.

    Args:
        lesson: the lesson.
        rows: of "predict, fold, record".
        afterwards: the steps after the last of these folds, up to the booklet if there is one.
        making: the steps that make the sheet a booklet, which is a lesson of its own; empty without.
        slit: the index of the first step that cuts the sheet; None without.
        shaded: the panels shaded twice over all panels; None if none are.
        whole: the sentence that panels make a whole; None if it is too long for boxes.
        added: the same where it is too long for boxes, so that pupils write it; else None.
        slips: the count/size slips that this lesson's folds lead to, the last fold's first.
        talk: a sentence for all to talk about that no page asks of; None where no second fold cuts alike.
        smaller: whether any fold made panels smaller.
        some_cut: what the last fold did of those that cut some panels and left others whole; None without.
        legend: the line styles in the pictures.
        multiplies: whether this class multiplies fractions by fractions.
    """

    lesson: Lesson
    rows: tuple[FoldRow, ...]
    afterwards: tuple[WrittenStep, ...]
    making: tuple[WrittenStep, ...]
    slit: int | None
    shaded: Ratio | None
    whole: Claim | None
    added: Claim | None
    slips: tuple[Slip, ...]
    talk: Talk | None
    smaller: bool
    some_cut: SomeCut | None
    legend: tuple[str, ...]
    multiplies: bool

    @property
    def whole_is_sum(self) -> bool:
        """Whether panels of several sizes are added to the whole."""
        return self.whole is not None and len(terms(self.whole.asked)) > 1

    @property
    def only_opens(self) -> bool:
        """Whether all that follows the last fold is opening the sheet."""
        return len(self.afterwards) == 1 and self.opens_first

    @property
    def opens_first(self) -> bool:
        """Whether the sheet is opened first after the last fold."""
        return bool(self.afterwards) and isinstance(self.afterwards[0].step, Open)

    @property
    def cuts(self) -> bool:
        """Whether pupils use scissors."""
        return self.slit is not None

    @property
    def adds_twos(self) -> bool:
        """Whether the first three folds halve every panel, so that adding twos predicts 6 and not 8."""
        return [row.panels for row in self.rows[:3]] == [2, 4, 8]


def folding_part(proved: ProvedLesson) -> FoldingPart:
    """Gather what the folding of a proved lesson gives to its pages."""
    lesson = proved.lesson
    stage = reach(lesson.grade, lesson.followed)
    folding = _predicted(proved)
    ends = [0, *(index + 1 for index, _ in folding)]
    between = [
        lesson.steps[end:index]
        for end, index in zip(ends, [*(index for index, _ in folding), len(lesson.steps)], strict=True)
    ]
    rows = tuple(
        fold_row(number, index, moment, lesson.steps[index], between[number - 1])
        for number, (index, moment) in enumerate(folding, start=1)
    )
    afterwards, making = _parted(between[-1], lesson)
    whole, added = _whole(folding[-1][1]) if folding and stage > Reach.NAMING else (None, None)
    slips = _slips(folding, lesson) if stage > Reach.NAMING else ()
    return FoldingPart(
        lesson=lesson,
        rows=rows,
        afterwards=afterwards,
        making=making,
        slit=next((index for index, step in enumerate(lesson.steps) if isinstance(step.step, Slit)), None),
        shaded=_shaded(proved),
        whole=whole,
        added=added,
        slips=slips,
        talk=_talk(slips),
        smaller=any(moment.new_panels for _, moment in folding),
        some_cut=some_cut([moment for _, moment in folding]),
        legend=_legend([moment for _, moment in folding]),
        multiplies=stage is Reach.PAIRS,
    )


def _predicted(proved: ProvedLesson) -> list[tuple[int, Moment]]:
    """Give the folds of which pupils predict the panels, with the indices of their steps.

    Where the sheet is cut, folds after the last new crease only lay it ready for the scissors.
    """
    folds = [
        (index, moment) for index, moment in enumerate(proved.moments) if isinstance(moment.step, FoldStep)
    ]
    last = max((index for index, moment in folds if moment.new_panels), default=None)
    if last is None or not proved.lesson.has(Slit):
        return folds
    return [(index, moment) for index, moment in folds if index <= last]


def _parted(
    steps: tuple[WrittenStep, ...], lesson: Lesson
) -> tuple[tuple[WrittenStep, ...], tuple[WrittenStep, ...]]:
    """Part the steps after the folds: what ends this lesson, and what makes the booklet."""
    if not lesson.has(Gather):
        return steps, ()
    opened = 1 if isinstance(steps[0].step, Open) else 0
    return steps[:opened], steps[opened:]


def _shaded(proved: ProvedLesson) -> Ratio | None:
    """Give the panels shaded twice over all panels, or nothing if no panel is."""
    last = shaded_part(proved.states[-1])
    return last.counted if last.twice else None


def _whole(last: Moment) -> tuple[Claim | None, Claim | None]:
    """Give the whole sentence of the last fold: for boxes in one line, or by itself if too long for that."""
    if not printable(last.sizes):
        return None, None
    claim = whole_sentence(last).claim
    return (claim, None) if len(last.sizes) <= MOST_SIZES_ADDED else (None, claim)


def _slips(folding: list[tuple[int, Moment]], lesson: Lesson) -> tuple[Slip, ...]:
    """Find the folds that cut every panel alike, and write the count with the share: a false claim."""
    slips = []
    for row, (index, moment) in reversed(list(enumerate(folding, start=1))):
        if len(set(moment.parts)) == 1 and moment.new_panels and len(moment.cuts) == 1:
            (panel, part), before, after = moment.cuts[0], len(moment.before.panels), len(moment.after.panels)
            share = part / panel
            claim = equation(times(before, share), after)
            if printable([panel, part]) and not is_true(claim):
                count, size = count_sentence(moment)[0].claim, size_sentences(moment)[0].read
                slips.append(
                    Slip(
                        row=row,
                        step=lesson.steps[index],
                        panels=after,
                        claim=claim,
                        count=count,
                        size=size,
                        rejoined=equation(times(panel / part, part), panel),
                        whole=equation(times(after, part), 1),
                        outgrown=equation(times(after, panel), 1),
                        corrections=(
                            count,
                            equation(times(before, share), before * share),
                        ),
                    )
                )
    return tuple(slips)


def _talk(slips: tuple[Slip, ...]) -> Talk | None:
    """Choose what a class talks about whose pages ask each another sentence: one of the last fold that cuts.

    All have made that fold, and have found on the way what is true of it, so no page's answer is given away.
    The first fold cuts the sheet itself, and nobody would say that two sheets are one.
    """
    later = (slip for slip in slips if slip.outgrown.asked != times(slip.panels, 1))
    return next(
        (Talk(kind="outgrown", slip=slip, claim=slip.outgrown, really=slip.whole) for slip in later), None
    )


def _legend(moments: list[Moment]) -> tuple[str, ...]:
    """Name the line styles that the pictures of these moments use."""
    folds = [(moment.step, moment.before) for moment in moments if isinstance(moment.step, FoldStep)]
    turns = {turn for step, before in folds for _, turn in fold_lines(step, before)}
    creased = any(not crease.folded for moment in moments for crease in moment.before.creases)
    used = {"valley": Turn.OVER in turns, "mountain": Turn.BEHIND in turns, "crease": creased}
    return tuple(name for name, shown in used.items() if shown)
