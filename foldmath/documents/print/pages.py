"""Pages: fills them with flowables, foots them, and writes the PDF."""

from dataclasses import dataclass
from io import BytesIO

from reportlab import rl_config
from reportlab.pdfgen.canvas import Canvas

from foldmath.documents.print import fonts, styles
from foldmath.documents.print.flowables import Painted
from foldmath.documents.print.setting import PageStart
from foldmath.documents.print.styles import points

SPARSE = 0.35
"""A page with less of its height used has little on it."""


@dataclass(frozen=True)
class PageMaster:
    """What all pages of a document share.

    Args:
        paper: ``letter`` or ``A4``.
        title: of the document, in its metadata.
        language: as in BCP 47, such as ``en-US``.
        footer: words at the left of the foot.
        code: ties a worksheet to its key; stands at the right of the foot.
        page_words: what stands between, with ``{page}`` and ``{pages}``.
    """

    paper: str
    title: str
    language: str
    footer: str
    code: str
    page_words: str


class BlockTooHigh(ValueError):
    """A block that no page has room for."""


def pdf(flowables: list[Painted], master: PageMaster) -> bytes:
    """Fill pages and give the PDF; the same input gives the same bytes.

    Raises:
        BlockTooHigh: a block is higher than a page.
    """
    fonts.register_fonts()
    # Plain binary streams: smaller files, and no time lost on turning them into letters.
    rl_config.useA85 = 0
    width, height = (points(side) for side in styles.PAGE_MM[master.paper])
    usable_width, usable_height = points(styles.USABLE_WIDTH_MM), points(styles.USABLE_HEIGHT_MM[master.paper])
    left, top = (width - usable_width) / 2, height - (height - usable_height) / 2
    stream = BytesIO()
    canvas = Canvas(stream, pagesize=(width, height), invariant=1, lang=master.language)
    canvas.setTitle(master.title)
    canvas.setAuthor("")
    canvas.setCreator("foldmath")
    pages = _paginated(flowables, usable_width, usable_height)
    for number, page in enumerate(pages, start=1):
        for flowable, depth in page:
            flowable.paint(canvas, left, top - depth)
        words = master.page_words.format(page=number, pages=len(pages))
        _foot(canvas, master, words, left, top - usable_height - points(styles.FOOTER_RISE_MM))
        canvas.showPage()
    canvas.save()
    return stream.getvalue()


def _paginated(flowables: list[Painted], width: float, height: float) -> list[list[tuple[Painted, float]]]:
    """Share flowables out to pages; each comes with the depth of its foot below the page's top."""
    pages: list[list[tuple[Painted, float]]] = [[]]
    depth = space = 0.0
    for flowable in flowables:
        if isinstance(flowable, PageStart):
            if pages[-1] and not (flowable.soft and depth < SPARSE * height):
                pages.append([])
                depth = space = 0.0
            continue
        high = flowable.wrap(width, height)[1]
        if high > height:
            raise BlockTooHigh(f"{flowable!r} is {high:.0f} pt high; a page has {height:.0f} pt")
        above = max(space, flowable.getSpaceBefore()) if pages[-1] else 0.0
        if depth + above + high > height:
            pages.append([])
            depth = above = 0.0
        depth += above + high
        space = flowable.getSpaceAfter()
        pages[-1].append((flowable, depth))
    return pages


def _foot(canvas: Canvas, master: PageMaster, words: str, left: float, y: float) -> None:
    canvas.setFont(fonts.REGULAR, styles.FOOTER_SIZE_PT)
    canvas.drawString(left, y, master.footer)
    canvas.drawCentredString(left + points(styles.USABLE_WIDTH_MM) / 2, y, words)
    canvas.drawRightString(left + points(styles.USABLE_WIDTH_MM), y, master.code)
