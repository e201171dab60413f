"""How a sheet lies on the printer's page at exact scale, and what lies behind it when the page is turned."""

from collections.abc import Callable
from enum import Enum

from foldmath.paper.sizes import ORIENTATIONS, paper_named, sheet
from foldmath.paper.state import Sheet
from foldmath.paper.steps import Edge
from foldmath.plane.lines import Point
from foldmath.plane.numbers import HALF, ZERO, Exact, exact
from foldmath.values import frozen

RIM_MM = exact(6)
"""What a printer may leave white at every edge of the page (common practice, no source)."""

CLEAR_MM = exact(13, 2)
"""What must not be lost stays so far from every edge of the page."""

SAME_MM = exact(1, 2)
"""Sides that differ by less are one: letter paper told in whole millimetres is letter paper.

A trimmed sheet of paper may itself be 1.5 mm off (ISO 216:2007, tolerances; from memory).
"""

Carry = Callable[[Point], Point]
"""Carries a point of the sheet onto a page, in exact mm."""


class Turning(Enum):
    """Over which edge a printer turns the page to print its back."""

    LONG_EDGE = "long"
    SHORT_EDGE = "short"


@frozen(kw_only=True)
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
        return not self.trimmed

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
        return tuple(edge for edge, room in spare.items() if room >= SAME_MM)

    @property
    def frame(self) -> tuple[tuple[Point, Point], ...]:
        """From where to where the sheet is to be cut out of the page, on its front.

        Along an edge of the page a line stops short, so that none of it is lost.
        """
        left, right = self.left, self.left + self.across
        bottom, top = self.bottom, self.bottom + self.up
        near, far = max(left, CLEAR_MM), min(right, self.width - CLEAR_MM)
        low, high = max(bottom, CLEAR_MM), min(top, self.height - CLEAR_MM)
        lines = {
            Edge.LEFT: (Point(left, low), Point(left, high)),
            Edge.RIGHT: (Point(right, low), Point(right, high)),
            Edge.TOP: (Point(near, top), Point(far, top)),
            Edge.BOTTOM: (Point(near, bottom), Point(far, bottom)),
        }
        return tuple(lines[edge] for edge in self.trimmed)

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
        """Tell whether the edge that the page is turned over is upright; a square page is taken to stand."""
        upright_is_long = self.height >= self.width
        return upright_is_long == (turning is Turning.LONG_EDGE)


def usual_page(paper: Sheet) -> str:
    """Name the paper that is printed on where a sheet is measured in inches, or else."""
    return "letter" if paper.unit == "in" else "A4"


def fit(paper: Sheet, page_paper: str) -> PageFit | None:
    """Lay a sheet on a page, upright or on its side; None if it does not fit at exact scale.

    The page lies so that the fewest edges of the sheet have to be cut; of two ways that are alike in that, it
    lies as the sheet does. A sheet smaller than the page needs a rim of ``RIM_MM`` on one side at least, for
    its trim line to print.

    Args:
        paper: the sheet.
        page_paper: ``letter`` or ``A4``.
    """
    orientations = ORIENTATIONS if paper.width > paper.height else ORIENTATIONS[::-1]
    pages = (sheet(paper_named(page_paper), orientation) for orientation in orientations)
    ways = [way for page in pages if (way := _laid(paper, page))]
    return min(ways, key=lambda way: len(way.trimmed), default=None)


def own_page(paper: Sheet) -> PageFit:
    """Give the page that is the sheet itself, for a printer that holds paper of its size."""
    across, up = paper.width * paper.unit_mm, paper.height * paper.unit_mm
    return PageFit(width=across, height=up, left=ZERO, bottom=ZERO, unit=paper.unit_mm, across=across, up=up)


def _laid(paper: Sheet, page: Sheet) -> PageFit | None:
    """Lay a sheet on a page as both lie; None if it does not fit."""
    across, up = paper.width * paper.unit_mm, paper.height * paper.unit_mm
    width, height = page.width * page.unit_mm, page.height * page.unit_mm
    left, bottom = _inset(width - across), _inset(height - up)
    if left is None or bottom is None:
        return None
    return PageFit(
        width=width, height=height, left=left, bottom=bottom, unit=paper.unit_mm, across=across, up=up
    )


def _inset(spare: Exact) -> Exact | None:
    """Give how far from the page's edge a side begins: in the middle, or at the edge where room is short."""
    if abs(spare) < SAME_MM:
        return spare * HALF
    if spare < RIM_MM:
        return None
    return spare * HALF if spare >= 2 * RIM_MM else ZERO
