"""Fitting: takes what pages say and their room, gives the size of letters and of all that stretches."""

from collections.abc import Callable, Mapping, Sequence
from functools import lru_cache

from markupsafe import Markup

from foldmath.booklets.booklet_flowables import BookletCompositor, Bounds, picture_heights, ruled_lines
from foldmath.booklets.booklet_page import Heights, fitted
from foldmath.booklets.booklet_styles import PageRoom, TypeSize, page_styles
from foldmath.booklets.page_contents import WrittenPage
from foldmath.drawing.rendering.recording import Recording
from foldmath.lesson.lesson import Lesson
from foldmath.pages.looks import LARGE, REGULAR
from foldmath.pages.markup.blocks import Block
from foldmath.pages.markup.reading import blocks_of
from foldmath.pages.pdf import fonts
from foldmath.pages.pdf.flowables import Painted
from foldmath.pages.templating import render
from foldmath.values import frozen

SIZES = {REGULAR: (14.0, 13.0, 12.0), LARGE: (18.0,)}
"""Sizes, in points, that are tried for all pages together, by the look; the last is the smallest."""

HEADS = (1.0, 0.85, 0.7)
TIGHTER = ((1.0, 1.0), (0.5, 1.0), (0.5, 0.85))
"""Spaces between blocks, and boxes to write in, as shares of their own sizes: boxes stay over 9 mm high."""

PAGES_KEPT = 512


@frozen
class PageToFit:
    """A page's words, and its room.

    Args:
        written: what it says.
        room: what it has room for.
        bounds: of the height of its pictures, by their names.
        lesson: whose page it is.
    """

    written: WrittenPage
    room: PageRoom
    bounds: Mapping[str, Bounds]
    lesson: Lesson


@frozen(kw_only=True)
class Fit:
    """How a page is set.

    Args:
        setting: the size of its letters.
        heights: of what stretches.
        kept: how many of its contents stand on it; fewer than it has where the rest does not fit.
        lines: how many ruled lines it has to write on.
        drawn_pt: how high its pictures may be, in points, by their names.
    """

    setting: TypeSize
    heights: Heights
    kept: int
    lines: int = 0
    drawn_pt: tuple[tuple[str, float], ...] = ()


def to_fit(written: WrittenPage, room: PageRoom, lesson: Lesson) -> PageToFit:
    """Put a page's words and its room together."""
    bounds = {drawing.name: drawing.bounds(room.width_mm) for drawing in written.drawings}
    return PageToFit(written, room, bounds, lesson)


def fits(pages: Sequence[PageToFit], look: str) -> tuple[Fit, ...]:
    """Fit all pages at the largest size that does for all, or each as far as it fits at the smallest."""
    for size in SIZES[look]:
        found = [fit_whole(page, (size,)) for page in pages]
        fitting = tuple(fit for fit in found if fit)
        if len(fitting) == len(pages):
            return fitting
    smallest = SIZES[look][-1]
    return tuple(fit_whole(page, (smallest,)) or _fit_some(page, smallest) for page in pages)


def fit_whole(page: PageToFit, sizes: Sequence[float]) -> Fit | None:
    """Fit all contents of a page at the largest of some sizes; None if they fit at none."""
    return _fit(page, sizes, len(page.written.parts))


def _fit_some(page: PageToFit, size: float) -> Fit:
    """Fit as many contents as there is room for at a size, from the first on."""
    for kept in range(len(page.written.parts) - 1, 0, -1):
        if fit := _fit(page, (size,), kept):
            return fit
    return Fit(setting=TypeSize(size), heights=Heights(()), kept=0)


def _fit(page: PageToFit, sizes: Sequence[float], kept: int) -> Fit | None:
    for size in sizes:
        for heads in HEADS:
            for spacing, boxes in TIGHTER:
                setting = TypeSize(size, heads, spacing, boxes)
                flowables = set_page(page, setting, kept, _no_picture, answers=False)
                heights = fitted(flowables, page.room, spacing, cover=page.written.cover)
                if heights:
                    return Fit(
                        setting=setting,
                        heights=heights,
                        kept=kept,
                        lines=ruled_lines(flowables),
                        drawn_pt=picture_heights(flowables),
                    )
    return None


def set_page(
    page: PageToFit, setting: TypeSize, kept: int, pictures: Callable[[str], Recording], *, answers: bool
) -> list[Painted]:
    """Turn the first contents of a page into flowables, for pupils or with answers."""
    sheet = page_styles(setting, page.room, page.written.tables)
    compositor = BookletCompositor(pictures, sheet, page.lesson.language, page.bounds, answers=answers)
    fonts.register_fonts()
    return compositor.flowables(_blocks(page_html(page.written.parts[:kept], page.lesson)))


def page_html(parts: tuple[str, ...], lesson: Lesson) -> str:
    """Give a page as a document."""
    return render(
        "booklets/page.html", lesson.language, parts=tuple(Markup(part) for part in parts), lesson=lesson
    )


@lru_cache(maxsize=PAGES_KEPT)
def _blocks(html: str) -> tuple[Block, ...]:
    return blocks_of(html)


def _no_picture(name: str) -> Recording:
    raise LookupError(f"{name} is painted only when it is drawn")
