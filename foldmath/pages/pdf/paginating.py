"""Pages: fills them with flowables, foots them, and writes the PDF."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from reportlab.pdfgen.canvas import Canvas

from foldmath.errors import BlockTooHigh
from foldmath.pages.pdf import fonts, styles
from foldmath.pages.pdf.flowables import CellsInRow, Painted
from foldmath.pages.pdf.press import Page, Press, written
from foldmath.pages.pdf.setting import PageStart
from foldmath.pages.pdf.spoken import in_language
from foldmath.pages.pdf.styles import PageShape, points
from foldmath.pages.pdf.writing import write, write_middle, write_right
from foldmath.phrases import Said, phrase
from foldmath.words.saying import say

SPARSE = 0.35
"""A page with less of its height used has little on it."""


TIGHT = 0.45
"""Spaces between blocks are this share of their own where that saves a page."""


FOOT_GAP_MM = 4.0
"""Kept free over what stands at the foot of every page."""

PAGE_WORDS = phrase("page {page} of {pages}", page="{page}", pages="{pages}")
"""At the foot of the pages of a document."""


@dataclass(frozen=True)
class PageMaster:
    """What all pages of a document share.

    Args:
        shape: of a page.
        footer: words at the left of the foot.
        code: ties a worksheet to its key; stands at the right of the foot.
        page_words: what stands between, with ``{page}`` and ``{pages}``.
    """

    shape: PageShape
    footer: str
    code: str
    page_words: Said


@dataclass(frozen=True)
class Copy:
    """One document in a file; its pages are counted from 1.

    Args:
        flowables: in order.
        master: what its pages share.
        foot: what stands at the foot of every page, over the line with its number.
        language: of its words; empty for the file's.
    """

    flowables: Sequence[Painted]
    master: PageMaster
    foot: Painted | None = None
    language: str = ""


@dataclass(frozen=True)
class FilledPage(Page):
    """A page filled from its top.

    Args:
        copy: the document it belongs to.
        placed: what stands on it; each with the depth of its foot below the top of what is filled, in points.
    """

    copy: Copy
    placed: Sequence[tuple[Painted, float]]

    def put(self, press: Press, number: int, pages: int) -> None:
        """Paint its flowables, and its foot."""
        master = self.copy.master
        shape = master.shape
        width, height = points(shape.width_mm), points(shape.height_mm)
        filled_width, filled_height = points(shape.usable_width_mm), points(shape.usable_height_mm)
        left, top = (width - filled_width) / 2, height - (height - filled_height) / 2
        press.canvas.setPageSize((width, height))
        press.canvas.setTrimBox(None)
        language = self.copy.language or press.language
        with in_language(press.canvas, "" if language == press.language else language):
            for flowable, depth in self.placed:
                press.put(flowable, left, top - depth)
            if self.copy.foot:
                press.put(self.copy.foot, left, top - filled_height)
            words = say(master.page_words, language).format(page=number, pages=pages)
            _foot(press.canvas, master, words, left, top - filled_height - points(styles.FOOTER_RISE_MM))


def pdf(copies: Iterable[Copy], title: str, language: str) -> bytes:
    """Fill the pages of documents, one after the other; the same input gives the same bytes.

    Args:
        copies: the documents.
        title: of the file, in its metadata.
        language: as in BCP 47, such as ``en-US``.

    Raises:
        BlockTooHigh: a block is higher than a page.
    """
    return written((filled_pages(copy) for copy in copies), title, language)


def filled_pages(copy: Copy) -> list[FilledPage]:
    """Share the flowables of a document out to pages.

    Raises:
        BlockTooHigh: a block is higher than a page.
    """
    shape = copy.master.shape
    width, height = points(shape.usable_width_mm), points(shape.usable_height_mm)
    if copy.foot:
        height -= copy.foot.wrap(width, height)[1] + points(FOOT_GAP_MM)
    pages = [page for chapter in _chapters(copy.flowables) for page in _pages_of(chapter, width, height)]
    return [FilledPage(copy, page) for page in pages]


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
                phrase(
                    "one part of its pages is {times} times as high as a page",
                    times=f"{high / self.height:.1f}",
                ),
                phrase("fewer steps between two folds, and shorter texts"),
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


def _chapters(flowables: Sequence[Painted]) -> list[list[Painted]]:
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
    title = _shortened(master.footer, size, points(styles.FOOTER_TITLE_MM))
    write(canvas, left, y, title, fonts.REGULAR, size)
    width = points(master.shape.usable_width_mm)
    write_middle(canvas, left + width / 2, y, words, fonts.REGULAR, size)
    write_right(canvas, left + width, y, master.code, fonts.REGULAR, size)


def _shortened(words: str, size: float, room: float) -> str:
    """Leave out the end of words that are too long for their room, in points."""
    if fonts.width_of(words, fonts.REGULAR, size) <= room:
        return words
    while words and fonts.width_of(words + "…", fonts.REGULAR, size) > room:
        words = words[:-1].rstrip()
    return words + "…"
