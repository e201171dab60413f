"""A picture of the folded sheet keeps the whole in sight, shows layers at its edges, and marks one corner."""

from itertools import pairwise

import pytest
from hypothesis import given
from lessons_in_words import EIGHTHS, LETTER, paper_after
from pictured import distance, of_kind, spots_of, strokes
from strategies import folded, often_enough, sheets, step_lists

from foldmath.drawing.look import CREASE_STOPS_SHORT_MM, LAYER_STEP_MM
from foldmath.drawing.scenes import Area, Meaning, Star, Tone
from foldmath.drawing.sheets.folded_sheets import folded_sheet, leaves_of
from foldmath.drawing.stars import PICTURE_STAR_MM, star_outline
from foldmath.lesson.grammar.sentences import parse_step
from foldmath.paper.state import open_sheet

NEARLY = pytest.approx
STEP = NEARLY(LAYER_STEP_MM)
CLEAR_MM = 0.3
HALVED = "fold left edge to right edge"


def picture(*steps):
    return folded_sheet(paper_after(*steps), None, 80, 80)


@given(sheets, step_lists)
@often_enough
def test_every_picture_lies_inside_one_outline_of_the_whole_sheet_and_has_one_star(sheet, steps):
    state = folded(sheet, steps)
    scene = folded_sheet(state, None, 80, 80)
    (whole,) = strokes(scene, Meaning.WHOLE)
    assert whole.closed
    sides = sorted(distance(one, two) for one, two in pairwise(whole.spots))
    short, long = sorted(float(side.numerator) / side.denominator for side in (sheet.width, sheet.height))
    assert sides[-1] / sides[0] == NEARLY(long / short)
    assert len(of_kind(scene, Star)) == 1


@given(sheets, step_lists)
@often_enough
def test_no_ink_leaves_the_picture(sheet, steps):
    scene = folded_sheet(folded(sheet, steps), None, 80, 60)
    assert scene.width_mm <= 80 + 1e-9
    assert scene.height_mm <= 60 + 1e-9
    # A star may be larger than a strip of paper drawn at 4 mm.
    for mark in (mark for mark in scene.marks if not isinstance(mark, Star)):
        for x, y in spots_of(mark):
            assert 0 <= x <= scene.width_mm
            assert 0 <= y <= scene.height_mm


@pytest.mark.parametrize("steps", [(), (HALVED,), EIGHTHS, ("pleat width into 5",), ("turn over",)])
def test_the_ink_of_common_foldings_stays_inside_the_picture(steps):
    scene = picture(*steps)
    for mark in scene.marks:
        for x, y in spots_of(mark):
            assert 0 <= x <= scene.width_mm
            assert 0 <= y <= scene.height_mm


def test_the_folded_sheet_covers_its_own_part_of_the_whole():
    scene = picture(HALVED, "open last", HALVED)
    (whole,) = strokes(scene, Meaning.WHOLE)
    lowest, *_ = of_kind(scene, Area)
    assert min(spot.x for spot in lowest.spots) == NEARLY(
        (whole.spots[0].x + whole.spots[1].x) / 2, abs=2 * LAYER_STEP_MM
    )
    assert max(spot.x for spot in lowest.spots) == NEARLY(whole.spots[1].x)


def test_each_layer_peeps_out_from_under_the_one_above():
    scene = picture(*EIGHTHS)
    layers = of_kind(scene, Area)
    assert len(layers) == 8
    for below, above in pairwise(layers):
        assert max(spot.x for spot in below.spots) - max(spot.x for spot in above.spots) == STEP
        assert max(spot.y for spot in above.spots) - max(spot.y for spot in below.spots) == STEP


def test_layers_slip_towards_the_middle_so_that_they_stay_in_the_whole():
    scene = picture(*EIGHTHS)
    (whole,) = strokes(scene, Meaning.WHOLE)
    right, bottom = max(spot.x for spot in whole.spots), min(spot.y for spot in whole.spots)
    for layer in of_kind(scene, Area):
        assert max(spot.x for spot in layer.spots) <= right + 1e-9
        assert min(spot.y for spot in layer.spots) >= bottom - 1e-9


@given(sheets, step_lists)
@often_enough
def test_leaves_hold_every_panel_once_and_the_lowest_lies_at_level_zero(sheet, steps):
    state = folded(sheet, steps)
    leaves = leaves_of(state)
    assert sorted(panel.corners for leaf in leaves for panel in leaf.panels) == sorted(
        panel.corners for panel in state.panels
    )
    assert leaves[0].level == 0
    assert [leaf.placement.place for leaf in leaves] == sorted(leaf.placement.place for leaf in leaves)


@pytest.mark.parametrize(
    ("steps", "levels"),
    [
        ((), [0]),
        ((HALVED,), [0, 1]),
        (EIGHTHS, [0, 1, 2, 3, 4, 5, 6, 7]),
        (("fold both edges to middle",), [0, 1, 1]),
        (("pleat width into 3",), [0, 1, 2]),
        (("fold left edge to 1/4", "fold right edge to 3/4"), [0, 1, 1]),
        (("fold left edge to right edge, behind",), [0, 1]),
    ],
)
def test_a_leaf_lies_one_level_above_the_highest_leaf_under_it(steps, levels):
    assert sorted(leaf.level for leaf in leaves_of(paper_after(*steps))) == levels


def test_the_back_of_the_paper_is_toned_and_the_printed_side_is_white():
    assert [area.tone for area in of_kind(picture(HALVED), Area)] == [Tone.PRINTED_SIDE, Tone.BACK_SIDE]
    assert [area.tone for area in of_kind(picture("turn over"), Area)] == [Tone.BACK_SIDE]


