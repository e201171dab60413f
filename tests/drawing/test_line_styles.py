"""Line styles follow the trade's drawing conventions, and none rests on colour.

Valley dashed, mountain dash-dot-dot: the Yoshizawa-Randlett system (S. Randlett, The Art of Origami, 1961).
"""

import re
from dataclasses import replace

import pytest
from lessons_in_words import paper_after
from test_house import HOUSE, MODULES, faults

from foldmath.drawing.legends import SAMPLE_MM, SAMPLES, legend_sample
from foldmath.drawing.look import MM_PER_INCH, PENS, SCREEN_WEIGHT, TONES
from foldmath.drawing.scenes import Figure, Meaning, Star, Tone, enlarged, for_low_vision
from foldmath.drawing.sheets.crease_patterns import crease_pattern
from foldmath.measured import millimetres
from foldmath.plane.numbers import ONE
from foldmath.slides.motion.marks import LINES, TO_COME, line_styles


def test_every_meaning_has_a_pen_and_every_tone_a_grey():
    assert set(PENS) == set(Meaning)
    assert set(TONES) == set(Tone)


def test_an_inch_of_a_picture_is_the_inch_of_the_paper():
    assert millimetres(ONE, "in") == MM_PER_INCH


def test_a_valley_is_dashed_and_a_mountain_is_dash_dot_dot():
    dash, gap = PENS[Meaning.VALLEY].dashes_mm
    assert dash > gap
    long, *rest = PENS[Meaning.MOUNTAIN].dashes_mm
    dots, gaps = rest[1::2], rest[::2]
    assert len(dots) == 2
    assert len(gaps) == 3
    assert all(dot <= PENS[Meaning.MOUNTAIN].width_mm for dot in dots)
    assert long > max(gaps)


def test_the_whole_is_dotted_and_an_existing_crease_is_thin_and_unbroken():
    dot, gap = PENS[Meaning.WHOLE].dashes_mm
    assert dot < PENS[Meaning.WHOLE].width_mm < gap
    assert PENS[Meaning.WHOLE].round_ends
    assert PENS[Meaning.CREASE].dashes_mm == ()
    assert PENS[Meaning.CREASE].width_mm == min(pen.width_mm for pen in PENS.values())


def test_no_two_kinds_of_crease_are_drawn_alike():
    styles = [PENS[meaning].dashes_mm for meaning in (Meaning.VALLEY, Meaning.MOUNTAIN, Meaning.CREASE)]
    assert len(set(styles)) == 3


def test_a_cut_is_the_heaviest_line_and_unbroken():
    assert PENS[Meaning.CUT].dashes_mm == ()
    assert PENS[Meaning.CUT].width_mm == max(pen.width_mm for pen in PENS.values())


def test_every_line_is_dark_enough_for_a_copier():
    """A mid grey is where a copier begins to lose a thin line [common practice, no source]."""
    assert all(pen.grey < 0.5 for pen in PENS.values())


def test_on_a_screen_every_line_is_as_much_thicker_and_its_dashes_longer_than_on_paper():
    lines = LINES | TO_COME
    styles = dict(re.findall(r"\.([\w. -]+) \{(.*)\}", line_styles(lines)))
    assert styles.keys() == lines.keys()
    for name, pen in lines.items():
        width, *dashes = (float(number) for number in re.findall(r"([\d.]+)px", styles[name]))
        assert [width, *dashes] == pytest.approx(
            [SCREEN_WEIGHT * number for number in (pen.width_mm, *pen.dashes_mm)], abs=0.001
        )


@pytest.mark.parametrize(
    "meaning", ["valley", "mountain", "cut", "whole", "grid", "hatch", "outline", "arrow"]
)
def test_a_class_of_lines_on_a_screen_is_named_for_its_meaning(meaning):
    assert LINES[meaning] == PENS[Meaning(meaning)]


def test_a_fold_in_the_hand_is_drawn_as_the_fold_it_will_be_only_when_it_snaps():
    assert TO_COME["snapped .crease-to-come"] == PENS[Meaning.VALLEY]
    assert TO_COME["crease-to-come"].width_mm < PENS[Meaning.VALLEY].width_mm


def test_a_flap_to_come_is_dashed_behind_the_paper_and_unbroken_over_it():
    assert PENS[Meaning.FLAP_BEHIND].dashes_mm
    assert PENS[Meaning.FLAP_OVER] == replace(PENS[Meaning.FLAP_BEHIND], dashes_mm=())


def test_no_style_sheet_or_script_has_dashes_of_its_own():
    of_its_own = [
        path.name
        for kind in ("css", "js")
        for path in HOUSE.rglob(f"*.{kind}")
        if re.search("dasharray|setLineDash", path.read_text("utf-8"))
    ]
    assert of_its_own == []


def test_no_module_but_the_table_has_dashes_of_its_own():
    made = re.compile(r"DASH|dashes_mm=\(|[dD]ash(?:es)?\([^)]*\[\s*[\d.]|dasharray\W{1,3}\d")
    others = [name for name in MODULES if name != "drawing.look"]
    assert faults(lambda name: made.findall(MODULES[name].read_text("utf-8")), others) == {}


@pytest.mark.parametrize("name", SAMPLES)
def test_a_legend_shows_one_line_of_the_style_it_names(name):
    scene = legend_sample(name)
    (line,) = scene.marks
    assert line.meaning is SAMPLES[name]
    assert (scene.width_mm, scene.height_mm) == SAMPLE_MM


def test_for_low_vision_creases_are_thicker_and_hatches_wider():
    """Creases 1.5 pt, hatch pitch 4 mm or more [common practice, no source]."""
    scene = for_low_vision(legend_sample("valley"))
    for meaning in (Meaning.VALLEY, Meaning.MOUNTAIN):
        assert PENS[meaning].width_mm * scene.weight * 72 / 25.4 >= 1.5
    assert scene.hatch_pitch_mm >= 4
    assert scene.marks == legend_sample("valley").marks


def test_an_enlarged_picture_is_the_same_in_all_its_places_and_figures():
    """A sheet halved is a crease at the middle, a half in each panel, and a star."""
    scene = crease_pattern(paper_after("fold left edge to right edge", "open"), 60, 60)
    larger = enlarged(scene, 1.5)
    assert (larger.width_mm, larger.height_mm) == (1.5 * scene.width_mm, 1.5 * scene.height_mm)
    assert larger.weight == scene.weight
    for one, other in zip(scene.marks, larger.marks, strict=True):
        if isinstance(one, Figure | Star):
            before, after = (one.middle,), (other.middle,)
        else:
            before, after = one.spots, other.spots
        assert after == tuple((1.5 * x, 1.5 * y) for x, y in before)
    sizes = [[mark.size_mm for mark in one.marks if isinstance(mark, Figure)] for one in (scene, larger)]
    assert sizes[1] == [1.5 * size for size in sizes[0]] != []
