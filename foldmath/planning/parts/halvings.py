"""Marks that halvings alone can make: which one an odd number of parts needs, and how it is folded.

Source:
    Binary folding, as in R. J. Lang, Origami and Geometric Constructions (1996-2015); the order of the folds
    is derived here from the binary digits.
"""

from foldmath.paper.state import FoldedState
from foldmath.paper.steps import FoldEdge
from foldmath.plane.numbers import HALF, Exact, denominator, exact, numerator
from foldmath.planning.parts.direction import Direction
from foldmath.planning.parts.instructions import Doing, Dot, Instruction, instructed, on_sheet


def odd_part(parts: int) -> int:
    """Give what is left of a number when it is halved as often as it goes."""
    while parts % 2 == 0:
        parts //= 2
    return parts


def seed_mark(odd: int) -> Exact:
    """Give the mark p/2^q from which both exact constructions reach an odd number of parts, 2^q + p.

    Crossing diagonals from a = p/2^q give a/(1 + a) = p/(2^q + p), and a corner taken to x = p/2^q gives
    (1 - x)/(1 + x) = (2^q - p)/(2^q + p). With 2^q the highest power of 2 below ``odd`` both are in lowest
    terms, since p is odd.

    Args:
        odd: 3, 5, 7 …
    """
    power = 1 << (odd.bit_length() - 1)
    return exact(odd - power, power)


def halved_to(
    mark: Exact, direction: Direction, at_across: Exact, before: FoldedState
) -> tuple[Instruction, ...]:
    """Fold a mark p/2^q in q folds, each of an edge to the last crease, by the binary digits of p.

    Args:
        mark: between 0 and 1, its denominator a power of 2.
        direction: along which it is counted.
        at_across: 0 or 1, the edge at which its dots are shown.
        before: the sheet, open.
    """
    done: list[Instruction] = []
    state, place, digits = before, HALF, numerator(mark)
    for number in range(denominator(mark).bit_length() - 1):
        edge = direction.far if digits & 1 else direction.near
        digits >>= 1
        if not number:
            fold = FoldEdge(direction.near, direction.far.position)
            done.append(instructed(Doing.HALVE, state, fold, edge=direction.near))
        else:
            dot = Dot(on_sheet(state, direction.point(place, at_across)), place)
            fold = FoldEdge(edge, place)
            done.append(instructed(Doing.EDGE_TO_DOT, state, fold, edge=edge, dot=dot))
            place = (place + edge.position) * HALF
        state = done[-1].after
    return tuple(done)