def test_a_crease_that_lies_flat_stops_short_of_both_edges():
    scene = picture(HALVED, "open")
    (crease,) = strokes(scene, Meaning.CREASE)
    (whole,) = strokes(scene, Meaning.WHOLE)
    low, high = sorted(spot.y for spot in crease.spots)
    assert low - whole.spots[0].y == NEARLY(CREASE_STOPS_SHORT_MM)
    assert whole.spots[2].y - high == NEARLY(CREASE_STOPS_SHORT_MM)
    assert all(spot.x == NEARLY((whole.spots[0].x + whole.spots[1].x) / 2) for spot in crease.spots)


def test_an_old_crease_is_one_line_where_others_cross_it_so_that_it_does_not_pass_for_dashes():
    scene = picture(*EIGHTHS, "open")
    upright, level = 3, 1
    assert len(strokes(scene, Meaning.CREASE)) == upright + level


def test_an_old_crease_gives_way_to_the_fold_that_runs_along_it_again():
    again = folded_sheet(paper_after(*EIGHTHS, "open"), parse_step(HALVED), 80, 80)
    (fold,) = strokes(again, Meaning.VALLEY)
    middles = {round(spot.x, 6) for spot in fold.spots}
    creases = strokes(again, Meaning.CREASE)
    assert len(creases) == 3
    assert all({round(spot.x, 6) for spot in crease.spots} != middles for crease in creases)


def test_an_old_crease_has_a_gap_where_the_paper_is_slit():
    halved = paper_after(*EIGHTHS, "open", "slit at height 1/2 from 1/4 to 3/4")
    level = [
        crease
        for crease in strokes(folded_sheet(halved, None, 80, 80), Meaning.CREASE)
        if len({round(spot.y, 6) for spot in crease.spots}) == 1
    ]
    assert len(level) == 2


def test_a_crease_that_is_folded_is_an_edge_of_the_paper():
    scene = picture(HALVED)
    assert strokes(scene, Meaning.CREASE) == []
    assert len(strokes(scene, Meaning.FOLDED_EDGE)) == 2
    assert len(strokes(scene, Meaning.SHEET_EDGE)) == 6


def test_the_star_is_solid_at_the_bottom_left_corner_of_an_open_sheet():
    scene = folded_sheet(open_sheet(LETTER), None, 80, 80)
    (star,) = of_kind(scene, Star)
    (whole,) = strokes(scene, Meaning.WHOLE)
    assert not star.hollow
    assert distance(star.middle, whole.spots[0]) < 4
    assert star.middle.x > whole.spots[0].x
    assert star.middle.y > whole.spots[0].y


def test_the_star_goes_with_its_corner_when_the_sheet_is_turned():
    (star,) = of_kind(picture("turn left"), Star)
    scene = picture("turn left")
    assert star.middle.x > scene.width_mm / 2
    assert star.middle.y < scene.height_mm / 2


@pytest.mark.parametrize("steps", [(HALVED,), ("turn over",), ("fold right edge to left edge",)])
def test_the_star_is_hollow_where_the_corner_is_out_of_sight(steps):
    scene = picture(*steps)
    (star,) = of_kind(scene, Star)
    (whole,) = strokes(scene, Meaning.WHOLE)
    assert star.hollow
    assert distance(star.middle, whole.spots[0]) < 4


@pytest.mark.parametrize(
    ("turns", "fold", "above"),
    [
        # A flat line leaves more room above it, a steep one below.
        ((), "bottom left corner through the point 1/3 across and 1/4 up, moving the top left corner", True),
        ((), "bottom left corner through the point 1/4 across and 3/4 up, moving the top left corner", False),
        # On a sheet turned to the left that corner is at the bottom right.
        (
            ("turn left",),
            "bottom right corner through the point 1/2 across and 1/4 up, moving the top right corner",
            True,
        ),
    ],
)
def test_the_star_keeps_clear_of_a_line_that_runs_through_its_corner(turns, fold, above):
    scene = folded_sheet(paper_after(*turns), parse_step(f"fold along the line from the {fold}"), 22, 22)
    (star,), (line,) = of_kind(scene, Star), strokes(scene, Meaning.VALLEY)
    (sheet,) = strokes(scene, Meaning.WHOLE)
    (x, y), (far_x, far_y) = sorted(line.spots)
    length = distance(*line.spots)
    outline = star_outline(star.middle, star.radius_mm)
    rises = [((far_x - x) * (b - y) - (far_y - y) * (a - x)) / length for a, b in outline]
    assert min(rises) > CLEAR_MM if above else max(rises) < -CLEAR_MM
    assert all(
        min(a for a, _ in sheet.spots) < a < max(a for a, _ in sheet.spots) and b > sheet.spots[0].y
        for a, b in outline
    )


def test_a_line_elsewhere_leaves_the_star_in_its_corner():
    crossing = "fold along the line from the bottom right corner through the point 1/3 across and 1/4 up"
    scene = folded_sheet(paper_after(), parse_step(f"{crossing}, moving the bottom left corner"), 22, 22)
    (star,) = of_kind(scene, Star)
    assert star.radius_mm == PICTURE_STAR_MM


def test_the_words_of_a_picture_tell_how_thick_the_paper_lies():
    assert "8 layers" in str(picture(*EIGHTHS).words)
    assert "open" in str(picture(HALVED, "open").words)
