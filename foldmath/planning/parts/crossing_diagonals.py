"""Two slanted creases that cross at a part of the side: exact, on any rectangle.

The crease from corner (0, 0) to corner (1, 1) and the crease from corner (1, 0) to the mark (0, a) cross at
a/(1 + a) of the width and of the height: 1/2 gives 1/3, 1/4 gives 1/5.

Source:
    "Crossing diagonals" in R. J. Lang, Origami and Geometric Constructions (1996-2015), chapter "Rational
    Fractions"; the crossing itself is read off the model's creases.
"""

from foldmath.paper.moments.performing import fold_lines
from foldmath.paper.state import FoldedState
from foldmath.paper.steps import FoldAlong
from foldmath.plane.lines import Point
from foldmath.plane.numbers import ONE, ZERO, Exact, exact
from foldmath.planning.parts.direction import Direction
from foldmath.planning.parts.halvings import halved_to, seed_mark
from foldmath.planning.parts.instructions import Doing, Dot, Instruction, instructed, on_sheet, vertices

SMALLEST_BESIDE_STAR = exact(1, 6)
"""A smaller mark, and the crossing it gives, would lie on the star at the bottom left corner."""


def crossing_diagonals(
    odd: int, direction: Direction, before: FoldedState
) -> tuple[tuple[Instruction, ...], Point]:
    """Fold the landmark for an odd number of parts from a mark made by halvings alone.

    Returns:
        The instructions, and the landmark on the opened sheet.
    """
    mark = seed_mark(odd)
    corner = ZERO if mark >= SMALLEST_BESIDE_STAR else ONE
    found = halved_to(mark, direction.across, corner, before)
    crossed, landmark = crossed_from(mark, corner, direction, found[-1].after)
    return (*found, *crossed), landmark


def crossed_from(
    mark: Exact, corner: Exact, direction: Direction, before: FoldedState
) -> tuple[tuple[Instruction, ...], Point]:
    """Fold both slanted creases, the second from a mark on the edge that the first sets out from.

    Args:
        mark: a, between 0 and 1, how far across it is.
        corner: 0 or 1, how far along the first sets out; from 1, the crossing is at 1 - a/(1 + a).
        direction: along which the crossing will be used.
        before: the sheet, open.

    Returns:
        The two instructions, and the point where their creases cross, a vertex of the model.
    """
    point, other = direction.point, ONE - corner
    diagonal = FoldAlong(point(corner, ZERO), point(other, ONE), point(corner, ONE))
    slanted = FoldAlong(point(other, ZERO), point(corner, mark), point(corner, ZERO))
    first = instructed(Doing.CORNER_TO_CORNER, before, diagonal)
    dot = Dot(on_sheet(before, point(corner, mark)), mark)
    second = instructed(Doing.CORNER_AND_DOT, first.after, slanted, dot=dot)
    lines = [fold_lines(fold, before)[0].line for fold in (diagonal, slanted)]
    (crossing,) = (
        vertex for vertex in vertices(second.after) if all(line.side(vertex) == ZERO for line in lines)
    )
    return (first, second), crossing
