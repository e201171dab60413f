"""The answers sheet: a blank one made for pupils and their pages, and a filled one read, cell by cell."""

import csv
import io
from collections.abc import Iterable, Sequence
from pathlib import Path

from foldmath.lesson.files.controls import printable
from foldmath.lesson.files.spreadsheet import (
    SAVE_AS,
    Row,
    Table,
    TableRefused,
    file_content,
    problem,
    read_table,
)
from foldmath.marking.asking.questions import Page
from foldmath.marking.reading.ods import is_ods, ods, read_ods
from foldmath.marking.reading.words import sheet_phrase, sheet_word, sheet_words
from foldmath.phrases import Phrase, Said, joined, listed, phrase
from foldmath.statements.items import Level
from foldmath.values import frozen
from foldmath.words.saying import say

LARGEST_SHEET = 8 * 1024 * 1024
"""Bytes; the answers of ten thousand pupils to twenty questions have about two million."""

NAME_MM, CODE_MM, ANSWER_MM = 40, 20, 28


class AnswersRefused(TableRefused):
    """An answers sheet that cannot be used; carries every ``Problem`` found in it."""


@frozen
class Cell:
    """What was typed for one question, and where: ``C7`` in the sheet."""

    text: str
    place: str


@frozen
class AnswerRow:
    """What was typed for one pupil.

    Args:
        line: in the sheet, counted from 1.
        label: the pupil's name.
        code: at the foot of his or her page; empty where the sheet says none.
        cells: by column, those alone that are not empty.
    """

    line: int
    label: str
    code: str
    cells: dict[str, Cell]


@frozen(kw_only=True)
class AnswersSheet:
    """A filled sheet.

    Args:
        file: the path as the user gave it.
        empty_is_right: what an empty cell means: a right answer, or none.
        columns: the questions' names, in the order of the sheet.
        asked: the rows that say what each column asks.
        rows: of pupils, in the order of the sheet.
    """

    file: str
    empty_is_right: bool
    columns: tuple[str, ...]
    asked: tuple[AnswerRow, ...]
    rows: tuple[AnswerRow, ...]


def place(line: int, index: int) -> str:
    """Name a cell as spreadsheets do: the third field of line 7 is C7."""
    letters, number = "", index + 1
    while number:
        number, rest = divmod(number - 1, 26)
        letters = chr(ord("A") + rest) + letters
    return f"{letters}{line}"


def blank_rows(pupils: Sequence[tuple[str, Page]], language: str) -> list[list[str]]:
    """Give the rows of a sheet to fill in.

    Args:
        pupils: their names, and the pages that they have, in the order of the sheet.
        language: which the sheet speaks.
    """
    shared = {page.level: page for _, page in pupils if not page.own}
    columns = list(dict.fromkeys(question.column for _, page in pupils for question in page.questions))
    columns.sort(key=lambda column: not column.isdecimal())
    empty, right, pupil, code, asks = (
        sheet_word(key, language) for key in ("empty", "right", "pupil", "code", "asks")
    )
    rows = [[empty, right], [pupil, *columns, code]]
    talked = talked_items(page for _, page in pupils)
    if talked:
        rows.append([sheet_word("talked", language), say(talked, language)])
    for level in (level for level in Level if level in shared):
        head = asks if len(shared) == 1 else _asks_of_level(level, language)
        rows.append(_asks_row(head, shared[level], columns, language))
    for label, page in pupils:
        if page.own:
            rows.append(_asks_row(asks, page, columns, language))
        rows.append([label, *[""] * len(columns), page.code])
    return rows


def talked_items(pages: Iterable[Page]) -> Said:
    """Name the items that no column has, since a class talks about them; nothing where there are none."""
    numbers = dict.fromkeys((page.level, page.talked) for page in pages if page.talked is not None)
    named = [
        phrase("item {number} ({level})", number=number, level=sheet_phrase(level.value))
        for level, number in sorted(numbers, key=lambda one: (list(Level).index(one[0]), one[1]))
    ]
    return listed(named) if named else ""


def _asks_of_level(level: Level, language: str) -> str:
    return sheet_word("asks_level", language, level=sheet_word(level.value, language))


def _asks_row(head: str, page: Page, columns: list[str], language: str) -> list[str]:
    asked = page.by_column
    cells = [say(asked[column].asks, language) if column in asked else "" for column in columns]
    return [head, *cells, page.code]


def written_csv(rows: Sequence[Sequence[str]]) -> bytes:
    """Write rows as CSV that spreadsheets open with the right letters: with a byte order mark.

    Format: RFC 4180.
    """
    text = io.StringIO()
    csv.writer(text).writerows(rows)
    return text.getvalue().encode("utf-8-sig")


def written_ods(rows: Sequence[Sequence[str]]) -> bytes:
    """Write rows as an OpenDocument spreadsheet with cells of text."""
    answers = max(map(len, rows)) - 2
    return ods(rows, rows[1][0], [NAME_MM, *[ANSWER_MM] * answers, CODE_MM])


def read_sheet(path: Path) -> AnswersSheet:
    """Read a filled sheet, ``.csv`` or ``.ods``.

    Raises:
        AnswersRefused: the file, its first lines or a row cannot be used; carries every ``Problem`` found.
    """
    file = str(path)
    try:
        content = file_content(path, file, LARGEST_SHEET)
        if not content.strip():
            hint = phrase("--blank answers.ods for a sheet to fill in")
            raise TableRefused([problem(file, 0, phrase("this file is empty"), "", hint)])
        table = read_ods(content, file) if is_ods(content) else read_table(path, file, LARGEST_SHEET)
    except TableRefused as refusal:
        raise AnswersRefused(refusal.problems) from None
    return _Reader(table).sheet()


