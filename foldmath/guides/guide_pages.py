"""Guide pages on paper: paints their marks at exact scale, and writes the PDF."""

from collections.abc import Iterable
from math import cos, pi, sin
from typing import assert_never

from reportlab.pdfgen.canvas import Canvas

from foldmath.drawing import look
from foldmath.drawing.scenes import Meaning, Spot, Star
from foldmath.guides.marks import Anchor, Disc, GuideMark, GuidePage, Rule, Wedge, Words
from foldmath.pages.pdf import fonts
from foldmath.pages.pdf.painting import painted
from foldmath.pages.pdf.styles import points

CIRCLE_MM = 0.3
"""How thick circles and outlines of stars are."""

FLAT_CAP, ROUND_CAP = 0, 1
"""Ends of lines: ISO 32000-1:2008, 8.4.3.3."""


def guide_pdf(pages: Iterable[GuidePage], title: str, language: str) -> bytes:
    """Write pages, each of its own size; the same input gives the same bytes.

    The trim box of a page is the sheet to fold, where it has one (ISO 32000-1:2008, 14.11.2).

    Args:
        pages: in order.
        title: of the file, in its metadata.
        language: as in BCP 47, such as ``en-US``.
    """

    def paint_pages(canvas: Canvas) -> None:
        for page in pages:
            canvas.setPageSize((points(page.width_mm), points(page.height_mm)))
            canvas.setTrimBox(tuple(points(side) for side in page.sheet) if page.sheet else None)
            for mark in page.marks:
                _paint(canvas, mark)
            canvas.showPage()

    return painted(paint_pages, title, language)


def _paint(canvas: Canvas, mark: GuideMark) -> None:
    match mark:
        case Rule(start, end, meaning):
            _set_pen(canvas, meaning)
            canvas.line(points(start.x), points(start.y), points(end.x), points(end.y))
        case Words():
            _write(canvas, mark)
        case Disc(middle, radius):
            _set_outline(canvas)
            canvas.setFillGray(1)
            canvas.circle(points(middle.x), points(middle.y), points(radius), stroke=1, fill=1)
        case Wedge(spots):
            _fill(canvas, spots, hollow=False)
        case Star(middle, radius, hollow):
            _fill(canvas, _star(middle, radius), hollow)
        case _:
            assert_never(mark)


def _set_pen(canvas: Canvas, meaning: Meaning) -> None:
    pen = look.PENS[meaning]
    canvas.setLineWidth(points(pen.width_mm))
    canvas.setStrokeGray(pen.grey)
    canvas.setLineCap(ROUND_CAP if pen.round_ends else FLAT_CAP)
    canvas.setDash([points(dash) for dash in pen.dashes_mm])


def _set_outline(canvas: Canvas) -> None:
    canvas.setLineWidth(points(CIRCLE_MM))
    canvas.setStrokeGray(0)
    canvas.setDash([])


def _write(canvas: Canvas, words: Words) -> None:
    canvas.setFillGray(0)
    canvas.setFont(fonts.font_name(words.bold), words.size_pt)
    canvas.saveState()
    canvas.translate(points(words.at.x), points(words.at.y))
    if words.turned:
        canvas.rotate(90)
    write = {
        Anchor.START: canvas.drawString,
        Anchor.MIDDLE: canvas.drawCentredString,
        Anchor.END: canvas.drawRightString,
    }
    write[words.anchor](0, 0, words.text)
    canvas.restoreState()


def _fill(canvas: Canvas, spots: tuple[Spot, ...], hollow: bool) -> None:
    _set_outline(canvas)
    canvas.setFillGray(1 if hollow else 0)
    path = canvas.beginPath()
    path.moveTo(points(spots[0].x), points(spots[0].y))
    for corner in spots[1:]:
        path.lineTo(points(corner.x), points(corner.y))
    path.close()
    canvas.drawPath(path, stroke=1, fill=1)


def _star(middle: Spot, radius: float) -> tuple[Spot, ...]:
    angles = [pi / 2 + number * pi / look.STAR_POINTS for number in range(2 * look.STAR_POINTS)]
    radii = [radius, radius * look.STAR_WAIST] * look.STAR_POINTS
    return tuple(
        Spot(middle.x + reach * cos(angle), middle.y + reach * sin(angle))
        for reach, angle in zip(radii, angles, strict=True)
    )
