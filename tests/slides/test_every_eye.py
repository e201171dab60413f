"""For every eye and screen: high zoom, spaced letters, forced colours, no scripts, the browser's print."""

from collections import Counter
from io import BytesIO

import pypdfium2
import pytest
from chromium import new_windows
from conftest import LESSONS
from lessons_in_words import core_sheet

from foldmath.making import proved_lesson
from foldmath.slides.page import slides_html
from foldmath.slides.slides import slide_show

REACHED = """() => [...document.querySelectorAll('.scene.here .board *, #bar button')]
    .filter((one) => one.checkVisibility({ visibilityProperty: true }) && !one.closest('svg'))
    .every((one) => { const box = one.getBoundingClientRect();
        return box.right <= innerWidth + 1 && box.left >= -1
            && box.bottom + scrollY <= document.documentElement.scrollHeight + 1; })"""


@pytest.mark.sweep("seed-trays")
def test_at_four_hundred_per_cent_everything_is_reached_by_scrolling_down(shown, lesson):
    """320 by 256 CSS pixels are 1280 by 1024 at 400 %: W3C, WCAG 2.2, success criterion 1.4.10 Reflow."""
    show = shown(lesson, "zoomed")
    for number, slide in enumerate(show.slides, start=1):
        show.go(number, slide.last)
        assert show.page.evaluate("document.documentElement.scrollWidth") <= 320
        assert show.page.evaluate(REACHED)


def test_letters_grow_with_the_zoom_to_twice_their_size(shown, eighths):
    """Text can be resized to 200 %: W3C, WCAG 2.2, success criterion 1.4.4."""
    size = "parseFloat(getComputedStyle(document.querySelector('.scene.here p')).fontSize)"
    plain, zoomed = (shown(eighths, name).page.evaluate(size) for name in ("wide", "zoomed"))
    assert 4 * zoomed >= 2 * plain


SPACED = """* { line-height: 1.5 !important; letter-spacing: .12em !important; }
* { word-spacing: .16em !important; }
p { margin-bottom: 2em !important; }"""


@pytest.mark.sweep("seed-trays")
def test_spaced_text_loses_nothing(shown, lesson):
    """W3C, WCAG 2.2, criterion 1.4.12 Text Spacing: line 1.5, paragraph 2, letter .12, word .16 em."""
    show = shown(lesson)
    show.page.evaluate(
        """(css) => { const sheet = new CSSStyleSheet(); sheet.replaceSync(css);
                      document.adoptedStyleSheets = [sheet];
                      for (const scene of scenes) scene.fittedTo = null; fit(); }""",
        SPACED,
    )
    for number, slide in enumerate(show.slides, start=1):
        show.go(number, slide.last)
        clipped = show.page.evaluate(
            """() => { const scene = here(); return [scene.scrollWidth - scene.clientWidth,
                       getComputedStyle(scene).overflowY]; }"""
        )
        assert clipped[0] <= 1
        assert clipped[1] == "auto"


def test_forced_colours_keep_the_outline_and_show_what_is_pressed(shown, eighths):
    show = shown(eighths)
    show.page.emulate_media(forced_colors="active")
    show.go(4, 0)
    show.press("d")
    outline = show.page.evaluate(
        "getComputedStyle(here().querySelector('.before .whole'))['stroke-dasharray']"
    )
    assert outline != "none"
    pressed, other = (
        show.page.evaluate(f"getComputedStyle(find('{name}')).backgroundColor") for name in ("draw", "wipe")
    )
    assert pressed != other


@pytest.fixture
def unscripted(chromium, tmp_path, eighths):
    context = new_windows(chromium, java_script_enabled=False, viewport={"width": 1280, "height": 800})
    path = tmp_path / "slides.html"
    path.write_text(slides_html(slide_show(eighths, core_sheet(eighths))), encoding="utf-8")
    page = context.new_page()
    page.goto(path.as_uri())
    yield page
    context.close()


def test_without_scripts_every_slide_shows_and_the_answers_stand_at_the_end(unscripted):
    told = " ".join(unscripted.locator("body").inner_text().replace("\u00a0", " ").split())
    assert told.count("Predict: how many panels will there be?") == 3
    slides, _, answers = told.partition("Answers")
    assert "4 × 2 = 8 panels" not in slides
    assert "4 × 2 = 8 panels" in answers
    assert "Ask" not in told
    assert not unscripted.locator(".model .hatch").first.is_visible()
    assert not unscripted.locator("#bar").is_visible()


@pytest.mark.parametrize("name", ["seed-trays", "fraction-diary"])
@pytest.mark.parametrize("reveal", [0, 9])
def test_printed_from_the_browser_each_slide_is_one_page_with_its_answers(shown, name, reveal):
    show = shown(proved_lesson(LESSONS / f"{name}.toml")[0])
    show.go(5, min(reveal, show.slides[4].last))
    document = pypdfium2.PdfDocument(BytesIO(show.page.pdf(prefer_css_page_size=True)))
    assert len(document) == len(show.slides)
    for page, slide in zip(document, show.slides, strict=True):
        assert page.get_width() / page.get_height() == pytest.approx(16 / 9, rel=0.01)
        lost = said_on(show, show.slides.index(slide)) - signs(page.get_textpage().get_text_range())
        assert not lost, slide.kind


def said_on(show, index):
    """Count the signs of all that a slide says, revealed or not."""
    return signs(show.page.evaluate("(index) => spoken(scenes[index].querySelector('.said'))", index))


def signs(text):
    """Count letters and figures: what stands apart by kerning is read back with spaces between."""
    return Counter(sign for sign in text if sign.isalnum())
