"""What paper cannot do and small hands can hardly do: takes what each step did, gives plain judgements."""

from collections.abc import Sequence
from enum import Enum
from itertools import pairwise
from math import hypot, pi, sqrt
from typing import NamedTuple, assert_never

from foldmath.measured import as_float, millimetres
from foldmath.paper.folding.folding import fold
from foldmath.paper.moments.moment import Moment
from foldmath.paper.moments.performing import FoldLine, fold_lines
from foldmath.paper.state import FoldedState, Sheet, Table
from foldmath.paper.steps import (
    Axis,
    FoldStep,
    Gather,
    Open,
    OpenLast,
    Pleat,
    Shade,
    Slit,
    TurnOver,
    TurnQuarter,
)
from foldmath.phrases import Phrase, Said
from foldmath.plane.lines import Line
from foldmath.plane.numbers import ZERO
from foldmath.tolerance.assumed.stock import Stock
from foldmath.tolerance.assumed.stock_said import stock_said
from foldmath.tolerance.words import worded
from foldmath.values import frozen

MOST_LAYERS = 8
"""More layers than these are hard for pupils with motor difficulty (common practice, no source)."""

THICKEST_MM = 1.0
"""A thicker pack springs open again after a pupil's crease (this house's rule, no source)."""

SHORTEST_FLAP_MM = 15.0
"""A shorter part is little for two fingers to hold (this house's rule, no source)."""

WELL_BEFORE = 0.25
"""From this share of what paper can do, hands alone hardly manage (this house's rule, no source)."""


class Severity(Enum):
    """Whether paper refuses, or hands find it hard."""

    IMPOSSIBLE = "impossible"
    HARD = "hard"


@frozen
class Judgement:
    """What speaks against one step.

    Args:
        step: counted from 1.
        severity: IMPOSSIBLE or HARD.
        rule: ``bend``, ``roll``, ``square``, ``near``, ``layers``, ``thick`` or ``short``.
        figures: of the line that says it.
    """

    step: int
    severity: Severity
    rule: str
    figures: tuple[tuple[str, Said], ...]

    @property
    def message(self) -> Phrase:
        """Say it in one plain line, with the number of the step in the lesson file."""
        return self.about(self.step)

    def about(self, number: int) -> Phrase:
        """Say it in one plain line, with the number that the step has on a page."""
        return worded("limits", self.rule, step=str(number), **dict(self.figures))


def alternate_directions_mm(folds: int, caliper_mm: float) -> float:
    """Give the side of a square that is needed to fold it in half so often in alternate directions, in mm.

    Source: W = π t 2^(3(n - 1)/2), B. C. Gallivan, How to Fold Paper in Half Twelve Times,
    Historical Society of Pomona Valley, 2002.
    """
    return pi * caliper_mm * sqrt(float(2 ** (3 * (folds - 1))))


class Bent(NamedTuple):
    """A fold still folded.

    Args:
        axis: of the opened sheet, across which it folds; None if it is slanted.
        times: by what it multiplied the layers.
        used_mm: the length of paper that its bends use, on average over the strips side by side.
    """

    axis: Axis | None
    times: float
    used_mm: float


class Folding(NamedTuple):
    """One fold to be judged: through how many layers, how far across the paper is, how much of it moves."""

    layers: int
    across_mm: float
    moving_mm: float


def judged(moments: Sequence[Moment], stock: Stock) -> tuple[Judgement, ...]:
    """Judge every fold of a lesson on one kind of paper.

    What refuses is Gallivan's, taken from halvings to any folds: all k layers bend round π t k (k + 1) / 2
    together (for n halvings, his L = (π t / 6)(2ⁿ + 4)(2ⁿ - 1)), so the bends in one direction must not use
    up the sheet; across earlier folds the outer layer bends round π t k, which the paper there must have; and
    his limit for a square halved in turn both ways.
    Each rule that says "hard" speaks once, where it first does; after "impossible" nothing is judged.

    Args:
        moments: what each step did, from the open sheet.
        stock: the paper.
    """
    judging = _Judging(stock)
    for step, moment in enumerate(moments, start=1):
        judging.take(step, moment)
        if any(judgement.severity is Severity.IMPOSSIBLE for judgement in judging.found):
            break
    return tuple(judging.found)


