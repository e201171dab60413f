"""A crease pattern shows every crease by its kind and every panel with its fraction of the sheet."""

import pytest
from hypothesis import given
from lessons_in_words import EIGHTHS, paper_after
from pictured import corners_of, inside, of_kind, spots_of, strokes
from strategies import folded, often_enough, sheets, step_lists

from foldmath.drawing.scenes import HATCH_PITCH_MM, Figure, Hatching, Lean, Meaning, Star
from foldmath.drawing.sheets.crease_patterns import crease_pattern
from foldmath.paper.state import Kind

READABLE_MM = 1.9


def numbers(scene):
    return [
        f"{figure.numerator}/{figure.denominator}" if figure.denominator else figure.numerator
        for figure in of_kind(scene, Figure)
    ]


@given(sheets, step_lists)
@often_enough
def test_every_crease_is_drawn_once_by_its_kind(sheet, steps):
    state = folded(sheet, steps)
    scene = crease_pattern(state, 120, 120)
    for kind, meaning in ((Kind.VALLEY, Meaning.VALLEY), (Kind.MOUNTAIN, Meaning.MOUNTAIN)):
        creases = [crease for crease in state.creases if crease.kind is kind]
        assert len(strokes(scene, meaning)) == len(creases)


def test_a_slit_is_drawn_as_cuts_from_crossing_to_crossing():
    quarters = ("pleat width into 4", "open", "fold top edge to bottom edge", "open")
    scene = crease_pattern(paper_after(*quarters, "slit at height 1/2 from 1/4 to 3/4"), 120, 120)
    assert [len(stroke.spots) for stroke in strokes(scene, Meaning.CUT)] == [2, 2]
    assert {spot.y for stroke in strokes(scene, Meaning.CUT) for spot in stroke.spots} == {
        scene.height_mm / 2
    }


@given(sheets, step_lists)
@often_enough
def test_every_fraction_stands_inside_its_own_panel_at_a_size_one_can_read(sheet, steps):
    state = folded(sheet, steps)
    scene = crease_pattern(state, 120, 120)
    (outline,) = strokes(scene, Meaning.SHEET_EDGE)
    (left, bottom), (right, top) = outline.spots[0], outline.spots[2]
    panels = [
        (
            f"{panel.area.numerator}/{panel.area.denominator}",
            tuple(
                type(outline.spots[0])(
                    left + (right - left) * float(x / sheet.width),
                    bottom + (top - bottom) * float(y / sheet.height),
                )
                for x, y in panel.corners
            ),
        )
        for panel in state.panels
    ]
    for figure in of_kind(scene, Figure):
        homes = [
            number
            for number, spots in panels
            if all(inside(spot, spots, 0.01) for spot in corners_of(figure))
        ]
        assert homes == [f"{figure.numerator}/{figure.denominator or 1}"]
        assert figure.size_mm >= READABLE_MM


def test_an_open_sheet_is_one_whole_and_halvings_make_eighths():
    assert numbers(crease_pattern(paper_after("turn over"), 120, 120)) == ["1"]
    assert numbers(crease_pattern(paper_after(*EIGHTHS), 120, 120)) == ["1/8"] * 8


def test_a_panel_too_small_for_a_readable_number_has_none():
    scene = crease_pattern(paper_after("pleat width into 12", "open", "pleat height into 12"), 40, 40)
    assert numbers(scene) == []


def test_a_panel_whose_fraction_tells_no_size_has_none():
    """Over the diagonal of letter paper the second fold makes 1/8, 773/4624, 1539/4624 and 3/8 [computed]."""
    slanted = paper_after("fold along (0, 0) (1, 1) moving (0, 1)", "fold left edge to right edge")
    scene = crease_pattern(slanted, 240, 240)
    assert sorted(numbers(scene)) == ["1/8", "3/8"]
    assert str(scene.words).endswith("each is 1/8, about 0.17, about 0.33 or 3/8 of the sheet.")


@given(sheets, step_lists)
@often_enough
def test_the_pattern_stays_inside_the_picture_with_its_star_at_the_bottom_left(sheet, steps):
    scene = crease_pattern(folded(sheet, steps), 120, 90)
    assert scene.width_mm <= 120 + 1e-9
    assert scene.height_mm <= 90 + 1e-9
    (star,) = of_kind(scene, Star)
    assert star.middle.x < 4
    assert star.middle.y < 4
    for mark in scene.marks:
        if mark is not star:
            for x, y in spots_of(mark):
                assert 0 <= x <= scene.width_mm
                assert 0 <= y <= scene.height_mm


GRID = ("pleat width into 3", "open", "pleat height into 2", "open")
"""Three columns of two panels."""


def hatches_after(*steps):
    """Give the panels whose hatches lean right, as columns do, and then those that lean left, as rows do."""
    hatches = of_kind(crease_pattern(paper_after(*GRID, *steps), 120, 120), Hatching)
    return ([hatch.spots for hatch in hatches if hatch.lean is lean] for lean in (Lean.RIGHT, Lean.LEFT))


def test_shaded_columns_lean_right_and_shaded_rows_lean_left():
    columns, none = hatches_after("shade 1 of 3 across")
    assert (len(columns), none) == (2, [])
    assert all(spot.x < 120 / 3 + 1 for spots in columns for spot in spots)
    none, rows = hatches_after("shade 1 of 2 up")
    assert (none, len(rows)) == ([], 3)


@pytest.mark.parametrize(
    ("steps", "columns", "rows"),
    [
        (("shade 1 of 3 across", "shade 1 of 2 up"), 2, 1),
        (("shade 1 of 2 up", "shade 2 of 3 across"), 2, 3),
        (("shade 1 of 2 up", "shade 1 of 3 across"), 1, 3),
    ],
)
def test_what_is_shaded_second_is_hatched_inside_the_first_part_alone(steps, columns, rows):
    """The second fraction is shaded first, the first one inside that part [common practice, no source]."""
    leaning_right, leaning_left = hatches_after(*steps)
    assert (len(leaning_right), len(leaning_left)) == (columns, rows)
    smaller, larger = sorted((set(leaning_right), set(leaning_left)), key=len)
    assert smaller < larger


def test_a_shaded_panel_has_no_number_for_its_hatch_to_cross():
    scene = crease_pattern(paper_after("pleat width into 3", "open", "shade 2 of 3 across"), 120, 120)
    assert numbers(scene) == ["1/3"]


@pytest.mark.parametrize("step", ["fold left edge to right edge", "fold left edge to right edge, behind"])
def test_the_words_of_a_pattern_count_its_panels(step):
    words = crease_pattern(paper_after(step), 120, 120).words
    assert str(words) == "The opened sheet has 2 panels; each is 1/2 of the sheet."


def test_hatches_are_wide_enough_apart_for_a_copier():
    """Closer than 2 mm, a copier runs hatches together [common practice, no source]."""
    assert HATCH_PITCH_MM >= 2
