"""Plans: takes the ways of both axes, gives whole fold sequences with what they ask of hands."""

from collections.abc import Iterator
from itertools import zip_longest

from foldmath.paper.state import Sheet
from foldmath.paper.steps import Axis, Open, OpenLast, Step
from foldmath.plane.numbers import Exact, whole_part
from foldmath.planning.trials import Trials
from foldmath.planning.wanted import Grid
from foldmath.planning.ways import Way, Ways
from foldmath.tolerance.assumed.spread import Spread
from foldmath.values import frozen

MOST_JOINED = 4
"""For so many pairs of ways on a grid it is tried to fold the second axis while the first is still folded."""


@frozen(kw_only=True)
class Plan:
    """One fold sequence.

    Args:
        grid: the creases that it makes.
        steps: to say, with the last opening.
        folds: creases made by hand; a fan into five is four.
        layers: the most layers.
        off_mm: how far off the worst panel may be, by eye where paper shows no mark.
        smallest_mm: width and height of the smallest panel, in mm.
    """

    grid: Grid
    steps: tuple[Step, ...]
    folds: int
    layers: int
    off_mm: float
    smallest_mm: tuple[Exact, Exact]

    @property
    def off_whole_mm(self) -> int:
        """The same in whole millimetres, as it is told; plans that agree in them are alike."""
        return round(self.off_mm)

    @property
    def openings(self) -> int:
        """How many of the steps open something."""
        return sum(isinstance(step, Open | OpenLast) for step in self.steps)

    @property
    def narrow_mm(self) -> int:
        """The shorter side of the smallest panel, in whole millimetres."""
        return whole_part(min(self.smallest_mm))

    @property
    def key(self) -> tuple[int, ...]:
        """What plans are ordered by: folds, then how true, then layers, then panels, then sentences."""
        return self.folds, self.off_whole_mm, self.layers, -self.narrow_mm, len(self.steps)


def smallest_mm(grid: Grid, sheet: Sheet) -> tuple[Exact, Exact]:
    """Give width and height of the smallest panel, in mm."""
    width, height = grid.smallest
    unit = sheet.unit_mm
    return width * sheet.width * unit, height * sheet.height * unit


def plans_on(
    grid: Grid, across: Ways, up: Ways, trials: Trials, spread: Spread, most_layers: int
) -> Iterator[Plan]:
    """Give every plan worth ranking for a grid.

    Opened in between, each axis is folded through its own layers alone, so all figures follow from the ways.
    Still folded, layers multiply and errors grow, and only a sentence is saved: so that is tried for some
    pairs of ways only.
    """
    smallest = smallest_mm(grid, trials.sheet)
    pairs = [(one, other) for one in across.by_axis[Axis.WIDTH] for other in up.by_axis[Axis.HEIGHT]]
    for one, other in pairs:
        between = (Open(),) if one.steps and other.steps else ()
        steps = (*one.steps, *between, *other.steps, Open())
        folds, layers = one.folds + other.folds, max(one.layers, other.layers)
        yield Plan(
            grid=grid,
            steps=steps,
            folds=folds,
            layers=layers,
            off_mm=max(one.off_mm, other.off_mm),
            smallest_mm=smallest,
        )
    for one, other in _joinable(pairs):
        for steps in _joined(one, other):
            moments = trials.moments(steps)
            layers = max(moment.after.table.layers for moment in moments)
            if layers <= most_layers:
                off = trials.accuracy(steps, spread).worst_mm
                yield Plan(
                    grid=grid,
                    steps=steps,
                    folds=one.folds + other.folds,
                    layers=layers,
                    off_mm=off,
                    smallest_mm=smallest,
                )


def _joinable(pairs: list[tuple[Way, Way]]) -> list[tuple[Way, Way]]:
    """Give pairs to fold without opening in between.

    Those are the pairs that are soonest said, then those with the fewest folds, thinnest and truest first.
    """
    fit = [pair for pair in pairs if all(way.steps for way in pair) and not all(way.opens for way in pair)]
    fewest = min(map(_folds, pairs))
    soonest_said = sorted(fit, key=lambda pair: (sum(len(way.steps) for way in pair), _folds(pair)))
    soonest_folded = sorted(
        (pair for pair in fit if _folds(pair) == fewest),
        key=lambda pair: (max(way.off_mm for way in pair), _joined_layers(*pair)),
    )
    return list(dict.fromkeys(soonest_said[:1] + soonest_folded[: MOST_JOINED - 1]))


def _joined_layers(one: Way, other: Way) -> int:
    """Give the most layers if the better of the two is folded first, and the other before it is opened."""
    return min(
        max(first.layers, first.last_layers * second.layers)
        for first, second in ((one, other), (other, one))
        if not second.opens
    )


def _folds(pair: tuple[Way, Way]) -> int:
    return sum(way.folds for way in pair)


def _joined(one: Way, other: Way) -> Iterator[tuple[Step, ...]]:
    """Give one axis after the other without opening in between, and both in turn."""
    for first, second in ((one, other), (other, one)):
        if not second.opens:
            yield (*first.steps, *second.steps, Open())
    if not one.opens and not other.opens:
        turns = zip_longest(one.steps, other.steps)
        yield (*(step for pair in turns for step in pair if step is not None), Open())
