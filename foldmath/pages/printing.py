"""Printing: takes documents' HTML and the recordings of their pictures, gives a PDF."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from foldmath.drawing.rendering.recording import Recording
from foldmath.pages.looks import REGULAR
from foldmath.pages.markup.reading import blocks_of
from foldmath.pages.pdf import fonts
from foldmath.pages.pdf.paginating import Copy, PageMaster, pdf
from foldmath.pages.pdf.setting import Compositor
from foldmath.pages.pdf.styles import style_sheet


@dataclass(frozen=True)
class Document:
    """A document ready to be printed.

    Args:
        html: its body, by the templates.
        master: what its pages share.
        answers: whether its answers show.
        language: of its words; empty for the file's.
    """

    html: str
    master: PageMaster
    answers: bool
    language: str = ""


def printed(
    documents: Iterable[Document],
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
        Copy(
            compositors[document.answers].flowables(blocks_of(document.html)),
            document.master,
            language=document.language,
        )
        for document in documents
    )
    return pdf(copies, title, language, sheet.foot_pt)
