"""What a teacher reads and does before the lesson: takes a lesson and its worksheet, gives it as values."""

from collections.abc import Iterable

from foldmath.lesson.lesson import Lesson
from foldmath.lesson.proving import ProvedLesson
from foldmath.pages.page_fit import fit, usual_page
from foldmath.paper.steps import FoldStep, Gather
from foldmath.phrases import Said
from foldmath.practice.choosing import MOST_NAMED, choose
from foldmath.statements.items import (
    ExplainItem,
    Item,
    ItemKind,
    Level,
    OwnItem,
    Repeated,
    RepeatedHalvingItem,
)
from foldmath.statements.items.explain import Frame
from foldmath.statements.products import Product
from foldmath.statements.standards import Standard, standards_of
from foldmath.teachers_plan.copies import CopyList, OwnPages, copy_list
from foldmath.teachers_plan.edge_marks import EdgeMarks, edge_marks, parts_marked
from foldmath.teachers_plan.lesson_time import FOLD, SHADING, Hour, hour
from foldmath.teachers_plan.plan_steps import StepRow
from foldmath.teachers_plan.starter import Starter, starter
from foldmath.tolerance.accuracy import accuracy
from foldmath.tolerance.accuracy_in_words import advised_beside_marks
from foldmath.tolerance.assumed.spread import default_spread
from foldmath.tolerance.limits import judged
from foldmath.values import frozen
from foldmath.worksheets.worksheet import Worksheet

MOST_HARD = 2
"""So many warnings on paper and hands are told; later steps have the same trouble."""


@frozen
class RowNames:
    """What rows of the plan are called.

    Args:
        numbers: of the folds among them, as on the worksheet.
        end: whether a shading at the end is among them.
    """

    numbers: tuple[int, ...]
    end: bool


def row_names(rows: Iterable[StepRow]) -> RowNames:
    """Give what some rows are called."""
    named = tuple(rows)
    numbers = tuple(row.fold.number for row in named if row.fold)
    return RowNames(numbers, any(row.number is None for row in named))


@frozen(kw_only=True)
class Before:
    """What a teacher reads and does before the lesson.

    Args:
        standards: those that the lesson touches, up to its grade.
        copies: what to copy.
        two_sided: whether worksheets go on overleaf: folding fills a page, and the items begin another.
        hour: what one lesson has time for.
        today, later: what rows one lesson has time for, and those that are left for next time.
        products, later_products: the lesson's own, which every pupil has, for today and for next time.
        next_item: the number of the first item after the products, the same on all pages; 0 if there is none.
        starter: None where the lesson has no denominators.
        marks: what to mark on the edges, each with the numbers of the folds that need it.
        parts_marked: into how many parts they divide an edge, the fewest first.
        gathers: whether the sheet becomes a booklet.
        larger: whether its sheet is larger than the paper of a usual printer.
        true: how true the folding comes out, in one line; None where nothing is folded.
        hard: what paper or hands cannot do, or only with trouble.
    """

    standards: tuple[Standard, ...]
    copies: CopyList
    two_sided: bool
    hour: Hour
    today: RowNames
    later: RowNames
    products: tuple[Product, ...]
    later_products: tuple[Product, ...]
    next_item: int
    starter: Starter | None
    marks: tuple[tuple[EdgeMarks, tuple[int, ...]], ...]
    parts_marked: tuple[int, ...]
    gathers: bool
    larger: bool
    true: "Said | None"
    hard: tuple[Said, ...]


def before_lesson(
    proved: ProvedLesson, sheet: Worksheet, rows: tuple[StepRow, ...], own: OwnPages | None
) -> Before:
    """Gather what stands on the plan before its steps.

    Args:
        proved: the lesson.
        sheet: its core worksheet.
        rows: every fold and shading.
        own: the pages of a class with numbers of its own; None where 28 share the masters.
    """
    lesson = proved.lesson
    products = _products(lesson, own)
    numbers = {row.moment: row.fold.number for row in rows if row.fold}
    marks = edge_marks(proved.moments)
    time = hour(tuple(FOLD if row.fold else SHADING for row in rows), len(products))
    return Before(
        standards=_standards(proved, sheet),
        copies=copy_list(own),
        two_sided=bool(sheet.folding.rows and sheet.items),
        hour=time,
        today=row_names(rows[: time.steps]),
        later=row_names(rows[time.steps :]),
        products=products[: time.products],
        later_products=products[time.products :],
        next_item=len(products) + 1
        if len(products) <= MOST_NAMED and len(sheet.items) > len(products)
        else 0,
        starter=starter(proved, products),
        marks=tuple((mark, tuple(numbers[moment] for moment in mark.moments)) for mark in marks),
        parts_marked=parts_marked(marks),
        gathers=lesson.booklet is not None or lesson.has(Gather),
        larger=fit(lesson.sheet, usual_page(lesson.sheet)) is None,
        true=_true(proved, marks),
        hard=tuple(
            judgement.about(numbers[judgement.step - 1]) for judgement in judged(proved.moments, lesson.stock)
        )[:MOST_HARD],
    )


def _products(lesson: Lesson, own: OwnPages | None) -> tuple[Product, ...]:
    """Give the lesson's own products: the only ones that the pages of all levels share.

    Past the first few they stand on the class's core page alone, so where pupils have their own on none.
    """
    products = tuple(written.product for written in lesson.practice)
    return products[:MOST_NAMED] if own else products


def _standards(proved: ProvedLesson, sheet: Worksheet) -> tuple[Standard, ...]:
    lesson = proved.lesson
    products = tuple(item.product for item in sheet.shading)
    kinds = _kinds(proved, sheet)
    return standards_of(
        proved.moments, products, kinds, grade=lesson.named_grade, followed=lesson.named_standards
    )


def _kinds(proved: ProvedLesson, sheet: Worksheet) -> frozenset[str]:
    """Name what the items of core and stretch practise that no fold or product shows."""
    items = (*(placed.item for placed in sheet.items), *choose(proved, Level.STRETCH))
    return frozenset(kind.value for item in items if (kind := _kind(item)))


def _kind(item: Item) -> ItemKind | None:
    """Give the kind that an item practises; None where it is of a kind that only others of it practise.

    Own words are a story, and who explains why a product is less compares it with its factor.
    """
    if isinstance(item, OwnItem) and item.product:
        return ItemKind.STORY
    if isinstance(item, ExplainItem):
        compares = item.frame in (Frame.PART_OF_PART, Frame.SEVERAL_OF_IT, Frame.ALL_OF_IT)
        return ItemKind.BIGGER_OR_SMALLER if compares else item.kind
    if isinstance(item, RepeatedHalvingItem) and item.repeated is not Repeated.POWER:
        return None
    return item.kind


def _true(proved: ProvedLesson, marks: tuple[EdgeMarks, ...]) -> "Said | None":
    """Say how far off the worst panel may be, with the hands of the grade and the paper of the lesson."""
    if not any(isinstance(moment.step, FoldStep) for moment in proved.moments):
        return None
    spread = default_spread(proved.lesson.grade, proved.lesson.stock)
    steps = [moment for mark in marks for moment in mark.moments]
    return advised_beside_marks(proved.moments, accuracy(proved.moments, spread), steps)
