"""The grid of a class: takes pupils and their pages, gives its columns, its sheet, and the mark of a cell."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import field

from foldmath.lesson.roster import Pupil, told_apart
from foldmath.marking.asking.lesson_pages import LessonPages
from foldmath.marking.asking.questions import Page
from foldmath.marking.judging.marks import Mark, Verdict
from foldmath.marking.marked_class import mark_class
from foldmath.marking.reading.sheet import (
    AnswerRow,
    AnswersSheet,
    Cell,
    blank_rows,
    talked_items,
    written_csv,
)
from foldmath.marking.reading.words import sheet_word
from foldmath.marking.reporting.says import says_all
from foldmath.phrases import Said
from foldmath.practice.own_numbers import pupil_seed
from foldmath.statements.items import Level
from foldmath.values import frozen
from foldmath.words.saying import say
from foldmath.worksheets.version_code import LEVEL_SIGNS

ANYBODY = "pupil"
"""Who gave the one answer that is marked: no name is asked for."""


@frozen
class Seat:
    """A row of the grid.

    Args:
        pupil: whose answers stand there.
        page: that the pupil had.
        seed: by which the page's own numbers were chosen; None where they are the class's.
    """

    pupil: Pupil
    page: Page
    seed: int | None = None


def with_class_pages(pupils: Iterable[Pupil], pages: LessonPages) -> tuple[Seat, ...]:
    """Give pupils who had the lesson's pages, each that of a level."""
    return tuple(Seat(pupil, pages.of_class(pupil.level)) for pupil in pupils)


def with_own_pages(pupils: Iterable[Pupil], pages: LessonPages) -> tuple[Seat, ...]:
    """Give pupils who had pages with numbers of their own."""
    seeds = [(pupil, pupil_seed(pages.proved.lesson, pupil)) for pupil in pupils]
    return tuple(Seat(pupil, pages.own(pupil.level, seed), seed) for pupil, seed in seeds)


@frozen
class Column:
    """A column of the grid: its name, what stands above it, and what it asks on each page, by its code."""

    name: str
    head: Said
    asks: Mapping[str, Said]


@frozen
class Grid:
    """The answers of a class, names down and items across.

    Args:
        seats: in the order of the rows.
        typed: what stands in a cell, by the number of its row, from 0, and the name of its column.
        empty_is_right: what an empty cell means.
    """

    seats: tuple[Seat, ...]
    typed: Mapping[tuple[int, str], str] = field(default_factory=dict)
    empty_is_right: bool = True

    @property
    def own(self) -> bool:
        """Whether pupils had numbers of their own."""
        return any(seat.page.own for seat in self.seats)

    @property
    def pupils(self) -> tuple[Pupil, ...]:
        """Those whose answers stand there."""
        return tuple(seat.pupil for seat in self.seats)

    @property
    def columns(self) -> tuple[Column, ...]:
        """The items, then the folds and the exit ticket."""
        asked: dict[str, dict[str, Said]] = {}
        heads: dict[str, Said] = {}
        for page in {seat.page.code: seat.page for seat in self.seats}.values():
            for question in page.questions:
                asked.setdefault(question.column, {})[page.code] = question.asks
                heads[question.column] = question.head or question.column
        in_order = sorted(asked.items(), key=lambda named: not named[0].isdecimal())
        return tuple(Column(name, heads[name], asks) for name, asks in in_order)

    @property
    def talked(self) -> Said:
        """The items that no column has, since the class talks about them; nothing where there are none."""
        return talked_items(seat.page for seat in self.seats)

    def sheet(self, language: str) -> bytes:
        """Write the filled grid as an answers sheet, as ``mark`` reads it; it says what is asked."""
        rows = blank_rows([(seat.pupil.label, seat.page) for seat in self.seats], language)
        rows[0][1] = sheet_word("right" if self.empty_is_right else "not_done", language)
        for number, row in enumerate(self._of_pupils(rows)):
            row[1:-1] = [self.typed.get((number, column.name), "") for column in self.columns]
        return written_csv(rows)

    def _of_pupils(self, rows: Sequence[list[str]]) -> list[list[str]]:
        """Find the rows of pupils, which are the last ones; what an own page asks stands above its row."""
        from_the_foot = reversed(rows)
        found = []
        for seat in reversed(self.seats):
            found.append(next(from_the_foot))
            if seat.page.own:
                next(from_the_foot)
        return found[::-1]


def grid_of(sheet: AnswersSheet, pages: LessonPages) -> Grid:
    """Give the grid that an answers sheet fills; codes say whose pages they were, and of which level."""
    levels = {sign: level for level, sign in LEVEL_SIGNS.items()}
    pupils = told_apart(Pupil(row.label, levels.get(row.code[-1:], Level.CORE)) for row in sheet.rows)
    seats = tuple(_seat(pupil, row.code, pages) for pupil, row in zip(pupils, sheet.rows, strict=True))
    typed = {
        (number, column): cell.text
        for number, row in enumerate(sheet.rows)
        for column, cell in row.cells.items()
    }
    return Grid(seats, typed, sheet.empty_is_right)


def _seat(pupil: Pupil, code: str, pages: LessonPages) -> Seat:
    """Give a pupil's row by the code of the page: any that is not his or her own is the class's."""
    own = code == pages.code(pupil.level, pupil_seed(pages.proved.lesson, pupil))
    (seat,) = (with_own_pages if own else with_class_pages)((pupil,), pages)
    return seat


@frozen
class CellMark:
    """What a cell says at once: how its answer is marked, and what may have been thought."""

    verdict: Verdict
    says: str


def marked_cell(
    pages: LessonPages, level: Level, seed: int | None, column: str, answer: str, language: str
) -> CellMark:
    """Mark what was typed into one cell, as soon as it is.

    Args:
        pages: of the lesson.
        level: of the page.
        seed: by which its own numbers were chosen; None where they are the class's.
        column: of the cell.
        answer: as it was typed.
        language: in which is said what may have been thought.

    Raises:
        AnswersRefused: the page has no such column.
    """
    typed = {column: Cell(answer, column)} if answer.strip() else {}
    row = AnswerRow(line=1, label=ANYBODY, code="", cells=typed)
    sheet = AnswersSheet(file=column, empty_is_right=False, columns=(column,), asked=(), rows=(row,))
    own = seed is not None
    marked = mark_class(sheet, [Pupil(ANYBODY, level)], pages, lambda _: seed or 0, own=own)
    found = [one for one in marked.pupils[0].answers if one.question.column == column]
    mark = found[0].mark if found else Mark(Verdict.NOT_DONE)
    says = says_all(mark.explanations, language) if mark.explanations else say(mark.reason, language)
    return CellMark(mark.verdict, says)
