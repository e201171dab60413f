"""Pages of documents: takes flowables, gives filled pages with their feet."""

from collections.abc import Iterable, Sequence
from contextlib import nullcontext
from dataclasses import KW_ONLY
from itertools import groupby

from foldmath.pages.pdf import fonts, styles
from foldmath.pages.pdf.filling import Laid, pages_filled
from foldmath.pages.pdf.flowables import Painted
from foldmath.pages.pdf.press import Page, Press, Pressed, pressed
from foldmath.pages.pdf.styles import PageShape, points
from foldmath.pages.pdf.writing import write, write_middle, write_right
from foldmath.phrases import Said, phrase
from foldmath.values import frozen
from foldmath.words.saying import say

FOOT_GAP_MM = 4.0
"""Kept free over what stands at the foot of every page."""

PAGE_WORDS = phrase("page {page} of {pages}", page="{page}", pages="{pages}")
"""At the foot of the pages of a document."""


@frozen
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


@frozen
class Copy:
    """One document in a file; its pages are counted from 1, or on from others.

    Args:
        flowables: in order.
        master: what its pages share.
        foot: what stands at the foot of every page, over the line with its number.
        language: of its words; empty for the file's.
        pages_before, pages_after: how many others, filled apart, are counted with its own.
    """

    flowables: Sequence[Painted]
    master: PageMaster
    foot: Painted | None = None
    language: str = ""
    _: KW_ONLY
    pages_before: int = 0
    pages_after: int = 0


@frozen
class FilledPage(Page):
    """A page filled from its top.

    Args:
        copy: the document it belongs to.
        placed: what stands on it, in points.
    """

    copy: Copy
    placed: Sequence[Laid]

    @property
    def language(self) -> str:
        """Of its document's words."""
        return self.copy.language

    def put(self, press: Press, number: int, pages: int) -> None:
        """Paint its flowables, and its foot."""
        master = self.copy.master
        shape = master.shape
        width, height = points(shape.width_mm), points(shape.height_mm)
        filled_width, filled_height = points(shape.usable_width_mm), points(shape.usable_height_mm)
        left, top = (width - filled_width) / 2, height - (height - filled_height) / 2
        press.canvas.setPageSize((width, height))
        press.canvas.trim_box = None
        for common, some in groupby(self.placed, key=lambda laid: laid.flowable.common):
            with press.canvas.in_common() if common else nullcontext():
                for flowable, depth, across in some:
                    press.canvas.place(flowable.imprint(press.canvas), left + across, top - depth)
        with press.canvas.tags.artifact():
            if self.copy.foot:
                self.copy.foot.paint(press.canvas, left, top - filled_height)
            language = self.copy.language or press.language
            before, after = self.copy.pages_before, self.copy.pages_after
            counted = {"page": before + number, "pages": before + pages + after}
            words = say(master.page_words, language).format(**counted)
            _foot(press, master, words, left, top - filled_height - points(styles.FOOTER_RISE_MM))


def paged(copies: Iterable[Copy], language: str, foot_pt: float) -> Pressed:
    """Fill the pages of documents, one after the other.

    Args:
        copies: the documents.
        language: of the file, as in BCP 47, such as ``en-US``.
        foot_pt: the size of what stands at the foot.

    Raises:
        BlockTooHigh: a block is higher than a page.
    """
    return pressed((filled_pages(copy) for copy in copies), language, foot_pt)


def filled_pages(copy: Copy) -> list[FilledPage]:
    """Share the flowables of a document out to pages.

    Raises:
        BlockTooHigh: a block is higher than a page.
    """
    shape = copy.master.shape
    width, height = points(shape.usable_width_mm), points(shape.usable_height_mm)
    if copy.foot:
        height -= copy.foot.wrap(width, height)[1] + points(FOOT_GAP_MM)
    return [FilledPage(copy, page) for page in pages_filled(copy.flowables, width, height)]


def _foot(press: Press, master: PageMaster, words: str, left: float, y: float) -> None:
    """Write the title, the page number and the code; the number in the middle, or after a long title."""
    canvas, size, font = press.canvas, press.foot_pt, fonts.REGULAR
    width, gap = points(master.shape.usable_width_mm), points(styles.FOOTER_GAP_MM)
    number, code = fonts.width_of(words, font, size), fonts.width_of(master.code, font, size)
    title = _shortened(master.footer, size, width - number - code - 2 * gap)
    write(canvas, left, y, title, font, size)
    after_title = fonts.width_of(title, font, size) + gap + number / 2
    write_middle(canvas, left + max(width / 2, after_title), y, words, font, size)
    write_right(canvas, left + width, y, master.code, font, size)


def _shortened(words: str, size: float, room: float) -> str:
    """Leave out the end of words that are too long for their room, in points."""
    font = fonts.REGULAR
    if fonts.width_of(words, font, size) <= room:
        return words
    while words and fonts.width_of(words + "…", font, size) > room:
        words = words[:-1].rstrip()
    return words + "…"
