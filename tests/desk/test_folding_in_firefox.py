"""Folding by pointing in a real Firefox: what browsers do differently with a mouse, keys and patterns."""

import tomllib
from time import monotonic, sleep

import pytest
from desk_on_screen import READY, served
from firefox import started_firefox

PATIENCE_S = 60
LESSON = 'title = "Trays"\ngrade = 4\npaper = "letter"\norientation = "landscape"\nsteps = []\n'


@pytest.fixture(scope="module")
def desk(tmp_path_factory, pictures):
    state = pytest.MonkeyPatch()
    state.setenv("XDG_STATE_HOME", str(tmp_path_factory.mktemp("state")))
    with served(tmp_path_factory.mktemp("lessons"), pictures) as desk:
        yield desk
    state.undo()


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


def wait_for(firefox, selector: str):
    end = monotonic() + PATIENCE_S
    while not (found := firefox.find_elements("css selector", selector)):
        assert monotonic() < end, f"never came: {selector}"
        sleep(0.02)
    return found[0]


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


def test_the_back_of_the_paper_is_tinted_by_a_pattern_of_the_page(bench):
    bench.find_element("id", "new-step").send_keys("fold left edge to middle")
    bench.find_element("css selector", "#add button").click()
    back = wait_for(bench, ".paper-now .back > .paper")
    assert "backing" in back.value_of_css_property("fill")
