"""Styles of the printed pages: what a style sheet says; the sheets themselves are TOML files beside this."""

import tomllib
from collections.abc import Mapping
from functools import cache
from importlib.resources import files
from typing import Any

from reportlab.lib.units import mm

from foldmath.values import frozen

USABLE_WIDTH_MM = 180.0
USABLE_HEIGHT_MM = {"letter": 246.0, "A4": 262.0}
"""Pages differ in height, so A4 takes more; both keep 15 mm and more free at every edge but the foot."""

FOOTER_RISE_MM = 8.0
"""From the bottom of the usable area down to the footer's baseline; the page's edge is farther still."""

GUTTER_MM = 5.0
"""Between the columns of a page."""

FOOTER_GAP_MM = 5.0
"""Kept free between a lesson's title at the foot, the page number and the code."""


@frozen
class PageShape:
    """How large a page is, and what of it is filled, in the middle; all in mm."""

    width_mm: float
    height_mm: float
    usable_width_mm: float
    usable_height_mm: float


SLIDE = PageShape(320.0, 180.0, 300.0, 156.0)
"""A page for a projector, 16 by 9."""


@frozen(kw_only=True)
class TextStyle:
    """How a paragraph is set.

    Args:
        size: of the letters, in points.
        bold: whether all of it is.
        before_mm, after_mm: space kept free above and below.
        centred: in the middle of its width; else from the left.
        holds_next: never parted from the block after it.
        leading: between lines without fractions, as a share of the size.
        fraction: the size of figures in stacked fractions, as a share of the size of the words.
    """

    size: float = 12.0
    bold: bool = False
    before_mm: float = 0.0
    after_mm: float = 1.5
    centred: bool = False
    holds_next: bool = False
    leading: float = 1.35
    fraction: float = 1.0


@frozen(kw_only=True)
class CellStyle:
    """How wide a cell is, and where its blocks stand in it.

    Args:
        width_mm: of the cell; of one that fills its row, the least.
        middle: whether its blocks stand in the middle of its height, else at its top.
        padding_mm: kept free at every side.
        top_mm: kept free above its blocks besides, so that they stand on one line with larger figures.
        foot_mm: kept free below its blocks besides, so that a line to write on is not the row's own.
        fills: whether it takes what is left of its row.
    """

    width_mm: float
    middle: bool = True
    padding_mm: float = 1.5
    top_mm: float = 0.0
    foot_mm: float = 0.0
    fills: bool = False


@frozen(kw_only=True)
class RowStyle:
    """How high a row is at least; its lines; whether its cells stand one below another.

    Args:
        height_mm: at least.
        before_mm: space kept free above; of stacked cells, between them.
        ruled: whether there are lines round it and between its cells, as in a grid to fill in.
        line_mm: how thick the line under it is, where it is not ruled; 0 for none.
        after_mm: space kept free below.
        stacked: whether its cells stand one below another.
    """

    height_mm: float = 0.0
    before_mm: float = 0.0
    ruled: bool = False
    line_mm: float = 0.0
    after_mm: float = 0.0
    stacked: bool = False

    @property
    def lined(self) -> int:
        """How many kinds of lines it has: rows that differ in this make no table together."""
        return 2 if self.ruled else int(self.line_mm > 0)


@frozen(kw_only=True)
class BoxStyle:
    """A box to write in.

    Args:
        width_mm, height_mm: its size; of one that fills its line, the least.
        rule_only: whether just the line at its foot is drawn.
        fills: whether it takes what is left of its line.
        answer_size: of the answer in it, in points.
    """

    width_mm: float
    height_mm: float
    rule_only: bool = False
    fills: bool = False
    answer_size: float = 12.0


@frozen(eq=False, kw_only=True)
class StyleSheet:
    """All styles of one look, by the class that a template names.

    Args:
        text, boxes, rows, cells: the styles.
        line_pitch_mm: between lines to write on.
        together_after_mm: below blocks that stay together.
        centred_pictures: the classes of pictures that stand in the middle of their cell; others at its left.
        columns: how many stand side by side on a page.
        foot_pt: the size of what stands at the foot.
    """

    text: Mapping[str, TextStyle]
    boxes: Mapping[str, BoxStyle]
    rows: Mapping[str, RowStyle]
    cells: Mapping[str, CellStyle]
    line_pitch_mm: float
    together_after_mm: float
    centred_pictures: frozenset[str]
    columns: int
    foot_pt: float


@cache
def style_sheet(name: str) -> StyleSheet:
    """Read a style sheet, such as ``regular``; another one only says what differs from that."""
    table = _table("regular")
    if name != "regular":
        for key, value in _table(name).items():
            table[key] = table[key] | value if isinstance(value, dict) else value
    return StyleSheet(
        text={style: TextStyle(**sizes) for style, sizes in table["text"].items()},
        boxes={style: BoxStyle(**sizes) for style, sizes in table["box"].items()},
        rows={style: RowStyle(**sizes) for style, sizes in table["row"].items()},
        cells={style: CellStyle(**sizes) for style, sizes in table["cell"].items()},
        line_pitch_mm=table["line_pitch_mm"],
        together_after_mm=table["together_after_mm"],
        centred_pictures=frozenset(table["centred_pictures"]),
        columns=table["columns"],
        foot_pt=table["foot_pt"],
    )


def _table(name: str) -> dict[str, Any]:
    return tomllib.loads(files(__package__).joinpath(f"{name}.toml").read_text(encoding="utf-8"))


BOX_LINE_PT = 0.8
RULE_PT = 0.6
STACK_GAP_MM, STACK_OVERHANG_MM, STACK_BAR_MM = 1.4, 1.0, 0.55
"""From a fraction's bar to the boxes above and below it, past them at each end, and the bar's thickness."""

SCISSORS, SCISSORS_PT, SCISSORS_MIDDLE = "✂", 14.0, 0.36
"""At the beginning of a line to cut along; how high the middle of the sign is, of the em."""

CUT_ROOM_MM = 2.0
"""How high a line to cut along is."""

FRACTION_GAP = 0.17
BAR_OVERHANG = 0.1
BAR_WIDTH = 0.065
"""Of the em: from the bar to the figures, past them at each end, and the bar's thickness."""

LINE_GAP_PT, BOX_GAP_MM = 1.0, 3.0
"""Between lines that hold fractions, and between such as hold boxes."""

LINE_GAP = 0.15
"""The same for fractions, as a share of their figures: in large print a point is too little to part the lower
figure of one from the upper figure of the next."""


def points(millimetres: float) -> float:
    """Turn mm into points."""
    return millimetres * float(mm)
