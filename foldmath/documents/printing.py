"""Printing: takes a document's HTML and the recordings of its pictures, gives a PDF."""

from collections.abc import Mapping

from foldmath.documents.markup import blocks_of
from foldmath.documents.print import fonts
from foldmath.documents.print.pages import PageMaster, pdf
from foldmath.documents.print.setting import Compositor
from foldmath.drawing.recording import Recording

__all__ = ["PageMaster", "printed"]


def printed(html: str, pictures: Mapping[str, Recording], master: PageMaster, *, answers: bool) -> bytes:
    """Give the PDF of a document, its answers hidden or shown; the same input gives the same bytes."""
    fonts.register_fonts()
    compositor = Compositor(pictures.__getitem__, answers=answers)
    return pdf(compositor.flowables(blocks_of(html)), master)
