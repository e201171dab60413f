"""The style sheet of the printed pages: every size, by the class that a template names, with its unit."""

from dataclasses import dataclass

from reportlab.lib.units import mm

PAGE_MM = {"letter": (215.9, 279.4), "A4": (210.0, 297.0)}
USABLE_WIDTH_MM = 180.0
USABLE_HEIGHT_MM = {"letter": 246.0, "A4": 262.0}
"""Pages differ in height, so A4 takes more; both keep 15 mm and more free at every edge but the foot."""

FOOTER_RISE_MM = 8.0
"""From the bottom of the usable area down to the footer's baseline; the page's edge is farther still."""

FOOTER_SIZE_PT = 9.0


@dataclass(frozen=True)
class TextStyle:
    """How a paragraph is set.

    Args:
        size: of the letters, in points.
        bold: whether all of it is.
        before_mm, after_mm: space kept free above and below.
        centred: in the middle of its width; else from the left.
        holds_next: never parted from the block after it.
        leading: between lines without fractions, as a share of the size.
    """

    size: float = 12.0
    bold: bool = False
    before_mm: float = 0.0
    after_mm: float = 1.5
    centred: bool = False
    holds_next: bool = False
    leading: float = 1.35


@dataclass(frozen=True)
class CellStyle:
    """How wide a cell is, and where its blocks stand in it: at the top, or in the middle."""

    width_mm: float
    middle: bool = True
    padding_mm: float = 1.5


@dataclass(frozen=True)
class RowStyle:
    """How high a row is at least, and whether it is ruled round."""

    height_mm: float = 0.0
    ruled: bool = False
    after_mm: float = 0.0


@dataclass(frozen=True)
class BoxStyle:
    """A box to write in; ``rule_only`` leaves just the line at its foot."""

    width_mm: float
    height_mm: float
    rule_only: bool = False
    answer_size: float = 12.0


TEXT = {
    "p": TextStyle(),
    "h1": TextStyle(14, bold=True, after_mm=2, holds_next=True),
    "h2": TextStyle(13, bold=True, before_mm=4, after_mm=2, holds_next=True),
    "lead": TextStyle(12, after_mm=2.5),
    "steps": TextStyle(12, bold=True, after_mm=2),
    "name": TextStyle(12, after_mm=3),
    "badge": TextStyle(12, bold=True, after_mm=1),
    "head": TextStyle(10, bold=True, centred=True, after_mm=0, leading=1.2),
    "caption": TextStyle(12, after_mm=1, leading=1.2),
    "sum": TextStyle(12, after_mm=1),
    "centre": TextStyle(12, centred=True, after_mm=1),
    "item": TextStyle(12, after_mm=2),
    "below": TextStyle(12, before_mm=3, after_mm=1),
    "small": TextStyle(10, after_mm=1),
    "legend": TextStyle(10, after_mm=0, leading=1.2),
    "note": TextStyle(11, after_mm=1),
    "note-head": TextStyle(10, bold=True, after_mm=0),
    "note-number": TextStyle(11, centred=True, after_mm=0),
}

BOXES = {
    "output": BoxStyle(12, 12),
    "part": BoxStyle(12, 11),
    "predict": BoxStyle(14, 14),
    "name-line": BoxStyle(90, 12, rule_only=True),
    "date-line": BoxStyle(45, 12, rule_only=True),
    "choice": BoxStyle(6, 6, answer_size=11),
}

ROWS = {
    "tr": RowStyle(),
    "fold-head": RowStyle(10, ruled=True),
    "fold-row": RowStyle(46, ruled=True),
    "item-row": RowStyle(after_mm=3),
    "whole-check": RowStyle(28, after_mm=1),
    "note-row": RowStyle(8, ruled=True),
    "legend-row": RowStyle(7),
}

CELLS = {
    "picture-head": CellStyle(44),
    "head-cell": CellStyle(20, padding_mm=0.5),
    "picture": CellStyle(44, middle=False),
    "prediction": CellStyle(20),
    "panels": CellStyle(20),
    "sentence": CellStyle(96),
    "model": CellStyle(90, middle=False, padding_mm=0),
    "question": CellStyle(90, middle=False, padding_mm=0),
    "lead-words": CellStyle(158, padding_mm=0),
    "lead-picture": CellStyle(22, padding_mm=0),
    "note-answer": CellStyle(26),
    "note-share": CellStyle(34),
    "note-words": CellStyle(120),
    "sum-cell": CellStyle(80, padding_mm=0),
    "why-cell": CellStyle(100, padding_mm=0),
    "legend-line": CellStyle(16, padding_mm=0.5),
    "legend-name": CellStyle(44, padding_mm=0.5),
}

CENTRED_PICTURES = {"img"}
"""The classes of pictures that stand in the middle of their cell; all others stand at its left."""

TOGETHER_AFTER_MM = 2.0
LINE_PITCH_MM = 9.0
BOX_LINE_PT = 0.8
RULE_PT = 0.6
STACK_GAP_MM = 0.9
"""Between a fraction's bar and the boxes above and below it."""

FRACTION_GAP = 0.17
BAR_OVERHANG = 0.1
BAR_WIDTH = 0.065
"""Of the em: from the bar to the figures, past them at each end, and the bar's thickness."""

LINE_GAP_PT = 3.0
"""Between lines that hold fractions or boxes."""


def points(millimetres: float) -> float:
    """Turn mm into points."""
    return millimetres * float(mm)
