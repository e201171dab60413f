"""The booklet's sheet in print: paints every page where it lies, turned as it lies, on one side or on two."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

from reportlab.pdfgen.canvas import Canvas

from foldmath.booklets.booklet_page import Heights, paint
from foldmath.booklets.booklet_styles import PageRoom
from foldmath.drawing.layout import as_float
from foldmath.drawing.look import PENS
from foldmath.drawing.recording import Recording
from foldmath.drawing.scenes import Meaning, Spot
from foldmath.pages.page_fit import PageFit
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


@dataclass(frozen=True)
class SetPage:
    """A page ready to be painted.

    Args:
        label: the number of the page, as it is printed at its foot.
        matrix: from the page, in points from its bottom left corner, to the printer's page.
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


Segment = tuple[Spot, Spot]
"""A line on the printer's page, from and to, in mm."""


@dataclass(frozen=True)
class PlacedStar:
    """The star's picture, and where its bottom left corner lies on the printer's page, in mm."""

    picture: Recording
    at: Spot


@dataclass(frozen=True)
class PrintSide:
    """One side of the sheet.

    Args:
        pages: that lie on it.
        ticks: short lines at the edges where folds end.
        slits: where it is cut.
        frame: where it is cut out of the printer's page.
        star: at its bottom left corner; None on the back.
    """

    pages: Sequence[SetPage]
    ticks: Sequence[Segment] = ()
    slits: Sequence[Segment] = ()
    frame: Sequence[Segment] = ()
    star: PlacedStar | None = None


def sheet_pdf(sides: Sequence[PrintSide], lies: PageFit, title: str, language: str) -> bytes:
    """Print the sides of one sheet at exact scale; the same input gives the same bytes.

    Args:
        sides: the printed side first.
        lies: how the sheet lies on the printer's page.
        title: of the file, in its metadata.
        language: as in BCP 47.
    """

    def paint_pages(canvas: Canvas) -> None:
        for side in sides:
            canvas.setPageSize((points(as_float(lies.width)), points(as_float(lies.height))))
            _put_side(canvas, side)
            canvas.showPage()

    return painted(paint_pages, title, language)


def _put_side(canvas: Any, side: PrintSide) -> None:
    _lines(canvas, side.ticks, TICK_PT)
    _lines(canvas, side.slits, SLIT_PT)
    _lines(canvas, side.frame, points(PENS[Meaning.SHEET_EDGE].width_mm))
    if side.star:
        place(canvas, side.star.picture, points(side.star.at.x), points(side.star.at.y))
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
    for start, end in segments:
        canvas.line(points(start.x), points(start.y), points(end.x), points(end.y))
