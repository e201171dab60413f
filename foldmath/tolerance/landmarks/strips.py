"""A sheet folded parallel to its sides, as two strips: columns along its width, rows along its height.

Every fold goes through all layers and along a whole line, so a fold across the width treats every row
alike: the folded sheet is the product of two folded strips, exactly, and each strip can be followed alone.
"""

from bisect import bisect_right
from dataclasses import replace
from functools import cached_property
from itertools import pairwise
from typing import NamedTuple, Self

from foldmath.paper.state import FoldedState
from foldmath.paper.steps import Axis
from foldmath.plane.numbers import ZERO, Exact
from foldmath.values import frozen

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


@frozen(kw_only=True)
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
    cuts: tuple[Exact, ...]
    errors: tuple[int, ...]
    pieces: tuple[tuple[Lie, ...], ...]

    @cached_property
    def ends(self) -> tuple[tuple[Exact, Exact], ...]:
        """Where each piece lies on the table, the lower end first."""
        return tuple(
            (start + lie.offset, end + lie.offset) if lie.sign > 0 else (lie.offset - end, lie.offset - start)
            for (*_, lie), (start, end) in zip(self.pieces, pairwise(self.cuts), strict=True)
        )

    @cached_property
    def box(self) -> tuple[Exact, Exact]:
        """The lowest and the highest place that it covers."""
        return min(low for low, _ in self.ends), max(high for _, high in self.ends)

    def sides_at(self, place: Exact) -> list[Side]:
        """Give the ends of pieces that lie at a place."""
        found = []
        for piece, (low, high) in enumerate(self.ends):
            if place in (low, high):
                below = place == high
                upright = self.pieces[piece][-1].sign > 0
                found.append(Side(piece, piece + (below == upright), below))
        return found

    def across(self, place: Exact) -> list[int]:
        """Give the pieces that a place lies strictly inside."""
        return [piece for piece, (low, high) in enumerate(self.ends) if low < place < high]

    def layers_beside(self, place: Exact) -> int:
        """Give how many layers a fold there goes through: the fewer of those just below and just above."""
        sides = self.sides_at(place)
        below = sum(side.below for side in sides)
        return len(self.across(place)) + min(below, len(sides) - below)

    def most_layers(self) -> int:
        """Give the most layers at any place."""
        return max(sum(low <= start < high for low, high in self.ends) for start, _ in self.ends)

    def overlap(self, one: int, other: int) -> bool:
        """Tell whether two pieces lie over each other."""
        (low, high), (start, end) = self.ends[one], self.ends[other]
        return low < end and start < high

    def split(self, piece: int, at: Exact, error: int) -> Self:
        """Crease a piece, at a place on the sheet."""
        past = piece + 1
        return replace(
            self,
            cuts=(*self.cuts[:past], at, *self.cuts[past:]),
            errors=(*self.errors[:past], error, *self.errors[past:]),
            pieces=(*self.pieces[:past], *self.pieces[piece:]),
        )

    def opened(self, folds: int) -> Self:
        """Keep only so many folds."""
        return replace(self, pieces=tuple(lies[: folds + 1] for lies in self.pieces))

    def joined(self, folds: int) -> Self:
        """Count every fold past so many as one."""
        return replace(self, pieces=tuple((*lies[: folds + 1], lies[-1]) for lies in self.pieces))


def strips(width: Exact, height: Exact) -> dict[Axis, Strip]:
    """Lay both strips of a sheet down, open and unerring."""
    at_rest = (Lie(1, ZERO, UNERRING),)
    return {
        axis: Strip(
            axis=axis,
            level=axis is Axis.WIDTH,
            cuts=(ZERO, length),
            errors=(UNERRING, UNERRING),
            pieces=(at_rest,),
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
