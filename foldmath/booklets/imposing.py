"""Imposing: takes a booklet and its sheet, gives where each page lies on paper and what of it may be used."""

from collections.abc import Iterable, Iterator

from foldmath.booklets.booklet_styles import PageRoom
from foldmath.drawing.layout import spot
from foldmath.measured import as_float
from foldmath.pages.looks import LARGE, REGULAR
from foldmath.pages.page_fit import PageFit, Turning
from foldmath.paper.booklet.booklet import Booklet, Face, Page
from foldmath.paper.state import Sheet
from foldmath.plane.lines import Point, line_through
from foldmath.plane.numbers import ONE, ZERO, Exact
from foldmath.values import frozen

EDGE_MM, FOLD_MM, TRIM_MM = 6.0, 5.0, 8.0
"""Kept free along the sheet's own edges, along folds and the slit, and along folded edges to be trimmed."""

FOOT_MM = {REGULAR: 5.5, LARGE: 8.5}
"""Kept for the page number, above the margin at the foot, by the look."""

STAR_ROOM_MM = 5.5
"""Kept free at the head of a page on which the sheet's star would stand upside down."""

Turned = tuple[float, float, float, float]
"""How a page is turned on its side of the sheet: the first four numbers of a PDF matrix."""


@frozen
class Margins:
    """What is kept free along the sides of a page, in mm, as it is read."""

    left: float
    right: float
    top: float
    bottom: float


@frozen(kw_only=True)
class Imposed:
    """One page of the booklet on its side of the sheet, seen from that side.

    Args:
        page: as the model gives it.
        turned: how it is turned: (1, 0, 0, 1) is upright.
        left_mm, bottom_mm: where its bottom left corner lies on the printer's page.
        width_mm, height_mm: of the page.
        margins: what is kept free.
        number_mm: kept for the page number, above the margin at the foot.
    """

    page: Page
    turned: Turned
    left_mm: float
    bottom_mm: float
    width_mm: float
    height_mm: float
    margins: Margins
    number_mm: float

    @property
    def foot_mm(self) -> float:
        """Where the room for contents begins above the page's edge: the page number stands below."""
        return self.margins.bottom + self.number_mm

    def room(self, ruling_mm: float) -> PageRoom:
        """Give the room for contents."""
        return PageRoom(
            self.width_mm - self.margins.left - self.margins.right,
            self.height_mm - self.margins.top - self.foot_mm,
            ruling_mm,
        )


def imposed(made: Booklet, sheet: Sheet, lies: PageFit, look: str) -> tuple[Imposed, ...]:
    """Lay every page of a booklet on its side of the sheet.

    Args:
        made: the booklet.
        sheet: that it is folded from.
        lies: how the sheet lies on the printer's page, which is turned over its long edge.
        look: the name of the look.
    """
    return tuple(_imposed(page, made, sheet, lies, look) for page in made.pages)


def sides(page: Page, made: Booklet) -> dict[str, tuple[Point, Point]]:
    """Give the four sides of a page, by their names as it is read, on the opened sheet."""
    corners = (
        Point(ZERO, ZERO),
        Point(made.width, ZERO),
        Point(made.width, made.height),
        Point(ZERO, made.height),
    )
    one, two, three, four = (page.motion.carry_back(corner) for corner in corners)
    return {"bottom": (one, two), "right": (two, three), "top": (three, four), "left": (four, one)}


def folded_edges(made: Booklet, sheet: Sheet) -> Iterator[tuple[Point, Point]]:
    """Give every side of a panel that lies inside the sheet, once."""
    known: set[frozenset[Point]] = set()
    for page in made.pages:
        for side in sides(page, made).values():
            if not on_edge(side, sheet) and frozenset(side) not in known:
                known.add(frozenset(side))
                yield side


def on_edge(side: Iterable[Point], sheet: Sheet) -> bool:
    """Tell whether all points lie on one edge of the sheet."""
    points = tuple(side)
    return any(
        all(point[axis] == place for point in points)
        for axis, places in ((0, (ZERO, sheet.width)), (1, (ZERO, sheet.height)))
        for place in places
    )


def _imposed(page: Page, made: Booklet, sheet: Sheet, lies: PageFit, look: str) -> Imposed:
    def seen(x: Exact, y: Exact) -> Point:
        point = page.motion.carry_back(Point(x, y))
        return lies.on_back(point, Turning.LONG_EDGE) if page.face is Face.BACK else lies.on_front(point)

    origin, along, up = seen(ZERO, ZERO), seen(ONE, ZERO), seen(ZERO, ONE)
    turned = (along.x - origin.x, along.y - origin.y, up.x - origin.x, up.y - origin.y)
    a, b, c, d = (as_float(number / lies.unit) for number in turned)
    left_mm, bottom_mm = spot(origin)
    return Imposed(
        page=page,
        turned=(a, b, c, d),
        left_mm=left_mm,
        bottom_mm=bottom_mm,
        width_mm=as_float(made.width * lies.unit),
        height_mm=as_float(made.height * lies.unit),
        margins=_margins(page, made, sheet),
        number_mm=FOOT_MM[look],
    )


def _margins(page: Page, made: Booklet, sheet: Sheet) -> Margins:
    around = sides(page, made)
    margins = {name: _margin(side, made, sheet) for name, side in around.items()}
    if page.face is Face.PRINTED and Point(ZERO, ZERO) in around["top"]:
        margins["top"] += STAR_ROOM_MM
    return Margins(**margins)


def _margin(side: tuple[Point, Point], made: Booklet, sheet: Sheet) -> float:
    if on_edge(side, sheet):
        return EDGE_MM
    line = line_through(*side)
    trimmed = any(line.side(trim.start) == line.side(trim.end) == ZERO for trim in made.trims)
    return TRIM_MM if trimmed else FOLD_MM
