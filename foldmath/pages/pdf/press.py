"""The press: takes the pages of documents, each of its own kind, and writes them into one PDF."""

from abc import ABC, abstractmethod
from collections.abc import Iterable, Sequence
from io import BytesIO
from typing import TypeAlias

from reportlab import rl_config
from reportlab.pdfgen.canvas import Canvas

from foldmath.pages.pdf import fonts
from foldmath.pages.pdf.flowables import Painted

FOOT_PT = 9.0
"""What stands at the foot is small print, but for those who need large print."""

FORM_EDGE_PT = 4
"""What a form keeps free round a flowable, for lines that lie on its edge."""


class Press:
    """Paints flowables on a canvas; one that comes again is laid on a form, once, and only placed.

    ``language`` is the file's, in which all words are that are not marked; ``foot_pt`` the size of all feet.
    """

    def __init__(self, canvas: Canvas, language: str, foot_pt: float) -> None:
        self.canvas = canvas
        self.language = language
        self.foot_pt = foot_pt
        self.painted: dict[int, str] = {}

    def put(self, flowable: Painted, x: float, y: float) -> None:
        """Paint a flowable, which must last as long, with its bottom left corner at (x, y), in points."""
        canvas = self.canvas
        name = self.painted.get(id(flowable))
        if name is None:
            self.painted[id(flowable)] = f"again{len(self.painted)}"
            flowable.paint(canvas, x, y)
            return
        if not canvas.hasForm(name):
            edge = FORM_EDGE_PT
            canvas.beginForm(name, -edge, -edge, flowable.width + edge, flowable.height + edge)
            flowable.paint(canvas, 0.0, 0.0)
            canvas.endForm()
        canvas.saveState()
        canvas.translate(x, y)
        canvas.doForm(name)
        canvas.restoreState()


class Page(ABC):
    """A page that knows its own size and what stands on it."""

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
    fonts.register_fonts()
    # Plain binary streams: smaller files, and no time lost on turning them into letters.
    rl_config.useA85 = 0
    stream = BytesIO()
    canvas = Canvas(
        stream,
        invariant=1,
        lang=language,
        initialFontName=fonts.REGULAR,  # type: ignore[arg-type]  # the stubs take it for a size
    )
    canvas.setTitle(title)
    canvas.setAuthor("the foldmath authors")
    canvas.setCreator("foldmath")
    canvas.setProducer("foldmath")
    press = Press(canvas, language, foot_pt)
    for document in documents:
        for number, page in enumerate(document, start=1):
            page.put(press, number, len(document))
            canvas.showPage()
    canvas.save()
    return stream.getvalue()
