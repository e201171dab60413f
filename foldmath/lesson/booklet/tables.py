"""Tables of a booklet: takes a value of a page, gives its heads and rows, or every slip in them."""

from collections.abc import Iterator
from typing import Any

from foldmath.lesson.booklet.plan import Content, Table
from foldmath.lesson.booklet.texts import one_line, whole_number
from foldmath.lesson.files.shape import Slip
from foldmath.phrases import counted, phrase

MOST_COLUMNS, MOST_ROWS = 6, 20
LONGEST_CELL = 60


def table_in(value: Any, _: object) -> Iterator[Content | Slip]:
    """Read a table of a page, or give every slip in it."""
    example = 'table = { columns = ["Word", "Meaning"], rows = 5 }'
    if not isinstance(value, dict):
        yield Slip(("table",), phrase("a table has columns and rows, in braces"), example)
        return
    for key in value.keys() - {"columns", "rows"}:
        yield Slip(("table", key), phrase("a table here has only columns and rows"), example, True)
    columns = value.get("columns")
    if not isinstance(columns, list) or not 1 <= len(columns) <= MOST_COLUMNS:
        message = phrase("the columns must be a list of 1 to {most} headings in quotes", most=MOST_COLUMNS)
        yield Slip(("table", "columns"), message, 'columns = ["Word", "Meaning"]')
        return
    rows = value.get("rows")
    if isinstance(rows, int) and whole_number(rows, 1, MOST_ROWS):
        rows = [[""] * len(columns)] * rows
    if not isinstance(rows, list) or not 1 <= len(rows) <= MOST_ROWS:
        message = phrase(
            "the rows must be a whole number from 1 to {most}, or a list of rows", most=MOST_ROWS
        )
        yield Slip(("table", "rows"), message, "rows = 5")
        return
    heads = [_cell(head, ("table", "columns", index)) for index, head in enumerate(columns)]
    read = [_row(row, index, len(columns)) for index, row in enumerate(rows)]
    slips = [cell for row in (heads, *read) for cell in row if isinstance(cell, Slip)]
    yield from slips
    if not slips:
        yield Table(_texts(heads), tuple(_texts(row) for row in read))


def _row(row: Any, index: int, columns: int) -> list[str | Slip]:
    path = ("table", "rows", index)
    if not isinstance(row, list):
        hint = "[" + ", ".join(['""'] * columns) + "]"
        return [Slip(path, phrase("a row is a list of texts in quotes, empty where students write"), hint)]
    if len(row) != columns:
        message = phrase(
            "this row has {cells}, and the table {columns}",
            cells=counted("{count} cell", "{count} cells", len(row)),
            columns=counted("{count} column", "{count} columns", columns),
        )
        return [Slip(path, message, phrase('give a text for each column, "" for an empty cell'))]
    return [_cell(cell, (*path, at)) for at, cell in enumerate(row)]


def _cell(value: Any, path: tuple[str | int, ...]) -> str | Slip:
    return "" if value == "" else one_line(value, path, "cell", LONGEST_CELL, None)


def _texts(cells: list[str | Slip]) -> tuple[str, ...]:
    return tuple(cell for cell in cells if isinstance(cell, str))
