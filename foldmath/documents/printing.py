"""Printing: takes a document's HTML and the recordings of its pictures, gives a PDF."""

from collections.abc import Mapping

from foldmath.documents.markup import blocks_of
from foldmath.documents.print import fonts
from foldmath.documents.print.pages import PageMaster, pdf
from foldmath.documents.print.setting import Compositor
from foldmath.documents.print.styles import style_sheet
from foldmath.drawing.recording import Recording

REGULAR, LARGE = "regular", "large"
"""The names of the two looks: at 12 points, and large print at 18."""

__all__ = ["PageMaster", "printed"]


def printed(
    html: str, pictures: Mapping[str, Recording], master: PageMaster, *, answers: bool, look: str = REGULAR
) -> bytes:
    """Give the PDF of a document, its answers hidden or shown; the same input gives the same bytes."""
    fonts.register_fonts()
    compositor = Compositor(pictures.__getitem__, style_sheet(look), answers=answers)
    return pdf(compositor.flowables(blocks_of(html)), master)
