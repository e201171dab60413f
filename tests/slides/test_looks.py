"""Every scene on five screens: nothing cut off, nothing too small, nothing over anything else."""

import os
from pathlib import Path
from shutil import copy

import matplotlib
import pytest
from chromium import ENGINE, FLAGS
from lessons_in_words import proved

from foldmath.slides.motion.flaps import CREASE_MM

LEAST_SHARE = 0.05
"""What pupils must read is at least 1/20 of the screen's shorter side high."""

VISIBLE_TEXT = """() => {
    const walker = document.createTreeWalker(document.querySelector('.scene.here'), NodeFilter.SHOW_TEXT);
    const told = [];
    for (let node = walker.nextNode(); node; node = walker.nextNode()) {
        const holder = node.parentElement;
        if (!node.data.trim() || !holder.checkVisibility({ visibilityProperty: true })) continue;
        if (getComputedStyle(holder.closest('.figure') ?? holder).display === 'none') continue;
        const range = document.createRange();
        range.selectNodeContents(node);
        const scale = holder.closest('svg') ? holder.getScreenCTM().a : 1;
        for (const box of range.getClientRects()) {
            told.push({ words: node.data.trim(), size: scale * parseFloat(getComputedStyle(holder).fontSize),
                        label: Boolean(holder.closest('.figure')),
                        left: box.left, top: box.top, right: box.right, bottom: box.bottom });
        }
    }
    return told;
}"""

OVERFLOW = """() => {
    const page = document.documentElement;
    const scene = document.querySelector('.scene.here');
    return [page.scrollWidth - innerWidth, scene.scrollWidth - scene.clientWidth,
            page.scrollHeight - innerHeight, scene.scrollHeight - scene.clientHeight];
}"""

BUTTONS = """() => [...document.querySelectorAll('#bar button')].map((button) => {
    const box = button.getBoundingClientRect();
    return [box.width, box.height, box.left, box.right, box.bottom];
})"""

SCROLLED = "document.documentElement.scrollHeight"

LONG = proved(
    "fold along (1/12, 1/24) (11/12, 5/24) moving (1, 1), behind",
    "fold at 1/24 moving bottom",
    "open",
    title="Tarpaulins and awnings for the boats of the lower yard, cut and creased by the whole class",
    vocabulary=("panel", "crease", "numerator", "denominator", "whole", "equal area", "diagonal", "eyelet"),
    practice=("2 × 5/6", "11/12 × 7/12", "5/3 × 3/2"),
)


@pytest.fixture(params=["old", "wide", "full", "tablet", "phone"])
def screen(request):
    return request.param


def every_end(show):
    """Go to the first and the last reveal of every scene, in turn."""
    for number, slide in enumerate(show.slides, start=1):
        for reveal in sorted({0, slide.last}):
            show.go(number, reveal)
            yield number, slide


def complaints_about(show):
    wide, high = show.page.viewport_size["width"], show.page.viewport_size["height"]
    least = LEAST_SHARE * min(wide, high)
    for _ in every_end(show):
        across, inside, *down = show.page.evaluate(OVERFLOW)
        # In a window that is held upright the page is read by scrolling; on a wall nothing is out of sight.
        if max(across, inside, *(down if wide > high else [])) > 1:
            yield show.place(), "overflows", across, inside, *down
        texts = show.page.evaluate(VISIBLE_TEXT)
        for text in texts:
            if text["size"] < least - 0.01 and not text["label"]:
                yield show.place(), "too small", text
            if text["left"] < -1 or text["right"] > wide + 1:
                yield show.place(), "cut off", text
        yield from ((show.place(), "overlap", pair) for pair in overlapping(texts))
        yield from too_small_pictures(show, min(wide, high))


SIZES = """() => {
    const scale = (svg) => svg.getScreenCTM().a;
    const shown = [...here().querySelectorAll('.pictures > svg')].filter((svg) =>
        svg.checkVisibility({ visibilityProperty: true }));
    return shown.map((svg) => ({
        name: svg.getAttribute('class'),
        stars: [...svg.querySelectorAll('.star')].filter((star) => star.checkVisibility())
            .map((star) => scale(svg) * Math.max(star.getBBox().width, star.getBBox().height)),
        creases: [...svg.querySelectorAll('.old')].map((old) => Number(old.getAttribute('stroke-width')))
            .map((mm) => [scale(svg) * mm, mm]),
    }));
}"""


def too_small_pictures(show, shorter):
    """The star is 1/40 of the height or more, an old crease 1/300 where panels are not too small for that."""
    for picture in show.page.evaluate(SIZES):
        if picture["name"].split()[0] in ("lying", "opened", "model"):
            if not picture["stars"] or min(picture["stars"]) < shorter / 40:
                yield show.place(), "star", picture
            for pixels, mm in picture["creases"]:
                if pixels < shorter / 300 and mm == CREASE_MM:
                    yield show.place(), "crease", pixels


