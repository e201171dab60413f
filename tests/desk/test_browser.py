"""The desk in a real Chromium: a newcomer's first lesson, two windows, and every eye served."""

import re

import pytest
from desk.test_attacks import served

SCREENS = {"phone": (360, 740), "usual": (1280, 800), "wall": (3840, 2160), "zoomed": (320, 256)}
PLACES = ["/", "/new?wish=4&grade=5&paper=A4&orientation=landscape", "/check?claim=4 × 1/2 = 8"]
PLACES += [f"/lesson/seed-trays/{place}" for place in ("practice", "print", "project", "mark")]
WIDER = "document.documentElement.scrollWidth - document.documentElement.clientWidth"


@pytest.fixture(scope="module")
def desk(tmp_path_factory):
    folder = tmp_path_factory.mktemp("lessons")
    with served(folder) as (_, port, entry):
        yield folder, f"http://127.0.0.1:{port}", entry


@pytest.fixture
def page(chromium, desk):
    """Give a page that was let in, and hear what it complains of."""
    _, site, entry = desk
    context = chromium.new_context()
    page = context.new_page()
    complaints = []
    page.on("console", lambda message: complaints.append(message.text))
    page.on("pageerror", lambda error: complaints.append(str(error)))
    page.goto(site + entry)
    page.site = site
    yield page
    context.close()
    assert complaints == []


def test_a_newcomer_goes_from_nothing_to_printed_pages(page, desk):
    folder, _, _ = desk
    page.get_by_role("button", name=re.compile("Seed trays")).click()
    page.get_by_role("link", name="Print", exact=True).click()
    assert page.get_by_role("img", name=re.compile("page 1 of")).count() == 2
    page.get_by_role("button", name="Make the pages").click()
    page.get_by_role("heading", name=re.compile("files are written")).wait_for()
    assert (folder / "seed-trays" / "worksheet.pdf").read_bytes().startswith(b"%PDF")
    page.get_by_role("link", name="Project", exact=True).click()
    with page.context.expect_page() as opened:
        page.get_by_role("link", name="Open the slides").click()
    opened.value.get_by_role("heading", name="Seed trays").first.wait_for()


def test_a_new_lesson_is_begun_by_keys_alone(page):
    page.goto(page.site + "/new")
    page.get_by_label("Title").fill("Boat sails")
    page.get_by_role("button", name="Take an empty sheet").focus()
    page.keyboard.press("Enter")
    page.wait_for_url("**/lesson/boat-sails*/fold")


def test_answers_are_typed_with_tab_and_enter_and_marked_at_once(page):
    take(page)
    page.goto(page.site + "/lesson/seed-trays/mark")
    page.get_by_label(re.compile("^Students")).fill("Ada Reed\nBo Marsh")
    page.get_by_role("button", name="Lay out the grid").click()
    page.get_by_label("Ada Reed, 1", exact=True).wait_for()
    page.keyboard.type("6/8")
    page.keyboard.press("Enter")
    page.keyboard.type("8/15")
    page.keyboard.press("Tab")
    page.wait_for_selector("[aria-label='Bo Marsh, 1'][data-verdict=RIGHT]")
    assert page.get_by_label("Ada Reed, 1", exact=True).get_attribute("data-verdict") == "WRONG"
    assert page.evaluate("document.activeElement.getAttribute('aria-label')") == "Bo Marsh, 2"


def test_the_second_of_two_windows_does_not_write_over_the_first(page):
    take(page)
    place = page.site + "/lesson/seed-trays/practice"
    other = page.context.new_page()
    for window in (page, other):
        window.goto(place)
    for window, product in ((page, "1/2 × 3/5"), (other, "1/4 × 2/3")):
        window.get_by_label("A product of your own").fill(product)
        window.get_by_role("button", name="Add it").click()
        window.wait_for_load_state()
    assert "changed in another window" in other.get_by_role("main").inner_text()
    assert page.get_by_role("button", name="Take out item 3").is_visible()


def take(page):
    if page.get_by_role("link", name=re.compile("Seed trays")).count() == 0:
        page.get_by_role("button", name=re.compile("Seed trays")).click()


@pytest.mark.parametrize("screen", SCREENS)
def test_no_page_is_wider_than_its_window(page, screen):
    take(page)
    page.set_viewport_size(dict(zip(("width", "height"), SCREENS[screen], strict=True)))
    for place in PLACES:
        page.goto(page.site + place)
        assert page.evaluate(WIDER) <= 0, place


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_axe_finds_nothing_on_any_page(page, scheme):
    axe = pytest.importorskip("axe_playwright_python.sync_playwright", reason="axe is not installed").Axe()
    take(page)
    page.emulate_media(color_scheme=scheme)
    for place in PLACES:
        page.goto(page.site + place)
        found = axe.run(page).response["violations"]
        assert [(one["id"], [node["html"][:120] for node in one["nodes"]][:3]) for one in found] == [], place
