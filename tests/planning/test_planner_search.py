"""The planner misses nothing: every way with up to five folds is tried, and none is better than its first."""

from itertools import combinations, pairwise, takewhile
from operator import eq

import pytest
from planning.every_folding import every_way

from foldmath.paper.moments.moment import Moment
from foldmath.paper.moments.performing import perform
from foldmath.paper.sizes import paper_named, sheet
from foldmath.paper.state import open_sheet
from foldmath.paper.steps import FoldStep
from foldmath.planning import planner
from foldmath.planning.planner import MOST_LAYERS, Limits, plan
from foldmath.planning.strip_search import MOST_FOLDS, Target, fewest_folds, shortest_ways
from foldmath.planning.wanted import wanted_panels, wanted_product, wanted_sizes
from foldmath.tolerance.accuracy import accuracy
from foldmath.tolerance.assumed.spread import default_spread
from foldmath.tolerance.assumed.stock import DEFAULT_STOCK

LETTER = paper_named("letter")
GRADE_FIVE = default_spread(5)


def first_plan(wanted, layers=MOST_LAYERS):
    limits = Limits(layers=layers)
    return plan(wanted, LETTER, "landscape", GRADE_FIVE, DEFAULT_STOCK, limits=limits).ranked[0].plan


class Folding:
    """Ways folded one after the other; what they begin with in common is folded once."""

    def __init__(self):
        self.states = [open_sheet(sheet(LETTER, "landscape"))]
        self.steps = []

    def off_mm(self, steps):
        common = sum(takewhile(bool, map(eq, self.steps, steps)))
        del self.states[common + 1 :]
        for step in steps[common:]:
            self.states.append(perform(step, self.states[-1]))
        self.steps = steps
        moments = [Moment(step, *pair) for step, pair in zip(steps, pairwise(self.states), strict=True)]
        return accuracy(moments, GRADE_FIVE).worst_mm


def folds_in(steps):
    return sum(isinstance(step, FoldStep) for step in steps)


def assert_none_is_better(first, ways):
    """Of as many folds, how true a way is comes before its layers, and layers before sentences."""
    folding, tried = Folding(), 0
    for steps, layers in ways:
        tried += 1
        assert folds_in(steps) >= first.folds
        if folds_in(steps) == first.folds:
            figures = (round(folding.off_mm(steps)), layers, len(steps))
            assert figures >= (first.off_whole_mm, first.layers, len(first.steps)), steps
    assert tried


@pytest.mark.parametrize(
    ("panels", "grids", "folds"),
    [
        (2, [(2, 1), (1, 2)], 3),
        (3, [(3, 1), (1, 3)], 4),
        (4, [(4, 1), (2, 2), (1, 4)], 4),
        (5, [(5, 1), (1, 5)], 4),
        (6, [(6, 1), (3, 2), (2, 3), (1, 6)], 3),
        (7, [(7, 1), (1, 7)], 3),
        (8, [(8, 1), (4, 2), (2, 4), (1, 8)], 3),
    ],
)
def test_no_way_to_equal_panels_is_better_than_the_first(panels, grids, folds):
    first = first_plan(wanted_panels(panels))
    for columns, rows in grids:
        assert_none_is_better(first, every_way(columns, rows, folds))


def test_no_way_to_a_product_with_up_to_four_folds_is_better_than_the_first():
    assert_none_is_better(first_plan(wanted_product("1/2 × 3/5")), every_way(5, 2, 4))


@pytest.mark.sweep
def test_no_way_to_thirds_by_fifths_with_up_to_five_folds_is_better_than_the_first():
    """Errors of hands do not depend on the length of a side, so one way round stands for both."""
    assert_none_is_better(first_plan(wanted_product("2/3 × 4/5")), every_way(5, 3, 5))


@pytest.mark.parametrize(("parts", "most_layers"), [(4, 3), (5, 4), (6, 4)])
def test_no_way_within_a_limit_of_layers_is_better_than_the_first(parts, most_layers):
    first = first_plan(wanted_product(f"1/{parts} × 1"), most_layers)
    ways = every_way(parts, 1, first.folds)
    assert_none_is_better(first, ((steps, layers) for steps, layers in ways if layers <= most_layers))


def test_no_way_to_panels_of_different_sizes_is_better_than_the_first():
    first = first_plan(wanted_sizes("1/6, 1/6, 2/3"))
    for places in ({1, 2}, {1, 5}, {4, 5}):
        assert_none_is_better(first, every_way(6, 1, 4, widths=places))


@pytest.mark.parametrize("most_layers", [2, 3, 4096])
@pytest.mark.parametrize("length", [3, 5, 6])
def test_the_fewest_folds_are_those_of_the_shortest_ways(length, most_layers):
    for count in range(length):
        for creases in combinations(range(1, length), count):
            target = Target(length, frozenset(creases))
            ways = shortest_ways(target, most_layers).ways
            assert fewest_folds(target, most_layers, MOST_FOLDS).folds == (len(ways[0]) if ways else None)


def test_a_wish_with_more_grids_than_can_be_counted_says_that_some_were_left_out(monkeypatch):
    wanted = wanted_sizes("1/6, 1/3, 1/2")
    whole = plan(wanted, LETTER, "landscape", GRADE_FIVE, DEFAULT_STOCK)
    monkeypatch.setattr(planner, "MOST_STRIPS_COUNTED", 0)
    cut_short = plan(wanted, LETTER, "landscape", GRADE_FIVE, DEFAULT_STOCK)
    assert (whole.complete, cut_short.complete) == (True, False)
    assert cut_short.ranked
