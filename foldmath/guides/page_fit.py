"""How a sheet lies on the printer's page at exact scale, and what lies behind it when the page is turned."""

from collections.abc import Callable
from dataclasses import dataclass
from enum import Enum

from foldmath.drawing.layout import as_float
from foldmath.guides.ticks import millimetres
from foldmath.paper.sizes import ORIENTATIONS, paper_named, sheet
from foldmath.paper.state import Sheet
from foldmath.paper.steps import Edge
from foldmath.plane.lines import Point
from foldmath.plane.numbers import HALF, ZERO, Exact, exact

RIM_MM = exact(6)
"""What a printer may leave white at every edge of the page (common practice, no source)."""


Carry = Callable[[Point], Point]
"""Carries a point of the sheet onto a page, in exact mm."""


class Turning(Enum):
    """Over which edge a printer turns the page to print its back."""

    LONG_EDGE = "long"
    SHORT_EDGE = "short"


@dataclass(frozen=True)
class PageFit:
    """Where a sheet lies on a page, all in millimetres, exact.

    Args:
        width, height: of the page.
        left, bottom: where the sheet's bottom left corner lies on the page.
        unit: millimetres in a sheet unit.
        across, up: the sheet's size.
    """

    width: Exact
    height: Exact
    left: Exact
    bottom: Exact
    unit: Exact
    across: Exact
    up: Exact

    @property
    def fills_page(self) -> bool:
        """Whether the page is the sheet."""
        return (self.across, self.up) == (self.width, self.height)

    @property
    def reaches_edge(self) -> bool:
        """Whether an edge of the sheet is an edge of the page."""
        return len(self.trimmed) < len(Edge)

    @property
    def trimmed(self) -> tuple[Edge, ...]:
        """The edges of the sheet that are not edges of the page: there it is cut out."""
        spare = {
            Edge.LEFT: self.left,
            Edge.RIGHT: self.width - self.left - self.across,
            Edge.TOP: self.height - self.bottom - self.up,
            Edge.BOTTOM: self.bottom,
        }
        return tuple(edge for edge, room in spare.items() if room > ZERO)

    def on_front(self, point: Point) -> Point:
        """Carry a point of the sheet onto the page."""
        return Point(self.left + point.x * self.unit, self.bottom + point.y * self.unit)

    def on_back(self, point: Point, turning: Turning) -> Point:
        """Give the place on the back of the page, as it is read, right behind a point of the sheet.

        A printer turns the page over its long or short edge, and the back then reads upright. So over an
        upright edge, as a book's leaf, left and right change places; over a level one, as a wall
        calendar's, top and bottom do.
        """
        x, y = self.on_front(point)
        if self.turns_as_book(turning):
            return Point(self.width - x, y)
        return Point(x, self.height - y)

    def turns_as_book(self, turning: Turning) -> bool:
        """Tell whether the edge that the page is turned over stands upright."""
        upright_is_long = self.height >= self.width
        return upright_is_long == (turning is Turning.LONG_EDGE)


def fit(paper: Sheet, page_paper: str) -> PageFit | None:
    """Lay a sheet on a page, upright or on its side; None if it does not fit at exact scale.

    A sheet smaller than the page needs a rim of ``RIM_MM`` on one side at least, for its trim line to print.

    Args:
        paper: the sheet.
        page_paper: ``letter`` or ``A4``.
    """
    unit = millimetres(paper)
    across, up = paper.width * unit, paper.height * unit
    for orientation in reversed(ORIENTATIONS):
        page = sheet(paper_named(page_paper), orientation)
        width, height = page.width * millimetres(page), page.height * millimetres(page)
        left, bottom = _inset(width - across), _inset(height - up)
        if left is not None and bottom is not None:
            return PageFit(width, height, left, bottom, unit, across, up)
    return None


def _inset(spare: Exact) -> Exact | None:
    """Give how far from the page's edge a side begins: in the middle, or at the edge where room is short."""
    if spare == ZERO:
        return ZERO
    if spare < RIM_MM:
        return None
    return spare * HALF if spare >= 2 * RIM_MM else ZERO


def page_size(page_paper: str) -> tuple[float, float]:
    """Give the width and height of an upright page, in mm."""
    page = sheet(paper_named(page_paper), "portrait")
    unit = millimetres(page)
    return as_float(page.width * unit), as_float(page.height * unit)
