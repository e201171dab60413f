"""From a way to fold one axis to the steps that say it, named as teachers name folds."""

from collections.abc import Collection
from typing import TypeAlias

from foldmath.paper.steps import (
    Axis,
    Edge,
    FoldAt,
    FoldBothEdges,
    FoldEdge,
    FoldStep,
    Open,
    OpenLast,
    Pleat,
    Step,
)
from foldmath.plane.numbers import HALF, denominator, exact
from foldmath.planning.strip import (
    FINEST,
    Moves,
    Points,
    crossed,
    folded,
    goal_of_edge,
    low_part_is_shorter,
    mirrored,
    seen,
)

FEWEST_IN_A_FAN = 3
"""A fan of two is said as a halving."""

FOLDS_OF_A_GATE = 2

Sentences: TypeAlias = tuple[Step, ...]
"""Steps, to be said one after the other."""


def sayings(moves: Moves, axis: Axis, length: int) -> list[Sentences]:
    """Say a way to fold one axis, from the open sheet: fold by fold, and with gates where there are any.

    What is folded at its end stays folded. Along the width a sheet is halved from the left. Along the
    height, a way that begins with a halving is said as its mirror image, so that it is halved from the top,
    as most people do.
    """
    if axis is Axis.HEIGHT and moves and 2 * moves[0].crossed[0] == length:
        moves = mirrored(moves, length)
    gates = _gates(moves, length)
    return [_said(moves, axis, length, ()), *([_said(moves, axis, length, gates)] if gates else [])]


def fan_steps(factors: tuple[int, ...], axis: Axis) -> Sentences:
    """Say a fan into equal parts, or a fan of fans; into two parts, a halving."""
    edge = Edge.LEFT if axis is Axis.WIDTH else Edge.TOP
    halving = FoldEdge(edge, edge.opposite.position)
    return tuple(Pleat(axis, parts) if parts >= FEWEST_IN_A_FAN else halving for parts in factors)


def _said(moves: Moves, axis: Axis, length: int, gates: Collection[int]) -> Sentences:
    """Say a way, with one sentence for the two folds of each gate, named by its first move."""
    lying = _Lying(axis, length)
    steps: list[Step] = []
    for index, move in enumerate(moves):
        steps += lying.open(move.opened)
        step = lying.fold(move.crossed)
        if index in gates:
            steps.append(FoldBothEdges(axis))
        elif index - 1 not in gates:
            steps.append(step)
    return tuple(steps)


class _Lying:
    """The strip as the class sees it: in the frame of the table, where the shorter part moves over."""

    def __init__(self, axis: Axis, length: int) -> None:
        self.low, self.high = (Edge.LEFT, Edge.RIGHT) if axis is Axis.WIDTH else (Edge.BOTTOM, Edge.TOP)
        self.halved_from_low = axis is Axis.WIDTH
        self.stack: list[Points] = [tuple(range(length + 1))]
        self.creases: set[int] = set()

    def open(self, folds: int) -> list[Step]:
        """Open the newest folds."""
        whole = folds == len(self.stack) - 1
        del self.stack[len(self.stack) - folds :]
        return [Open()] if folds and whole else [OpenLast()] * folds

    def fold(self, places: tuple[int, ...]) -> FoldStep:
        """Fold on the line where these places lie."""
        points = self.stack[-1]
        line = points[places[0]]
        even = 2 * line == min(points) + max(points)
        low = self.halved_from_low if even else low_part_is_shorter(points, line)
        step = self._named(points, line, self.low if low else self.high)
        self.creases.update(places)
        self.stack.append(folded(points, line, low=low))
        return step

    def _named(self, points: Points, line: int, moving: Edge) -> FoldStep:
        start, length = min(points), max(points) - min(points)
        at = exact(line - start, length)
        if at == HALF:
            return FoldEdge(moving, moving.opposite.position)
        goal = goal_of_edge(points, line)
        to = exact(goal - start, length)
        shown = goal in seen(points, frozenset(self.creases)) and denominator(to) <= FINEST
        if shown or denominator(at) > FINEST:
            return FoldEdge(moving, to)
        return FoldAt(at, moving)


def _gates(moves: Moves, length: int) -> list[int]:
    """Give the moves that begin two folds of both edges to the middle."""
    lying, found = _Lying(Axis.WIDTH, length), []
    for index, move in enumerate(moves):
        lying.open(move.opened)
        points = lying.stack[-1]
        start, quarter = min(points), (max(points) - min(points)) // 4
        places = crossed(points)
        lines = {places.get(start + quarter), places.get(start + 3 * quarter)}
        pair = moves[index : index + FOLDS_OF_A_GATE]
        once = all(not other.opened for other in pair[1:])
        whole = (max(points) - start) % 4 == 0
        if whole and once and {other.crossed for other in pair} == lines and index - 1 not in found:
            found.append(index)
        lying.fold(move.crossed)
    return found
