"""Printing: takes documents' HTML and the recordings of their pictures, gives a PDF."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from foldmath.documents.looks import REGULAR
from foldmath.documents.markup import blocks_of
from foldmath.documents.print import fonts
from foldmath.documents.print.pages import Copy, PageMaster, pdf
from foldmath.documents.print.setting import Compositor
from foldmath.documents.print.styles import style_sheet
from foldmath.drawing.recording import Recording


@dataclass(frozen=True)
class Manuscript:
    """A document ready to be printed.

    Args:
        html: its body, by the templates.
        master: what its pages share.
        answers: whether its answers show.
    """

    html: str
    master: PageMaster
    answers: bool


def printed(
    manuscripts: Iterable[Manuscript],
    pictures: Mapping[str, Recording],
    title: str,
    language: str,
    look: str = REGULAR,
) -> bytes:
    """Print documents one after the other into one PDF; the same input gives the same bytes."""
    fonts.register_fonts()
    sheet = style_sheet(look)
    compositors = {
        answers: Compositor(pictures.__getitem__, sheet, answers=answers) for answers in (False, True)
    }
    copies = (
        Copy(compositors[manuscript.answers].flowables(blocks_of(manuscript.html)), manuscript.master)
        for manuscript in manuscripts
    )
    return pdf(copies, title, language)
