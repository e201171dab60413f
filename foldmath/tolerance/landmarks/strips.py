"""A sheet folded parallel to its sides, as two strips: columns along its width, rows along its height.

Every fold goes through all layers and along a whole line, so a fold across the width treats every row
alike: the folded sheet is the product of two folded strips, exactly, and each strip can be followed alone.
"""

from bisect import bisect_right
from dataclasses import dataclass
from typing import NamedTuple

from foldmath.paper.state import FoldedState
from foldmath.paper.steps import Axis
from foldmath.plane.numbers import ZERO, Exact

UNERRING = -1
"""The error of what cannot be wrong: the edges of the sheet."""


class Lie(NamedTuple):
    """How a piece of a strip lies: u goes to ``sign`` u + ``offset``, off by an ``error`` on the tape."""

    sign: int
    offset: Exact
    error: int


class Side(NamedTuple):
    """An end of a piece that lies at some place on the table.

    Args:
        piece: its index.
        cut: which of the strip's cuts it is.
        below: whether the piece lies towards lower table coordinates from it.
    """

    piece: int
    cut: int
    below: bool


@dataclass(kw_only=True)
class Strip:
    """A strip as it lies; lengths in sheet units.

    Args:
        axis: the side of the sheet that it runs along.
        level: whether it lies along the table's x now; a quarter turn changes it.
        cuts: where it is creased, with both ends of the sheet, in order.
        errors: for each cut, its error's place on the tape.
        pieces: between neighbouring cuts, how each lies: open, then after each fold still folded.
    """

    axis: Axis
    level: bool
    cuts: list[Exact]
    errors: list[int]
    pieces: list[tuple[Lie, ...]]

    def ends(self, piece: int) -> tuple[Exact, Exact]:
        """Give where a piece lies on the table, the lower end first."""
        lie = self.pieces[piece][-1]
        one = lie.sign * self.cuts[piece] + lie.offset
        other = lie.sign * self.cuts[piece + 1] + lie.offset
        return (one, other) if lie.sign > 0 else (other, one)

    def box(self) -> tuple[Exact, Exact]:
        """Give the lowest and the highest place that it covers."""
        ends = [self.ends(piece) for piece in range(len(self.pieces))]
        return min(low for low, _ in ends), max(high for _, high in ends)

    def sides_at(self, place: Exact) -> list[Side]:
        """Give the ends of pieces that lie at a place."""
        found = []
        for piece in range(len(self.pieces)):
            low, high = self.ends(piece)
            if place in (low, high):
                below = place == high
                upright = self.pieces[piece][-1].sign > 0
                found.append(Side(piece, piece + (below == upright), below))
        return found

    def across(self, place: Exact) -> list[int]:
        """Give the pieces that a place lies strictly inside."""
        return [
            piece for piece in range(len(self.pieces)) if self.ends(piece)[0] < place < self.ends(piece)[1]
        ]

    def layers_beside(self, place: Exact) -> int:
        """Give how many layers a fold there goes through: the fewer of those just below and just above."""
        sides = self.sides_at(place)
        below = sum(side.below for side in sides)
        return len(self.across(place)) + min(below, len(sides) - below)

    def most_layers(self) -> int:
        """Give the most layers at any place."""
        places = [self.ends(piece) for piece in range(len(self.pieces))]
        return max(sum(low <= start < high for low, high in places) for start, _ in places)

    def overlap(self, one: int, other: int) -> bool:
        """Tell whether two pieces lie over each other."""
        (low, high), (start, end) = self.ends(one), self.ends(other)
        return low < end and start < high

    def split(self, piece: int, at: Exact, error: int) -> None:
        """Crease a piece, at a place on the sheet."""
        self.cuts.insert(piece + 1, at)
        self.errors.insert(piece + 1, error)
        self.pieces.insert(piece, self.pieces[piece])

    def opened(self, folds: int) -> None:
        """Keep only so many folds."""
        self.pieces = [lies[: folds + 1] for lies in self.pieces]

    def joined(self, folds: int) -> None:
        """Count every fold past so many as one."""
        self.pieces = [(*lies[: folds + 1], lies[-1]) for lies in self.pieces]


def strips(width: Exact, height: Exact) -> dict[Axis, Strip]:
    """Lay both strips of a sheet down, open and unerring."""
    at_rest = (Lie(1, ZERO, UNERRING),)
    return {
        axis: Strip(
            axis=axis,
            level=axis is Axis.WIDTH,
            cuts=[ZERO, length],
            errors=[UNERRING, UNERRING],
            pieces=[at_rest],
        )
        for axis, length in ((Axis.WIDTH, width), (Axis.HEIGHT, height))
    }


def places_in_stack(state: FoldedState, columns: Strip, rows: Strip) -> dict[tuple[int, int], int]:
    """Give the place in the stack of each cell, a column and a row of the opened sheet.

    Slanted creases, opened again, may cut a cell into panels: they lie alike, and one speaks for all.
    """
    return {
        (
            bisect_right(columns.cuts, min(corner.x for corner in panel.corners)) - 1,
            bisect_right(rows.cuts, min(corner.y for corner in panel.corners)) - 1,
        ): panel.placements[-1].place
        for panel in state.panels
    }