WIDTH = """() => {
    const board = here().querySelector('.board');
    const [shown] = [...here().querySelectorAll('.pictures > svg')].filter((svg) =>
        svg.checkVisibility({ visibilityProperty: true }));
    const width = shown && !board.classList.contains('slim') && shown.getBoundingClientRect().width;
    return width ? width / innerWidth : null;
}"""


@pytest.mark.sweep("sail-cloth-full")
@pytest.mark.parametrize("name", ["old", "wide", "full"])
def test_on_a_wall_the_picture_has_about_sixty_two_hundredths_of_the_width(shown, lesson, name):
    show = shown(lesson, name)
    widths = [show.page.evaluate(WIDTH) for _ in every_end(show)]
    taken = [width for width in widths if width]
    assert len(taken) > len(show.slides) / 3
    assert [width for width in taken if not 0.58 <= width <= 0.64] == []


def overlapping(texts):
    """Give words of which the middles lie over one another; line boxes may touch."""
    for index, one in enumerate(texts):
        for other in texts[index + 1 :]:
            across = min(one["right"], other["right"]) - max(one["left"], other["left"])
            down = min(one["bottom"], other["bottom"]) - max(one["top"], other["top"])
            least = min(one["bottom"] - one["top"], other["bottom"] - other["top"])
            if across > 1 and down > 0.4 * least:
                yield one["words"], other["words"]


@pytest.mark.sweep("sail-cloth-wide", "sail-cloth-phone")
def test_our_lessons_fit_every_screen(shown, lesson, screen):
    show = shown(lesson, screen)
    assert list(complaints_about(show)) == []


@pytest.mark.sweep("wide")
def test_a_lesson_of_long_words_and_awkward_numbers_fits_every_screen(shown, screen):
    assert list(complaints_about(shown(LONG, screen))) == []


FACES = Path(matplotlib.get_data_path()) / "fonts" / "ttf"
ONLY_THESE = "<fontconfig><dir>{0}</dir><cachedir>{0}</cachedir></fontconfig>"
M_OF_LEXEND = 0.92
"""Of the em (from the font's own table); an m of DejaVu Sans has 0.97."""


def test_slides_bring_their_letters_to_a_computer_that_has_only_others(chromium, shown_in, tmp_path):
    for name in ("DejaVuSans.ttf", "DejaVuSans-Bold.ttf"):
        copy(FACES / name, tmp_path)
    (tmp_path / "fonts.conf").write_text(ONLY_THESE.format(tmp_path), encoding="utf-8")
    told = {**os.environ, "FONTCONFIG_FILE": str(tmp_path / "fonts.conf")}
    browser = chromium.browser_type.launch(executable_path=ENGINE, args=FLAGS, env=told)
    try:
        with shown_in(browser) as shown:
            show = shown(LONG, "old")
            width = show.page.evaluate(
                """() => { const pen = document.createElement('canvas').getContext('2d');
                           pen.font = '100px ' + getComputedStyle(document.body).fontFamily;
                           return pen.measureText('m').width; }"""
            )
            assert width == pytest.approx(100 * M_OF_LEXEND, abs=1)
            assert list(complaints_about(show)) == []
    finally:
        browser.close()


@pytest.mark.sweep("phone")
def test_buttons_are_large_enough_for_a_finger_and_on_the_screen(shown, eighths, screen):
    """44 by 44 CSS pixels: W3C, WCAG 2.2 (2023), success criterion 2.5.5."""
    show = shown(eighths, screen)
    for width, height, left, right, bottom in show.page.evaluate(BUTTONS):
        assert min(width, height) >= 44
        assert left >= 0
        assert right <= show.page.viewport_size["width"]
        assert bottom <= max(show.page.viewport_size["height"], show.page.evaluate(SCROLLED))


def test_digits_keep_clear_of_the_bar_of_their_fraction(shown, eighths):
    show = shown(eighths)
    show.go(5, 5)
    for above, below, size in show.page.evaluate(
        """[...document.querySelectorAll('#scene-5 .answer mfrac')].map((fraction) => {
            const [above, below] = [...fraction.children].map((part) => part.getBoundingClientRect());
            return [above.bottom, below.top, parseFloat(getComputedStyle(fraction).fontSize)];
        })"""
    ):
        assert below - above >= 0.05 * size


@pytest.mark.sweep("wide")
def test_a_sheet_that_is_gathered_has_room_on_every_screen(shown, gathering, screen):
    assert list(complaints_about(shown(gathering, screen))) == []