class _Reader:
    """Reads the rows of a sheet, and gathers what is wrong with them."""

    def __init__(self, table: Table) -> None:
        self.table, self.file = table, table.file
        self.problems = list(table.problems)

    def sheet(self) -> AnswersSheet:
        """Give the sheet.

        Raises:
            AnswersRefused: something is wrong with it.
        """
        first, header = self._first_rows()
        empty_is_right = self._empty_is_right(first)
        columns = self._columns(header)
        told = sheet_words("talked")
        rows = [self._row(row, columns) for row in self.table.rows[2:] if row.fields[0] not in told]
        asked = tuple(row for row in rows if _is_asks(row.label))
        kept = tuple(row for row in rows if not _is_asks(row.label))
        if not kept and not self.problems:
            self._refuse(0, phrase("this sheet has no students"), "", phrase("one row for each student"))
        if self.problems:
            raise AnswersRefused(self.problems)
        names = tuple(name for name in columns[1:] if name and name not in sheet_words("code"))
        return AnswersSheet(
            file=self.file, empty_is_right=empty_is_right, columns=names, asked=asked, rows=kept
        )

    def _first_rows(self) -> tuple[Row, Row]:
        rows = self.table.rows
        if len(rows) < 2:
            hint = phrase("a sheet that foldmath mark --blank has written")
            self._refuse(0, phrase("this is no answers sheet: it has fewer than two lines"), "", hint)
            raise AnswersRefused(self.problems)
        if _empty_is_right(rows[0]) is None and not any(map(_begins_with_pupils, rows[:2])):
            hint = phrase("a sheet that foldmath mark --blank has written")
            wrong = phrase("this is no answers sheet, by its first two lines")
            raise AnswersRefused([problem(self.file, 0, wrong, "", hint)])
        return rows[0], rows[1]

    def _empty_is_right(self, row: Row) -> bool:
        """Read line one, which says what an empty cell means."""
        told = _empty_is_right(row)
        if told is not None:
            return told
        message = phrase("line one does not say what an empty cell means")
        hint = phrase(
            "{right}, or {not_done}", right=_empty_means("right"), not_done=_empty_means("not_done")
        )
        self._refuse(row.line, message, row.text, hint)
        return True

    def _columns(self, row: Row) -> tuple[str, ...]:
        """Read the header: the first column has the pupils, the others are named for questions."""
        columns = tuple(_plain_column(field) for field in row.fields)
        if not _begins_with_pupils(row):
            pupil = sheet_phrase("pupil")
            message = phrase("the first column is not called {name}", name=pupil)
            self._refuse(row.line, message, row.text, joined(",", [pupil, *row.fields[1:4]]))
        for index, name in enumerate(columns):
            if name and name in columns[:index]:
                where = place(row.line, index)
                message = phrase("cell {cell}: two columns are called {name}", cell=where, name=name)
                self._refuse(row.line, message, row.text, phrase("take one of them out"))
        return columns

    def _row(self, row: Row, columns: tuple[str, ...]) -> AnswerRow:
        code, cells = "", {}
        if _is_no_text(row.text):
            self._refuse(row.line, phrase("this line is not UTF-8 text"), row.text, SAVE_AS)
        for index, text in enumerate(row.fields):
            name = columns[index] if index < len(columns) else ""
            if not index or not text:
                continue
            where = place(row.line, index)
            if not name:
                message = phrase("cell {cell}: no column of the second line stands above it", cell=where)
                self._refuse(row.line, message, text, phrase("put it below the question that it answers"))
            elif name in sheet_words("code"):
                code = text.replace(" ", "").upper()
            else:
                cells[name] = Cell(printable(text), where)
        label = " ".join(row.fields[0].split())
        if not label:
            message = phrase("cell {cell}: this row has no name", cell=place(row.line, 0))
            self._refuse(row.line, message, row.text, phrase("the name of the student, as in the roster"))
        return AnswerRow(row.line, label, code, cells)

    def _refuse(self, line: int, message: Said, text: str, hint: Said) -> None:
        self.problems.append(problem(self.file, line, message, text, hint))


def _empty_means(key: str) -> Phrase:
    return joined(",", [sheet_phrase("empty"), sheet_phrase(key)])


def _empty_is_right(row: Row) -> bool | None:
    """Read what an empty cell means, a right answer or none; None where a row does not say it."""
    fields = [field.casefold() for field in row.fields if field]
    for is_right, meaning in ((True, "right"), (False, "not_done")):
        ways = (sheet_words("empty"), sheet_words(meaning))
        if len(fields) == 2 and all(field in way for field, way in zip(fields, ways, strict=True)):
            return is_right
    return None


def _begins_with_pupils(row: Row) -> bool:
    return bool(row.fields) and _plain_column(row.fields[0]) in sheet_words("pupil")


def _is_asks(label: str) -> bool:
    return any(label == asks or label.startswith(f"{asks} (") for asks in sheet_words("asks"))


def _plain_column(field: str) -> str:
    return " ".join(field.split())


def _is_no_text(words: str) -> bool:
    """Tell whether words hold lone surrogates, in the place of bytes that are no text."""
    return any("\ud800" <= sign <= "\udfff" for sign in words)