class _Judging:
    def __init__(self, stock: Stock) -> None:
        self.stock = stock
        self.caliper_mm = as_float(stock.caliper_mm)
        self.bent: list[tuple[Bent, ...]] = []
        self.quarter_turned = False
        self.found: list[Judgement] = []

    def take(self, step: int, moment: Moment) -> None:
        if isinstance(moment.step, FoldStep):
            self._fold(step, moment, fold_lines(moment.step, moment.before))
            return
        match moment.step:
            case Open() | OpenLast():
                del self.bent[moment.after.folds :]
            case TurnQuarter():
                self.quarter_turned = not self.quarter_turned
            case TurnOver() | Shade() | Slit():
                pass
            case Gather():
                self.bent.append(())
            case never:
                assert_never(never)

    def _fold(self, step: int, moment: Moment, lines: tuple[FoldLine, ...]) -> None:
        pleated = isinstance(moment.step, Pleat)
        state, bent = moment.before, []
        worst: dict[str, Judgement] = {}
        for index, line in enumerate(lines):
            folding = _folding(state, line.line)
            made = self._bent(moment, line.line, folding, len(lines))
            bent.append(made)
            for judgement in self._judge(step, folding, made, [*self._held(), *bent], moment.before.sheet):
                worst.setdefault(judgement.rule, judgement)
            if not pleated and index + 1 < len(lines):
                state = fold(state, *line)
        self._layers(step, moment.after.table.layers, worst)
        self.bent += [tuple(bent)] if pleated else [(each,) for each in bent]
        known = {judgement.rule for judgement in self.found}
        self.found += (judgement for rule, judgement in worst.items() if rule not in known)

    def _held(self) -> list[Bent]:
        return [bent for step in self.bent for bent in step]

    def _bent(self, moment: Moment, line: Line, folding: Folding, lines: int) -> Bent:
        """Take up one fold; the layers of the other direction are so many strips side by side."""
        level = not line.b
        axis = None if line.a and line.b else Axis.WIDTH if level != self.quarter_turned else Axis.HEIGHT
        strips = 1.0
        for bent in self._held():
            if bent.axis is not axis:
                strips *= bent.times
        used = pi * self.caliper_mm * folding.layers * (folding.layers + 1) / 2 / max(strips, 1.0)
        times = (moment.after.table.layers / moment.before.table.layers) ** (1 / lines)
        return Bent(axis, times, used)

    def _judge(
        self, step: int, folding: Folding, made: Bent, bent: list[Bent], sheet: Sheet
    ) -> list[Judgement]:
        found = []
        bend_mm = pi * self.caliper_mm * folding.layers
        used_mm = sum(each.used_mm for each in bent if each.axis is made.axis)
        length_mm = _length_mm(sheet, made.axis)
        crossed = any(each.axis is not made.axis for each in bent)
        share = max(bend_mm / folding.across_mm if crossed else 0.0, used_mm / length_mm)
        figures = {"bend_mm": _one(bend_mm), "used_mm": _one(used_mm), "share": _one(100 * share)}
        if crossed and bend_mm > folding.across_mm:
            found.append(self._no(step, "bend", across_mm=_one(folding.across_mm), **figures))
        elif used_mm > length_mm:
            found.append(self._no(step, "roll", across_mm=_one(length_mm), **figures))
        elif _too_small_a_square(sheet, bent, folding, self.caliper_mm):
            need = _one(alternate_directions_mm(len(bent), self.caliper_mm))
            longer = _one(max(_length_mm(sheet, axis) for axis in Axis))
            found.append(self._no(step, "square", folds=str(len(bent)), need_mm=need, across_mm=longer))
        elif share > WELL_BEFORE:
            found.append(self._hard(step, "near", **figures))
        thick_mm = folding.layers * self.caliper_mm
        if thick_mm > THICKEST_MM:
            told = {"layers": str(folding.layers), "thick_mm": _one(thick_mm), "most_mm": _one(THICKEST_MM)}
            found.append(self._hard(step, "thick", stock=stock_said(self.stock.name), **told))
        if folding.moving_mm < SHORTEST_FLAP_MM:
            least = _one(SHORTEST_FLAP_MM)
            found.append(self._hard(step, "short", across_mm=_one(folding.moving_mm), least_mm=least))
        return found

    def _layers(self, step: int, layers: int, worst: dict[str, Judgement]) -> None:
        if layers > MOST_LAYERS:
            worst["layers"] = self._hard(step, "layers", layers=str(layers), most=str(MOST_LAYERS))

    def _no(self, step: int, rule: str, **figures: Said) -> Judgement:
        return Judgement(step, Severity.IMPOSSIBLE, rule, tuple(figures.items()))

    def _hard(self, step: int, rule: str, **figures: Said) -> Judgement:
        return Judgement(step, Severity.HARD, rule, tuple(figures.items()))


def _too_small_a_square(sheet: Sheet, bent: list[Bent], folding: Folding, caliper_mm: float) -> bool:
    """Tell whether halvings in turn across and along are more than a square of the longer side can take."""
    in_turn = all(one.axis is not other.axis for one, other in pairwise(bent))
    halved = folding.layers == 2 ** (len(bent) - 1)
    longer_mm = max(_length_mm(sheet, axis) for axis in Axis)
    return in_turn and halved and longer_mm < alternate_directions_mm(len(bent), caliper_mm)


def _folding(state: FoldedState, line: Line) -> Folding:
    """Measure one fold; of a pleat, the first crease moves the least paper."""
    unit = state.sheet.unit
    length = hypot(as_float(line.a), as_float(line.b))
    sides = [line.side(corner) for cover in state.table.covers for corner in cover.polygon]
    across = millimetres(max(sides) - min(sides), unit) / length
    moving = millimetres(max(sides), unit) / length
    return Folding(_layers_at(state.table, line), across, moving)


def _layers_at(table: Table, line: Line) -> int:
    """Give how many layers bend at a line: the most that reach it, counted on the side with fewer."""
    most = {True: 0, False: 0}
    for cover in table.covers:
        sides = [line.side(corner) for corner in cover.polygon]
        reaches = sum(side == ZERO for side in sides) > 1 or min(sides) < ZERO < max(sides)
        for moving in (True, False):
            if reaches and (max(sides) > ZERO if moving else min(sides) < ZERO):
                most[moving] = max(most[moving], cover.layers)
    return max(1, min(most.values()))


def _length_mm(sheet: Sheet, axis: Axis | None) -> float:
    """Give how long the sheet is along an axis, or along its diagonal for a slanted fold."""
    width, height = (millimetres(side, sheet.unit) for side in (sheet.width, sheet.height))
    if axis is None:
        return hypot(width, height)
    return width if axis is Axis.WIDTH else height


def _one(number: float) -> str:
    """Write a figure to one decimal, or whole from ten on."""
    return f"{number:.0f}" if number >= 10 else f"{number:.1f}"
