"""The desk in a real Chromium: answers typed into the grid, and two windows on one lesson."""

import re

import pytest
from desk.test_attacks import served


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
