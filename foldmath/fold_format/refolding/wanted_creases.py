"""The creases that are wanted, cut into pieces that no crossing divides, and which are made already."""

from bisect import bisect_left
from collections import defaultdict
from collections.abc import Iterable, Sequence
from itertools import combinations, pairwise
from typing import TypeAlias

from foldmath.fold_format.refolding.crease_pattern import WantedCrease
from foldmath.fold_format.refusals import PatternRefused
from foldmath.paper.state import CreaseLine, Kind
from foldmath.phrases import phrase
from foldmath.plane.lines import Line, Point, line_through
from foldmath.plane.numbers import ONE, ZERO, written

MOST_LINES = 200
"""Creases on more different lines than this are more than a lesson folds."""

MOST_PIECES = 10_000
"""A grid of as many panels as a sheet may have has about 8,000 pieces of crease."""

Span: TypeAlias = tuple[Point, Point]

OTHER = {Kind.VALLEY: Kind.MOUNTAIN, Kind.MOUNTAIN: Kind.VALLEY}


def named(line: Line) -> Line:
    """Give the same line written in one way only, whichever points it was drawn through."""
    a, b, c = line
    return Line(ONE, ZERO, c / a) if b == ZERO else Line(a / b, ONE, c / b)


class WantedCreases:
    """Pieces of creases by the line they are on; made from the last folding of a lesson to the first.

    A later fold along a crease decides its kind. So once the last folding that makes a piece is chosen,
    earlier ones may crease it either way: its wanted kind is forgotten, and only its place still counts.

    Args:
        creases: from the pattern; the same piece may be given twice, if it is wanted alike.

    Raises:
        PatternRefused: too many lines, or two kinds for one piece.
    """

    def __init__(self, creases: Sequence[WantedCrease]) -> None:
        by_line: dict[Line, list[WantedCrease]] = defaultdict(list)
        for crease in creases:
            by_line[named(line_through(crease.start, crease.end))].append(crease)
        if len(by_line) > MOST_LINES:
            raise PatternRefused(
                phrase("its creases run along more than {most} lines", most=MOST_LINES),
                phrase("use a simpler crease pattern"),
            )
        marks = {line: _marks(on_line) for line, on_line in by_line.items()}
        _add_crossings(marks, {line: _runs(on_line) for line, on_line in by_line.items()})
        self.lines = list(by_line)
        self.spans: list[Span] = []
        self.kinds: list[Kind | None] = []
        self._starts: dict[Line, list[Point]] = {}
        self._first: dict[Line, int] = {}
        for line, on_line in by_line.items():
            self._add(line, on_line, sorted(marks[line]))
            if len(self.spans) > MOST_PIECES:
                raise PatternRefused(
                    phrase("its creases cross into more than {most} pieces", most=MOST_PIECES),
                    phrase("use a simpler crease pattern"),
                )
        # A cut hides what the crease under it was.
        self.cuts = [span for span, kind in zip(self.spans, self.kinds, strict=True) if kind is Kind.CUT]
        self.kinds = [None if kind is Kind.CUT else kind for kind in self.kinds]
        self.missing = set(range(len(self.spans)))
        self._known: dict[Span, range | None] = {}

    def _add(self, line: Line, on_line: list[WantedCrease], marks: list[Point]) -> None:
        self._first[line] = len(self.spans)
        wanted: dict[Span, Kind | None] = {}
        for crease in on_line:
            low, high = bisect_left(marks, crease.start), bisect_left(marks, crease.end)
            for span in pairwise(marks[low : high + 1]):
                if wanted.setdefault(span, crease.kind) is not crease.kind:
                    raise PatternRefused(
                        phrase(
                            "two edges in one place call for different creases, near {span}",
                            span=_place_of(span[0]),
                        ),
                        phrase("leave one of them out"),
                    )
        ordered = sorted(wanted)
        self._starts[line] = [start for start, _ in ordered]
        self.spans += ordered
        self.kinds += [wanted[span] for span in ordered]

    def _pieces(self, span: Span) -> range | None:
        """Give the numbers of the pieces that make up a straight crease, or None if some are not wanted."""
        if span in self._known:
            return self._known[span]
        line = named(line_through(*span))
        found = None
        if line in self._starts:
            first = self._first[line]
            begin = bisect_left(self._starts[line], span[0])
            end, reached = begin, span[0]
            while end < len(self._starts[line]) and self._starts[line][end] == reached != span[1]:
                reached = self.spans[first + end][1]
                end += 1
            found = range(first + begin, first + end) if reached == span[1] else None
        self._known[span] = found
        return found

    def gain(self, creases: Iterable[CreaseLine], *, turned: bool) -> int | None:
        """Tell how many missing pieces creases would make; None if one is out of place or of the wrong kind.

        Args:
            creases: of one fold.
            turned: whether they are to be taken the other way: valleys for mountains.
        """
        gained = 0
        for start, end, kind, _ in creases:
            pieces = self._pieces((start, end))
            if pieces is None:
                return None
            made = OTHER[kind] if turned else kind
            for piece in pieces:
                if self.kinds[piece] not in (None, made):
                    return None
                gained += piece in self.missing
        return gained

    def spans_along(self, creases: Iterable[CreaseLine]) -> set[Span]:
        """Give the pieces that creases in place run along."""
        pieces = (self._pieces((crease.start, crease.end)) or () for crease in creases)
        return {self.spans[piece] for run in pieces for piece in run}

    def make(self, creases: Iterable[CreaseLine]) -> None:
        """Take creases as made, the last time that anything is folded along them."""
        for crease in creases:
            for piece in self._pieces((crease.start, crease.end)) or ():
                self.missing.discard(piece)
                self.kinds[piece] = None


def _place_of(point: Point) -> str:
    return f"({written(point.x)}, {written(point.y)})"


def _marks(creases: list[WantedCrease]) -> set[Point]:
    return {end for crease in creases for end in (crease.start, crease.end)}


def _runs(creases: list[WantedCrease]) -> list[Span]:
    """Join creases on one line that meet or overlap."""
    runs: list[Span] = []
    for start, end in sorted((crease.start, crease.end) for crease in creases):
        if runs and start <= runs[-1][1]:
            runs[-1] = (runs[-1][0], max(runs[-1][1], end))
        else:
            runs.append((start, end))
    return runs


def _add_crossings(marks: dict[Line, set[Point]], runs: dict[Line, list[Span]]) -> None:
    for one, other in combinations(runs, 2):
        turn = one.a * other.b - other.a * one.b
        if turn == ZERO:
            continue
        crossing = Point(
            (one.b * other.c - other.b * one.c) / turn, (one.c * other.a - other.c * one.a) / turn
        )
        if all(any(start <= crossing <= end for start, end in runs[line]) for line in (one, other)):
            marks[one].add(crossing)
            marks[other].add(crossing)
