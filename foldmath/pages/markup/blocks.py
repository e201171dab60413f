"""What a page is made of, between HTML and print: blocks of inline runs, boxes, rows and pictures."""

from collections.abc import Iterable, Iterator
from enum import StrEnum
from typing import TypeAlias, assert_never

from foldmath.values import frozen


@frozen
class Text:
    """Words in one style; spaces at either end count.

    Args:
        text: the words.
        bold: whether they are.
        language: of the words, where it is another than the page's; else empty.
    """

    text: str
    bold: bool = False
    language: str = ""


@frozen
class Stack:
    """A stacked fraction; each part is figures, a box to write them in, or boxes with a sign between."""

    above: "tuple[Run, ...]"
    below: "tuple[Run, ...]"


@frozen
class Box:
    """A box to write in, with the answer that belongs there; a given one shows it to everybody."""

    style: str
    answer: str
    given: bool = False


@frozen
class LineBreak:
    """An end of line."""


Run: TypeAlias = "Text | Stack | Box | LineBreak"


class CellRole(StrEnum):
    """What a cell, or what takes the place of one, is to those who hear the page."""

    NONE = "none"
    CELL = "cell"
    COLUMN_HEADER = "columnheader"
    ROW_HEADER = "rowheader"
    LABEL = "label"
    BODY = "body"


class RowRole(StrEnum):
    """What a row is to those who hear the page: one for the eye alone, or one of a table or a list."""

    LAYOUT = "layout"
    FIRST_OF_TABLE = "first-of-table"
    OF_TABLE = "of-table"
    OF_LIST = "of-list"


@frozen
class Paragraph:
    """Inline runs in a named style.

    Args:
        style: its name.
        runs: what is in it.
        level: of a heading, from 1; 0 for words of the text.
        role: if it takes the place of a cell.
    """

    style: str
    runs: tuple[Run, ...]
    level: int = 0
    role: CellRole = CellRole.NONE


@frozen
class Picture:
    """A picture by name in a named style, and the one that takes its place where answers are shown."""

    style: str
    name: str
    answer_name: str
    words: str


@frozen
class WritingLines:
    """Ruled lines to write on, with an answer that would do."""

    lines: int
    answer: tuple[Run, ...]


@frozen
class Cell:
    """A cell of a row, in a named style that says how wide it is; for those who hear it ``columns`` wide."""

    style: str
    blocks: "tuple[Block, ...]"
    role: CellRole = CellRole.NONE
    columns: int = 1


@frozen
class Row:
    """Cells side by side, never parted by a page's end.

    Args:
        style: the row's named style.
        cells: from left to right.
        heads: the rows of its table's head, which stand again on every page that the table goes on to.
        role: what it is to those who hear it.
    """

    style: str
    cells: tuple[Cell, ...]
    heads: "tuple[Row, ...]" = ()
    role: RowRole = RowRole.LAYOUT


@frozen
class Together:
    """Blocks that stay on one page, and may take the place of a cell."""

    style: str
    blocks: "tuple[Block, ...]"
    role: CellRole = CellRole.NONE


@frozen
class Columns:
    """Blocks in the columns of a page, read down each; one is never parted."""

    blocks: "tuple[Block, ...]"


@frozen
class NewPage:
    """The start of a page; a soft one stays on a page that has little on it yet."""

    soft: bool


@frozen
class CutLine:
    """A dashed line across the page, with scissors, along which it is cut."""


Block: TypeAlias = Paragraph | Picture | WritingLines | Row | Together | Columns | CutLine | NewPage


def pictures_in(blocks: Iterable[Block]) -> Iterator[Picture]:
    """Give all pictures among blocks and inside them, in order."""
    for block in blocks:
        match block:
            case Picture():
                yield block
            case Row():
                for cell in block.cells:
                    yield from pictures_in(cell.blocks)
            case Together() | Columns():
                yield from pictures_in(block.blocks)
            case Paragraph() | WritingLines() | CutLine() | NewPage():
                pass
            case _:
                assert_never(block)
