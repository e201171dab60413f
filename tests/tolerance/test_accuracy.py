"""How far creases, panels and the ends of slits may be off, against sums done by hand."""

from math import pi, sqrt

import pytest
from hypothesis import given
from hypothesis import strategies as st
from lessons_in_words import EIGHTHS, moments
from strategies import foldings, often_enough, sheets
from tolerance.square_foldings import BOOKLET, ONE_MM, square_steps

from foldmath.paper.moments.moment import Moment
from foldmath.paper.state import open_sheet
from foldmath.paper.steps import Axis
from foldmath.tolerance.accuracy import accuracy
from foldmath.tolerance.assumed.spread import Spread, default_spread
from foldmath.tolerance.assumed.stock import stock_named


def made(*steps, spread=ONE_MM, ticks=()):
    return accuracy(moments(*steps), spread, ticks)


def deviations(of, axis=Axis.WIDTH):
    return [part.error.sd_mm for part in of.parts if part.axis is axis]


def test_eighths_by_three_halvings_are_worst_at_the_outer_column():
    """By hand: the worst column takes 3/2 of the first error, the others 1/2, each the last error once."""
    assert sorted(deviations(made(*EIGHTHS))) == pytest.approx([sqrt(5) / 2] * 3 + [sqrt(13) / 2])


def test_the_worst_panel_may_be_off_by_two_standard_deviations():
    eighths = made(*EIGHTHS)
    assert eighths.worst_mm == pytest.approx(sqrt(13))
    assert eighths.worst.error.sd_mm == max(part.error.sd_mm for part in eighths.parts)


def test_fourths_made_singly_on_the_open_sheet_are_all_alike():
    assert deviations(made(*BOOKLET[:6])) == pytest.approx([sqrt(5) / 2] * 4)


def test_places_are_told_as_fractions_and_in_millimetres():
    eighths = made(*EIGHTHS)
    assert [(str(crease.at), crease.at_mm) for crease in eighths.creases] == [
        ("1/4", pytest.approx(69.85)),
        ("1/2", pytest.approx(139.7)),
        ("3/4", pytest.approx(209.55)),
        ("1/2", pytest.approx(107.95)),
    ]
    assert {round(part.size_mm, 6) for part in eighths.parts} == {69.85, 107.95}


@given(sheets, square_steps)
@often_enough
def test_what_one_column_gains_the_others_lose(sheet, steps):
    """Shifts add up to nothing along each axis, since the sheet itself is as long as it is."""
    done = tuple(Moment(*move) for move in foldings(open_sheet(sheet), steps))
    if done:
        found = accuracy(done, default_spread(5))
        for axis in Axis:
            shifts = [part.error.mean_mm for part in found.parts if part.axis is axis]
            assert sum(shifts) == pytest.approx(0, abs=1e-9)


@given(sheets, square_steps, st.floats(0.1, 10))
@often_enough
def test_hands_twice_as_unsteady_are_twice_as_far_off(sheet, steps, times):
    done = tuple(Moment(*move) for move in foldings(open_sheet(sheet), steps))
    if done:
        one = accuracy(done, Spread(edge_mm=1.0, eye_mm=3.0, tick_mm=1.0, cut_mm=1.0, thickness_mm=0.0))
        other = accuracy(
            done, Spread(edge_mm=times, eye_mm=3.0 * times, tick_mm=times, cut_mm=times, thickness_mm=0.0)
        )
        assert other.worst_mm == pytest.approx(times * one.worst_mm)


def test_thick_paper_shifts_creases_by_what_its_layers_take_up_in_rolling_round():
    """π × thickness × layers / 2: towards the moving edge, at a fold through one layer and through two."""
    thin = Spread(edge_mm=0.0, eye_mm=0.0, tick_mm=0.0, cut_mm=0.0, thickness_mm=0.2)
    (first,) = made("fold left edge to right edge", spread=thin).creases
    assert first.error.mean_mm == pytest.approx(-pi * 0.2 / 2)
    (level,) = (
        crease
        for crease in made(
            "fold left edge to right edge", "fold top edge to bottom edge", spread=thin
        ).creases
        if crease.axis is Axis.HEIGHT
    )
    assert level.error.mean_mm == pytest.approx(pi * 0.2 * 2 / 2)


def test_a_third_fold_goes_through_four_layers_and_shifts_four_times_as_far():
    thin = Spread(edge_mm=0.0, eye_mm=0.0, tick_mm=0.0, cut_mm=0.0, thickness_mm=0.2)
    shifts = {str(crease.at): crease.error.mean_mm for crease in made(*EIGHTHS, spread=thin).creases[:3]}
    roll = pi * 0.2 / 2
    # By hand, the right half on top: e = -1 roll, f = -4 rolls; 1/4 lies off by 3/2 e - f, 3/4 by 1/2 e + f.
    assert shifts == pytest.approx({"1/4": 2.5 * roll, "1/2": -roll, "3/4": -4.5 * roll})


def test_a_cut_on_the_open_sheet_misses_its_creases_by_the_cut_alone():
    open_cut = made(*BOOKLET[:8], "slit at height 1/2 from 1/4 to 3/4")
    assert [(str(gap.at), gap.error.sd_mm) for gap in open_cut.gaps] == [("1/4", 2.0), ("3/4", 2.0)]


def test_a_cut_from_the_fold_misses_the_crease_of_the_lower_layer_by_more():
    """Creases made singly lie at 1/2 e + f and 1/2 e + g; folded at e, they miss each other by e - f - g."""
    gaps = {str(gap.at): gap.error.sd_mm for gap in made(*BOOKLET).gaps}
    assert gaps == pytest.approx({"1/4": 2.0, "3/4": sqrt(2.0**2 + 3)})


def test_creases_made_in_one_fold_through_both_layers_meet_at_the_cut():
    together = made(
        "fold top edge to bottom edge",
        "open",
        "fold left edge to right edge",
        "fold left edge to right edge",
        "open last",
        "slit at height 1/2 from left edge to 1/2",
    )
    assert [gap.error.sd_mm for gap in together.gaps] == pytest.approx([2.0, 2.0])


def test_ticks_take_the_place_of_an_eye():
    assert deviations(made("pleat width into 3")) == pytest.approx([3.0, 3.0 * sqrt(2), 3.0])
    assert deviations(made("pleat width into 3", ticks=(0,))) == pytest.approx([0.5, 0.5 * sqrt(2), 0.5])


def test_a_sheet_without_creases_has_no_worst_panel():
    untouched = made("turn over")
    assert untouched.worst is None
    assert untouched.worst_mm == 0


@pytest.mark.parametrize("grade", [3, 4, 5, 6])
def test_the_spread_of_a_grade_says_that_it_is_assumed(grade):
    spread = default_spread(grade)
    assert spread.assumed
    assert spread.edge_mm < spread.eye_mm


def test_older_pupils_fold_truer():
    worst = [accuracy(moments(*EIGHTHS), default_spread(grade)).worst_mm for grade in (3, 4, 5, 6)]
    assert worst == sorted(worst, reverse=True)


def test_thicker_paper_comes_out_less_true():
    thin, thick = (
        accuracy(moments(*EIGHTHS), default_spread(5, stock_named(name))).worst_mm
        for name in ("copy 20 lb", "construction")
    )
    assert thick > thin


def test_grades_beside_the_table_take_the_nearest():
    assert default_spread(1) == default_spread(3)
    assert default_spread(9) == default_spread(6)


def test_a_folding_of_no_steps_is_refused():
    with pytest.raises(ValueError, match="at least one step"):
        accuracy((), ONE_MM)
