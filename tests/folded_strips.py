"""Level and upright folding by Python's fractions alone: paper as two strips, without any code that folds.

A fold across one strip leaves the other as it is, so panels are all pairs of their pieces. Which way up a
pair lies is the product of the two pieces' signs.
"""

from dataclasses import dataclass, field, replace
from fractions import Fraction
from itertools import pairwise
from typing import NamedTuple

from foldmath.paper.steps import (
    Axis,
    Edge,
    FoldAt,
    FoldBothEdges,
    FoldEdge,
    Open,
    OpenLast,
    Pleat,
    Step,
    TurnOver,
)

WIDTH, HEIGHT = 0, 1
AXES = {Axis.WIDTH: WIDTH, Axis.HEIGHT: HEIGHT}
LOW_EDGES = (Edge.LEFT, Edge.BOTTOM)


class Lying(NamedTuple):
    """Where a piece lies: its place ``x`` on the open sheet is seen at ``sign * x + shift``."""

    sign: int
    shift: Fraction


@dataclass(frozen=True)
class Piece:
    """A piece of a strip between two creases, and how it lies: opened, and after each fold since."""

    start: Fraction
    end: Fraction
    lying: tuple[Lying, ...] = (Lying(1, Fraction(0)),)

    @property
    def seen(self) -> tuple[Fraction, Fraction]:
        sign, shift = self.lying[-1]
        low, high = sorted((sign * self.start + shift, sign * self.end + shift))
        return low, high

    def then(self, lying: Lying) -> "Piece":
        return replace(self, lying=(*self.lying, lying))


Creases = dict[tuple[int, Fraction, tuple[Fraction, Fraction]], str]
"""Letters of the FOLD format, by axis, place, and the stretch of the other axis."""


@dataclass
class Strips:
    """A sheet of 1 by 1 being folded."""

    pieces: list[list[Piece]] = field(
        default_factory=lambda: [[Piece(Fraction(0), Fraction(1))], [Piece(Fraction(0), Fraction(1))]]
    )
    found: list[tuple[int, Fraction, Piece, str]] = field(default_factory=list)

    def box(self, axis: int) -> tuple[Fraction, Fraction]:
        """Give from where to where the folded paper lies."""
        seen = [place for piece in self.pieces[axis] for place in piece.seen]
        return min(seen), max(seen)

    def fold(self, axis: int, at: Fraction, *, low_moves: bool, behind: bool) -> None:
        """Fold all layers at a place, as the paper lies."""
        folded = []
        for piece in self.pieces[axis]:
            low, high = piece.seen
            sign, shift = piece.lying[-1]
            parts = [piece]
            if low < at < high:
                crease = (at - shift) / sign
                parts = [replace(piece, end=crease), replace(piece, start=crease)]
                for other in self.pieces[1 - axis]:
                    face_up = sign * other.lying[-1].sign > 0
                    self.found.append((axis, crease, other, "V" if face_up != behind else "M"))
            for part in parts:
                moves = part.seen[1] <= at if low_moves else part.seen[0] >= at
                folded.append(part.then(Lying(-sign, 2 * at - shift) if moves else Lying(sign, shift)))
        self.pieces[axis] = folded
        self.pieces[1 - axis] = [piece.then(piece.lying[-1]) for piece in self.pieces[1 - axis]]

    def do(self, step: Step) -> None:
        """Do a step of the kinds that keep to level and upright lines."""
        match step:
            case FoldEdge(edge, to, behind):
                low, high = self.box(AXES[edge.axis])
                middle = (Fraction(str(to)) + (edge not in LOW_EDGES)) / 2
                self.fold(
                    AXES[edge.axis], low + (high - low) * middle, low_moves=edge in LOW_EDGES, behind=behind
                )
            case FoldAt(at, moving, behind):
                low, high = self.box(AXES[moving.axis])
                place = low + (high - low) * Fraction(str(at))
                self.fold(AXES[moving.axis], place, low_moves=moving in LOW_EDGES, behind=behind)
            case FoldBothEdges(axis, behind):
                low, high = self.box(AXES[axis])
                for share, low_moves in ((Fraction(1, 4), True), (Fraction(3, 4), False)):
                    self.fold(AXES[axis], low + (high - low) * share, low_moves=low_moves, behind=behind)
            case Pleat(axis, parts):
                low, high = self.box(AXES[axis])
                for crease in range(1, parts):
                    place = low + (high - low) * Fraction(crease, parts)
                    self.fold(AXES[axis], place, low_moves=True, behind=crease % 2 == 0)
            case Open():
                self._open(lambda lying: lying[:1])
            case OpenLast():
                self._open(lambda lying: lying[:-1])
            case TurnOver():
                self.pieces[WIDTH] = [
                    replace(piece, lying=tuple(Lying(-sign, -shift) for sign, shift in piece.lying))
                    for piece in self.pieces[WIDTH]
                ]
            case _:
                raise NotImplementedError(step)

    def _open(self, kept) -> None:
        self.pieces = [[replace(piece, lying=kept(piece.lying)) for piece in row] for row in self.pieces]

    def places(self, axis: int) -> list[Fraction]:
        """Give where creases and edges lie on the open sheet."""
        return sorted({place for piece in self.pieces[axis] for place in (piece.start, piece.end)})

    def areas(self) -> list[Fraction]:
        """Give the size of every panel."""
        across, up = (
            [after - before for before, after in pairwise(self.places(axis))] for axis in (WIDTH, HEIGHT)
        )
        return [width * height for width in across for height in up]

    def creases(self) -> Creases:
        """Give every crease between two panels, with its letter."""
        return {
            (axis, place, stretch): letter
            for axis, place, other, letter in self.found
            for stretch in pairwise(self.places(1 - axis))
            if other.start <= stretch[0] and stretch[1] <= other.end
        }
