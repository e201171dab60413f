"""What guides a fold: the edges and creases that can be seen and felt where it is made, and on which layer.

Hands see the layers that come face to face: the top ones in a fold over, the bottom ones in a fold
behind. A place with no edge or crease to be seen is judged by eye, as a share of the way from edge to edge.
"""

from collections.abc import Collection
from typing import NamedTuple

from foldmath.measured import as_float
from foldmath.paper.state import FoldedState
from foldmath.paper.steps import Axis
from foldmath.plane.numbers import HALF, Exact
from foldmath.tolerance.assumed.spread import Placing
from foldmath.tolerance.landmarks.frozen import Tape, Terms
from foldmath.tolerance.landmarks.strips import Side, Strip, places_in_stack
from foldmath.values import frozen


class Guide(NamedTuple):
    """Where a fold falls: its error as a sum, and what was brought onto what.

    Args:
        error: without the error of placing the crease itself.
        placing: how the crease is placed; None if an old crease is found again, without a new error.
        moving, onto: on the opened sheet, as fractions of it; None if judged by eye.
    """

    error: Terms
    placing: Placing | None
    moving: Exact | None = None
    onto: Exact | None = None


class Seen(NamedTuple):
    """An edge or crease that can be seen.

    Args:
        error: how far it lies off its place on the table.
        at: its place on the opened sheet, as a fraction of it.
        flat: whether it is a crease that lies open there, paper on both sides of it.
    """

    error: Terms
    at: Exact
    flat: bool


@frozen(kw_only=True)
class View:
    """The paper before a fold across one strip, seen from the side that the fold is made on.

    Args:
        strip: across which it folds.
        other: along which it folds.
        stack: for each cell (piece of ``strip``, piece of ``other``), its place, the nearest highest.
        tape: where guesses by eye are written.
        step: of the lesson, counted from 0.
    """

    strip: Strip
    other: Strip
    stack: dict[tuple[int, int], int]
    tape: Tape
    step: int

    def seen(self, place: Exact, rows: Collection[int] | None = None) -> Seen | None:
        """Give what can be seen at a place: the nearest edge or crease that no nearer layer hides."""
        sides = self.strip.sides_at(place)
        nearest = self._nearest(sides, self.strip.across(place), rows)
        if nearest is None:
            return None
        height, side = nearest
        beyond = [other for other in sides if other.below != side.below]
        flat = any(
            self.stack.get((other.piece, row)) == height for other in beyond for row in self._rows(rows)
        )
        return Seen(self.error_of(side), self.strip.cuts[side.cut] / self.strip.cuts[-1], flat)

    def _rows(self, rows: Collection[int] | None) -> Collection[int]:
        return range(len(self.other.pieces)) if rows is None else rows

    def _nearest(
        self, sides: list[Side], over: list[int], rows: Collection[int] | None
    ) -> tuple[int, Side] | None:
        found: tuple[int, Side] | None = None
        for side in sides:
            for row in self._rows(rows):
                height = self.stack[side.piece, row]
                if found is not None and height <= found[0]:
                    continue
                if not any(
                    self._hides((piece, above), row, height) for piece in over for above in self._rows(None)
                ):
                    found = (height, side)
        return found

    def _hides(self, cell: tuple[int, int], row: int, height: int) -> bool:
        return self.stack[cell] > height and self.other.overlap(cell[1], row)

    def error_of(self, side: Side) -> Terms:
        """Give how far the end of a piece lies off its place on the table."""
        lie = self.strip.pieces[side.piece][-1]
        return ((lie.sign, self.strip.errors[side.cut]), (1, lie.error))

    def uppermost(self, place: Exact) -> int:
        """Give the nearest piece that lies at a place or ends there."""
        pieces = [*self.strip.across(place), *(side.piece for side in self.strip.sides_at(place))]
        return max(pieces, key=lambda piece: max(self.stack[piece, row] for row in self._rows(None)))

    def guessed(self, place: Exact) -> Terms:
        """Judge a place by eye, as a share of the way between the edges that can be seen."""
        eye = self.tape.source(self.step, Placing.EYE)
        return (*self.between_edges(place), (1, eye))

    def between_edges(self, place: Exact) -> Terms:
        """Give the error of a place that keeps its share of the way between the edges."""
        low, high = self.strip.box
        share = (place - low) / (high - low)
        part = as_float(share)
        ends = [self.seen(end) for end in (low, high)]
        return tuple(
            (factor * weight, entry)
            for seen, weight in zip(ends, (1 - part, part), strict=True)
            if seen
            for factor, entry in seen.error
        )


def view(
    state: FoldedState, strips: dict[Axis, Strip], axis: Axis, *, behind: bool, tape: Tape, step: int
) -> View:
    """See the paper as it lies, from above, or from below for a fold behind."""
    columns, rows = strips[Axis.WIDTH], strips[Axis.HEIGHT]
    hand = -1 if behind else 1
    places = places_in_stack(state, columns, rows)
    if axis is Axis.WIDTH:
        return View(
            strip=columns,
            other=rows,
            stack={cell: hand * place for cell, place in places.items()},
            tape=tape,
            step=step,
        )
    stack = {(row, column): hand * place for (column, row), place in places.items()}
    return View(strip=rows, other=columns, stack=stack, tape=tape, step=step)


def laid_on_tick(seen: View, line: Exact) -> Guide:
    """Lay a crease on a tick, which is printed where the crease is meant to be on the nearest layer."""
    lie = seen.strip.pieces[seen.uppermost(line)][-1]
    return Guide(((1, lie.error),), Placing.TICK)


def brought(seen: View, moving: Exact, onto: Exact) -> Guide:
    """Bring the paper at one place onto another; the crease falls half-way, by the landmarks there."""
    old = _found_again(seen, (moving + onto) * HALF)
    if old:
        return old
    landmarks = [seen.seen(place) for place in (moving, onto)]
    errors = [
        landmark.error if landmark else seen.guessed(place)
        for landmark, place in zip(landmarks, (moving, onto), strict=True)
    ]
    half = tuple((factor / 2, entry) for error in errors for factor, entry in error)
    return Guide(half, Placing.EDGE, *(landmark and landmark.at for landmark in landmarks))


def placed(seen: View, line: Exact) -> Guide:
    """Make a crease at a place: along what lies there, or edge to edge at the middle, or by eye."""
    found = _along_what_lies_there(seen, line)
    if found:
        return found
    low, high = seen.strip.box
    return brought(seen, low, high) if line == (low + high) * HALF else fanned(seen, line)


def fanned(seen: View, line: Exact) -> Guide:
    """Make a crease of a fan: along what lies there, or by eye; its edges are never brought together."""
    return _along_what_lies_there(seen, line) or Guide(seen.between_edges(line), Placing.EYE)


def _along_what_lies_there(seen: View, line: Exact) -> Guide | None:
    landmark = seen.seen(line)
    if landmark is None or landmark.flat:
        return _found_again(seen, line)
    return Guide(landmark.error, Placing.EDGE, None, landmark.at)


def _found_again(seen: View, line: Exact) -> Guide | None:
    """Find a crease that lies open there: paper bends again where it was bent."""
    landmark = seen.seen(line)
    return Guide(landmark.error, None, None, landmark.at) if landmark and landmark.flat else None
