"""The slides of a lesson, as values: what stands on each, and after how many reveals it is all told.

Nothing here is worded for a reader; sentences of figures come from the model, words from the templates.
"""

from collections.abc import Iterator
from typing import ClassVar, TypeAlias, assert_never

from foldmath.drawing.legends import SAMPLES
from foldmath.lesson.lesson import Lesson
from foldmath.lesson.proving import ProvedLesson
from foldmath.paper.state import Kind
from foldmath.paper.steps import (
    FoldStep,
    Gather,
    OpenStep,
    Shade,
    Slit,
    Step,
    TurnOver,
    TurnQuarter,
)
from foldmath.slides.gathering import GatherSlide, gather_slide
from foldmath.slides.models import ModelPicture, model_picture
from foldmath.slides.motion.shading import shaded_sides
from foldmath.slides.motion.stages import stages_of_lesson
from foldmath.slides.motion.stars import star_of
from foldmath.slides.pictures import StepPicture, step_picture
from foldmath.slides.spoken_sheet import (
    SheetDescription,
    StarDescription,
    sheet_description,
    star_description,
)
from foldmath.slides.step_facts import CutFacts, FoldFacts, cut_facts, fold_facts, pages_made
from foldmath.statements.expressions import Claim
from foldmath.statements.items import ShadeItem
from foldmath.statements.items.shade import make_shade
from foldmath.statements.ratios import Ratio, lowest_terms
from foldmath.teachers_plan.edge_marks import edge_marks, parts_marked
from foldmath.teachers_plan.plan_steps import StepRow, step_rows
from foldmath.values import frozen
from foldmath.words.steps import WrittenStep
from foldmath.worksheets.fold_rows import SomeCut, printable
from foldmath.worksheets.folding_part import Talk
from foldmath.worksheets.worksheet import Worksheet

QUESTION, MOTION, COUNT, SIZE, WHOLE = 1, 2, 3, 4, 5
"""What each reveal of a step shows: first the question, last that all panels make one sheet."""

PRODUCT_REVEALS = 5
"""The question, the rows, the columns inside them, the count, and the answer."""


@frozen
class TitleSlide:
    """The lesson's name, and the open sheet."""

    kind: ClassVar[str] = "title"
    last: ClassVar[int] = 0

    lesson: Lesson


@frozen(kw_only=True)
class MaterialsSlide:
    """What lies on the desks, and what the pictures mean.

    Args:
        lesson: the lesson.
        ticks: into how many parts its edges are marked, for folds whose place is judged by eye.
        legend: the line styles that its pictures use: ``valley``, ``mountain``, ``crease``, ``cut``.
        folds_behind: whether a step folds paper behind, so that not only an opened sheet has mountains.
        cuts: whether a step of today needs scissors; those that make the booklet come in the next lesson.
    """

    kind: ClassVar[str] = "materials"
    last: ClassVar[int] = 0

    lesson: Lesson
    ticks: tuple[int, ...]
    legend: tuple[str, ...]
    folds_behind: bool
    cuts: bool


@frozen(kw_only=True)
class StepSlide:
    """One step.

    Args:
        number: of the step, from 1.
        step: the step.
        does: ``fold``, ``shade``, ``open``, ``turn``, ``slit`` or ``gather``.
        row: what is true of a fold or shading; None for other steps.
        sizes: the areas of its panels, smallest first; empty where a class cannot say them.
        before, after: what its pictures show, for those who hear them.
        star_before, star: where the star is before it, and after.
        folds: the lines that it folds along.
        cut: where a slit begins and ends; None for other steps.
        pages: of the booklet that a folded sheet is gathered into; 0 for other steps.
        picture: the paper before it, in motion, after it, and opened.
        last: how many reveals it has.
    """

    kind: ClassVar[str] = "step"

    number: int
    step: WrittenStep
    does: str
    row: StepRow | None
    sizes: tuple[Ratio, ...]
    before: SheetDescription
    after: SheetDescription
    star_before: StarDescription
    star: StarDescription
    folds: tuple[FoldFacts, ...]
    cut: CutFacts | None
    pages: int
    picture: StepPicture
    last: int

    @property
    def opens(self) -> bool:
        """Whether the opened sheet comes with the answer."""
        return self.does in ("fold", "open", "slit") and self.picture.opened is not None


@frozen
class ProductSlide:
    """A practice product on its area model; without a picture where no wall has room for one."""

    kind: ClassVar[str] = "product"
    last: ClassVar[int] = PRODUCT_REVEALS

    item: ShadeItem
    picture: ModelPicture | None


@frozen
class SlipSlide:
    """True or false? The sentence that the class talks about, what is true of it, then count and size."""

    kind: ClassVar[str] = "slip"
    last: ClassVar[int] = 3

    talk: Talk


@frozen
class ClosingSlide:
    """What the class takes home; the answer to why panels became smaller, if any did.

    Args:
        smaller: whether any did.
        some_cut: what the last fold did of those that cut some panels and left others whole; None without.
        whole: the sum of all panels.
        last: how many answers are revealed.
    """

    kind: ClassVar[str] = "closing"

    smaller: bool
    some_cut: SomeCut | None
    whole: Claim | None
    last: int


