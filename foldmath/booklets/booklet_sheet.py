"""The booklet's sheet in print: paints every page where it lies, turned as it lies, on one side or on two."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

from reportlab.pdfgen.canvas import Canvas

from foldmath.booklets.booklet_page import Heights, paint
from foldmath.booklets.booklet_styles import PageRoom
from foldmath.drawing.recording import Recording
from foldmath.pages.pdf import fonts
from foldmath.pages.pdf.flowables import Painted
from foldmath.pages.pdf.forms import place
from foldmath.pages.pdf.painting import painted
from foldmath.pages.pdf.styles import points

NUMBER_PT = 9.0
NUMBER_RISE_MM = 0.8
"""Of a page number's baseline over the page's margin."""

TICK_MM, TICK_PT = 9.0, 0.5
"""Ticks reach past the rim that printers leave white (up to 6 mm: common practice, no source)."""

SLIT_PT = 0.8
MARK_MM, MARK_GAP_MM = 6.0, 1.5
"""The marks at which a smaller sheet is cut out: their length, and their distance from the sheet."""


@dataclass(frozen=True)
class SetPage:
    """A page ready to be painted.

    Args:
        label: the number of the page, as it is printed at its foot.
        matrix: from the page, in points from its bottom left corner, to its side of the sheet.
        left_mm, foot_mm: where the room for its contents begins.
        number_mm: the margin at its foot.
        width_mm: of the page.
        flowables: its contents.
        room: for them.
        spacing, heights: how they are stacked.
    """

    label: str
    matrix: tuple[float, float, float, float, float, float]
    left_mm: float
    foot_mm: float
    number_mm: float
    width_mm: float
    flowables: Sequence[Painted]
    room: PageRoom
    spacing: float
    heights: Heights


Segment = tuple[float, float, float, float]
"""From x, y to x, y, in mm."""


@dataclass(frozen=True)
class PrintSide:
    """One side of the sheet.

    Args:
        pages: that lie on it.
        ticks: short lines at the edges where folds end.
        slits: where it is cut.
        star: its picture; None on the back.
        star_mm: how far its corner is from both edges.
    """

    pages: Sequence[SetPage]
    ticks: Sequence[Segment] = ()
    slits: Sequence[Segment] = ()
    star: Recording | None = None
    star_mm: float = 0.0


@dataclass(frozen=True)
class PrintSize:
    """The sheet on the page that is printed, in mm; its edges are the page's own, or lie inside it."""

    page_width: float
    page_height: float
    width: float
    height: float

    @property
    def left(self) -> float:
        """Where the sheet begins, from the left."""
        return (self.page_width - self.width) / 2

    @property
    def bottom(self) -> float:
        """Where the sheet begins, from the bottom."""
        return (self.page_height - self.height) / 2

    @property
    def cut_out(self) -> bool:
        """Whether the sheet is smaller than the page."""
        return self.left > 0 or self.bottom > 0


def sheet_pdf(sides: Sequence[PrintSide], size: PrintSize, title: str, language: str) -> bytes:
    """Print the sides of one sheet at exact scale; the same input gives the same bytes.

    Args:
        sides: the printed side first.
        size: of sheet and page.
        title: of the file, in its metadata.
        language: as in BCP 47.
    """

    def paint_pages(canvas: Canvas) -> None:
        for side in sides:
            canvas.setPageSize((points(size.page_width), points(size.page_height)))
            canvas.saveState()
            canvas.translate(points(size.left), points(size.bottom))
            _put_side(canvas, side)
            canvas.restoreState()
            if size.cut_out:
                _cutting_marks(canvas, size)
            canvas.showPage()

    return painted(paint_pages, title, language)


def _put_side(canvas: Any, side: PrintSide) -> None:
    _lines(canvas, side.ticks, TICK_PT)
    _lines(canvas, side.slits, SLIT_PT)
    if side.star:
        place(canvas, side.star, points(side.star_mm), points(side.star_mm))
    for page in side.pages:
        canvas.saveState()
        canvas.transform(*page.matrix)
        _number(canvas, page)
        canvas.translate(points(page.left_mm), points(page.foot_mm))
        paint(canvas, page.flowables, page.room, page.spacing, page.heights)
        canvas.restoreState()


def _number(canvas: Any, page: SetPage) -> None:
    canvas.setFont(fonts.REGULAR, NUMBER_PT)
    middle = points(page.left_mm + page.room.width_mm / 2)
    canvas.drawCentredString(middle, points(page.number_mm + NUMBER_RISE_MM), page.label)


def _lines(canvas: Any, segments: Sequence[Segment], width: float) -> None:
    canvas.setLineWidth(width)
    for segment in segments:
        canvas.line(*(points(number) for number in segment))


def _cutting_marks(canvas: Any, size: PrintSize) -> None:
    """Mark the corners of a smaller sheet on its page, outside it, so far as the page reaches."""
    marks: list[Segment] = []
    right, top = size.left + size.width, size.bottom + size.height
    for x, outward in ((size.left, -1.0), (right, 1.0)):
        for y, up in ((size.bottom, -1.0), (top, 1.0)):
            start, end = MARK_GAP_MM, MARK_GAP_MM + MARK_MM
            marks.append((x + outward * start, y, x + outward * end, y))
            marks.append((x, y + up * start, x, y + up * end))
    _lines(canvas, marks, TICK_PT)
