"""What the page lets in, and whom it keeps out: nothing, and nobody."""

import pytest
from chromium import until
from lessons_in_words import EIGHTHS, core_sheet, proved

from foldmath.slides.page import slides_html
from foldmath.slides.slides import slide_show

HOSTILE = [
    "</script><img src=x onerror=alert(1)>",
    "</style><style>*{display:none}",
    '"><script>alert(1)</script>',
    "{{ 7 * 7 }}",
    "<!--",
    "' onload='alert(1)",
    "A & B < C",
]


@pytest.mark.parametrize("title", HOSTILE)
def test_a_title_shows_as_text_whatever_it_looks_like(shown, title):
    show = shown(proved(*EIGHTHS, "open", title=title, vocabulary=(title,), practice=("2/3 × 4/5",)))
    assert show.page.locator("#head-1").inner_text() == title
    assert show.page.title() == title
    show.press("ArrowRight")
    assert title in show.page.locator("#scene-2 li >> visible=true").all_inner_texts()[3]
    assert show.page.locator("img").count() == 0
    assert show.page.locator("script:not([type])").count() == 1
    assert show.complaints == []


@pytest.mark.sweep("seed-trays")
def test_nothing_is_asked_of_any_network_and_nothing_goes_wrong(shown, lesson):
    show = shown(lesson, calm=False)
    for _ in range(sum(slide.last + 1 for slide in show.slides) * 2):
        show.press("ArrowRight")
    assert len(show.asked) == 1
    assert show.asked[0].startswith("file:")
    assert show.complaints == []


def test_the_policy_keeps_foreign_scripts_out(shown, eighths):
    show = shown(eighths)
    show.page.evaluate(
        """() => {
            const script = document.createElement('script');
            script.textContent = 'document.title = "taken"';
            document.body.append(script);
            const picture = document.createElement('img');
            picture.src = 'https://example.org/seen.png';
            document.body.append(picture);
        }"""
    )
    until(show.page, lambda: len(show.complaints) > 1, "two complaints")
    assert show.page.title() == "Seed trays"
    assert len(show.complaints) == 2
    assert all("Content Security Policy" in complaint for complaint in show.complaints)


def test_the_page_has_no_handlers_and_no_styles_in_its_tags(shown, eighths):
    show = shown(eighths)
    names = show.page.evaluate(
        """[...document.querySelectorAll('*')]
           .flatMap((one) => one.getAttributeNames().filter((name) => name.startsWith('on')))"""
    )
    assert names == []
    assert " style=" not in slides_html(slide_show(eighths, core_sheet(eighths)))


def violations(show):
    return violations_in(show.page)


def violations_in(page):
    """Check what shows by the rules of WCAG 2.2, as axe-core has them."""
    sync_playwright = pytest.importorskip("axe_playwright_python.sync_playwright")
    found = sync_playwright.Axe().run(page)
    return found.generate_report() if found.violations_count else ""


@pytest.mark.sweep("seed-trays")
def test_axe_finds_nothing_on_any_scene_when_all_of_it_shows(shown, lesson):
    show = shown(lesson)
    for number, slide in enumerate(show.slides, start=1):
        show.go(number, slide.last)
        assert violations(show) == ""


@pytest.mark.sweep
def test_axe_finds_nothing_at_any_reveal_of_any_kind_of_scene_nor_half_way_through_a_motion(shown, gathering):
    """Of scenes of one kind, those of like steps, the first."""
    show = shown(gathering)
    kinds = [(slide.kind, getattr(slide, "does", "")) for slide in show.slides]
    for number, slide in enumerate(show.slides, start=1):
        if kinds.index(kinds[number - 1]) < number - 1:
            continue
        for reveal in range(slide.last + 1):
            show.go(number, reveal)
            assert violations(show) == "", (slide.kind, reveal)
        if show.page.evaluate("stagesHere()"):
            show.page.evaluate("scrubTo(0.4)")
            assert violations(show) == "", slide.kind


def test_axe_finds_nothing_in_the_teachers_window(shown, eighths):
    show = shown(eighths)
    show.go(5, 3)
    with show.page.context.expect_page() as opened:
        show.press("n")
    opened.value.wait_for_selector(".strip.here")
    assert violations_in(opened.value) == ""


def test_axe_finds_nothing_in_the_dialogs_nor_while_time_runs_and_ink_is_wet(shown, eighths):
    show = shown(eighths)
    show.go(5, 5)
    for key in ("l", "m"):
        show.press(key)
        assert violations(show) == ""
        show.press("Escape")
    show.press("d")
    show.page.evaluate("startClock(5)")
    assert violations(show) == ""
    show.press("h")
    assert violations(show) == ""


def test_the_heading_of_a_scene_takes_the_focus_and_the_language_is_told(shown):
    show = shown(proved(*EIGHTHS, language="en-GB"))
    assert show.page.locator("html").get_attribute("lang") == "en-GB"
    show.press("ArrowRight")
    assert show.page.evaluate("document.activeElement.innerText") == "You need"
