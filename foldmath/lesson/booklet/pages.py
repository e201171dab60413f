"""Reading the pages of a booklet, of the lesson file or another; one for each fold becomes many."""

from dataclasses import replace
from typing import Any

from foldmath.lesson.booklet.borrowing import PAGES, PageSource, borrowed
from foldmath.lesson.booklet.contents import Around, contents
from foldmath.lesson.booklet.matter import Folds, Matter
from foldmath.lesson.booklet.plan import Content, PlannedPage
from foldmath.lesson.booklet.records import Fold
from foldmath.lesson.booklet.texts import Fills
from foldmath.lesson.files.positions import Positions
from foldmath.lesson.files.slips import Slip
from foldmath.phrases import phrase
from foldmath.plane.numbers import written
from foldmath.values import frozen

MOST_TABLES = 64
"""Pages written in one file; no form has so many."""

EXAMPLE = "[[booklet.pages]]"


@frozen(kw_only=True)
class PagesRead:
    """What was found in the pages.

    Args:
        pages: in reading order, those with slips without the contents that have them.
        tables: for each page, which of the written tables it comes from, counted from 0.
        slips: in the lesson file.
        source: the file that pages were taken from, if they were.
        slips_there: in that file.
    """

    pages: tuple[PlannedPage, ...] = ()
    tables: tuple[int, ...] = ()
    slips: tuple[Slip, ...] = ()
    source: PageSource | None = None
    slips_there: tuple[Slip, ...] = ()


def read_pages(given: Any, file: str, positions: Positions, matter: Matter) -> PagesRead:
    """Read pages.

    Args:
        given: the tables, or the name of a lesson file beside this one.
        file: the lesson file, as the user gave it.
        positions: in that file.
        matter: what the lesson gives to its booklet.

    Raises:
        LessonRefused: another file that pages are taken from cannot be read.
    """
    if isinstance(given, str):
        source = borrowed(given, file)
        if isinstance(source, Slip):
            return PagesRead(slips=(source,))
        read = _tables(source.pages, None, matter)
        return PagesRead(
            pages=read.pages, tables=read.tables, slips=(), source=source, slips_there=read.slips
        )
    if given is None:
        return PagesRead(slips=(Slip(PAGES, phrase("the key pages is missing"), EXAMPLE, at_key=True),))
    return _tables(given, positions, matter)


def _tables(given: Any, positions: Positions | None, matter: Matter) -> PagesRead:
    if not isinstance(given, list) or not 1 <= len(given) <= MOST_TABLES:
        message = phrase(
            "the pages must be 1 to {most} tables, or the name of a lesson file",
            most=MOST_TABLES,
        )
        return PagesRead(slips=(Slip(PAGES, message, EXAMPLE),))
    pages: list[PlannedPage] = []
    tables: list[int] = []
    slips: list[Slip] = []
    for index, page in enumerate(given):
        made, found = _page(page, matter)
        position = positions.nearest((*PAGES, index)) if positions else None
        line, column = (position.line, position.column) if position else (0, 0)
        pages += (PlannedPage(there, line, column) for there in made)
        tables += [index] * len(made)
        slips += (replace(slip, path=(*PAGES, index, *slip.path)) for slip in found)
    return PagesRead(pages=tuple(pages), tables=tuple(tables), slips=tuple(slips))


def _page(page: Any, matter: Matter) -> tuple[list[tuple[Content, ...]], list[Slip]]:
    """Read one table: the contents of its page, or of one for each fold, and each slip once."""
    if not isinstance(page, dict):
        return [], [Slip((), phrase("a page must be a table"), EXAMPLE)]
    each, slips = _each(page, matter.folds)
    found = [list(contents(Around(page, matter, _fills(matter.folds, fold), fold))) for fold in each]
    slips += dict.fromkeys(one for page_found in found for one in page_found if isinstance(one, Slip))
    return [tuple(one for one in page_found if not isinstance(one, Slip)) for page_found in found], slips


def _each(page: dict[str, Any], folds: Folds | None) -> tuple[list[tuple[int, int] | None], list[Slip]]:
    """Give the folds that pages are made for, each the step and its number; None for a single page."""
    if "each" not in page:
        return [None], []
    if page["each"] != "fold":
        return [(0, 1)], [Slip(("each",), phrase("pages can be made only for each fold"), 'each = "fold"')]
    if folds is None:
        return [(0, 1)], []
    if not folds.cutting:
        message = phrase("no fold of this lesson makes new panels, so there are no pages to make")
        return [], [Slip(("each",), message, phrase("leave this page out"))]
    return [(step, number) for number, step in enumerate(folds.cutting, start=1)], []


def _fills(folds: Folds | None, fold: Fold) -> Fills:
    """Tell what names in braces stand for on a page of a fold, or on another, where the last state counts."""
    number = str(fold[1]) if fold else None
    if folds is None:
        return Fills(number, "8", "1/8")
    panels = (folds.states[fold[0] + 1] if fold else folds.states[-1]).panels
    sizes = {panel.area for panel in panels}
    return Fills(number, str(len(panels)), written(sizes.pop()) if len(sizes) == 1 else None)
