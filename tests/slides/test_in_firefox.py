"""What differs between browsers, in a real Firefox: motion, fitting, two windows, keys, and print."""

import base64
from io import BytesIO
from time import monotonic, sleep

import pypdfium2
import pytest
from conftest import LESSONS
from firefox import started_firefox
from lessons_in_words import core_sheet
from svg_paths import corners_of

from foldmath.making import proved_lesson
from foldmath.slides.page import slides_html
from foldmath.slides.slides import slide_show

PATIENCE_S = 120
SIZES = [(1024, 768), (1280, 800), (1920, 1080), (768, 1024), (520, 900)]
"""Windows in CSS pixels; Firefox makes none narrower than about 500."""


@pytest.fixture(scope="module")
def firefox(tmp_path_factory):
    driver = started_firefox(tmp_path_factory.mktemp("firefox"))
    yield driver
    driver.quit()


@pytest.fixture
def opened(firefox, tmp_path):
    """Give a function that opens the slides of one of our lessons at a place."""

    def show(name, place="#scene-1"):
        made, _ = proved_lesson(LESSONS / f"{name}.toml")
        path = tmp_path / f"{name}.html"
        path.write_text(slides_html(slide_show(made, core_sheet(made))), encoding="utf-8")
        firefox.get("about:blank")
        firefox.get(path.as_uri() + place)
        return slide_show(made, core_sheet(made)).slides

    yield show
    first, *others = firefox.window_handles
    for handle in others:
        firefox.switch_to.window(handle)
        firefox.close()
    firefox.switch_to.window(first)


def value(firefox, expression):
    return firefox.execute_script(f"return {expression}")


def wait_until(firefox, true):
    end = monotonic() + PATIENCE_S
    while not value(firefox, true):
        assert monotonic() < end, f"never came true: {true}"
        sleep(0.02)


def press(firefox, *names):
    keys = pytest.importorskip("selenium.webdriver.common.keys").Keys
    chains = pytest.importorskip("selenium.webdriver").ActionChains
    for name in names:
        chains(firefox).send_keys(getattr(keys, name, name)).perform()


def place(firefox):
    scene, _, reveal = value(firefox, "location.hash").removeprefix("#scene-").partition("-")
    return int(scene), int(reveal or 0)


OVERFLOW = """(() => { const scene = document.querySelector('.scene.here'), page = document.documentElement;
    return [page.scrollWidth - innerWidth, scene.scrollWidth - scene.clientWidth,
            page.scrollHeight - innerHeight, scene.scrollHeight - scene.clientHeight]; })()"""


@pytest.mark.sweep
@pytest.mark.parametrize("size", SIZES, ids=str)
def test_every_slide_fits_and_none_is_wider_than_the_window(firefox, opened, size):
    told = opened("sail-cloth")
    wide, high = size
    extra = value(firefox, "[outerWidth - innerWidth, outerHeight - innerHeight]")
    firefox.set_window_size(wide + extra[0], high + extra[1])
    wait_until(firefox, f"Math.abs(innerWidth - {wide}) < 3")
    for number, slide in enumerate(told, start=1):
        for reveal in sorted({0, slide.last}):
            firefox.execute_script(f"goTo({number - 1}, {reveal})")
            across, inside, *down = value(firefox, OVERFLOW)
            assert max(across, inside) <= 1
            if wide > high:
                assert max(down) <= 1


@pytest.mark.sweep
def test_every_place_is_reached_by_one_key(firefox, opened):
    told = opened("seed-trays")
    places = [(number, reveal) for number, slide in enumerate(told, 1) for reveal in range(slide.last + 1)]
    assert place(firefox) == (1, 0)
    for wanted in places[1:]:
        press(firefox, "PAGE_DOWN")
        assert place(firefox) == wanted
    assert place(firefox)[0] == len(told)


def test_paper_in_motion_lies_where_it_does_in_the_other_browser(firefox, opened):
    """Half the sheet a third of the way over: its far edge has come 60° up, by hand reckoning."""
    opened("seed-trays", "#scene-3-1")
    firefox.execute_script("scrubTo(1 / 3)")
    selector = "#scene-3 .stage [data-moves='1'] .first .paper"
    path = value(firefox, f'document.querySelector("{selector}").getAttribute("d")')
    (spots,) = corners_of(path)
    left = min(x for x, _ in spots)
    # The crease is at 30 of 60 mm, the edge 26.8 mm from it; 26.8 cos 60° = 13.4 across, 23.2 up, eye at 240.
    assert left == pytest.approx(30 - 13.4 * 240 / (240 - 23.21), abs=0.05)
    assert (
        value(
            firefox,
            "getComputedStyle(document.querySelector('.scene.here').querySelector('.motion')).visibility",
        )
        == "visible"
    )


@pytest.mark.sweep
def test_notes_open_in_a_second_window_and_both_go_together(firefox, opened):
    opened("seed-trays", "#scene-4-1")
    press(firefox, "n")
    wait_windows(firefox, 2)
    front, desk = firefox.window_handles
    firefox.switch_to.window(desk)
    wait_until(firefox, "document.querySelector('#strip-4.here') !== null")
    assert "Predict" in value(firefox, "document.querySelector('.strip.here').innerText")
    press(firefox, "PAGE_DOWN", "PAGE_DOWN")
    counted = "document.querySelector('.scene.here .opened').checkVisibility({ visibilityProperty: true })"
    wait_until(firefox, counted)
    firefox.refresh()
    wait_until(firefox, f"document.querySelector('#strip-4.here') !== null && {counted}")
    firefox.switch_to.window(front)
    assert place(firefox) == (4, 3)
    assert not value(firefox, "document.querySelector('.strip').checkVisibility()")


def wait_windows(firefox, count):
    end = monotonic() + PATIENCE_S
    while len(firefox.window_handles) < count:
        assert monotonic() < end, "no second window came"
        sleep(0.05)


@pytest.mark.sweep
def test_a_count_down_and_the_place_survive_a_reload(firefox, opened):
    opened("seed-trays", "#scene-5-2")
    firefox.execute_script("act('clock', 5)")
    firefox.refresh()
    assert place(firefox) == (5, 2)
    assert not value(firefox, "document.getElementById('clock').hidden")
    firefox.execute_script("act('clock', 0)")


@pytest.mark.sweep
def test_printed_from_the_browser_each_slide_is_one_page(firefox, opened):
    told = opened("seed-trays", "#scene-5-5")
    printing = pytest.importorskip("selenium.webdriver.common.print_page_options").PrintOptions()
    printing.page_width, printing.page_height = 33.87, 19.05
    printing.margin_top = printing.margin_bottom = printing.margin_left = printing.margin_right = 0
    document = pypdfium2.PdfDocument(BytesIO(base64.b64decode(firefox.print_page(printing))))
    assert len(document) == len(told)
    for page in document:
        assert "".join(page.get_textpage().get_text_range().split())
