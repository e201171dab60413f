"""A spreadsheet saved as text: takes a CSV file as spreadsheets write it, gives rows with their lines.

Commas, semicolons or tabs; UTF-8 with or without a byte order mark, or UTF-16 with one; any line ends.
Format: RFC 4180, but for the separator, and for quoted line ends, which no list of pupils needs.
"""

import csv
import os
import re
from pathlib import Path

from foldmath.errors import FileRefused, Problem
from foldmath.lesson.files.controls import printable
from foldmath.lesson.files.opening import Hindrance, Unread, file_bytes
from foldmath.lesson.files.text import PAGES, PATTERNS
from foldmath.phrases import Said, phrase
from foldmath.values import frozen

LARGEST_FILE = 1024 * 1024
"""Bytes; a list of ten thousand pupils has about a quarter of this."""

SEPARATORS = ",;\t"
LONGEST_WORDS = 80
LONGEST_LINE = 4_000
"""Signs; the row of a pupil, with whatever else a school keeps in it, has some hundreds."""

MOST_LINES_IN_QUOTES = 20
"""A quote that is not closed within so many lines was never meant to be open."""

SAVE_AS = phrase('save the list as "CSV UTF-8"')
"""What spreadsheets call the format that we read."""

NO_LISTS = (".toml", *PAGES, *PATTERNS)
"""How names of other files end: whoever gives one in a list's place is told so, and not of columns."""

_WORKBOOKS = (b"PK\x03\x04", b"\xd0\xcf\x11\xe0")
"""How a zipped workbook and an old binary one begin."""

_BYTE_ORDER_MARKS = {b"\xef\xbb\xbf": "utf-8", b"\xff\xfe": "utf-16-le", b"\xfe\xff": "utf-16-be"}


class TableRefused(FileRefused):
    """A spreadsheet that cannot be used."""


@frozen
class Row:
    """One row that is not blank.

    Args:
        line: in the file, counted from 1.
        text: as it is written.
        fields: without quotes and outer spaces; bytes that are no text stay as lone surrogates.
        separator: what stands between fields in the text; empty where they stand in cells.
    """

    line: int
    text: str
    fields: tuple[str, ...]
    separator: str = ""

    def column(self, field: int) -> int:
        """Give where a field begins in the text, in signs counted from 1; 0 where it stands in a cell."""
        if not self.separator:
            return 0
        quoted = False
        for index, sign in enumerate(self.text):
            if not field and not (sign.isspace() and sign != self.separator):
                return index + 1
            quoted ^= sign == '"'
            field -= sign == self.separator and not quoted
        return len(self.text) + 1


@frozen
class Table:
    """The rows of a file, and what stood in the way of others.

    Args:
        file: the path as the user gave it.
        rows: the header first.
        problems: rows that cannot be read.
    """

    file: str
    rows: tuple[Row, ...]
    problems: tuple[Problem, ...]


def problem(file: str, line: int, message: Said, words: str, hint: Said) -> Problem:
    """Make a problem of a line, its words fit to be shown."""
    return Problem(
        file=file, line=line, column=0, message=message, words=printable(words)[:LONGEST_WORDS], hint=hint
    )


def problem_in_cell(file: str, row: Row, field: int, message: Said, hint: Said) -> Problem:
    """Make a problem of one field of a row, which names its cell as spreadsheets do."""
    words = printable(row.text)[:LONGEST_WORDS]
    return Problem(
        file=file,
        line=row.line,
        column=row.column(field),
        message=message,
        words=words,
        hint=hint,
        cell=cell_name(field, row.line),
    )


def cell_name(field: int, line: int) -> str:
    """Name a cell by its column, counted from 0, and its line, counted from 1: 0 and 7 are ``A7``."""
    letters = ""
    left = field + 1
    while left:
        left, letter = divmod(left - 1, 26)
        letters = chr(ord("A") + letter) + letters
    return f"{letters}{line}"


def read_table(path: Path, file: str, largest: int = LARGEST_FILE) -> Table:
    """Read a spreadsheet saved as text.

    Args:
        path: where it is.
        file: the path as the user gave it.
        largest: bytes that it may have.

    Raises:
        TableRefused: it is missing, no file, too large, empty, or no text.
    """
    return table_in(file_content(path, file, largest), file)


def lines_of(text: str) -> list[str]:
    """Give the lines of a text, however they end."""
    return re.split(r"\r\n|\r|\n", text)


