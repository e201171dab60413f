"""The style sheet of one booklet page: the booklet's styles at a size of letters, for a page's width."""

from collections.abc import Iterable, Mapping
from dataclasses import replace
from functools import lru_cache

from foldmath.pages.pdf import fonts
from foldmath.pages.pdf.styles import (
    BoxStyle,
    CellStyle,
    RowStyle,
    StyleSheet,
    TextStyle,
    points,
    style_sheet,
)
from foldmath.values import frozen

BASE_PT, LARGE_PT = 12.0, 18.0
"""The size at which the style sheet is written, and that of large print."""

HEADS = ("title", "h2")
"""Styles of headings, which may be set smaller where a word is too wide."""

BOX_GROWTH = 5 / 6
"""How much wider and higher a box gets, in mm, for each point that the letters are larger."""

BY_LINE_SHARE, BY_LINE_MOST_MM = 0.72, 90.0
"""The line for a name: its share of the page's width, and its greatest length."""

CELL_PADDING_MM = 1.5
HAIR_MM = 0.2
"""A word never fills its column to the last."""

TABLE_CLASS = "table-{table}-{column}"
SHEETS_KEPT = 256


@frozen
class TypeSize:
    """How the words of a page are set.

    Args:
        size: of the letters, in points.
        heads: the size of headings, as a share of what belongs to that size.
        spacing: the spaces between blocks, as a share of their own.
        boxes: the size of boxes to write in, as a share of what belongs to the size of letters.
    """

    size: float
    heads: float = 1.0
    spacing: float = 1.0
    boxes: float = 1.0


@frozen
class PageRoom:
    """What a page has room for, in mm: its width and height inside the margins, and its ruling."""

    width_mm: float
    height_mm: float
    ruling_mm: float


Columns = tuple[tuple[str, ...], ...]
"""The words of a table, column by column."""


@lru_cache(maxsize=SHEETS_KEPT)
def page_styles(setting: TypeSize, room: PageRoom, tables: tuple[Columns, ...]) -> StyleSheet:
    """Scale the booklet's style sheet, and fit its name line and the columns of tables to a width."""
    base = style_sheet("booklet")
    text = {name: _scaled(style, setting, name in HEADS) for name, style in base.text.items()}
    cells = dict(base.cells)
    for number, table in enumerate(tables):
        cells |= _cells(number, table, text, room.width_mm)
    return replace(
        base,
        text=text,
        boxes={name: _box(name, style, setting, room) for name, style in base.boxes.items()},
        rows=_rows(base, room),
        cells=cells,
        line_pitch_mm=room.ruling_mm,
    )


def _scaled(style: TextStyle, setting: TypeSize, heading: bool) -> TextStyle:
    size = style.size * setting.size / BASE_PT
    if heading:
        size = max(setting.size, size * setting.heads)
    # In large print no figure is smaller than the words.
    return replace(style, size=size, fraction=style.fraction if setting.size < LARGE_PT else 1.0)


def _box(name: str, style: BoxStyle, setting: TypeSize, room: PageRoom) -> BoxStyle:
    more = (setting.size - BASE_PT) * BOX_GROWTH
    width, height = setting.boxes * (style.width_mm + more), setting.boxes * (style.height_mm + more)
    if name == "by-line":
        width = min(BY_LINE_SHARE * room.width_mm, BY_LINE_MOST_MM)
    return replace(style, width_mm=width, height_mm=height, answer_size=setting.size)


def _rows(base: StyleSheet, room: PageRoom) -> Mapping[str, RowStyle]:
    return {**base.rows, "table-row": replace(base.rows["table-row"], height_mm=room.ruling_mm)}


def _cells(
    number: int, table: Columns, text: Mapping[str, TextStyle], width_mm: float
) -> dict[str, CellStyle]:
    """Give every column the width of its widest word, and share out what is left."""
    least = [_widest_word(column, text) for column in table]
    spare = max(0.0, width_mm - sum(least)) / max(len(least), 1)
    return {
        TABLE_CLASS.format(table=number, column=place): CellStyle(
            width_mm=width + spare, middle=True, padding_mm=CELL_PADDING_MM
        )
        for place, width in enumerate(least)
    }


def _widest_word(column: Iterable[str], text: Mapping[str, TextStyle]) -> float:
    head, *entries = column
    widths = [fonts.width_of(word, fonts.BOLD, text["column"].size) for word in head.split()]
    widths += [
        fonts.width_of(word, fonts.BOLD, text["answer"].size) for entry in entries for word in entry.split()
    ]
    return max(widths, default=0.0) / points(1) + 2 * CELL_PADDING_MM + HAIR_MM
