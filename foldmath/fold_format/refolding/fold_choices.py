"""The folds that may come next: takes the paper as it lies, gives every fold whose creases are all wanted."""

from collections.abc import Iterator
from typing import NamedTuple

from foldmath.fold_format.refolding.fold_sentences import step_for
from foldmath.fold_format.refolding.wanted_creases import WantedCreases, named
from foldmath.paper.folding.folding import Turn, fold
from foldmath.paper.moments.performing import perform
from foldmath.paper.refusals import StepRefused
from foldmath.paper.state import CreaseLine, FoldedState, Panel
from foldmath.paper.steps import Axis, FoldBothEdges, FoldStep, Pleat
from foldmath.plane import polygons
from foldmath.plane.lines import Line, Point
from foldmath.plane.motions import Motion
from foldmath.plane.numbers import HALF, ONE, ZERO, Exact, exact

PLEATS = range(3, 13)
"""A pleat into two is told as a fold."""

GATE = (exact(1, 4), exact(3, 4))


PANELS_OF_A_TRY = 50
"""Folding so many panels takes about as long as all else that a try takes (measured)."""


class Choice(NamedTuple):
    """One step that may come next.

    Args:
        gain: how many missing pieces of crease it makes.
        off_centre: how far its crease is from the middle of the paper, as a share; 0 for gates and
            pleats, and one more where the larger part moves.
        step: the step, or None where it is still to be found for ``line``.
        line: where one fold is made, and which way.
        after: the paper after it.
    """

    gain: int
    off_centre: Exact
    step: FoldStep | None
    line: tuple[Line, Turn] | None
    after: FoldedState

    def as_step(self, before: FoldedState) -> FoldStep | None:
        """Give the step in the words that a teacher would use for its line; None if they run out."""
        if self.step is not None or self.line is None:
            return self.step
        return step_for(*self.line, before)


class Chooser:
    """Finds the folds that may come next, counting how many were tried."""

    def __init__(self, wanted: WantedCreases) -> None:
        self.wanted = wanted
        self.slanted = any(line.a != ZERO != line.b for line in wanted.lines)
        self.tried = 0

    def choices(self, state: FoldedState) -> list[Choice]:
        """Give every step whose new creases are all wanted, of their kind."""
        lines = self._lines(state)
        found = [choice for line in lines.values() for choice in self._single(state, line)]
        if len(found) > 1:
            found += self._several(state, set(lines))
        return found

    def _count(self, state: FoldedState) -> None:
        """Count a try, and one more for each so many panels, which take as long."""
        self.tried += 1 + len(state.panels) // PANELS_OF_A_TRY

    def _lines(self, state: FoldedState) -> dict[Line, Line]:
        """Give the lines on the table along which every layer has a wanted crease line, or is not crossed."""
        footprints: dict[int, list[Panel]] = {}
        for panel in state.panels:
            footprints.setdefault(id(panel.lying), []).append(panel)
        allowed = []
        for panels in footprints.values():
            through = set(self._through(panels[0]))
            for panel in panels[1:]:
                through &= set(self._through(panel))
            allowed.append((panels[0].lying, through))
        lines = {line: line for _, through in allowed for line in through}
        return {
            line: line
            for line in lines
            if all(line in through or not _crosses(line, lying) for lying, through in allowed)
        }

    def _through(self, panel: Panel) -> Iterator[Line]:
        motion = panel.placements[-1].motion
        for line in self.wanted.lines:
            if _crosses(line, panel.corners):
                yield named(_carried(line, motion))

    def _single(self, state: FoldedState, line: Line) -> Iterator[Choice]:
        """Fold along a line, over and behind; the smaller part moves.

        Which part moves changes no crease. It changes the box in which later places are counted, and so which
        folds can be said; where creases slant, both are offered.
        """
        moving = _smaller_hand(line, state)
        off_centre = _off_centre(line, state)
        for hand, last_resort in ((moving, ZERO), (moving.reversed(), ONE)):
            after = self._folded(state, hand, Turn.OVER)
            creases = new_creases(state, after) if after else []
            for turn in Turn:
                gain = self.wanted.gain(creases, turned=turn is Turn.BEHIND) if after else None
                laid = after if turn is Turn.OVER or gain is None else self._folded(state, hand, turn)
                if gain is not None and laid:
                    yield Choice(gain, off_centre + last_resort, None, (hand, turn), laid)
            if not self.slanted:
                return

    def _folded(self, state: FoldedState, line: Line, turn: Turn) -> FoldedState | None:
        self._count(state)
        try:
            return fold(state, line, turn)
        except StepRefused:
            return None

    def _several(self, state: FoldedState, lines: set[Line]) -> Iterator[Choice]:
        """Give gates and pleats, whose folds are measured before the first."""
        box = state.table.box
        upright = {(-line.c / line.a - box.left) / box.width for line in lines if line.b == ZERO}
        level = {(-line.c / line.b - box.bottom) / box.height for line in lines if line.a == ZERO}
        for axis, places in ((Axis.WIDTH, upright), (Axis.HEIGHT, level)):
            steps: list[FoldStep] = [
                Pleat(axis, parts)
                for parts in PLEATS
                if places.issuperset(exact(part, parts) for part in range(1, parts))
            ]
            if places.issuperset(GATE):
                steps += [FoldBothEdges(axis), FoldBothEdges(axis, behind=True)]
            for step in steps:
                self._count(state)
                try:
                    after = perform(step, state)
                except StepRefused:
                    continue
                gain = self.wanted.gain(new_creases(state, after), turned=False)
                if gain is not None:
                    yield Choice(gain, ZERO, step, None, after)


def new_creases(before: FoldedState, after: FoldedState) -> list[CreaseLine]:
    """Give the creases of the folds made since."""
    return [
        CreaseLine(start, end, crease.kind, True)
        for corners, edges, *_ in after.panels
        for start, end, crease in zip(corners, (*corners[1:], corners[0]), edges, strict=True)
        if crease and start < end and crease.fold > before.folds
    ]


def _crosses(line: Line, polygon: polygons.Polygon) -> bool:
    sides = [line.side(corner) for corner in polygon]
    return min(sides) < ZERO < max(sides)


def _carried(line: Line, motion: Motion) -> Line:
    """Give the line onto which a motion carries a line: its normal turned, then set off from the shift."""
    a, b = motion.carry(Point(line.a, line.b))
    a, b = a - motion.x, b - motion.y
    return Line(a, b, line.c - a * motion.x - b * motion.y)


def _off_centre(line: Line, state: FoldedState) -> Exact:
    box = state.table.box
    reach = abs(line.a) * box.width + abs(line.b) * box.height
    return abs(line.side(box.at(HALF, HALF))) / reach


def _smaller_hand(line: Line, state: FoldedState) -> Line:
    """Turn a named line so that the smaller part moves; of equal parts, the left one or the top one."""
    side = line.side(state.table.box.at(HALF, HALF))
    return line.reversed() if side > ZERO or (side == ZERO and line.b == ZERO) else line
