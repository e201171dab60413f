"""The fold lines of a lesson: every crease of the opened sheet, with the fold that first made it."""

from collections import defaultdict
from itertools import groupby
from typing import NamedTuple

from foldmath.lesson.proving import ProvedLesson
from foldmath.paper.state import CreaseLine, Kind
from foldmath.paper.steps import FoldStep
from foldmath.plane.lines import Line, Point, line_through
from foldmath.plane.numbers import ZERO
from foldmath.values import frozen


class Piece(NamedTuple):
    """A part of a fold line that is one kind all along, in sheet units."""

    start: Point
    end: Point
    kind: Kind


@frozen
class FoldLine:
    """A straight line of creases without a gap that one fold made.

    Args:
        fold: which fold of the lesson made it, counted from 1 as the worksheets count.
        pieces: its parts in order, from the left, or from the bottom if it is upright.
    """

    fold: int
    pieces: tuple[Piece, ...]

    @property
    def start(self) -> Point:
        """Where it begins."""
        return self.pieces[0].start

    @property
    def end(self) -> Point:
        """Where it ends."""
        return self.pieces[-1].end


def fold_lines(proved: ProvedLesson) -> tuple[FoldLine, ...]:
    """Give the lines of the final crease pattern, in folding order, then from the left.

    Whatever folds along a line again, or gathers the sheet, a line shows the fold whose number it bears:
    who follows the steps on it folds it over or behind as that step says. Only a cut takes its place.
    """
    makers = _makers(proved)
    made: dict[tuple[int, Line], list[Piece]] = defaultdict(list)
    for crease in proved.states[-1].creases:
        line = _line_of(crease)
        fold, kind = _first_made(crease, line, makers)
        made[fold, line].append(
            Piece(crease.start, crease.end, crease.kind if crease.kind is Kind.CUT else kind)
        )
    lines = [
        FoldLine(fold, run)
        for (fold, _), pieces in made.items()
        for run in _runs(sorted(pieces, key=lambda piece: piece.start))
    ]
    return tuple(sorted(lines, key=lambda line: (line.fold, line.start, line.end)))


def line_of(start: Point, end: Point) -> Line:
    """Give the line through two points, the same for all points on it."""
    line = line_through(start, end)
    first = line.a if line.a != ZERO else line.b
    return Line(line.a / first, line.b / first, line.c / first)


def _line_of(crease: CreaseLine) -> Line:
    return line_of(crease.start, crease.end)


_Creases = dict[Line, list[CreaseLine]]


def _makers(proved: ProvedLesson) -> list[tuple[int, _Creases]]:
    """Give, for each fold that made creases, the creases of every line then."""
    folds = [moment for moment in proved.moments if isinstance(moment.step, FoldStep)]
    return [
        (number, _by_line(moment.after.creases))
        for number, moment in enumerate(folds, start=1)
        if moment.new_panels
    ]


def _by_line(creases: list[CreaseLine]) -> _Creases:
    lines: _Creases = defaultdict(list)
    for crease in creases:
        lines[_line_of(crease)].append(crease)
    return lines


def _first_made(crease: CreaseLine, line: Line, makers: list[tuple[int, _Creases]]) -> tuple[int, Kind]:
    """Give the fold that made a crease, and its kind then; creases are only ever split, by others."""
    for number, lines in makers:
        for earlier in lines.get(line, ()):
            if earlier.start <= crease.start and crease.end <= earlier.end:
                return number, earlier.kind
    raise AssertionError("every crease was made by a fold")


def _runs(pieces: list[Piece]) -> list[tuple[Piece, ...]]:
    """Part the pieces of one line where there is a gap, and join those of one kind that meet."""
    runs: list[list[Piece]] = []
    for piece in pieces:
        if runs and runs[-1][-1].end == piece.start:
            runs[-1].append(piece)
        else:
            runs.append([piece])
    return [
        tuple(
            Piece(alike[0].start, alike[-1].end, kind)
            for kind, alike in ((kind, list(group)) for kind, group in groupby(run, key=_kind))
        )
        for run in runs
    ]


def _kind(piece: Piece) -> Kind:
    return piece.kind
