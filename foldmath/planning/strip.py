"""The sheet seen along one axis: a strip with a lattice of places, folded to and fro.

Folds across one axis leave the other alone, so a sheet that is folded parallel to its edges is two strips,
and a point of it lies under the layers of one times the layers of the other.
"""

from collections.abc import Mapping
from functools import lru_cache
from itertools import pairwise
from math import gcd
from typing import NamedTuple, TypeAlias

from foldmath.paper.steps import MOST_PLEATS

Points: TypeAlias = tuple[int, ...]
"""Where each lattice place of a strip lies on the table; neighbours are one apart."""

FINEST = MOST_PLEATS
"""A position that a sentence names is k/n of the paper as it lies, with n up to this."""


MOST_KNOWN = 10_000
"""So many ways to lie are kept in mind; one wish meets a few thousand."""


class Move(NamedTuple):
    """Open some folds, then fold on a line.

    Args:
        opened: how many of the newest folds are opened first.
        crossed: the lattice places where paper runs through the line, in order; all are creased.
    """

    opened: int
    crossed: tuple[int, ...]


Moves: TypeAlias = tuple[Move, ...]


class Strip(NamedTuple):
    """A strip under way, seen by its first cell, which never moves: so folding either part is one thing.

    Args:
        stack: how it lies, once for the open strip and once for each fold still folded.
        creases: the places creased so far.
        layers: the most layers anywhere, for each way it lies in the stack.
    """

    stack: tuple[Points, ...]
    creases: frozenset[int]
    layers: tuple[int, ...]

    def after(self, move: Move) -> "Strip":
        """Give the strip after a move."""
        kept = len(self.stack) - move.opened
        points = self.stack[kept - 1]
        laid, thick = _laid(points, points[move.crossed[0]])
        creases = self.creases.union(move.crossed)
        return Strip((*self.stack[:kept], laid), creases, (*self.layers[:kept], thick))


@lru_cache(MOST_KNOWN)
def _laid(points: Points, line: int) -> tuple[Points, int]:
    """Give how a strip lies after a fold, and its layers: strips creased otherwise often lie alike."""
    # The first cell lies from 0 to 1, so the part above a line at 0 or below holds it still.
    laid = folded(points, line, low=line <= 0)
    return laid, layers(laid)


def open_strip(length: int) -> Strip:
    """Give a strip of so many lattice cells, with no crease."""
    return Strip((tuple(range(length + 1)),), frozenset(), (1,))


def mirrored(moves: Moves, length: int) -> Moves:
    """Give the mirror image of a way to fold a strip."""
    return tuple(Move(opened, tuple(length - place for place in places[::-1])) for opened, places in moves)


@lru_cache(MOST_KNOWN)
def crossed(points: Points) -> Mapping[int, tuple[int, ...]]:
    """Give for each line where a fold would crease paper the places where paper runs through it, in order."""
    found: dict[int, tuple[int, ...]] = {}
    for place in range(1, len(points) - 1):
        if points[place - 1] != points[place + 1]:
            line = points[place]
            found[line] = (*found.get(line, ()), place)
    return found


def folded(points: Points, line: int, *, low: bool) -> Points:
    """Fold every layer on the low or the high side of a line over to the other."""
    if low:
        return tuple(2 * line - point if point < line else point for point in points)
    return tuple(2 * line - point if point > line else point for point in points)


def layers(points: Points) -> int:
    """Give the most layers anywhere."""
    low = min(points)
    counted = [0] * (max(points) - low)
    for one, other in pairwise(points):
        counted[min(one, other) - low] += 1
    return max(counted)


def low_part_is_shorter(points: Points, line: int) -> bool:
    """Tell whether the part below a line is the shorter one, or as long as the other."""
    return 2 * line <= min(points) + max(points)


def goal_of_edge(points: Points, line: int) -> int:
    """Give where the outer edge of the shorter part comes to lie."""
    return _goal(min(points), max(points), line)


def _goal(low: int, high: int, line: int) -> int:
    return 2 * line - (low if 2 * line <= low + high else high)


def seen(points: Points, creases: frozenset[int]) -> set[int]:
    """Give where an edge of the paper, a folded edge or a crease of some layer lies."""
    return {points[0], points[-1], min(points), max(points), *(points[place] for place in creases)}


class Lying(NamedTuple):
    """What a strip shows as it lies.

    Args:
        low, high: where its ends lie.
        marks: where an edge of the paper, a folded edge or a crease of some layer lies.
    """

    low: int
    high: int
    marks: set[int]

    def guides(self, line: int) -> bool:
        """Tell whether paper shows where to fold, so that no tick is needed.

        It does where an edge or a crease lies on the line already, and where the outer edge of the shorter
        part travels onto one.
        """
        return line in self.marks or _goal(self.low, self.high, line) in self.marks

    def can_say(self, line: int) -> bool:
        """Tell whether a sentence can name the line by a simple part of the paper as it lies."""
        if self._is_simple(line):
            return True
        goal = _goal(self.low, self.high, line)
        return goal in self.marks and self._is_simple(goal)

    def _is_simple(self, line: int) -> bool:
        length = self.high - self.low
        return length // gcd(line - self.low, length) <= FINEST


def lying(points: Points, creases: frozenset[int]) -> Lying:
    """Give what a strip shows that lies so, with creases at some of its places."""
    return Lying(min(points), max(points), seen(points, creases))
