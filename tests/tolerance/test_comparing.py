"""How true the same creases come out when made one by one, and where ticks help."""

from math import sqrt

import pytest
from lessons_in_words import EIGHTHS, moments
from tolerance.square_foldings import ONE_MM

from foldmath.paper.moments.moment import crease_places
from foldmath.tolerance import comparing
from foldmath.tolerance.accuracy import accuracy
from foldmath.tolerance.assumed.spread import default_spread
from foldmath.tolerance.comparing import best_marks, singly, work

OPENED = (
    "fold left edge to right edge",
    "open",
    "fold left edge to middle",
    "open",
    "fold right edge to middle",
    "open",
    "fold top edge to bottom edge",
)
"""The same eight panels, each crease made on the open sheet."""

FIFTEENTHS = ("pleat width into 3", "open", "pleat height into 5", "open")


def test_opening_the_sheet_is_truer_than_a_third_fold_through_four_layers():
    """Common practice says so; by hand, the worst columns are off by 2 √13/2 and 2 √5/2 times one error."""
    assert accuracy(moments(*EIGHTHS), ONE_MM).worst_mm == pytest.approx(sqrt(13))
    assert accuracy(moments(*OPENED), ONE_MM).worst_mm == pytest.approx(sqrt(5))


def test_orders_that_differ_only_in_the_hand_are_alike():
    mirrored = [step.replace("left", "L").replace("right", "left").replace("L", "right") for step in EIGHTHS]
    there, here = (accuracy(moments(*steps), ONE_MM).worst_mm for steps in (mirrored, EIGHTHS))
    assert there == pytest.approx(here)


def test_singly_makes_the_same_creases_through_one_layer_each():
    eighths = moments(*EIGHTHS)
    alone = singly(eighths)
    assert crease_places(alone[-1].after) == crease_places(eighths[-1].after)
    assert {moment.before.table.layers for moment in alone if not moment.before.folds} == {1}
    assert accuracy(alone, ONE_MM).worst_mm == pytest.approx(sqrt(5))


@pytest.mark.parametrize("steps", [FIFTEENTHS, ("fold at 1/3 moving left", "fold at 1/4 moving bottom")])
def test_singly_reaches_thirds_and_fifths_too(steps):
    assert crease_places(singly(moments(*steps))[-1].after) == crease_places(moments(*steps)[-1].after)


def test_singly_halves_first_where_a_fan_would_judge_by_eye():
    fan = moments("pleat width into 4")
    assert accuracy(fan, ONE_MM).worst_mm == pytest.approx(2 * 3 * sqrt(2))
    assert accuracy(singly(fan), ONE_MM).worst_mm == pytest.approx(sqrt(5))


def test_ticks_help_a_pleat_most():
    mark, *_ = best_marks(moments("fold top edge to bottom edge", "open", "pleat width into 3"), ONE_MM)
    assert mark.step == 2
    assert mark.without_mm == pytest.approx(2 * 3 * sqrt(2))
    assert mark.with_mm < mark.without_mm


def test_two_steps_judged_by_eye_need_ticks_both():
    marks = best_marks(moments(*FIFTEENTHS), default_spread(5))
    assert {mark.step for mark in marks} == {0, 2}
    assert marks[-1].with_mm < marks[0].without_mm / 2


def test_edges_brought_together_need_no_ticks():
    assert best_marks(moments(*EIGHTHS), default_spread(5)) == ()


def test_a_lesson_that_makes_no_crease_needs_no_ticks():
    assert best_marks(moments("turn over"), ONE_MM) == ()


def test_the_search_for_ticks_ends_where_it_would_be_too_much_work(monkeypatch):
    """Of three steps one is tried at a time: three tries, then two."""
    done = moments(*FIFTEENTHS, "fold left edge to 1/7")
    found = best_marks(done, ONE_MM)
    assert len(found) > 1
    one_try = work(done, accuracy(done, ONE_MM))
    for tries, marks in ((2, 0), (3, 1), (4, 1), (5, 2)):
        monkeypatch.setattr(comparing, "MOST_WORK", tries * one_try)
        assert best_marks(done, ONE_MM) == found[:marks]
