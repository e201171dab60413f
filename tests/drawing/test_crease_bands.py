"""Bands show where creases may fall: around where they are meant to, hatched, inside the sheet."""

import pytest
from hypothesis import given
from lessons_in_words import EIGHTHS, LETTER, moments
from pictured import of_kind, spots_of, strokes
from strategies import foldings, often_enough, sheets, step_lists

from foldmath.drawing.scenes import Hatching, Lean, Meaning, Star
from foldmath.drawing.sheets.crease_bands import MOST_TIMES, NARROWEST_BAND_MM, crease_bands, times_wider
from foldmath.paper.moments.moment import Moment
from foldmath.paper.state import open_sheet
from foldmath.tolerance.accuracy import accuracy
from foldmath.tolerance.assumed.spread import Spread, default_spread

WIDTH_MM, HEIGHT_MM = 120, 100
STEADY = Spread(edge_mm=0.01, eye_mm=0.01, tick_mm=0.01, cut_mm=0.01, thickness_mm=0.0)


def bands(*steps, spread=None):
    made = accuracy(moments(*steps), spread or default_spread(5))
    return made, crease_bands(LETTER, made, WIDTH_MM, HEIGHT_MM)


def across(hatching):
    """Give the narrower extent of a band."""
    xs, ys = [spot.x for spot in hatching.spots], [spot.y for spot in hatching.spots]
    return min(max(xs) - min(xs), max(ys) - min(ys))


def test_every_crease_has_its_band_and_the_line_where_it_is_meant():
    made, scene = bands(*EIGHTHS)
    assert len(of_kind(scene, Hatching)) == len(strokes(scene, Meaning.OUTLINE)) == len(made.creases) == 4


def test_upright_bands_lean_right_and_level_ones_lean_left():
    _, scene = bands(*EIGHTHS)
    assert [hatching.lean for hatching in of_kind(scene, Hatching)] == [Lean.RIGHT] * 3 + [Lean.LEFT]


def test_a_less_certain_crease_has_a_wider_band():
    made, scene = bands(*EIGHTHS)
    widths = [across(hatching) for hatching in of_kind(scene, Hatching)]
    certain = [crease.error.sd_mm for crease in made.creases]
    assert [width / widths[0] for width in widths] == pytest.approx([sd / certain[0] for sd in certain])


def test_bands_are_drawn_to_scale_times_what_the_words_say():
    made, scene = bands(*EIGHTHS)
    times = times_wider(LETTER, made, WIDTH_MM, HEIGHT_MM)
    scale = (WIDTH_MM - 1) / 279.4
    assert across(of_kind(scene, Hatching)[0]) == pytest.approx(
        4 * made.creases[0].error.sd_mm * scale * times
    )
    assert f"drawn {times} times as wide" in str(scene.words)


def test_bands_too_narrow_to_see_are_drawn_wider_but_not_without_end():
    made, _ = bands(*EIGHTHS, spread=STEADY)
    assert times_wider(LETTER, made, WIDTH_MM, HEIGHT_MM) == MOST_TIMES


def test_bands_wide_enough_for_their_hatch_are_drawn_as_they_are():
    shaky = Spread(edge_mm=5.0, eye_mm=5.0, tick_mm=5.0, cut_mm=5.0, thickness_mm=0.0)
    made, scene = bands("fold left edge to right edge", spread=shaky)
    assert times_wider(LETTER, made, WIDTH_MM, HEIGHT_MM) == 1
    assert across(of_kind(scene, Hatching)[0]) > NARROWEST_BAND_MM
    assert "times as wide" not in str(scene.words)


def test_a_sheet_without_creases_has_no_bands_and_its_words_say_so():
    _, scene = bands("turn over")
    assert of_kind(scene, Hatching) == []
    assert "without creases" in str(scene.words)


@given(sheets, step_lists)
@often_enough
def test_bands_stay_inside_the_sheet_with_its_star_at_the_bottom_left(sheet, steps):
    done = tuple(Moment(*move) for move in foldings(open_sheet(sheet), steps))
    if done:
        scene = crease_bands(sheet, accuracy(done, default_spread(3)), WIDTH_MM, HEIGHT_MM)
        (star,) = of_kind(scene, Star)
        assert star.middle.x < 4
        assert star.middle.y < 4
        for mark in scene.marks:
            if mark is not star:
                for x, y in spots_of(mark):
                    assert -1e-9 <= x <= scene.width_mm + 1e-9
                    assert -1e-9 <= y <= scene.height_mm + 1e-9
