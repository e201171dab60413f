"""A frozen folding has the creases of the model and names what each fold brings onto what."""

import pytest
from hypothesis import given
from hypothesis import strategies as st
from lessons_in_words import EIGHTHS, moments
from strategies import foldings, often_enough, sheets
from tolerance.square_foldings import square_steps

from foldmath.paper.moments.moment import Moment, crease_places
from foldmath.paper.state import open_sheet
from foldmath.paper.steps import Axis, TurnQuarter
from foldmath.plane.numbers import exact
from foldmath.tolerance.accuracy import jacobian
from foldmath.tolerance.assumed.spread import Placing
from foldmath.tolerance.landmarks.freezing import freeze

HALF, ONE, ZERO = exact(1, 2), exact(1), exact(0)
LEFT_TO_RIGHT = "fold left edge to right edge"


def moments_of(sheet, steps):
    return tuple(Moment(*move) for move in foldings(open_sheet(sheet), steps))


@given(sheets, square_steps)
@often_enough
def test_every_crease_of_the_model_is_frozen_and_no_other(sheet, steps):
    done = moments_of(sheet, steps)
    if done:
        lengths = {Axis.WIDTH: sheet.width, Axis.HEIGHT: sheet.height}
        frozen = {(crease.axis, crease.at / lengths[crease.axis]) for crease in freeze(done).creases}
        assert frozen == {(place.axis, place.at) for place in crease_places(done[-1].after)}


@given(sheets, square_steps)
@often_enough
def test_an_error_comes_only_from_folds_made_until_then(sheet, steps):
    done = moments_of(sheet, steps)
    if done:
        frozen = freeze(done)
        rows = jacobian(frozen)
        for crease in frozen.creases:
            for factor, source in zip(rows[crease.error], frozen.sources, strict=True):
                assert factor == 0 or source.step <= crease.step


@given(sheets, square_steps, st.integers(0, 5))
@often_enough
def test_four_quarter_turns_change_no_error(sheet, steps, place):
    turned = [*steps[:place], *[TurnQuarter(left=True)] * 4, *steps[place:]]
    one, other = moments_of(sheet, steps), moments_of(sheet, turned)
    if one:
        rows, turned_rows = jacobian(freeze(one)), jacobian(freeze(other))
        assert [rows[crease.error] for crease in freeze(one).creases] == [
            turned_rows[crease.error] for crease in freeze(other).creases
        ]


def coefficients(*steps):
    """Give the coefficients of the errors by the place of their upright crease."""
    frozen = freeze(moments(*steps))
    rows = jacobian(frozen)
    width = dict(frozen.lengths)[Axis.WIDTH]
    return {
        str(crease.at / width): rows[crease.error] for crease in frozen.creases if crease.axis is Axis.WIDTH
    }


def test_a_crease_lies_at_half_the_errors_of_its_landmarks_and_its_own():
    """The left edge is brought onto the crease at 1/2, which lies off by its own error alone."""
    assert coefficients(LEFT_TO_RIGHT, "open", "fold left edge to middle") == {"1/2": (1, 0), "1/4": (0.5, 1)}


def test_one_fold_through_two_layers_leaves_two_creases_with_different_errors():
    """The left half lies on top, its edge off by twice the first error: the fold is off by 3/2 of it."""
    assert coefficients(LEFT_TO_RIGHT, LEFT_TO_RIGHT) == {"1/4": (0.5, -1), "1/2": (1, 0), "3/4": (1.5, 1)}


def test_hands_see_the_top_layers_in_a_fold_over_and_the_bottom_ones_in_a_fold_behind():
    landmarks = [
        freeze(moments(LEFT_TO_RIGHT, f"fold right edge to left edge{how}")).landmarks[-1]
        for how in ("", ", behind")
    ]
    assert [landmark.moving for landmark in landmarks] == [ZERO, ONE]
    assert {landmark.onto for landmark in landmarks} == {HALF}


