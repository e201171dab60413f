"""The grid of a class: takes pupils and their pages, gives its columns, its sheet, and the mark of a cell."""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass

from foldmath.errors import FoldmathError
from foldmath.lesson.roster import Pupil
from foldmath.marking.asking.lesson_pages import LessonPages
from foldmath.marking.judging.marks import Mark, Verdict
from foldmath.marking.marked_class import mark_class
from foldmath.marking.reading.sheet import AnswerRow, AnswersSheet, Cell, blank_rows, written_csv
from foldmath.marking.reading.words import words
from foldmath.marking.reporting.says import says_all
from foldmath.phrases import Said
from foldmath.statements.items import Level
from foldmath.words.saying import say

ANYBODY = "pupil"
"""Who gave the one answer that is marked: no name is asked for."""


class NoPupils(FoldmathError):
    """A grid without a single row."""


@dataclass(frozen=True)
class Column:
    """A column of the grid: its name, and what it asks each level that it asks."""

    name: str
    asks: Mapping[Level, Said]


@dataclass(frozen=True)
class Grid:
    """The answers of a class, names down and items across."""

    pupils: tuple[Pupil, ...]
    pages: LessonPages

    @property
    def columns(self) -> tuple[Column, ...]:
        """The items, then the folds and the exit ticket."""
        asked: dict[str, dict[Level, Said]] = {}
        for level in dict.fromkeys(pupil.level for pupil in self.pupils):
            for question in self.pages.of_class(level).questions:
                asked.setdefault(question.column, {})[level] = question.asks
        in_order = sorted(asked.items(), key=lambda named: not named[0].isdecimal())
        return tuple(Column(name, asks) for name, asks in in_order)

    def sheet(self, typed: Callable[[int, int], str], *, empty_is_right: bool, language: str) -> bytes:
        """Write the filled grid as an answers sheet, as ``mark`` reads it.

        Args:
            typed: gives what stands in a cell, by the pupil's and the column's number, counted from 0.
            empty_is_right: what an empty cell means.
            language: in which the sheet says what is asked.
        """
        pages = [(pupil.label, self.pages.of_class(pupil.level)) for pupil in self.pupils]
        rows = blank_rows(pages, language)
        rows[0][1] = words()["empty"]["right" if empty_is_right else "not_done"]
        of_pupils: Sequence[list[str]] = rows[len(rows) - len(self.pupils) :]
        for number, row in enumerate(of_pupils):
            row[1:-1] = [typed(number, column) for column in range(len(self.columns))]
        return written_csv(rows)


@dataclass(frozen=True)
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
