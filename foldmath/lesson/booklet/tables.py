"""Tables of a booklet: takes a value of a page, gives its heads and rows, or every slip in them."""

from collections.abc import Iterator
from typing import Any

from foldmath.lesson.booklet.plan import Content, Table
from foldmath.lesson.booklet.texts import Fills, one_line, whole_number
from foldmath.lesson.files.positions import Path
from foldmath.lesson.files.slips import Slip
from foldmath.phrases import Said, counted, phrase

MOST_COLUMNS, MOST_ROWS = 6, 20
LONGEST_CELL = 60


def table_in(value: Any, fills: Fills) -> Iterator[Content | Slip]:
    """Read a table of a page, or give every slip in it."""
    example = 'table = { columns = ["Word", "Meaning"], rows = 5 }'
    if not isinstance(value, dict):
        yield Slip(("table",), phrase("a table has columns and rows, in braces"), example)
        return
    for key in value.keys() - {"columns", "rows", "answers"}:
        message = phrase("a table here has only columns, rows and answers")
        yield Slip(("table", key), message, example, at_key=True)
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
    heads = [_cell(head, ("table", "columns", index), fills) for index, head in enumerate(columns)]
    read = [_row(row, ("table", "rows", index), len(columns), fills) for index, row in enumerate(rows)]
    answers = list(_answers(value.get("answers"), rows, len(columns), fills))
    slips = [cell for row in (heads, *read, *answers) for cell in row if isinstance(cell, Slip)]
    yield from slips
    if not slips:
        yield Table(_texts(heads), tuple(map(_texts, read)), tuple(map(_texts, answers)))


def _answers(given: Any, rows: list[Any], columns: int, fills: Fills) -> "Iterator[list[Said | Slip]]":
    """Read what would be right in the cells that students write in; nothing where the lesson does not say."""
    path = ("table", "answers")
    if given is None:
        for _ in rows:
            yield [""] * columns
    elif not isinstance(given, list) or len(given) != len(rows):
        message = phrase(
            "the answers of a table are a list of rows, and this table has {rows}",
            rows=counted("{count} row", "{count} rows", len(rows)),
        )
        yield [Slip(path, message, phrase('give a row for each, with "" where nothing is to be written'))]
    else:
        for index, (answered, row) in enumerate(zip(given, rows, strict=True)):
            cells = _row(answered, (*path, index), columns, fills)
            yield [_free(cell, row, (*path, index), at) for at, cell in enumerate(cells)]


def _free(answer: "Said | Slip", row: Any, path: Path, at: int) -> "Said | Slip":
    """Make sure that an answer belongs to a cell that students write in."""
    given = isinstance(row, list) and at < len(row) and row[at] != ""
    if answer == "" or isinstance(answer, Slip) or not given:
        return answer
    return Slip((*path, at), phrase("this cell is given already, so it has no answer"), '""')


def _row(row: Any, path: Path, columns: int, fills: Fills) -> "list[Said | Slip]":
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
    return [_cell(cell, (*path, at), fills) for at, cell in enumerate(row)]


def _cell(value: Any, path: tuple[str | int, ...], fills: Fills) -> "Said | Slip":
    return "" if value == "" else one_line(value, path, "cell", LONGEST_CELL, fills)


def _texts(cells: "list[Said | Slip]") -> tuple[Said, ...]:
    return tuple(cell for cell in cells if not isinstance(cell, Slip))
