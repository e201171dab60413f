"""Old creases of a leaf as lines: pieces that meet end to end in one straight line become one."""

from collections import defaultdict
from collections.abc import Iterable

from foldmath.plane.lines import Line, Point, line_through
from foldmath.plane.numbers import ZERO

Piece = tuple[Point, Point]


def crease_runs(pieces: Iterable[Piece]) -> list[Piece]:
    """Join pieces of one straight line where they meet; many broken ones would pass for dashes.

    Args:
        pieces: their ends, in any order and either way round.
    """
    aligned: dict[Line, list[Piece]] = defaultdict(list)
    for piece in pieces:
        start, end = sorted(piece)
        aligned[_line(start, end)].append((start, end))
    runs: list[Piece] = []
    for alike in aligned.values():
        joined: list[Piece] = []
        for start, end in sorted(set(alike)):
            if joined and joined[-1][1] == start:
                joined[-1] = (joined[-1][0], end)
            else:
                joined.append((start, end))
        runs += joined
    return runs


def lies_along(piece: Piece, lines: Iterable[Line]) -> bool:
    """Tell whether a piece lies on one of some lines."""
    return any(all(line.side(end) == ZERO for end in piece) for line in lines)


def _line(start: Point, end: Point) -> Line:
    """Give the line through two points, the same for all points on it."""
    line = line_through(start, end)
    first = line.a if line.a != ZERO else line.b
    return Line(line.a / first, line.b / first, line.c / first)
