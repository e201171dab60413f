"""The desk in a real Firefox: a whole first lesson, and what browsers do differently with mouse and keys."""

import tomllib
from time import monotonic, sleep

import pytest
from desk_on_screen import READY, served_apart
from firefox import started_firefox

PATIENCE_S = 120
LESSON = 'title = "Trays"\ngrade = 4\npaper = "letter"\norientation = "landscape"\nsteps = []\n'
PLACE = "const at = arguments[0].getBoundingClientRect(); return [at.x, at.y]"


@pytest.fixture(scope="module")
def desk(tmp_path_factory, pictures):
    with served_apart(tmp_path_factory, pictures) as desk:
        yield desk


@pytest.fixture(scope="module")
def firefox(tmp_path_factory, desk):
    driver = started_firefox(tmp_path_factory.mktemp("firefox"))
    driver.set_window_size(1280, 900)
    driver.get(desk.address)
    yield driver
    driver.quit()


@pytest.fixture
def bench(firefox, desk):
    """Lay a sheet ready that is not folded."""
    (desk.folder / "trays.toml").write_text(LESSON, encoding="utf-8")
    firefox.get(f"http://127.0.0.1:{desk.port}/lesson/trays/fold")
    wait_for(firefox, READY)
    return firefox


def wait_for(firefox, selector: str, by: str = "css selector"):
    end = monotonic() + PATIENCE_S
    while not (found := firefox.find_elements(by, selector)):
        assert monotonic() < end, f"never came: {selector}"
        sleep(0.02)
    return found[0]


def wait_until_it_rests(firefox, element):
    """Wait until pictures that are still to come move an element no more."""
    place = None
    while (now := firefox.execute_script(PLACE, element)) != place:
        place = now
        sleep(0.1)


def in_file(desk) -> list[str]:
    return tomllib.loads((desk.folder / "trays.toml").read_text("utf-8"))["steps"]


def test_an_edge_is_dragged_and_the_flap_is_seen_meanwhile(bench, desk):
    from selenium.webdriver.common.action_chains import ActionChains

    whole = bench.find_element("css selector", ".bench-picture .whole").rect
    edge = bench.find_element("css selector", '.grip[aria-label="left edge"] .mark')
    hand = ActionChains(bench, duration=50).move_to_element(edge).click_and_hold()
    for _ in range(4):
        hand = hand.move_by_offset(round(whole["width"] / 8), 0)
    hand.perform()
    assert bench.find_element("id", "coming").text == "fold the left edge to the middle"
    assert bench.find_elements("css selector", "#preview .flap-over")
    ActionChains(bench).release().perform()
    wait_for(bench, '[data-written="fold the left edge to the middle"]')
    assert in_file(desk) == ["fold the left edge to the middle"]


@pytest.mark.sweep
def test_keys_alone_fold_and_undo(bench, desk):
    from selenium.webdriver.common.keys import Keys

    corner = bench.find_element("css selector", '.grip[aria-label="top left corner"]')
    bench.execute_script("arguments[0].focus()", corner)
    for key in (Keys.ENTER, Keys.ARROW_DOWN, Keys.ENTER):
        bench.switch_to.active_element.send_keys(key)
    wait_for(bench, "#steps li")
    assert len(in_file(desk)) == 1
    wait_for(bench, READY)
    bench.find_element("id", "undo").send_keys(Keys.ENTER)
    wait_for(bench, "#steps:not(:has(li))")
    assert in_file(desk) == []


@pytest.mark.sweep
def test_the_back_of_the_paper_is_tinted_by_a_pattern_of_the_page(bench):
    bench.find_element("id", "new-step").send_keys("fold left edge to middle")
    bench.find_element("css selector", "#add button").click()
    back = wait_for(bench, ".paper-now .back > .paper")
    assert "backing" in back.value_of_css_property("fill")


@pytest.mark.sweep
def test_a_newcomer_folds_fourths_prints_and_projects_them(firefox, desk):
    """From nothing to a printed page and the slides, by mouse; every page on the way is Firefox's own."""
    from selenium.webdriver.common.keys import Keys

    def click(words, tag):
        found = wait_for(firefox, f'//{tag}[normalize-space()="{words}"]', by="xpath")
        firefox.execute_script("arguments[0].scrollIntoView({block: 'center'})", found)
        wait_until_it_rests(firefox, found)
        found.click()

    firefox.get(f"http://127.0.0.1:{desk.port}/")
    click("New lesson", "a")
    wait_for(firefox, "[name=title]").send_keys("Sails in Firefox")
    click("Take an empty sheet", "button")
    wait_for(firefox, READY)
    for step, count in (("fold left edge to right edge", 1), ("fold top edge to bottom edge", 2)):
        firefox.find_element("id", "new-step").send_keys(step, Keys.ENTER)
        wait_for(firefox, f"{READY} #steps li:nth-child({count})")
    click("Open", "button")
    wait_for(firefox, f"{READY} #steps li:nth-child(3)")
    assert "4 panels" in firefox.find_element("id", "shown").text
    click("Practice", "a")
    wait_for(firefox, ".items .printed")
    click("Print", "a")
    click("Make the pages", "button")
    wait_for(firefox, ".made h2")
    assert (desk.folder / "sails-in-firefox" / "worksheet.pdf").read_bytes().startswith(b"%PDF")
    click("Project", "a")
    click("Open the slides", "a")
    firefox.switch_to.window(firefox.window_handles[-1])
    assert wait_for(firefox, "h1, h2").text
