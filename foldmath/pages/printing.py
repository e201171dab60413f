"""Printing: takes documents' HTML and the recordings of their pictures, gives a PDF."""

from collections.abc import Iterable, Mapping
from functools import cache

from foldmath.drawing.rendering.recording import Recording
from foldmath.pages.looks import REGULAR
from foldmath.pages.markup.reading import blocks_of
from foldmath.pages.pdf import fonts
from foldmath.pages.pdf.binding import bound
from foldmath.pages.pdf.paginating import Copy, PageMaster, paged
from foldmath.pages.pdf.press import Pressed
from foldmath.pages.pdf.setting import Compositor
from foldmath.pages.pdf.styles import style_sheet
from foldmath.values import frozen


@frozen
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
    return bound([printed_pages(documents, pictures, language, look)], title, language)


def printed_pages(
    documents: Iterable[Document], pictures: Mapping[str, Recording], language: str, look: str = REGULAR
) -> Pressed:
    """Print documents as ``printed`` does, as pages that are bound into a file with others."""
    fonts.register_fonts()
    sheet = style_sheet(look)

    @cache
    def compositor(spoken: str, *, answers: bool) -> Compositor:
        return Compositor(pictures.__getitem__, sheet, spoken, answers=answers)

    copies = (
        Copy(
            compositor(document.language or language, answers=document.answers).flowables(
                blocks_of(document.html)
            ),
            document.master,
            language=document.language,
        )
        for document in documents
    )
    return paged(copies, language, sheet.foot_pt)
