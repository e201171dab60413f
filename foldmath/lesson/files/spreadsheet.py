"""A spreadsheet saved as text: takes a CSV file as spreadsheets write it, gives rows with their lines.

Commas, semicolons or tabs; UTF-8 with or without a byte order mark, or UTF-16 with one; any line ends.
Format: RFC 4180, but for the separator, and for quoted line ends, which no list of pupils needs.
"""

import csv
import re
from dataclasses import dataclass
from pathlib import Path

from foldmath.errors import FileRefused, Problem
from foldmath.lesson.files.text import printable
from foldmath.phrases import Said

LARGEST_FILE = 1024 * 1024
"""Bytes; a list of ten thousand pupils has about a quarter of this."""

SEPARATORS = ",;\t"
LONGEST_WORDS = 80
MOST_LINES_IN_QUOTES = 20
"""A quote that is not closed within so many lines was never meant to be open."""

SAVE_AS = 'save the list as "CSV UTF-8"'
"""What spreadsheets call the format that we read."""

_WORKBOOKS = (b"PK\x03\x04", b"\xd0\xcf\x11\xe0")
"""How a zipped workbook and an old binary one begin."""

_BYTE_ORDER_MARKS = {b"\xef\xbb\xbf": "utf-8", b"\xff\xfe": "utf-16-le", b"\xfe\xff": "utf-16-be"}


class TableRefused(FileRefused):
    """A spreadsheet that cannot be used."""


@dataclass(frozen=True)
class Row:
    """One row that is not blank.

    Args:
        line: in the file, counted from 1.
        text: as it is written.
        fields: without quotes and outer spaces; bytes that are no text stay as lone surrogates.
    """

    line: int
    text: str
    fields: tuple[str, ...]


@dataclass(frozen=True)
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
    return Problem(file, line, 0, message, printable(words)[:LONGEST_WORDS], hint)


def read_table(path: Path, file: str, largest: int = LARGEST_FILE) -> Table:
    """Read a spreadsheet saved as text.

    Args:
        path: where it is.
        file: the path as the user gave it.
        largest: bytes that it may have.

    Raises:
        TableRefused: it is missing, no file, too large, empty, or no text.
    """
    lines = re.split(r"\r\n|\r|\n", _text(file_content(path, file, largest), file))
    separator, first = _separator(lines)
    rows: list[Row] = []
    problems: list[Problem] = []
    index = first
    while index < len(lines):
        taken = _lines_in_quotes(lines, index, separator)
        text, line = lines[index], index + 1
        if taken > 1:
            message = f"a quoted field runs on over {taken} lines"
            problems.append(problem(file, line, message, text, "write each pupil on one line"))
        elif taken < 1:
            problems.append(
                problem(file, line, "a quote is not closed", text, "close the quote, or leave it out")
            )
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
        hint = 'inside quotes write a quote twice: "Ann ""Nan"" Oak"'
        problems.append(problem(file, line, "a quote stands in the middle of a field", text, hint))
        return
    stripped = tuple(field.strip() for field in fields)
    if any(stripped):
        rows.append(Row(line, text, stripped))


def _lines_in_quotes(lines: list[str], start: int, separator: str) -> int:
    """Count the lines of the row that begins here: 1, or more inside quotes; 0 if they never close."""
    for taken in range(1, MOST_LINES_IN_QUOTES + 1):
        written = [line + "\n" for line in lines[start : start + taken]]
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
        TableRefused: it is missing, no file, or too large.
    """
    try:
        if path.is_dir():
            raise _refused(file, "this is a folder, not a list", "name a CSV file in it")
        if not path.exists():
            raise _refused(file, "there is no such file", "check the name of the file")
        if not path.is_file():
            raise _refused(file, "this is not a file", "name a file that ends in .csv")
        with path.open("rb") as opened:
            content = opened.read(largest + 1)
    except (OSError, ValueError) as error:
        reason = error.strerror if isinstance(error, OSError) else None
        message = f"this file cannot be read: {reason or 'its name cannot be used'}"
        raise _refused(file, message, "check its name and permissions") from None
    if len(content) > largest:
        raise _refused(file, f"this file is larger than {largest // 1024} KB", "give a shorter list")
    return content


def _text(content: bytes, file: str) -> str:
    """Decode a file; bytes that are not UTF-8 stay as lone surrogates, so that their rows can be named."""
    if content.startswith(_WORKBOOKS):
        raise _refused(file, "this is a workbook, not a list saved as text", SAVE_AS)
    mark = next((mark for mark in _BYTE_ORDER_MARKS if content.startswith(mark)), b"")
    encoding = _BYTE_ORDER_MARKS.get(mark, "utf-8")
    try:
        text = content[len(mark) :].decode(encoding, "surrogateescape" if encoding == "utf-8" else "strict")
    except UnicodeDecodeError:
        raise _refused(file, "this file is not whole UTF-16 text", SAVE_AS) from None
    if "\0" in text:
        raise _refused(file, "this file is not text: it has bytes of zero", SAVE_AS)
    if not text.strip():
        raise _refused(file, "this file is empty", "name,level")
    return text


def _refused(file: str, message: Said, hint: Said) -> TableRefused:
    return TableRefused([Problem(file, 0, 0, message, "", hint)])
