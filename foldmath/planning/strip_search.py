"""Searching one axis: takes the creases that a strip should have, gives every shortest way to fold them.

Iterated deepening over moves; a fold that would crease a wrong place is never made, since creases stay.
A strip that was seen to need more folds than are left is not searched again, so nothing is lost.
"""

from collections.abc import Iterator
from functools import cache, lru_cache
from typing import NamedTuple

from foldmath.planning.strip import (
    Move,
    Moves,
    Strip,
    crossed,
    lying,
    mirrored,
    open_strip,
)
from foldmath.values import frozen

MOST_FOLDS = 11
"""On one axis: enough to fold twelve parts crease by crease."""

MOST_STRIPS = 12_000
"""A search of one axis looks at no more strips than this, about a second's work; then it says so."""

MOST_STRIPS_FURTHER = 1_500
"""And at no more than this where better ways are known, and thinner ones would be welcome."""

MOST_WAYS = 400
"""So many ways with the fewest folds are compared; those that paper guides are found first."""


class Target(NamedTuple):
    """The creases wanted on one axis.

    Args:
        length: of the strip, in lattice cells.
        creases: the places to crease, all of them and no others.
    """

    length: int
    creases: frozenset[int]


@frozen
class Found:
    """What a search gave.

    Args:
        ways: every shortest way, mirror images taken as one; empty if there is none in reach.
        complete: whether the search looked everywhere.
    """

    ways: tuple[Moves, ...] = ()
    complete: bool = True


def even_target(parts: int) -> Target:
    """Want equal parts."""
    return Target(parts, frozenset(range(1, parts)))


@cache
def shortest_ways(
    target: Target, most_layers: int, most_strips: int = MOST_STRIPS, most_folds: int = MOST_FOLDS
) -> Found:
    """Find the ways with the fewest folds to a target that never lies more than so many layers thick."""
    if not target.creases:
        return Found(((),))
    search = _Search(target, most_layers, most_strips)
    for folds in range(1, most_folds + 1):
        ways = tuple(search.ways(folds))
        if _symmetric(target):
            # The mirror image of a way to other creases leads elsewhere.
            ways = _without_mirror_images(ways, target.length)
        if ways or not search.complete:
            return Found(ways, search.complete)
    return Found()


@frozen
class Fewest:
    """How many folds a target needs at least.

    Args:
        folds: None if no way is in reach.
        complete: whether the search looked everywhere for fewer.
        strips: how many it looked at.
    """

    folds: int | None
    complete: bool
    strips: int


@cache
def fewest_folds(target: Target, most_layers: int, most_folds: int) -> Fewest:
    """Count the folds of the shortest way alone, which is known long before all ways of its length are."""
    search = _Search(target, most_layers, MOST_STRIPS)
    for folds in range(most_folds + 1):
        if search.has_way(folds):
            return Fewest(folds, True, search.strips)
        if not search.complete:
            break
    return Fewest(None, search.complete, search.strips)


class _Search:
    """One search under way: which strips are known to need more folds than some number."""

    def __init__(self, target: Target, most_layers: int, most_strips: int) -> None:
        self.target = target
        self.most_layers = most_layers
        self.most_strips = most_strips
        self.hopeless: dict[Strip, int] = {}
        self.strips = 0
        self.found = 0

    @property
    def complete(self) -> bool:
        """Whether no limit has cut the search short."""
        return self.strips < self.most_strips and self.found < MOST_WAYS

    def ways(self, folds: int) -> list[Moves]:
        """Give every way with exactly so many folds."""
        return list(self._onward(open_strip(self.target.length), folds, first=True))

    def has_way(self, folds: int) -> bool:
        """Tell whether there is a way with exactly so many folds."""
        return any(True for _ in self._onward(open_strip(self.target.length), folds, first=True))

    def _onward(self, strip: Strip, left: int, *, first: bool = False) -> Iterator[Moves]:
        if strip.creases == self.target.creases:
            yield ()
            return
        if self.hopeless.get(strip, -1) >= left or not self._in_reach(strip, left) or not self.complete:
            return
        self.strips += 1
        some = False
        for move, after in moves_from(strip, self.target, first=first):
            if after.layers[-1] > self.most_layers:
                continue
            for rest in self._onward(after, left - 1):
                some = True
                self.found += first
                yield (move, *rest)
        if not some and self.complete:
            self.hopeless[strip] = left

    def _in_reach(self, strip: Strip, left: int) -> bool:
        """Each fold doubles the layers at most, and makes at most one crease a layer there is before it."""
        cap = max(1, self.most_layers // 2)
        return len(self.target.creases) - len(strip.creases) <= _most_creases(max(strip.layers), left, cap)


@cache
def _most_creases(layers: int, folds: int, cap: int) -> int:
    """Give how many creases so many folds make at most, of paper that has no more layers than ``cap``."""
    return sum(min(layers << fold, cap) for fold in range(folds))


@lru_cache(MOST_STRIPS)
def moves_from(strip: Strip, target: Target, *, first: bool) -> tuple[tuple[Move, Strip], ...]:
    """Give the moves that crease only what is wanted, and something new, with the strip after each.

    Guided ones come first. Searches for one fold more, or one layer less, come by the same strips again.
    """
    moves = []
    half = target.length // 2 if first and _symmetric(target) else target.length
    for opened in range(len(strip.stack)):
        points = strip.stack[-1 - opened]
        shown = lying(points, strip.creases)
        for line, places in crossed(points).items():
            if not target.creases.issuperset(places) or places[0] > half:
                continue
            if strip.creases.issuperset(places) or not shown.can_say(line):
                continue
            moves.append((not shown.guides(line), Move(opened, places)))
    return tuple((move, strip.after(move)) for _, move in sorted(moves))


def _symmetric(target: Target) -> bool:
    return target.creases == {target.length - place for place in target.creases}


def _without_mirror_images(ways: tuple[Moves, ...], length: int) -> tuple[Moves, ...]:
    kept: dict[Moves, Moves] = {}
    for way in ways:
        kept.setdefault(_first_image(way, length), way)
    return tuple(kept.values())


def _first_image(way: Moves, length: int) -> Moves:
    """Give a way or its mirror image, whichever comes first: mostly its first moves tell."""
    for number, move in enumerate(way):
        image = mirrored((move,), length)[0]
        if image != move:
            return way if move < image else (*way[:number], *mirrored(way[number:], length))
    return way