Slide: TypeAlias = (
    TitleSlide | MaterialsSlide | StepSlide | GatherSlide | ProductSlide | SlipSlide | ClosingSlide
)


@frozen
class SlideShow:
    """All slides of a lesson, and what they were made from: the lesson, and its core worksheet.

    In print they have the code of the class's worksheets at the foot; an empty one where each has another.
    """

    proved: ProvedLesson
    sheet: Worksheet
    slides: tuple[Slide, ...]
    code: str


def slide_show(proved: ProvedLesson, sheet: Worksheet) -> SlideShow:
    """Make the slides of a lesson, once for all files that show them: for a class that shares its pages."""
    return SlideShow(proved, sheet, slides(proved, sheet, sheet.talk), sheet.code)


def slide_show_for_own_pages(proved: ProvedLesson, sheet: Worksheet) -> SlideShow:
    """Make the same for classes with pages of their own: they talk about a sentence of nobody's page."""
    return SlideShow(proved, sheet, slides(proved, sheet, sheet.folding.talk), "")


def slides(proved: ProvedLesson, sheet: Worksheet, talk: Talk | None) -> tuple[Slide, ...]:
    """Give the slides of a lesson; those that make its booklet, which is a lesson of its own, come last.

    Args:
        proved: the lesson.
        sheet: its core worksheet.
        talk: the sentence that the class talks about, if there is one.
    """
    lesson, folding = proved.lesson, sheet.folding
    steps = tuple(_steps(proved, sheet))
    today = len(steps) - len(folding.making)
    return (
        TitleSlide(lesson),
        MaterialsSlide(
            lesson=lesson,
            ticks=parts_marked(edge_marks(proved.moments)),
            legend=_legend(proved, sheet),
            folds_behind="mountain" in folding.legend,
            cuts=any(isinstance(moment.step, Slit) for moment in proved.moments[:today]),
        ),
        *steps[:today],
        *_products(proved),
        *([SlipSlide(talk)] if talk else []),
        ClosingSlide(
            folding.smaller, folding.some_cut, folding.whole, folding.smaller + (folding.whole is not None)
        ),
        *steps[today:],
    )


def _steps(proved: ProvedLesson, sheet: Worksheet) -> Iterator[StepSlide | GatherSlide]:
    rows = {row.moment: row for row in step_rows(proved, sheet)}
    written_steps = proved.lesson.steps
    stages, shaded = stages_of_lesson(proved), shaded_sides(proved)
    star = star_of(proved.states[-1])
    for index, moment in enumerate(proved.moments):
        row = rows.get(index)
        sizes = tuple(lowest_terms(area) for area in moment.sizes) if printable(moment.sizes) else ()
        does = _doing(moment.step)
        gathered = gather_slide(index + 1, moment, written_steps[index])
        if gathered:
            yield gathered
            continue
        yield StepSlide(
            number=index + 1,
            step=written_steps[index],
            does=does,
            row=row,
            sizes=sizes,
            before=sheet_description(moment.before),
            after=sheet_description(moment.after),
            star_before=star_description(moment.before),
            star=star_description(moment.after),
            folds=fold_facts(moment),
            cut=cut_facts(moment),
            pages=pages_made(moment),
            picture=step_picture(moment, stages[index], star, shaded[index]),
            last=_last(row, sizes),
        )


def _doing(step: Step) -> str:
    if isinstance(step, FoldStep):
        return "fold"
    if isinstance(step, OpenStep):
        return "open"
    match step:
        case TurnOver() | TurnQuarter():
            return "turn"
        case Shade():
            return "shade"
        case Slit():
            return "slit"
        case Gather():
            return "gather"
        case _:
            assert_never(step)


def _last(row: StepRow | None, sizes: tuple[Ratio, ...]) -> int:
    """Count the reveals of a step: every question has an answer, and a fold has up to three."""
    if row is None:
        return COUNT
    if row.whole or row.parts:
        return WHOLE
    has_sizes = row.shaded or (row.fold is not None and (row.fold.sizes or row.fold.tally)) or sizes
    return SIZE if has_sizes else COUNT


def _products(proved: ProvedLesson) -> Iterator[ProductSlide]:
    """Give each practice product of the lesson once."""
    for product in dict.fromkeys(practised.product for practised in proved.lesson.practice):
        item = make_shade(product)
        yield ProductSlide(item, model_picture(item.sheets) if item.sheets else None)


def _legend(proved: ProvedLesson, sheet: Worksheet) -> tuple[str, ...]:
    """Name the line styles of all pictures: folds to come, opened sheets, paper that lies open."""
    creases = [crease for state in proved.states for crease in state.creases]
    used = {crease.kind.value for crease in creases} | set(sheet.folding.legend)
    if any(not crease.folded and crease.kind is not Kind.CUT for crease in creases):
        used.add("crease")
    return tuple(name for name in SAMPLES if name in used)
