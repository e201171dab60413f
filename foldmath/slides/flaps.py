"""What is seen of stacked paper: panels of one footprint are one flap, told by its top and its bottom."""

from collections.abc import Iterable
from dataclasses import dataclass

from foldmath.drawing.layout import View
from foldmath.drawing.look import STAR_RADIUS_MM
from foldmath.drawing.scenes import Spot, Star
from foldmath.paper.state import FoldedState
from foldmath.plane.lines import Point
from foldmath.slides.stages import Piece, Stage, piece_of, star_of

MOST_EDGES_PEEPING = 6
"""More layers than this are not told apart by eye at the edge of a stack."""


@dataclass(frozen=True)
class Flap:
    """Paper of one footprint, before and after a stage; at rest both are the same.

    Args:
        start, end: its corners in mm from the picture's top left, each corner in the same place of both.
        firm: for the edge that leaves each corner, whether it is drawn as an edge, or as an old crease.
        printed_at_start, printed_at_end: whether the side that is seen then is the printed one.
        order: of painting while the start's upper side is seen, then while the end's is.
        layers: how many sheets of paper lie here.
        moves: whether the stage turns it over.
        star: the star's middle on the flap at the start and at the end, and whether it is seen then.
    """

    start: tuple[Spot, ...]
    end: tuple[Spot, ...]
    firm: tuple[bool, ...]
    printed_at_start: bool
    printed_at_end: bool
    order: tuple[int, int]
    layers: int
    moves: bool
    star: "FlapStar | None"


@dataclass(frozen=True)
class FlapStar:
    """Where the star is on a flap, and whether the flap shows it at the start and at the end."""

    start: Spot
    end: Spot
    seen_at_start: bool
    seen_at_end: bool


def flaps_of_stage(stage: Stage, view: View) -> tuple[Flap, ...]:
    """Give the flaps of a stage, in the order in which they are painted at its start."""
    return _flaps(stage.pieces, view)


def flaps_at_rest(state: FoldedState, view: View) -> tuple[Flap, ...]:
    """Give the flaps of paper that lies, from the lowest."""
    star = star_of(state.sheet)
    return _flaps([piece_of(panel, panel.placements[-1], star) for panel in state.panels], view)


def _flaps(pieces: Iterable[Piece], view: View) -> tuple[Flap, ...]:
    stacks: dict[tuple[frozenset[Point], frozenset[Point]], list[Piece]] = {}
    for piece in pieces:
        footprint = frozenset(piece.start.corners), frozenset(piece.end.corners)
        stacks.setdefault(footprint, []).append(piece)
    flaps = [_flap(stack, view) for stack in stacks.values()]
    return tuple(sorted(flaps, key=lambda flap: flap.order[0]))


def _flap(stack: list[Piece], view: View) -> Flap:
    first = max(stack, key=lambda piece: piece.start.place)
    last = max(stack, key=lambda piece: piece.end.place)
    return Flap(
        _spots(first.start.corners, view),
        _spots(first.end.corners, view),
        first.firm,
        first.start.printed_side_up,
        last.end.printed_side_up,
        (first.start.place, last.end.place),
        len(stack),
        first.moves,
        _star(stack, first, last, view),
    )


def _spots(corners: Iterable[Point], view: View) -> tuple[Spot, ...]:
    return tuple(Spot(x, view.height_mm - y) for x, y in view.spots(corners))


def _star(stack: list[Piece], first: Piece, last: Piece, view: View) -> FlapStar | None:
    """Place the star on the printed side of the one panel that has it."""
    for piece in stack:
        if piece.star:
            start, end = _spots(piece.star, view)
            return FlapStar(
                start,
                end,
                piece is first and piece.start.printed_side_up,
                piece is last and piece.end.printed_side_up,
            )
    return None


def star_at_rest(flaps: tuple[Flap, ...], state: FoldedState, view: View) -> Star:
    """Give the star of paper that lies: where it is, if that is seen; else, hollow, on the dotted whole."""
    for number, flap in enumerate(flaps):
        star = flap.star
        if star and star.seen_at_start and not any(_holds(star.start, over) for over in flaps[number + 1 :]):
            return Star(star.start, STAR_RADIUS_MM)
    opened = state.panels[0].placements[0].motion.carry(star_of(state.sheet))
    return Star(_spots((opened,), view)[0], STAR_RADIUS_MM, hollow=True)


def _holds(spot: Spot, flap: Flap) -> bool:
    """Tell whether a flap covers a spot, whichever way its corners run."""
    corners = flap.start
    turns = [_turn(corners[index - 1], corner, spot) for index, corner in enumerate(corners)]
    return min(turns) >= 0 or max(turns) <= 0


def _turn(start: Spot, end: Spot, spot: Spot) -> float:
    return (end.x - start.x) * (spot.y - start.y) - (end.y - start.y) * (spot.x - start.x)
