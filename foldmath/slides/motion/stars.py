"""The star on the slides: where it is on the sheet, through the whole lesson."""

from foldmath.paper.state import FoldedState, Panel
from foldmath.plane import polygons
from foldmath.plane.lines import Point
from foldmath.plane.numbers import HALF, ZERO, exact

INSETS = tuple(exact(1, parts) for parts in (25, 33, 50, 75, 100))
"""How far in the star may be, as shares of the sheet's longer side, the first that its panel has room for."""


def star_of(last: FoldedState) -> Point:
    """Give where the star is on the opened sheet: in the panel at the bottom left that the lesson ends with.

    So it is on one panel from the first step to the last, and moves as that one does.
    """
    longer = max(last.sheet.width, last.sheet.height)
    panel = next(panel for panel in last.panels if Point(ZERO, ZERO) in panel.corners)
    place = panel.corners.index(Point(ZERO, ZERO))
    onward, back = _way(panel.corners[place + 1 - len(panel.corners)]), _way(panel.corners[place - 1])
    star = Point(longer, longer)
    for inset in INSETS:
        star = Point(inset * longer * (onward.x + back.x), inset * longer * (onward.y + back.y))
        if holds_star(panel, star):
            return star
    while not holds_star(panel, star):
        star = Point(star.x * HALF, star.y * HALF)
    return star


def _way(corner: Point) -> Point:
    """Give the way from the sheet's corner along an edge, its larger part 1, so that it stays rational."""
    longer = max(corner.x, corner.y)
    return Point(corner.x / longer, corner.y / longer)


def holds_star(panel: Panel, star: Point) -> bool:
    """Tell whether the star's middle is on a panel."""
    return all(line.side(star) > ZERO for line in polygons.edge_lines(panel.corners))
