"""The press: takes the pages of documents, each of its own kind, and writes them into one PDF."""

from abc import ABC, abstractmethod
from collections.abc import Callable, Hashable, Iterable, Sequence
from dataclasses import dataclass
from io import BytesIO
from typing import Any, TypeAlias

from reportlab import rl_config
from reportlab.pdfbase.pdfdoc import PDFName
from reportlab.pdfgen.canvas import Canvas

from foldmath.pages.pdf import fonts
from foldmath.pages.tags.closing import OpenFile, closed
from foldmath.pages.tags.kinds import SECTION, section_in
from foldmath.pages.tags.marking import Tags
from foldmath.pages.tags.spoken import Ink, ink_of
from foldmath.pages.tags.tree import Tree

FOOT_PT = 9.0
"""What stands at the foot is small print, but for those who need large print."""


class PressCanvas(Canvas):
    """A canvas on which ink says what it is: ``tags`` takes that, and ``tree`` keeps it."""

    _code: list[str]
    _doc: Any
    _pushAccumulators: Callable[[], None]
    _restartAccumulators: Callable[[], None]

    def __init__(self, stream: BytesIO, language: str) -> None:
        super().__init__(
            stream,
            invariant=1,
            lang=language,
            initialFontName=fonts.REGULAR,  # type: ignore[arg-type]  # the stubs take it for a size
        )
        self.tree = Tree()
        self.tags = Tags(self, self.tree)
        self.inks: dict[Hashable, tuple[Ink, object]] = {}

    def again(self, what: object, width: float, paint: Callable[[], None], x: float, y: float) -> None:
        """Paint words that come again and again; their ink is written out each time, and found once.

        It is not laid on a form: a form for each paragraph would be larger than the ink, packed.

        Args:
            what: is painted; the very same gives the same ink.
            width: that it was broken for, in points.
            paint: paints it at the origin; places no form.
            x: where the origin is to be, in points.
            y: where it is to be.
        """
        key = id(what), width
        if key not in self.inks:
            self.push_state_stack()
            self.init_graphics_state()
            self._pushAccumulators()
            paint()
            # What is painted is kept with its ink, so that nothing else may get its identity.
            self.inks[key] = ink_of(self._code), what
            self._restartAccumulators()
            self.pop_state_stack()
        ink = self.tags.marked(self.inks[key][0])
        self._code.append(f"q 1 0 0 1 {x:.4f} {y:.4f} cm\n{ink}\nQ")

    def showPage(self) -> None:
        """Close the page, and say which marks it has (ISO 32000-1:2008, 14.7.4.4; ISO 14289-1, 7.18.3)."""
        super().showPage()
        page = self._doc.Pages.pages[-1]
        page.__NoDefault__ = [*page.__NoDefault__, "StructParents", "Tabs"]
        page.StructParents, page.Tabs = len(self.tree.marks) - 1, PDFName("S")


@dataclass(frozen=True)
class Press:
    """What pages are painted with.

    Args:
        canvas: takes their ink.
        language: the file's, in which all words are that are not marked.
        foot_pt: the size of all feet.
    """

    canvas: PressCanvas
    language: str
    foot_pt: float


class Page(ABC):
    """A page that knows its own size and what stands on it."""

    @property
    def language(self) -> str:
        """Of its document's words; empty for the file's."""
        return ""

    @abstractmethod
    def put(self, press: Press, number: int, pages: int) -> None:
        """Set the size of a page and paint on it; it is shown afterwards.

        Args:
            press: what it is painted with.
            number: which page of its document it is, from 1.
            pages: how many its document has.
        """


Pages: TypeAlias = Sequence[Page]
"""Pages that are counted together."""


def written(documents: Iterable[Pages], title: str, language: str, foot_pt: float = FOOT_PT) -> bytes:
    """Write documents into one file, one after the other; the same input gives the same bytes.

    Args:
        documents: each asked for when the one before it is painted.
        title: of the file, in its metadata.
        language: as in BCP 47, such as ``en-US``.
        foot_pt: the size of what stands at the foot.
    """
    return closed(painted(documents, title, language, foot_pt))


def painted(documents: Iterable[Pages], title: str, language: str, foot_pt: float = FOOT_PT) -> OpenFile:
    """Paint documents as ``written`` does, into a file that others may still be joined to."""
    fonts.register_fonts()
    # Plain binary streams: smaller files, and no time lost on turning them into letters.
    rl_config.useA85 = 0
    stream = BytesIO()
    canvas = PressCanvas(stream, language)
    canvas.setTitle(title)
    canvas.setAuthor("the foldmath authors")
    canvas.setCreator("foldmath")
    canvas.setProducer("foldmath")
    press = Press(canvas, language, foot_pt)
    for document in documents:
        own = document[0].language if document else ""
        with canvas.tags.group(section_in(own) if own not in ("", language) else SECTION):
            for number, page in enumerate(document, start=1):
                canvas.tree.begin_page()
                page.put(press, number, len(document))
                canvas.showPage()
    canvas.save()
    return OpenFile(stream.getvalue(), canvas.tree, title, language)
