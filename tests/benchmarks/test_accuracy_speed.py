"""How fast the accuracy of an eight-panel booklet is told: by covariance, and by 100,000 simulated sheets."""

from lessons_in_words import EIGHTHS, moments
from tolerance.square_foldings import BOOKLET

from foldmath.tolerance.accuracy import accuracy
from foldmath.tolerance.assumed.spread import default_spread
from foldmath.tolerance.assumed.stock import DEFAULT_STOCK
from foldmath.tolerance.limits import judged
from foldmath.tolerance.simulating import simulated

SPREAD = default_spread(5)


def test_covariance_of_an_eight_panel_booklet(benchmark):
    folding = moments(*BOOKLET)
    benchmark(lambda: accuracy(folding, SPREAD))


def test_covariance_of_eighths(benchmark):
    folding = moments(*EIGHTHS)
    benchmark(lambda: accuracy(folding, SPREAD))


def test_a_hundred_thousand_sheets_of_an_eight_panel_booklet(benchmark):
    frozen = accuracy(moments(*BOOKLET), SPREAD).frozen
    benchmark(lambda: simulated(frozen, SPREAD, 100_000, seed=1))


def test_judging_an_eight_panel_booklet(benchmark):
    folding = moments(*BOOKLET)
    benchmark(lambda: judged(folding, DEFAULT_STOCK))
