"""Sheets folded at random agree with the coefficients, within what sampling allows."""

import numpy as np
import pytest
from hypothesis import given, settings
from lessons_in_words import EIGHTHS, moments
from strategies import foldings, sheets
from tolerance.square_foldings import BOOKLET, ONE_MM, square_steps

from foldmath.paper.moments.moment import Moment
from foldmath.paper.state import open_sheet
from foldmath.tolerance.accuracy import accuracy
from foldmath.tolerance.assumed.spread import default_spread
from foldmath.tolerance.simulating import simulated

SHEETS = 4000
ODDS = 6.0
"""Standard errors that a sample may be off; by chance alone, once in five hundred million draws."""


def agree(errors, drawn):
    """Assert that samples have means and deviations as foretold; their standard errors are σ/√n and σ/√2n."""
    assert drawn.shape == (SHEETS, len(errors))
    for column, error in enumerate(errors):
        allowed = ODDS * error.sd_mm / SHEETS**0.5 + 1e-9
        assert abs(drawn[:, column].mean() - error.mean_mm) < allowed
        assert abs(drawn[:, column].std() - error.sd_mm) < allowed


@given(sheets, square_steps)
@settings(max_examples=20, deadline=None)
def test_covariance_and_simulation_agree_for_any_square_folding(sheet, steps):
    done = tuple(Moment(*move) for move in foldings(open_sheet(sheet), steps))
    if done:
        foretold = accuracy(done, default_spread(5))
        drawn = simulated(foretold.frozen, foretold.spread, SHEETS, seed=5)
        agree([crease.error for crease in foretold.creases], drawn.creases)
        agree([part.error for part in foretold.parts], drawn.parts)


def test_covariance_and_simulation_agree_for_the_slit_of_a_booklet():
    foretold = accuracy(moments(*BOOKLET), ONE_MM)
    agree([gap.error for gap in foretold.gaps], simulated(foretold.frozen, ONE_MM, SHEETS, seed=1).gaps)


def test_every_simulated_sheet_keeps_its_size():
    drawn = simulated(accuracy(moments(*EIGHTHS), ONE_MM).frozen, ONE_MM, 100, seed=2)
    assert np.abs(drawn.parts[:, :4].sum(axis=1)).max() < 1e-9
    assert np.abs(drawn.parts[:, 4:].sum(axis=1)).max() < 1e-9


def test_the_same_seed_folds_the_same_sheets_and_another_seed_others():
    frozen = accuracy(moments(*EIGHTHS), ONE_MM).frozen
    one, again, other = (simulated(frozen, ONE_MM, 10, seed).parts for seed in (7, 7, 8))
    assert (one == again).all()
    assert (one != other).any()


def test_the_worst_panel_of_a_sheet_is_at_least_as_bad_as_any_one_panel():
    foretold = accuracy(moments(*EIGHTHS), ONE_MM)
    drawn = simulated(foretold.frozen, ONE_MM, SHEETS, seed=3)
    assert drawn.worst_mm(0.95) >= np.quantile(np.abs(drawn.parts), 0.95, axis=0).max()
    assert drawn.worst_mm(0.5) < drawn.worst_mm(0.95)


@pytest.mark.parametrize("sheets", [0, -1, 10**9])
def test_no_sheets_and_too_many_are_refused(sheets):
    with pytest.raises(ValueError, match="sheets can be simulated"):
        simulated(accuracy(moments(*EIGHTHS), ONE_MM).frozen, ONE_MM, sheets, seed=1)
