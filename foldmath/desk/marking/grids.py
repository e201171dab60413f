"""The grid of a class: takes pupils and their pages, gives its columns, its sheet, and the mark of a cell."""

from collections.abc import Mapping, Sequence
from dataclasses import field

from foldmath.lesson.roster import Pupil, told_apart
from foldmath.marking.asking.lesson_pages import LessonPages
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
from foldmath.statements.items import Level
from foldmath.values import frozen
from foldmath.words.saying import say
from foldmath.worksheets.version_code import LEVEL_SIGNS

ANYBODY = "pupil"
"""Who gave the one answer that is marked: no name is asked for."""


@frozen
class Column:
    """A column of the grid: its name, what stands above it, and what it asks each level that it asks."""

    name: str
    head: Said
    asks: Mapping[Level, Said]


@frozen
class Grid:
    """The answers of a class, names down and items across.

    Args:
        pupils: in the order of the rows.
        pages: what each level is asked.
        typed: what stands in a cell, by the number of its row, from 0, and the name of its column.
        empty_is_right: what an empty cell means.
    """

    pupils: tuple[Pupil, ...]
    pages: LessonPages
    typed: Mapping[tuple[int, str], str] = field(default_factory=dict)
    empty_is_right: bool = True

    @property
    def columns(self) -> tuple[Column, ...]:
        """The items, then the folds and the exit ticket."""
        asked: dict[str, dict[Level, Said]] = {}
        heads: dict[str, Said] = {}
        for level in dict.fromkeys(pupil.level for pupil in self.pupils):
            for question in self.pages.of_class(level).questions:
                asked.setdefault(question.column, {})[level] = question.asks
                heads[question.column] = question.head or question.column
        in_order = sorted(asked.items(), key=lambda named: not named[0].isdecimal())
        return tuple(Column(name, heads[name], asks) for name, asks in in_order)

    @property
    def talked(self) -> Said:
        """The items that no column has, since the class talks about them; nothing where there are none."""
        return talked_items(self.pages.of_class(pupil.level) for pupil in self.pupils)

    def sheet(self, language: str) -> bytes:
        """Write the filled grid as an answers sheet, as ``mark`` reads it; it says what is asked."""
        pages = [(pupil.label, self.pages.of_class(pupil.level)) for pupil in self.pupils]
        rows = blank_rows(pages, language)
        rows[0][1] = sheet_word("right" if self.empty_is_right else "not_done", language)
        of_pupils: Sequence[list[str]] = rows[len(rows) - len(self.pupils) :]
        for number, row in enumerate(of_pupils):
            row[1:-1] = [self.typed.get((number, column.name), "") for column in self.columns]
        return written_csv(rows)


def grid_of(sheet: AnswersSheet, pages: LessonPages) -> Grid:
    """Give the grid that an answers sheet fills; the level of a page is the last sign of its code."""
    levels = {sign: level for level, sign in LEVEL_SIGNS.items()}
    pupils = told_apart(Pupil(row.label, levels.get(row.code[-1:], Level.CORE)) for row in sheet.rows)
    typed = {
        (number, column): cell.text
        for number, row in enumerate(sheet.rows)
        for column, cell in row.cells.items()
    }
    return Grid(pupils, pages, typed, sheet.empty_is_right)


@frozen
class CellMark:
    """What a cell says at once: how its answer is marked, and what may have been thought."""

    verdict: Verdict
    says: str


def marked_cell(pages: LessonPages, level: Level, column: str, answer: str, language: str) -> CellMark:
    """Mark what was typed into one cell, as soon as it is.

    Raises:
        AnswersRefused: this level's page has no such column.
    """
    typed = {column: Cell(answer, column)} if answer.strip() else {}
    row = AnswerRow(line=1, label=ANYBODY, code="", cells=typed)
    sheet = AnswersSheet(file=column, empty_is_right=False, columns=(column,), asked=(), rows=(row,))
    marked = mark_class(sheet, [Pupil(ANYBODY, level)], pages, lambda _: 0, own=False)
    found = [one for one in marked.pupils[0].answers if one.question.column == column]
    mark = found[0].mark if found else Mark(Verdict.NOT_DONE)
    says = says_all(mark.explanations, language) if mark.explanations else say(mark.reason, language)
    return CellMark(mark.verdict, says)
