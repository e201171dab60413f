"""The same creases in other orders, one by one, and with ticks: which way is truest, in figures."""

from math import sqrt

import pytest
from lessons_in_words import EIGHTHS, moments
from tolerance.square_foldings import ONE_MM

from foldmath.cli.terminal.speaking import in_columns
from foldmath.paper.moments.moment import crease_places
from foldmath.tolerance.accuracy import accuracy
from foldmath.tolerance.accuracy_in_words import ways
from foldmath.tolerance.alternatives import Alternatives, alternatives
from foldmath.tolerance.assumed.spread import default_spread

TALL_FIRST = ("fold top edge to bottom edge", "fold left edge to right edge", "fold left edge to right edge")


def others(*steps, spread=ONE_MM) -> Alternatives:
    done = moments(*steps)
    return alternatives(done, accuracy(done, spread))


def told(*steps, spread=ONE_MM) -> list[str]:
    done = moments(*steps)
    made = accuracy(done, spread)
    return in_columns(ways(made, alternatives(done, made))).splitlines()


def test_eighths_folded_singly_are_off_by_root_5_and_through_four_layers_by_root_13():
    """By hand: the worst columns are off by 2 √13/2 and 2 √5/2 times one error."""
    assert accuracy(moments(*EIGHTHS), ONE_MM).worst_mm == pytest.approx(sqrt(13))
    assert others(*EIGHTHS).singly.worst_mm == pytest.approx(sqrt(5))


def test_the_width_is_truer_if_its_first_halving_comes_before_that_of_the_height():
    """The first halving of the width then bends one layer; after that of the height it bends two."""
    thick = default_spread(5)
    found = others(*TALL_FIRST, spread=thick)
    assert found.order == (1, 0, 2)
    assert found.in_order.worst_mm < accuracy(moments(*TALL_FIRST), thick).worst_mm


def test_an_order_counts_only_if_it_makes_the_same_creases():
    unlike = ("fold at 1/3 moving left", "fold left edge to right edge")
    assert crease_places(moments(*unlike)[-1].after) != crease_places(moments(*reversed(unlike))[-1].after)
    assert others(*unlike).order == ()
    assert others(*unlike).in_order is None


def test_folds_after_an_opening_keep_their_place():
    assert others(*EIGHTHS, "open", "fold left edge to right edge").order


def test_nobody_weighs_the_orders_of_five_folds():
    assert others(*EIGHTHS, "fold top edge to bottom edge", "fold left edge to right edge").order == ()


def test_ticks_are_named_where_they_help():
    found = others("pleat width into 3", "open", "pleat height into 5", "open")
    assert found.ticks == (0, 2)
    assert found.ticked.worst_mm < 4


def test_the_ways_are_told_with_figures_and_the_truest_by_name():
    lines = told(*EIGHTHS, spread=default_spread(5))
    assert [line.split("  ")[0] for line in lines] == [
        "worst panel, by the way of folding",
        "as written",
        "the most accurate other order of these steps: 1, 3, 2",
        "each crease by itself, on the open sheet",
        "as written, with edge marks at one step, at best",
        "Most accurate: each crease by itself, on the open sheet.",
    ]
    assert [line.split()[-1] for line in lines[1:5]] == ["4.0", "4.1", "2.5", "4.0"]
    marked = [line for line in told("pleat width into 3") if "edge marks at step 1" in line]
    assert marked[0].startswith("as written; ")
