"""The slide of a step that gathers: pictures one after the other, then how many pages there are."""

import pytest
from lessons_in_words import EIGHTHS, TWELVE_PAGES, core_sheet, proved
from readability import common_words, long_sentences, texts_of, uncommon_words

from foldmath.booklets.folding_steps import Shows
from foldmath.drawing.scenes import Figure
from foldmath.pages.markup.reading import blocks_of
from foldmath.slides.gathering import GatherSlide
from foldmath.slides.in_print.printed import slides_document
from foldmath.slides.page import slides_html
from foldmath.slides.slides import StepSlide, slide_show

SLIT = (*EIGHTHS, "open", "slit at height 1/2 from 1/4 to 3/4", "gather into booklet")
TURNED = (*EIGHTHS, "open", "turn right", "slit at width 1/2 from 1/4 to 3/4", "gather into booklet")


def gathered(*steps):
    made = proved(*steps)
    (slide,) = (
        slide for slide in slide_show(made, core_sheet(made)).slides if isinstance(slide, GatherSlide)
    )
    return slide


def test_a_sheet_with_a_slit_is_gathered_in_pictures_and_told_by_its_pages():
    slide = gathered(*SLIT)
    assert [pose.shows for pose in slide.poses] == [
        told.value for told in (Shows.HALVE, Shows.STAND, Shows.BOX, Shows.MEET, Shows.LEAVES, Shows.CLOSED)
    ]
    assert (slide.pages, slide.boxes) == (8, 1)
    assert slide.last == len(slide.poses) + 1
    twelve = gathered(*TWELVE_PAGES)
    assert Shows.REFOLD.value in [pose.shows for pose in twelve.poses]
    assert (twelve.pages, twelve.boxes) == (12, 2)


def test_a_turned_sheet_is_turned_back_first():
    assert [pose.turn.text for pose in gathered(*TURNED).poses if pose.turn] == ["turn the sheet left"]


def test_layers_that_are_gathered_need_no_pictures_of_their_own():
    made = proved(*EIGHTHS, "gather into booklet")
    assert sum(isinstance(slide, StepSlide) for slide in slide_show(made, core_sheet(made)).slides) == 4


def test_a_booklet_is_made_after_all_that_its_lesson_asks():
    """Folding it is a second lesson [common practice, no source]."""
    made = proved(*SLIT)
    kinds = [slide.kind for slide in slide_show(made, core_sheet(made)).slides]
    assert kinds[-1] == "gather"
    assert kinds.index("closing") < kinds.index("gather")
    assert "step" in kinds[2 : kinds.index("closing")]


def test_on_the_screen_the_numbers_stand_upright_in_the_upper_half():
    """Heights count from the top there, and numbers stand above the star."""
    box = next(pose for pose in gathered(*SLIT).poses if pose.shows == Shows.BOX.value)
    for mark in box.scene.marks:
        if isinstance(mark, Figure):
            assert mark.middle.y < box.scene.height_mm / 2


@pytest.mark.parametrize("steps", [SLIT, TURNED, TWELVE_PAGES])
def test_every_picture_has_a_short_sentence_of_common_words(steps):
    made = proved(*steps)
    told = slides_document(slide_show(made, core_sheet(made)))
    words = " ".join(text for _, text in texts_of(blocks_of(told.document.html)))
    assert "Press it flat. Page 1 is the cover." in words
    assert "How many pages does the booklet have?" in words
    for _, text in texts_of(blocks_of(told.document.html)):
        if "page 1" in text.lower() or "opens into" in text:
            assert long_sentences(text) == ()
            assert uncommon_words(text, common_words()) == ()


@pytest.mark.sweep("steps0")
@pytest.mark.parametrize("steps", [SLIT, TURNED, TWELVE_PAGES])
def test_the_page_for_the_browser_shows_each_picture_at_its_reveal(steps):
    made = proved(*steps)
    html = slides_html(slide_show(made, core_sheet(made)))
    poses = gathered(*steps).poses
    assert html.count('<svg class="standing') == len(poses)
    for reveal in range(len(poses) - 1):
        assert html.count(f'data-from="{reveal}" data-until="{reveal + 1}"') == 2