def test_the_third_halving_brings_the_first_crease_onto_the_edge_of_the_top_layer():
    landmark = freeze(moments(*EIGHTHS)).landmarks[-1]
    assert (landmark.moving, landmark.onto, landmark.placing) == (HALF, ONE, Placing.EDGE)


def test_a_third_has_no_landmark_and_is_judged_by_eye_unless_there_is_a_tick():
    thirds = moments("fold at 1/3 moving left")
    assert [source.placing for source in freeze(thirds).sources] == [Placing.EYE]
    assert [source.placing for source in freeze(thirds, ticks=(0,)).sources] == [Placing.TICK]


def test_an_edge_brought_to_a_place_judged_by_eye_takes_half_of_that_error():
    frozen = freeze(moments("fold left edge to 1/3"))
    assert [source.placing for source in frozen.sources] == [Placing.EYE, Placing.EDGE]
    assert jacobian(frozen)[frozen.creases[0].error] == (0.5, 1)


def test_a_fold_at_the_edge_of_a_flap_follows_the_flap():
    """The left third is folded over; its edge lies at 2/3 of the sheet, half-way across what is left."""
    frozen = freeze(moments("fold at 1/3 moving left", "fold at 1/2 moving right"))
    assert frozen.landmarks[-1].onto == ZERO
    assert jacobian(frozen)[frozen.creases[-1].error] == (2, 1)


def test_an_old_crease_is_found_again_without_a_new_error():
    once = freeze(moments(LEFT_TO_RIGHT, "open"))
    again = freeze(moments(LEFT_TO_RIGHT, "open", LEFT_TO_RIGHT, "open", LEFT_TO_RIGHT))
    assert once.sources == again.sources


QUARTERED = ("fold left edge to middle", "open", "fold right edge to left edge")
"""The crease at 1/4 lies open at the middle of the lower layer, under the right half of the sheet."""


def test_a_crease_that_a_nearer_layer_hides_is_no_landmark():
    over = freeze(moments(*QUARTERED, "fold right edge to left edge")).landmarks[-1]
    assert (over.step, over.moving, over.placing) == (3, HALF, Placing.EDGE)


def test_the_same_crease_is_found_again_from_the_side_on_which_it_lies():
    behind = freeze(moments(*QUARTERED, "fold right edge to left edge, behind"))
    assert [landmark.step for landmark in behind.landmarks] == [0, 2]


def test_a_fold_along_the_edge_of_a_flap_goes_through_the_layer_below_alone():
    frozen = freeze(moments("fold at 1/3 moving left", "fold at 1/2 moving right"))
    assert [source.layers for source in frozen.sources] == [1, 1]


def test_a_fold_goes_through_the_layers_of_both_directions():
    assert [source.layers for source in freeze(moments(*EIGHTHS)).sources] == [1, 2, 4]


def test_the_second_flap_of_a_gate_meets_the_first_if_no_crease_is_there():
    first, second = freeze(moments("fold both edges to middle")).landmarks
    assert (first.moving, first.onto) == (ZERO, None)
    assert (second.moving, second.onto) == (ONE, ZERO)


@pytest.mark.parametrize(
    ("steps", "left_out"),
    [
        ((LEFT_TO_RIGHT, "fold bottom left corner to top right corner"), (1,)),
        (("fold along (0, 0) (1, 1) moving (0, 1)", LEFT_TO_RIGHT, "open", LEFT_TO_RIGHT), (0, 1)),
    ],
)
def test_slanted_folds_and_what_is_folded_over_them_are_left_out_and_said_so(steps, left_out):
    assert freeze(moments(*steps)).left_out == left_out


def test_folding_goes_on_once_a_slanted_fold_is_opened():
    slanted = ("fold along (0, 0) (1, 1) moving (0, 1)", LEFT_TO_RIGHT, "open", LEFT_TO_RIGHT)
    assert coefficients(*slanted) == {"1/2": (1,)}


def test_a_corner_brought_onto_the_next_corner_is_a_fold_of_its_edge():
    assert coefficients("fold bottom left corner to bottom right corner") == coefficients(LEFT_TO_RIGHT)
