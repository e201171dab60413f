"""Every page of the desk in each of its states: fit for every screen, and for who sees it otherwise."""

import re

import pytest
from chromium import new_windows
from desk.test_attacks import served
from desk_on_screen import READY

SCREENS = {"phone": (360, 740), "usual": (1280, 800), "wall": (3840, 2160), "400 %": (320, 256)}
WIDER = "document.documentElement.scrollWidth - document.documentElement.clientWidth"
BROKEN = 'title = "Beds"\ngrade = 9\npaper = "letter"\nsteps = ["open", 7]\n'
EMPTY = 'title = "Sails"\ngrade = 4\npaper = "A4"\nsteps = []\n'


@pytest.fixture(scope="module")
def desk(tmp_path_factory):
    folder = tmp_path_factory.mktemp("lessons")
    (folder / "beds.toml").write_text(BROKEN, encoding="utf-8")
    (folder / "sails.toml").write_text(EMPTY, encoding="utf-8")
    with served(folder) as (_, port, entry):
        yield f"http://127.0.0.1:{port}", entry


@pytest.fixture(scope="module")
def window(chromium, desk):
    """Give a function that opens a window that was let in; one for each way to see."""
    site, entry = desk
    opened = {}

    def of(**eyes):
        if str(eyes) not in opened:
            page = new_windows(chromium, reduced_motion="reduce", **eyes).new_page()
            page.goto(site + entry)
            if page.get_by_role("link", name=re.compile("Seed trays")).count() == 0:
                page.get_by_role("button", name=re.compile("Seed trays")).click()
            page.site = site
            opened[str(eyes)] = page
        return opened[str(eyes)]

    yield of
    for page in opened.values():
        page.context.close()


def at(place):
    return lambda page: page.goto(page.site + place)


def folding(page):
    page.goto(page.site + "/lesson/seed-trays/fold")
    page.wait_for_selector(READY)


def all_told(page):
    folding(page)
    page.locator("#more > summary").click()
    page.wait_for_selector("#more-told h3")
    open_all(page, "#more-told summary")


def ways_shown(page):
    folding(page)
    page.get_by_role("button", name="Shade", exact=True).click()


def slipped(page):
    folding(page)
    page.get_by_label("Add a step").fill("fold lft")
    page.keyboard.press("Enter")
    page.wait_for_selector("#slip:not(:empty)")


def in_the_hand(page):
    folding(page)
    page.locator(".sentence").first.click()
    page.get_by_role("button", name="top edge", exact=True).focus()
    for key in ("Enter", "ArrowDown"):
        page.keyboard.press(key)


def all_open(place):
    def done(page):
        page.goto(page.site + place)
        open_all(page, "summary")

    return done


def open_all(page, summaries):
    for summary in page.locator(summaries).all():
        summary.click()


def own_words_refused(page):
    """Write an item that can be and one that cannot; the first is refused too once it stands there."""
    page.goto(page.site + "/lesson/seed-trays/practice")
    for asked in ("1/2 × 3/4", "1/2 times 3/4"):
        form = page.locator("#own")
        if not form.get_by_label("Your words").is_visible():
            page.locator("#own > summary").click()
        form.get_by_label("Your words").fill("A bed is 3/4 planted. How much is 1/2 of that?")
        form.get_by_label("The sum behind them").fill(asked)
        form.get_by_role("button", name="Add this item").click()
    page.wait_for_selector("#own [aria-invalid=true]")
    page.locator("li summary").first.click()


def marked(page):
    page.goto(page.site + "/lesson/seed-trays/mark")
    page.get_by_label(re.compile("^Students")).fill("Ada Reed\nBo Marsh")
    page.get_by_role("button", name="Show the grid").click()
    page.get_by_label("Ada Reed, 1", exact=True).fill("6/8")
    page.keyboard.press("Tab")
    page.wait_for_selector("[data-verdict=WRONG]")
    page.get_by_role("button", name="Mark the class").click()
    page.wait_for_selector(".made")


STATES = {
    "shelf": at("/"),
    "new": at("/new?wish=4&grade=5&paper=A4&orientation=landscape"),
    "a goal refused": at("/new?wish=26 panels&grade=5&paper=A4&orientation=landscape"),
    "all told of a step": all_told,
    "ways of an act": ways_shown,
    "a slip": slipped,
    "an edge in the hand, a line as a field": in_the_hand,
    "practice": all_open("/lesson/seed-trays/practice?answers=1"),
    "own words refused": own_words_refused,
    "print": all_open("/lesson/seed-trays/print"),
    "project": at("/lesson/seed-trays/project"),
    "mark": at("/lesson/seed-trays/mark"),
    "marked": marked,
    "text with slips": at("/lesson/beds/text"),
    "nothing folded": at("/lesson/sails/print"),
    "an empty sheet": at("/lesson/sails/fold"),
    "checked": at("/check?claim=4 × 1/2 = 8"),
    "parts": at("/parts?parts=5"),
    "no such page": at("/nothing"),
}


@pytest.mark.sweep("all told of a step", "practice", "print", "marked")
@pytest.mark.parametrize("state", STATES)
def test_no_page_is_wider_than_its_window(window, state):
    page = window()
    page.set_viewport_size({"width": 1280, "height": 800})
    STATES[state](page)
    wider = {}
    for screen, (width, height) in SCREENS.items():
        page.set_viewport_size({"width": width, "height": height})
        wider[screen] = page.evaluate(WIDER)
    assert {screen: by for screen, by in wider.items() if by > 0} == {}


LIGHT, DARK, FORCED = {"color_scheme": "light"}, {"color_scheme": "dark"}, {"forced_colors": "active"}
# Forced colors are the browser's, so only what a page does besides is looked at.
IN_FORCED_COLORS = ("an edge in the hand, a line as a field", "practice", "marked")
OFTEN = (
    "all told of a step",
    "own words refused",
    "practice",
    "print",
    "marked",
    "text with slips",
    "checked",
)
EYES = [
    pytest.param(eyes, state, marks=[] if eyes is LIGHT and state in OFTEN else pytest.mark.sweep)
    for eyes, states in ((LIGHT, STATES), (DARK, STATES), (FORCED, IN_FORCED_COLORS))
    for state in states
]


@pytest.mark.parametrize(("eyes", "state"), EYES, ids=str)
def test_axe_finds_nothing(window, state, eyes):
    axe = pytest.importorskip("axe_playwright_python.sync_playwright", reason="axe is not installed").Axe()
    page = window(**eyes)
    STATES[state](page)
    found = axe.run(page).response["violations"]
    assert [(one["id"], [node["html"][:120] for node in one["nodes"]][:3]) for one in found] == []
