"""Guide pages on paper: paints their marks at exact scale, and writes the PDF."""

from collections.abc import Iterable

from reportlab.pdfgen.canvas import Canvas

from foldmath.guides.marks import GuidePage
from foldmath.pages.pdf.exact import paint_marks
from foldmath.pages.pdf.painting import painted
from foldmath.pages.pdf.styles import points


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
            paint_marks(canvas, page.marks)
            canvas.showPage()

    return painted(paint_pages, title, language)
