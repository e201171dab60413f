"""Binding: takes pressed pages, gives the PDF that holds them, with their fonts and pictures, each once."""

import zlib
from collections.abc import Iterable, Sequence
from io import BytesIO
from itertools import chain
from typing import Any

from reportlab import rl_config
from reportlab.pdfbase.pdfdoc import PDFObject
from reportlab.pdfgen.canvas import Canvas

from foldmath.drawing.rendering.recording import Recording
from foldmath.pages.lettering.embedding import embedded
from foldmath.pages.pdf import fonts
from foldmath.pages.pdf.forms import form_of, letters_on
from foldmath.pages.pdf.press import FOOT_PT, Pages, Pressed, PressedPage, pressed
from foldmath.pages.tags.closing import OpenFile, closed
from foldmath.pages.tags.tree import joined


def written(documents: Iterable[Pages], title: str, language: str, foot_pt: float = FOOT_PT) -> bytes:
    """Write documents into one file, one after the other; the same input gives the same bytes.

    Args:
        documents: each asked for when the one before it is painted.
        title: of the file, in its metadata.
        language: as in BCP 47, such as ``en-US``.
        foot_pt: the size of what stands at the foot.
    """
    return bound([pressed(documents, language, foot_pt)], title, language)


def bound(sections: Sequence[Pressed], title: str, language: str) -> bytes:
    """Bind pages into one file, section by section; the same input gives the same bytes.

    Args:
        sections: in order, each from a process of its own, or all from one.
        title: of the file, in its metadata.
        language: as in BCP 47, such as ``en-US``.
    """
    # Plain binary streams: smaller files, and no time lost on turning them into letters.
    rl_config.useA85 = 0
    fonts.register_fonts()
    stream = BytesIO()
    canvas = Canvas(stream, invariant=1, lang=language)
    canvas.setTitle(title)
    canvas.setAuthor("the foldmath authors")
    canvas.setCreator("foldmath")
    canvas.setProducer("foldmath")
    document: Any = canvas._doc  # type: ignore[attr-defined]  # reportlab's own
    page_tree, resources = _named(document, document.Pages), _resources(document, sections)
    shared = b"/Resources %b/Parent %b/Tabs/S" % (resources, page_tree)
    for number, page in enumerate(page for section in sections for page in section.pages):
        document.addPage(_page(document, page, b"%b/StructParents %d" % (shared, number)))
    document.SaveToFile(stream, canvas)
    tree = joined(section.tree for section in sections)
    return closed(OpenFile(stream.getvalue(), tree, title, language))


class _Ready(PDFObject):
    """An object of a file, as it is written there."""

    __RefOnly__ = 1

    def __init__(self, told: bytes) -> None:
        self.told = told

    def format(self, document: object) -> bytes:  # noqa: ARG002 (reportlab's)
        """Give it."""
        return self.told


def _named(document: Any, told: PDFObject) -> bytes:
    """Add an object to a file, and give what names it there."""
    name: bytes = document.Reference(told).format(document)
    return name


def _stream(document: Any, entries: bytes, content: bytes) -> bytes:
    """Add a packed stream, with further entries of its dictionary, and give what names it."""
    head = b"<<%b/Filter/FlateDecode/Length %d>>\nstream\n" % (entries, len(content))
    return _named(document, _Ready(b"%b%b\nendstream" % (head, content)))


def _resources(document: Any, sections: Sequence[Pressed]) -> bytes:
    """Say where the pages of a file find fonts and forms, all of them in one place."""
    pictures = {name: one for section in sections for name, one in section.pictures.items()}
    of_pictures = (letter for picture in pictures.values() for letter in letters_on(picture))
    of_pages = (letter for section in sections for letter in section.letters)
    faces = embedded(document, chain(of_pictures, of_pages))
    faces_there = b"/Font<<%b>>" % b"".join(
        b"%b %b" % (name.encode(), there) for name, there in faces.items()
    )
    forms = b"".join(
        b"/%b %b" % (name.encode(), _form(document, picture, faces_there))
        for name, picture in sorted(pictures.items())
    )
    return _named(document, _Ready(b"<<%b/XObject<<%b>>>>" % (faces_there, forms)))


def _form(document: Any, picture: Recording, fonts_there: bytes) -> bytes:
    box = f"/Type/XObject/Subtype/Form/BBox[0 0 {picture.width:.4f} {picture.height:.4f}]"
    entries = b"%b/Resources<<%b>>" % (box.encode(), fonts_there)
    return _stream(document, entries, zlib.compress(form_of(picture).encode()))


def _page(document: Any, page: PressedPage, shared: bytes) -> _Ready:
    width, height = page.size
    boxes = f"/MediaBox[0 0 {width:.4f} {height:.4f}]"
    if page.trim_box:
        boxes += "/TrimBox[{:.4f} {:.4f} {:.4f} {:.4f}]".format(*page.trim_box)
    contents = _stream(document, b"", page.content)
    return _Ready(b"<</Type/Page%b%b/Contents %b>>" % (boxes.encode(), shared, contents))
