"""The file of the slides is small, and what is written in fewer signs is what was drawn."""

from io import BytesIO

import pytest
from conftest import LESSONS
from fontTools.ttLib import TTFont
from hypothesis import given
from hypothesis import strategies as st
from lessons_in_words import EIGHTHS, core_sheet, proved
from svg_paths import corners_of

from foldmath.drawing.scenes import Spot
from foldmath.making import proved_lesson
from foldmath.slides.motion.paths import loops, path
from foldmath.slides.page import slides_html
from foldmath.slides.sharing import shared_creases
from foldmath.slides.slides import StepSlide, slide_show
from foldmath.typeface.cutting import WEIGHTS, cut_font
from foldmath.typeface.for_screens import COPYRIGHT, faces, screen_font

KILOBYTES = 150
"""The most of a page of slides, without fonts."""

HALVINGS = ("fold left edge to right edge", "fold top edge to bottom edge") * 5
OWN = sorted(LESSONS.glob("*.toml"))

SPOTS = st.builds(Spot, *(st.floats(-99, 99, allow_subnormal=False) for _ in range(2)))


def written_as_drawn(read, drawn):
    return all(
        one == pytest.approx(other, abs=0.00051)
        for corners, spots in zip(read, drawn, strict=True)
        for one, other in zip(corners, spots, strict=True)
    )


@given(st.lists(st.tuples(SPOTS, SPOTS)))
def test_lines_in_the_fewest_signs_are_the_same_lines_to_half_a_thousandth_of_a_millimetre(lines):
    assert written_as_drawn(corners_of(path(lines)), lines)


@given(st.lists(st.lists(SPOTS, min_size=3, max_size=6)))
def test_outlines_in_the_fewest_signs_are_the_same_outlines(outlines):
    assert written_as_drawn(corners_of(loops(outlines)), outlines)


@pytest.mark.parametrize(
    ("lines", "written"),
    [
        ([(Spot(1, 2), Spot(9, 2))], "M1 2H9"),
        ([(Spot(1, 2), Spot(1, 12.5))], "M1 2V12.5"),
        ([(Spot(10, 2), Spot(10.5, 2.25))], "M10 2l.5 .25"),
        ([(Spot(10, 2), Spot(10, 3)), (Spot(10.5, 1.5), Spot(0, 0))], "M10 2V3m.5-1.5L0 0"),
    ],
)
def test_of_two_ways_to_write_a_corner_the_shorter_is_taken_and_the_first_of_equal_ones(lines, written):
    assert path(lines) == written


@pytest.mark.parametrize("lesson", OWN, ids=lambda path: path.stem)
def test_our_lessons_are_small(lesson):
    made, _ = proved_lesson(lesson)
    assert size(made) < KILOBYTES * 1000


def test_even_ten_halvings_opened_again_are_small():
    assert size(proved(*HALVINGS, "open", practice=("2/3 × 4/5",))) < KILOBYTES * 1000


def test_letters_that_come_along_are_small_whole_and_the_pages_own():
    assert len(faces()) < 40_000
    for name in WEIGHTS:
        along, cut = (TTFont(BytesIO(font)) for font in (screen_font(name), cut_font(name)))
        letters, kept = along.getBestCmap(), cut.getBestCmap()
        assert {*map(ord, "¿Dónde está la señal? ×÷ “½” …")} <= set(letters)
        for code, glyph in letters.items():
            assert along["hmtx"][glyph] == cut["hmtx"][kept[code]]
        assert "Lexend Project Authors" in along["name"].getDebugName(COPYRIGHT)


def size(made):
    return len(slides_html(slide_show(made, core_sheet(made))).encode()) - len(faces())


def test_remarks_in_scripts_and_styles_are_not_sent_along():
    made = proved(*EIGHTHS)
    lines = slides_html(slide_show(made, core_sheet(made))).splitlines()
    assert not [line for line in lines if line.startswith((" ", "//", "/*"))]


def shown(*steps):
    made = proved(*steps)
    told = slide_show(made, core_sheet(made)).slides
    return [slide for slide in told if isinstance(slide, StepSlide)], shared_creases(told)


def test_a_sheet_shows_all_creases_of_the_steps_before_it_but_draws_only_its_own():
    told, shared = shown(*EIGHTHS, "open")
    assert [shared[number].repeated for number in (1, 2, 3, 4)] == [(), (1,), (1, 2), (1, 2, 3)]
    for slide in told:
        here = shared[slide.number]
        parts = [shared[number].own for number in (*here.repeated, slide.number)]
        creases = slide.picture.opened.creases
        for kind in ("valley", "mountain", "cut"):
            drawn = [line for part in parts for line in getattr(part, kind)]
            assert sorted(drawn) == sorted(getattr(creases, kind))
            assert len(drawn) == len(set(drawn))


def test_a_crease_that_is_folded_the_other_way_is_drawn_anew_with_all_others():
    """Folded behind along a valley crease, it is a mountain: the earlier sheet's lines hold no longer."""
    _, shared = shown("fold left edge to right edge", "open", "fold left edge to right edge, behind", "open")
    assert shared[2].repeated == (1,)
    assert shared[3].repeated == ()
    assert shared[3].own.mountain
    assert not shared[3].own.valley


def test_sheets_at_another_scale_share_no_creases():
    """Two thirds laid over one stand out on the left, so that the sheet is drawn smaller in that picture."""
    told, shared = shown("fold left edge to right edge", "open", "fold at 1/3 moving right", "open")
    widths = [slide.picture.opened.outline[1].x - slide.picture.opened.outline[0].x for slide in told]
    assert widths[2] < widths[1]
    assert shared[3].repeated == ()
