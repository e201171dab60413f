"""Pages: fills them with flowables, foots them, and writes the PDF."""

from collections.abc import Iterable
from dataclasses import dataclass

from reportlab.pdfgen.canvas import Canvas

from foldmath.errors import FoldmathError
from foldmath.pages.pdf import fonts, styles
from foldmath.pages.pdf.flowables import CellsInRow, Painted
from foldmath.pages.pdf.painting import painted
from foldmath.pages.pdf.setting import PageStart
from foldmath.pages.pdf.styles import points

FORM_EDGE_PT = 4
"""What a form keeps free round a flowable, for lines that lie on its edge."""

SPARSE = 0.35
"""A page with less of its height used has little on it."""


TIGHT = 0.45
"""Spaces between blocks are this share of their own where that saves a page."""


PAGE_WORDS = "page {page} of {pages}"
"""At the foot of the pages of a document."""


@dataclass(frozen=True)
class PageMaster:
    """What all pages of a document share.

    Args:
        paper: ``letter`` or ``A4``.
        footer: words at the left of the foot.
        code: ties a worksheet to its key; stands at the right of the foot.
        page_words: what stands between, with ``{page}`` and ``{pages}``.
    """

    paper: str
    footer: str
    code: str
    page_words: str


class BlockTooHigh(FoldmathError):
    """A block that no page has room for, such as the words of a hundred turns below one picture."""


@dataclass(frozen=True)
class Copy:
    """One document in a file: its flowables, and what its pages share; its pages are counted from 1."""

    flowables: list[Painted]
    master: PageMaster


def pdf(copies: Iterable[Copy], title: str, language: str) -> bytes:
    """Fill the pages of documents, one after the other; the same input gives the same bytes.

    Args:
        copies: the documents.
        title: of the file, in its metadata.
        language: as in BCP 47, such as ``en-US``.

    Raises:
        BlockTooHigh: a block is higher than a page.
    """

    def paint_pages(canvas: Canvas) -> None:
        press = _Press(canvas)
        for copy in copies:
            _put_pages(press, copy)

    try:
        return painted(paint_pages, title, language)
    except BlockTooHigh as refusal:
        raise BlockTooHigh(f"{title}: {refusal}") from None


class _Press:
    """Paints flowables on a canvas; one that comes again is laid on a form, once, and only placed."""

    def __init__(self, canvas: Canvas) -> None:
        self.canvas = canvas
        self.painted: dict[int, str] = {}

    def put(self, flowable: Painted, x: float, y: float) -> None:
        """Paint a flowable with its bottom left corner at (x, y); the file must end before it does."""
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


def _put_pages(press: _Press, copy: Copy) -> None:
    canvas, master = press.canvas, copy.master
    width, height = (points(side) for side in styles.page_mm(master.paper))
    usable_width, usable_height = (points(side) for side in styles.usable_mm(master.paper))
    left, top = (width - usable_width) / 2, height - (height - usable_height) / 2
    pages = _paginated(copy.flowables, usable_width, usable_height)
    for number, page in enumerate(pages, start=1):
        canvas.setPageSize((width, height))
        for flowable, depth in page:
            press.put(flowable, left, top - depth)
        words = master.page_words.format(page=number, pages=len(pages))
        _foot(canvas, master, words, left, top - usable_height - points(styles.FOOTER_RISE_MM))
        canvas.showPage()


class _Filling:
    """Pages being filled from the top; depths are in points below the top of the usable area."""

    def __init__(self, width: float, height: float, spacing: float) -> None:
        self.width, self.height, self.spacing = width, height, spacing
        self.pages: list[list[tuple[Painted, float]]] = [[]]
        self.depth = self.space = 0.0

    def turn_page(self) -> None:
        """Begin the next page."""
        self.pages.append([])
        self.depth = self.space = 0.0

    def put(self, flowable: Painted) -> None:
        """Put a flowable below the last one, or on the next page under the head of its table."""
        high = flowable.wrap(self.width, self.height)[1]
        if high > self.height:
            raise BlockTooHigh(
                f"one part of its pages is {high / self.height:.1f} times as high as a page",
                "fewer steps between two folds, and shorter texts",
            )
        space = max(self.space, flowable.getSpaceBefore()) * self.spacing
        above = space if self.pages[-1] else 0.0
        if self.depth + above + high > self.height:
            self.turn_page()
            above = 0.0
            for head in flowable.heads if isinstance(flowable, CellsInRow) else ():
                self.put(head)
        self.depth += above + high
        self.space = flowable.getSpaceAfter()
        self.pages[-1].append((flowable, self.depth))


def _paginated(flowables: list[Painted], width: float, height: float) -> list[list[tuple[Painted, float]]]:
    """Share flowables out to pages; each comes with the depth of its foot below the page's top."""
    return [page for chapter in _chapters(flowables) for page in _pages_of(chapter, width, height)]


def _chapters(flowables: list[Painted]) -> list[list[Painted]]:
    """Part flowables where a page must begin."""
    chapters: list[list[Painted]] = [[]]
    for flowable in flowables:
        if isinstance(flowable, PageStart) and not flowable.soft:
            chapters.append([])
        else:
            chapters[-1].append(flowable)
    return [chapter for chapter in chapters if chapter]


def _pages_of(chapter: list[Painted], width: float, height: float) -> list[list[tuple[Painted, float]]]:
    """Fill the pages of a chapter; one whose last page would stay almost empty is set a little tighter."""
    filling = _filled(chapter, width, height, 1.0)
    if len(filling.pages) > 1 and filling.depth < SPARSE * height:
        tight = _filled(chapter, width, height, TIGHT)
        if len(tight.pages) < len(filling.pages):
            return tight.pages
    return filling.pages


def _filled(chapter: list[Painted], width: float, height: float, spacing: float) -> _Filling:
    filling = _Filling(width, height, spacing)
    for flowable in chapter:
        if not isinstance(flowable, PageStart):
            filling.put(flowable)
        elif filling.pages[-1] and filling.depth >= SPARSE * height:
            filling.turn_page()
    return filling


def _foot(canvas: Canvas, master: PageMaster, words: str, left: float, y: float) -> None:
    size = styles.FOOTER_SIZE_PT
    canvas.setFont(fonts.REGULAR, size)
    canvas.drawString(left, y, _shortened(master.footer, size, points(styles.FOOTER_TITLE_MM)))
    width = points(styles.usable_mm(master.paper)[0])
    canvas.drawCentredString(left + width / 2, y, words)
    canvas.drawRightString(left + width, y, master.code)


def _shortened(words: str, size: float, room: float) -> str:
    """Leave out the end of words that are too long for their room, in points."""
    if fonts.width_of(words, fonts.REGULAR, size) <= room:
        return words
    while words and fonts.width_of(words + "…", fonts.REGULAR, size) > room:
        words = words[:-1].rstrip()
    return words + "…"
