"""What printed pictures tell those who hear them: the same as on the screen, in the lesson's language."""

import re
from dataclasses import replace
from html import unescape
from io import BytesIO

import pypdfium2
import pytest
from alternates import tagged_alternates
from conftest import LESSONS
from lessons_in_words import core_sheet

from foldmath.drawing.legends import SEEN_AS
from foldmath.making import proved_lesson
from foldmath.pages.printing import printed
from foldmath.slides.in_print.printed import slides_document
from foldmath.slides.in_print.revealed import reveals_document
from foldmath.slides.page import slides_html
from foldmath.slides.slides import slide_show
from foldmath.words.saying import say

LABEL = re.compile(r'<svg class="([^"]+)"[^>]*? aria-label="([^"]+)"')


@pytest.fixture(scope="module", params=[("tile-panels", "es"), ("plank-marks", "en-US")], ids="-".join)
def spoken_lesson(request):
    """Give a lesson that folds, opens, shades and multiplies, and one that slits, turns and gathers."""
    name, language = request.param
    made = proved_lesson(LESSONS / f"{name}.toml")[0]
    return replace(made, lesson=replace(made.lesson, language=language))


@pytest.fixture(scope="module")
def labels(spoken_lesson):
    """Give what the browser reads of each picture, by slide and by the picture's class."""
    page = slides_html(slide_show(spoken_lesson, core_sheet(spoken_lesson)))
    sections = re.findall(r'<section class="scene.*?</section>', page, flags=re.DOTALL)
    return [
        [(kinds.split(), unescape(words)) for kinds, words in LABEL.findall(section)] for section in sections
    ]


def label(told, kind):
    """Give the label of the one picture of a slide that has a class."""
    (words,) = (words for kinds, words in told if kind in kinds)
    return words


def pages_of(document_of, made, picture_process):
    told = document_of(slide_show(made, core_sheet(made)))
    drawn = picture_process.recordings(list(told.pictures.values())).result()
    pictures = dict(zip(told.pictures, drawn, strict=True))
    lesson = made.lesson
    document = printed([told.document.document()], pictures, lesson.title, lesson.language, "slides")
    return [tagged_alternates(page) for page in pypdfium2.PdfDocument(BytesIO(document))]


SHOWN = {
    "fold": ("before", "after", "opened"),
    "open": ("after", "opened"),
    "turn": ("after", None),
    "shade": ("after",),
    "slit": ("before", "opened"),
}


@pytest.mark.sweep("tile-panels-es")
def test_with_all_answers_each_picture_tells_what_it_does_on_the_screen(
    spoken_lesson, labels, picture_process
):
    pages = pages_of(slides_document, spoken_lesson, picture_process)
    shown = slide_show(spoken_lesson, core_sheet(spoken_lesson)).slides
    for told, slide, heard in zip(labels, shown, pages, strict=True):
        if slide.kind == "step":
            for kind, words in zip(SHOWN[slide.does], heard, strict=True):
                assert kind is None or words == label(told, kind)
        elif slide.kind == "gather":
            standing = [words for kinds, words in told if "standing" in kinds]
            assert heard
            assert set(heard) <= set(standing)
        elif slide.kind == "materials":
            assert heard
            assert set(heard) <= {say(words, spoken_lesson.lesson.language) for words in SEEN_AS.values()}
        elif slide.kind in ("slip", "closing"):
            assert heard == []
        else:
            assert len(heard) == 1


@pytest.mark.sweep("tile-panels-es")
def test_with_a_page_for_each_reveal_each_picture_tells_what_it_does_on_the_screen(
    spoken_lesson, labels, picture_process
):
    pages = iter(pages_of(reveals_document, spoken_lesson, picture_process))
    for told, slide in zip(labels, slide_show(spoken_lesson, core_sheet(spoken_lesson)).slides, strict=True):
        heard = [next(pages) for _ in range(slide.last + 1)]
        if slide.kind == "step":
            later = "opened" if slide.opens else "after"
            shown = ["before", "before", "after", *[later] * (slide.last - 2)]
            assert heard == [[label(told, kind)] for kind in shown]
        elif slide.kind == "product":
            assert heard[0] == heard[1] == [label(told, "model")]
            assert heard[3] == heard[4] == heard[5] == [heard_at(slide, spoken_lesson, 3)]
            assert len({words for (words,) in heard}) == 3
    assert next(pages, None) is None


def heard_at(slide, made, reveal):
    """Give what the browser reads of a product's model at a reveal."""
    page = slides_html(slide_show(made, core_sheet(made)))
    product = page[page.index(f'id="scene-{slide_show(made, core_sheet(made)).slides.index(slide) + 1}"') :]
    return unescape(re.search(rf'data-heard-{reveal}="([^"]+)"', product)[1])


def test_a_model_tells_of_no_shading_before_it_shows(shown):
    show = shown(proved_lesson(LESSONS / "tile-panels.toml")[0])
    place = next(number for number, slide in enumerate(show.slides, start=1) if slide.kind == "product")
    heard = []
    for reveal in (0, 2, 3):
        show.go(place, reveal)
        heard.append(show.page.locator(".scene.here .model").get_attribute("aria-label"))
    whole = "1 sheet of 15 equal parts. They lie 3 across and 5 up. "
    assert heard == [
        whole + said for said in ("Nothing is shaded.", "6 parts are shaded.", "4 parts are shaded twice.")
    ]


@pytest.mark.sweep("tile-panels-es")
def test_printed_from_the_browser_each_picture_that_shows_has_its_words(shown, spoken_lesson, labels):
    show = shown(spoken_lesson)
    document = pypdfium2.PdfDocument(BytesIO(show.page.pdf(prefer_css_page_size=True, tagged=True)))
    for page, told, slide in zip(document, labels, show.slides, strict=True):
        heard = tagged_alternates(page)
        if slide.kind == "step":
            assert heard == [words for kinds, words in told if "motion" not in kinds]
        elif slide.kind == "gather":
            assert heard == [words for kinds, words in told if "standing" in kinds]
        elif slide.kind == "product":
            assert heard == [heard_at(slide, spoken_lesson, slide.last)]
