"""The shapes of pages: takes a paper's name, gives how large a page of it is, and what of it is filled."""

from functools import cache

from foldmath.measured import as_float
from foldmath.pages.pdf.styles import USABLE_HEIGHT_MM, USABLE_WIDTH_MM, PageShape
from foldmath.paper.sizes import paper_named, sheet


@cache
def upright(paper: str) -> PageShape:
    """Give the shape of a page that stands: ``letter`` or ``A4``."""
    page = sheet(paper_named(paper), "portrait")
    sides = as_float(page.width * page.unit_mm), as_float(page.height * page.unit_mm)
    return PageShape(*sides, USABLE_WIDTH_MM, USABLE_HEIGHT_MM[paper])


def on_its_side(paper: str, margin_mm: float) -> PageShape:
    """Give the shape of a page that lies on its long side, filled from margin to margin."""
    page = upright(paper)
    rim = page.height_mm - page.usable_height_mm
    return PageShape(page.height_mm, page.width_mm, page.height_mm - 2 * margin_mm, page.width_mm - rim)
