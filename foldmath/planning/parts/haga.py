"""A corner of a square taken to the edge across: the moved edge cuts the next edge at an exact part.

In the unit square, with corner (0, 0) taken to (x, 1), the old bottom edge crosses the right edge at height
(1 - x)/(1 + x). The corner beyond the moved edge, folded over it, leaves a crease that ends there.

Source:
    K. Haga, Origamics (World Scientific, 2008; published 1979); the landmark is read off the model's creases.
"""

from foldmath.paper.moments.performing import fold_lines
from foldmath.paper.state import FoldedState, Sheet, open_sheet
from foldmath.paper.steps import Edge, FoldAlong, FoldAt, FoldPoint
from foldmath.plane.lines import Point
from foldmath.plane.motions import reflection
from foldmath.plane.numbers import ONE, ZERO, Exact
from foldmath.planning.parts.direction import Direction
from foldmath.planning.parts.halvings import halved_to, seed_mark
from foldmath.planning.parts.instructions import Doing, Dot, Instruction, instructed, on_sheet, vertices


def corner_to_edge(
    odd: int, direction: Direction, before: FoldedState
) -> tuple[tuple[Instruction, ...], Point]:
    """Fold the landmark for an odd number of parts from a mark made by halvings alone.

    Args:
        odd: 3, 5, 7 …
        direction: along which the landmark will be used.
        before: a square, open.

    Returns:
        The instructions, and the landmark on the opened square.
    """
    mark = seed_mark(odd)
    found = halved_to(mark, direction.across, ONE, before)
    done, landmark = corner_taken_to(mark, direction, found[-1].after)
    return (*found, *done), landmark


def corner_taken_to(
    mark: Exact, direction: Direction, before: FoldedState
) -> tuple[tuple[Instruction, ...], Point]:
    """Take the corner at the near edge to a mark on the far edge, and crease along the moved edge.

    Args:
        mark: x, between 0 and 1, how far across it is.
        direction: along which the landmark will be used.
        before: a square, open.

    Returns:
        The two instructions, and the landmark, a vertex of the model on the edge at across 1.
    """
    point = direction.point
    corner, target = point(ZERO, ZERO), point(ONE, mark)
    taken = FoldPoint(corner, target)
    first = instructed(
        Doing.CORNER_TO_DOT, before, taken, opens=False, dot=Dot(on_sheet(before, target), mark)
    )
    motion = reflection(fold_lines(taken, before)[0].line)
    moved = [motion.carry(on_sheet(before, end)) for end in (corner, point(ZERO, ONE))]
    start, end, beyond = (
        _in_box(first.after, place) for place in (*moved, on_sheet(before, point(ONE, ONE)))
    )
    over = FoldAlong(start, end, beyond)
    line = fold_lines(over, first.after)[0].line
    second = instructed(Doing.CORNER_OVER, first.after, over)
    side = direction.across.along(on_sheet(before, point(ONE, ONE)))
    (landmark,) = (
        vertex
        for vertex in vertices(second.after)
        if line.side(vertex) == ZERO and direction.across.along(vertex) == side
    )
    return (first, second), landmark


def squared(sheet: Sheet) -> tuple[tuple[Instruction, ...], Sheet]:
    """Make a square of a sheet that is none: the short edge onto the long one, the rest folded behind.

    The crease of the second fold is where the rest is cut away.

    Returns:
        The instructions, none for a square, and the square, as wide as the sheet's short side.
    """
    if sheet.width == sheet.height:
        return (), sheet
    wide = sheet.width > sheet.height
    share = sheet.height / sheet.width if wide else sheet.width / sheet.height
    end = Point(share, ONE) if wide else Point(ONE, share)
    moving = Point(ZERO, ONE) if wide else Point(ONE, ZERO)
    onto = instructed(
        Doing.EDGE_BESIDE,
        open_sheet(sheet),
        FoldAlong(Point(ZERO, ZERO), end, moving),
        opens=False,
        edge=Edge.LEFT if wide else Edge.BOTTOM,
    )
    edge = Edge.RIGHT if wide else Edge.TOP
    away = instructed(Doing.REST_BEHIND, onto.after, FoldAt(share, edge, behind=True), edge=edge)
    short = min(sheet.width, sheet.height)
    return (onto, away), Sheet(short, short, sheet.unit)


def _in_box(state: FoldedState, place: Point) -> Point:
    """Give a point of the table as fractions of the paper's box."""
    box = state.table.box
    return Point((place.x - box.left) / box.width, (place.y - box.bottom) / box.height)
