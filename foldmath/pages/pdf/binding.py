"""Binding: takes pressed pages, gives the PDF that holds them, with their fonts and pictures, each once."""

from collections.abc import Iterable
from itertools import chain

from foldmath.drawing.rendering.recording import Recording
from foldmath.pages.lettering.embedding import embedded
from foldmath.pages.lettering.glyph_fonts import Letter
from foldmath.pages.pdf import fonts
from foldmath.pages.pdf.forms import form_of, letters_on
from foldmath.pages.pdf.press import FOOT_PT, Pages, Pressed, PressedPage, pressed
from foldmath.pages.tags.closing import TagTree
from foldmath.pages.tags.objects import File, packed
from foldmath.pages.tags.spoken import text_string

MADE_BY = "/Author(the foldmath authors)/Creator(foldmath)/Producer(foldmath)"
"""Stands in the metadata of every file, which tell no time: the same input gives the same bytes."""


def written(documents: Iterable[Pages], title: str, language: str, foot_pt: float = FOOT_PT) -> bytes:
    """Write documents into one file, one after the other; the same input gives the same bytes.

    Args:
        documents: each asked for when the one before it is painted.
        title: of the file, in its metadata.
        language: as in BCP 47, such as ``en-US``.
        foot_pt: the size of what stands at the foot.
    """
    return bound([pressed(documents, language, foot_pt)], title, language)


def bound(sections: Iterable[Pressed], title: str, language: str) -> bytes:
    """Bind pages into one file, section by section; the same input gives the same bytes.

    Args:
        sections: in order, each from a process of its own, or all from one.
        title: of the file, in its metadata.
        language: as in BCP 47, such as ``en-US``.
    """
    binding = Binding()
    for section in sections:
        binding.add(section)
    return binding.closed(title, language)


class Binding:
    """A file that takes its pages section by section, and keeps them as they are written."""

    def __init__(self) -> None:
        self._file = File()
        self._tags = TagTree(self._file)
        self._page_tree, self._resources = self._file.numbers(2)
        self._pages: list[int] = []
        self._common: dict[bytes, int] = {}
        self._letters: dict[Letter, None] = {}
        self._pictures: dict[str, Recording] = {}

    @property
    def page_count(self) -> int:
        """How many pages it has taken."""
        return len(self._pages)

    def add(self, section: Pressed) -> None:
        """Put the next pages into the file."""
        self._common |= {ink: self._ink(ink) for ink in section.common if ink not in self._common}
        numbers = self._tags.add(section.tags)
        told = [self._page(page, place) for place, page in enumerate(section.pages, start=len(self._pages))]
        self._file.pack(numbers[-1], told[::-1])
        self._pages += numbers
        self._letters |= section.letters
        self._pictures |= section.pictures

    def closed(self, title: str, language: str) -> bytes:
        """Put into the file what its pages share, and give it.

        Args:
            title: of the file, in its metadata.
            language: as in BCP 47, such as ``en-US``.
        """
        fonts.register_fonts()
        file = self._file
        file.add(self._resources, self._shared())
        kids = b" ".join(b"%d 0 R" % page for page in self._pages)
        file.add(self._page_tree, b"<</Type/Pages/Count %d/Kids[%b]>>" % (len(self._pages), kids))
        catalog, info = file.numbers(2)
        heard = self._tags.closed(title, language)
        file.add(catalog, b"<</Type/Catalog/Pages %d 0 R%b>>" % (self._page_tree, heard))
        file.add(info, f"<</Title{text_string(title)}{MADE_BY}>>".encode())
        return file.written(catalog, info)

    def _page(self, page: PressedPage, place: int) -> bytes:
        """Put the ink of a page into the file, and tell the page itself."""
        inks = " ".join(f"{self._common.get(ink) or self._ink(ink)} 0 R" for ink in page.inks)
        width, height = page.size
        boxes = f"/MediaBox[0 0 {width:.4f} {height:.4f}]"
        if page.trim_box:
            boxes += "/TrimBox[{:.4f} {:.4f} {:.4f} {:.4f}]".format(*page.trim_box)
        return (
            f"<</Type/Page{boxes}/Resources {self._resources} 0 R/Parent {self._page_tree} 0 R/Tabs/S"
            f"/StructParents {place}/Contents[{inks}]>>"
        ).encode()

    def _ink(self, ink: bytes) -> int:
        """Put a part of a page's ink into the file, and give its number."""
        (number,) = self._file.numbers(1)
        self._file.add_stream(number, b"", ink)
        return number

    def _shared(self) -> bytes:
        """Say where the pages find fonts and forms, all of them in one place."""
        on_pictures = (letter for picture in self._pictures.values() for letter in letters_on(picture))
        faces = embedded(self._file, chain(on_pictures, self._letters))
        faces_there = "/Font<<" + "".join(f"{name} {there} 0 R" for name, there in faces.items()) + ">>"
        forms = "".join(
            f"/{name} {self._form(picture, faces_there)} 0 R"
            for name, picture in sorted(self._pictures.items())
        )
        return f"<<{faces_there}/XObject<<{forms}>>>>".encode()

    def _form(self, picture: Recording, faces: str) -> int:
        """Put a picture into the file, and give its number."""
        (number,) = self._file.numbers(1)
        box = f"/Type/XObject/Subtype/Form/BBox[0 0 {picture.width:.4f} {picture.height:.4f}]"
        entries = f"{box}/Resources<<{faces}>>".encode()
        self._file.add_stream(number, entries, packed(form_of(picture).encode()))
        return number
