"""Every way to fold a sheet parallel to its sides, tried in turn: slow, simple, and not the planner.

A strip is a list of cells; each lies at a place and looks up or down. Every fold at k/n of the paper, n up to
12, and every opening before it is tried. Creases stay, so a way that creases a wrong place is given up.
Of mirror images one is tried: where the wanted creases are their own mirror image, the first fold along an
axis is at its middle or before it, and the left or bottom part moves.
"""

from fractions import Fraction
from itertools import pairwise

from foldmath.paper.steps import Axis, Edge, FoldAt, FoldEdge, Open, OpenLast
from foldmath.plane.numbers import exact

FINEST = 12
HALF = Fraction(1, 2)
ENDS = {Axis.WIDTH: (Edge.LEFT, Edge.RIGHT), Axis.HEIGHT: (Edge.BOTTOM, Edge.TOP)}


class Cells:
    """One axis: for each cell of a strip, where its left and its right end lie on the table."""

    def __init__(self, ends):
        self.ends = ends

    @property
    def low(self):
        return min(min(pair) for pair in self.ends)

    @property
    def high(self):
        return max(max(pair) for pair in self.ends)

    def most_layers(self):
        return max(sum(min(pair) == place for pair in self.ends) for place in range(self.low, self.high))

    def creased_at(self, line):
        """Between which cells a line creases paper that lies flat there; cells it would cut are None."""
        if any(min(pair) < line < max(pair) for pair in self.ends):
            return None
        return {
            number + 1
            for number, ((start, end), (again, other)) in enumerate(pairwise(self.ends))
            if end == again == line and start != other
        }

    def folded(self, line, moving_low):
        def moved(place):
            return 2 * line - place if (place < line) == moving_low and place != line else place

        return Cells([(moved(start), moved(end)) for start, end in self.ends])

    def marks(self, creases):
        """Where an edge or a crease lies."""
        found = {self.ends[0][0], self.ends[-1][1], self.low, self.high}
        return found | {self.ends[place][0] for place in creases}


def every_way(columns, rows, most_folds, widths=None, heights=None):
    """Give (steps, folds, layers) of every way to the grid with up to so many folds.

    ``columns`` and ``rows`` are the numbers of cells; ``widths`` and ``heights`` the places to crease, all
    of them if left out.
    """
    wanted = {
        Axis.WIDTH: set(range(1, columns)) if widths is None else set(widths),
        Axis.HEIGHT: set(range(1, rows)) if heights is None else set(heights),
    }
    flat = {
        Axis.WIDTH: Cells([(cell, cell + 1) for cell in range(columns)]),
        Axis.HEIGHT: Cells([(cell, cell + 1) for cell in range(rows)]),
    }
    made = {axis: frozenset() for axis in Axis}
    yield from _onward([flat], made, wanted, most_folds, [], 1)


def _onward(stack, made, wanted, left, steps, layers):
    if all(made[axis] == wanted[axis] for axis in Axis):
        yield ([*steps, Open()], layers)
        return
    if not left:
        return
    for opened in range(len(stack)):
        lying = stack[: len(stack) - opened]
        opening = [Open()] if opened and opened == len(stack) - 1 else [OpenLast()] * opened
        for axis, step, after, creased in _folds(lying[-1], made, wanted):
            thick = after[Axis.WIDTH].most_layers() * after[Axis.HEIGHT].most_layers()
            known = {**made, axis: made[axis] | creased}
            yield from _onward(
                [*lying, after], known, wanted, left - 1, [*steps, *opening, step], max(layers, thick)
            )


def _folds(lying, made, wanted):
    """Give every fold that makes a new crease, and no wrong one: the shorter part moves."""
    for axis, cells in lying.items():
        length = cells.high - cells.low
        first = not made[axis] and wanted[axis] == {length - place for place in wanted[axis]}
        for line in range(cells.low + 1, cells.high):
            at = Fraction(line - cells.low, length)
            if first and at > HALF:
                continue
            creased = cells.creased_at(line)
            if not creased or not creased <= wanted[axis] or creased <= made[axis]:
                continue
            for moving_low in (True, False):
                if (at > HALF) if moving_low else (at < HALF or first):
                    continue
                step = _said(axis, cells, line, at, moving_low, made[axis])
                if step:
                    yield axis, step, {**lying, axis: cells.folded(line, moving_low)}, creased


def _said(axis, cells, line, at, moving_low, creases):
    edge = ENDS[axis][0 if moving_low else 1]
    goal = 2 * line - (cells.low if moving_low else cells.high)
    to = Fraction(goal - cells.low, cells.high - cells.low)
    if goal in cells.marks(creases) and to.denominator <= FINEST:
        return FoldEdge(edge, exact(to.numerator, to.denominator))
    if at.denominator <= FINEST:
        return FoldAt(exact(at.numerator, at.denominator), edge)
    return None
