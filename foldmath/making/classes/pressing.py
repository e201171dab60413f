"""Pressing class pages: what the crew is given and does, on this machine or on others."""

from collections.abc import Sequence
from dataclasses import replace
from functools import partial
from itertools import accumulate
from threading import Lock

from foldmath.drawing.rendering.recording import Recording
from foldmath.making.order import ClassOrder
from foldmath.pages.looks import REGULAR
from foldmath.pages.markup.reading import blocks_of
from foldmath.pages.page_shapes import upright
from foldmath.pages.parts import Part, flowables_of
from foldmath.pages.pdf import fonts
from foldmath.pages.pdf.imprinted import Imprinted, imprinted, under
from foldmath.pages.pdf.paginating import PAGE_WORDS, Copy, FilledPage, PageMaster, filled_pages, paged
from foldmath.pages.pdf.press import Pressed, pressed
from foldmath.pages.pdf.rows import CellsInRow, Repeated
from foldmath.pages.pdf.setting import Compositor
from foldmath.pages.pdf.styles import points, style_sheet
from foldmath.pages.sharing import Printing
from foldmath.phrases import phrase
from foldmath.values import frozen

ONE_AT_A_TIME = Lock()
"""Workers of a cluster may have threads, and reportlab keeps fonts and forms for a whole process."""

EMPTY_SIDE = phrase("this side stays empty")
"""At the foot of a back that has nothing on it, so that a printer does not leave it out."""


@frozen
class PupilSheet:
    """A pupil's worksheet, ready to be laid out.

    Args:
        parts: of it.
        title: of the lesson, in the pupil's language.
        code: ties it to the key.
        language: of its words.
    """

    parts: tuple[Part, ...]
    title: str
    code: str
    language: str


@frozen(kw_only=True)
class Batch:
    """What a process needs to lay out a few pupils' pages, and their rows of the key.

    Args:
        worksheets: theirs.
        pictures: that these place, by their names.
        key_rows: a table of their rows, in the teacher's language.
        language: the teacher's.
        order: how pages look.
    """

    worksheets: tuple[PupilSheet, ...]
    pictures: dict[str, Recording]
    key_rows: str
    language: str
    order: ClassOrder


@frozen
class PrintedBatch:
    """The pages of a few pupils, and their rows of the key, to be shared out to its pages."""

    pages: Pressed
    key_rows: tuple[Imprinted, ...]


@frozen(kw_only=True)
class Key:
    """What a process needs to lay out the key, or a part of a long one.

    Args:
        begins: what stands above the rows, with the head of their table.
        rows: of its pupils.
        title: of the lesson.
        language: the teacher's.
        order: how pages look.
        pages_before, pages_after: of its other parts, which are counted with its own.
    """

    begins: str
    rows: tuple[Imprinted, ...]
    title: str
    language: str
    order: ClassOrder
    pages_before: int = 0
    pages_after: int = 0


def print_batch(batch: Batch) -> PrintedBatch:
    """Lay out the worksheets of a batch."""
    with ONE_AT_A_TIME:
        fonts.register_fonts()
        copies = map(partial(_copy, batch), batch.worksheets)
        pages = pressed(map(leaves, copies), batch.language, style_sheet(batch.order.look).foot_pt)
        return PrintedBatch(pages, _key_rows(batch))


def print_key(key: Key) -> Pressed:
    """Lay out the key, all rows of which are set and painted already."""
    with ONE_AT_A_TIME:
        return paged([_key_copy(key)], key.language, style_sheet(REGULAR).foot_pt)


def counted_together(parts: Sequence[Key]) -> list[Key]:
    """Have the pages of all parts of a key counted as one: each is told of those before and after it."""
    if len(parts) == 1:
        return [*parts]
    with ONE_AT_A_TIME:
        counts = [len(filled_pages(_key_copy(part))) for part in parts]
    ends = [*accumulate(counts)]
    return [
        replace(part, pages_before=end - count, pages_after=ends[-1] - end)
        for part, count, end in zip(parts, counts, ends, strict=True)
    ]


def print_paper(printing: Printing, pictures: Sequence[Recording]) -> bytes:
    """Print a paper that is a class's own, into a file."""
    with ONE_AT_A_TIME:
        return printing.printed(pictures)


def _key_copy(key: Key) -> Copy:
    """Set what stands above the rows of a key, and put these under it."""
    fonts.register_fonts()
    begun = _key_compositor(key.language).flowables(blocks_of(key.begins))
    heads = tuple(Repeated(row) for row in begun if isinstance(row, CellsInRow))
    master = PageMaster(upright(key.order.page_paper), key.title, "", PAGE_WORDS)
    flowables = [*begun, *under(heads, key.rows)]
    return Copy(flowables, master, pages_before=key.pages_before, pages_after=key.pages_after)


def _copy(batch: Batch, sheet: PupilSheet) -> Copy:
    """Set a pupil's worksheet."""
    order = batch.order
    master = PageMaster(upright(order.page_paper), sheet.title, sheet.code, PAGE_WORDS)
    flowables = flowables_of(sheet.parts, batch.pictures, order.look, sheet.language)
    return Copy(list(flowables), master, language=sheet.language)


def leaves(copy: Copy) -> list[FilledPage]:
    """Fill the pages of a pupil's worksheet, so that printed on both sides it shares no leaf with the next.

    One of a single page is printed on one side, and so is the whole class's.

    Raises:
        BlockTooHigh: a block is higher than a page.
    """
    pages = filled_pages(copy)
    if len(pages) == 1 or len(pages) % 2 == 0:
        return pages
    master = replace(copy.master, page_words=EMPTY_SIDE)
    return [*pages, FilledPage(replace(copy, master=master), ())]


def _key_rows(batch: Batch) -> tuple[Imprinted, ...]:
    """Set and paint the rows of a batch in the key, without the head of their table."""
    shape = upright(batch.order.page_paper)
    _, *rows = _key_compositor(batch.language).anew(blocks_of(batch.key_rows))
    width, height = points(shape.usable_width_mm), points(shape.usable_height_mm)
    return tuple(imprinted(rows, width, height, batch.language))


def _key_compositor(language: str) -> Compositor:
    no_pictures: dict[str, Recording] = {}
    return Compositor(no_pictures.__getitem__, style_sheet(REGULAR), language, answers=True)