def table_in(content: bytes, file: str) -> Table:
    """Read the bytes of a spreadsheet saved as text.

    Raises:
        TableRefused: they are empty, or no text.
    """
    lines = lines_of(_text(content, file))
    separator, first = _separator(lines)
    rows: list[Row] = []
    problems: list[Problem] = []
    index = first
    while index < len(lines):
        text, line = lines[index], index + 1
        taken = 1 if len(text) > LONGEST_LINE else _lines_in_quotes(lines, index, separator)
        if len(text) > LONGEST_LINE:
            message = phrase("this line has more than {most} characters", most=f"{LONGEST_LINE:,}")
            problems.append(problem(file, line, message, text, phrase("write each student on one line")))
        elif taken > 1:
            message = phrase("a quoted field runs on over {lines} lines", lines=taken)
            problems.append(problem(file, line, message, text, phrase("write each student on one line")))
        elif taken < 1:
            hint = phrase("close the quote, or leave it out")
            problems.append(problem(file, line, phrase("a quote is not closed"), text, hint))
        else:
            _take_row(text, line, separator, file, rows, problems)
        index += max(taken, 1)
    return Table(file, tuple(rows), tuple(problems))


def _take_row(
    text: str, line: int, separator: str, file: str, rows: list[Row], problems: list[Problem]
) -> None:
    """Add a row, unless it is blank, or tell what is wrong with it."""
    try:
        fields = next(csv.reader([text], delimiter=separator, skipinitialspace=True, strict=True), [])
    except csv.Error:
        hint = phrase("inside quotes write a quote twice: {example}", example='"Ann ""Nan"" Oak"')
        problems.append(problem(file, line, phrase("a quote stands in the middle of a field"), text, hint))
        return
    stripped = tuple(field.strip() for field in fields)
    if any(stripped):
        rows.append(Row(line, text, stripped, separator))


def _lines_in_quotes(lines: list[str], start: int, separator: str) -> int:
    """Count the lines of the row that begins here: 1, or more inside quotes; 0 if they never close."""
    for taken in range(1, MOST_LINES_IN_QUOTES + 1):
        written = [line[:LONGEST_LINE] + "\n" for line in lines[start : start + taken]]
        reader = csv.reader([*written, "\n"], delimiter=separator, skipinitialspace=True)
        next(reader)
        if reader.line_num <= taken:
            return taken
        if start + taken >= len(lines):
            break
    return 0


def _separator(lines: list[str]) -> tuple[str, int]:
    """Give the sign that parts the header into the most fields, and the index of the header's line.

    A first line such as ``sep=;`` says it outright.
    """
    header = next((index for index, line in enumerate(lines) if line.strip()), 0)
    said = re.fullmatch(rf'"?sep=([{SEPARATORS}])"?', lines[header].strip(" "), re.IGNORECASE)
    if said:
        return said[1], header + 1
    outside_quotes = re.sub(r'"[^"]*"', "", lines[header])
    return max(SEPARATORS, key=outside_quotes.count), header


def file_content(path: Path, file: str, largest: int) -> bytes:
    """Read a file that a teacher named.

    Raises:
        TableRefused: it is missing, no file, by its name no list, or too large.
    """
    if os.path.isfile(path) and path.suffix.lower() in NO_LISTS:
        raise _refused(
            file, phrase("this is no list in rows and columns"), phrase("name a file that ends in .csv")
        )
    try:
        return file_bytes(path, largest)
    except Unread as unread:
        found: tuple[Said, Said]
        match unread.hindrance:
            case Hindrance.FOLDER:
                found = phrase("this is a folder, not a list"), phrase("name a CSV file in it")
            case Hindrance.MISSING:
                found = unread.message, phrase("check the name of the file")
            case Hindrance.NO_FILE:
                found = unread.message, phrase("name a file that ends in .csv")
            case Hindrance.TOO_LARGE:
                found = unread.message, phrase("give a shorter list")
            case _:
                found = unread.message, unread.hint
        raise _refused(file, *found) from None


def _text(content: bytes, file: str) -> str:
    """Decode a file; bytes that are not UTF-8 stay as lone surrogates, so that their rows can be named."""
    if content.startswith(_WORKBOOKS):
        raise _refused(file, phrase("this is a workbook, not a list saved as text"), SAVE_AS)
    mark = next((mark for mark in _BYTE_ORDER_MARKS if content.startswith(mark)), b"")
    encoding = _BYTE_ORDER_MARKS.get(mark, "utf-8")
    try:
        text = content[len(mark) :].decode(encoding, "surrogateescape" if encoding == "utf-8" else "strict")
    except UnicodeDecodeError:
        raise _refused(file, phrase("this file is not whole UTF-16 text"), SAVE_AS) from None
    if "\0" in text:
        raise _refused(file, phrase("this file is not text: it has bytes of zero"), SAVE_AS)
    if not text.strip():
        raise _refused(file, phrase("this file is empty"), "name,level")
    return text


def _refused(file: str, message: Said, hint: Said) -> TableRefused:
    return TableRefused([Problem(file=file, message=message, hint=hint)])
