"""A newcomer's first lesson in Chromium, from nothing to printed pages: by mouse, by finger, by pen, by keys.

Eighths are folded, looked at, made and projected, in a folder that was empty.
"""

import re
from contextlib import contextmanager

import pytest
from chromium import new_windows, whole_beside
from desk.test_attacks import served
from desk_on_screen import Bench

from foldmath.pages.page_pictures import page_count

HALVINGS = (("left edge", 0.97, 0), ("top edge", 0, 0.97), ("left edge", 0.47, 0))
"""What is carried, and how far, by shares of the whole sheet; the last time half of it lies there."""

EIGHTHS = [
    "fold the left edge to the right edge",
    "fold the top edge to the bottom edge",
    "fold the left edge to the right edge",
    "open the sheet",
]
MOST_TAPS = 3
SECONDS_TO_HEAR_A_TAP = 20
MOST_TABS = 80
"""So many presses of Tab reach anything on any page."""


@pytest.fixture(scope="module")
def desk(tmp_path_factory):
    folder = tmp_path_factory.mktemp("lessons")
    with served(folder) as (_, port, entry):
        yield folder, f"http://127.0.0.1:{port}{entry}"


class ByMouse:
    """Presses and carries with a mouse."""

    def __init__(self, bench):
        self.bench, self.page = bench, bench.page

    def press(self, role, name):
        self.page.get_by_role(role, name=name, exact=True).click()

    def type(self, label, text):
        self.page.get_by_label(label).fill(text)

    def carry(self, name, across, down):
        self.bench.carry(name, across, down)
        self.bench.let_go()


class ByPen(ByMouse):
    """The same with a pen, which browsers tell from a mouse."""

    def carry(self, name, across, down):
        x, y = self.bench.middle_of(name)
        width, height = self.bench.size()
        session = self.page.context.new_cdp_session(self.page)
        ends = [(x + part * across * width, y + part * down * height) for part in (0.0, 0.5, 1.0)]
        kinds = ["mousePressed", "mouseMoved", "mouseMoved", "mouseReleased"]
        for kind, (at_x, at_y) in zip(kinds, [*ends, ends[-1]], strict=True):
            values = {"type": kind, "x": at_x, "y": at_y, "button": "left", "buttons": 1, "clickCount": 1}
            session.send("Input.dispatchMouseEvent", {**values, "pointerType": "pen"})
        self.bench.settle()


class ByFinger(ByMouse):
    """Taps and drags on a phone."""

    def __init__(self, bench):
        super().__init__(bench)
        self.clicks = 0
        self.page.expose_function("clicked", self._count)
        self.page.add_init_script("document.addEventListener('click', () => window.clicked(), true)")
        self.page.reload()

    def _count(self):
        self.clicks += 1

    def press(self, role, name):
        """Tap as often as a person would: a busy browser now and then makes no click of a touch."""
        before = self.clicks
        for _ in range(MOST_TAPS):
            self.page.get_by_role(role, name=name, exact=True).tap()
            for _ in range(SECONDS_TO_HEAR_A_TAP * 20):
                if self.clicks > before:
                    return
                self.page.wait_for_timeout(50)
        raise AssertionError(f"no tap on {name} becomes a click")

    def carry(self, name, across, down):
        x, y = self.bench.middle_of(name)
        width, height = self.bench.size()
        self.bench.touch("touchStart", (x, y))
        for part in (0.5, 1.0):
            self.bench.touch("touchMove", (x + part * across * width, y + part * down * height))
        self.bench.touch("touchEnd")
        self.bench.settle()


class ByKeys(ByMouse):
    """Never touches anything but keys."""

    def reach(self, wanted):
        """Press Tab until what is wanted has the focus."""
        for _ in range(MOST_TABS):
            if wanted.evaluate("element => element === document.activeElement"):
                return
            self.page.keyboard.press("Tab")
        raise AssertionError("no key reaches it")

    def press(self, role, name):
        self.reach(self.page.get_by_role(role, name=name, exact=True))
        self.page.keyboard.press("Enter")

    def type(self, label, text):
        self.reach(self.page.get_by_label(label))
        self.page.keyboard.type(text)

    def carry(self, name, *_):
        self.reach(self.page.get_by_role("button", name=name, exact=True))
        for key in ("Enter", "ArrowDown", "Enter"):
            self.page.keyboard.press(key)
        self.bench.settle()


PHONE = {"viewport": {"width": 390, "height": 844}, "has_touch": True, "is_mobile": True}
HANDS = {"mouse": ByMouse, "finger": ByFinger, "pen": ByPen, "keys": ByKeys}


@contextmanager
def newcomer(chromium, address, hand, options):
    """Open the desk as it tells to, and hear what the browser complains of."""
    context = new_windows(chromium, reduced_motion="reduce", **options)
    bench = Bench(context.new_page(), [])
    bench.page.on("console", lambda message: bench.complaints.append(message.text))
    bench.page.on("pageerror", lambda error: bench.complaints.append(str(error)))
    bench.page.goto(address)
    yield hand(bench)
    context.close()
    assert bench.complaints == []


@pytest.mark.sweep("mouse")
@pytest.mark.parametrize("name", HANDS)
def test_a_newcomer_folds_eighths_prints_and_projects_them(chromium, desk, name):
    fold_eighths_print_and_project(chromium, desk, f"Trays by {name}", HANDS[name])


@pytest.mark.sweep
def test_a_newcomer_does_it_in_the_browser_with_all_its_windows(chromium, desk):
    with whole_beside(chromium) as browser:
        fold_eighths_print_and_project(browser, desk, "Trays in a window", ByMouse)


def fold_eighths_print_and_project(browser, desk, title, hand):
    folder, address = desk
    with newcomer(browser, address, hand, PHONE if hand is ByFinger else {}) as hand:
        page = hand.page
        hand.press("link", "New lesson")
        hand.type("Title", title)
        hand.press("button", "Take an empty sheet")
        hand.bench.wait()
        for number, carried in enumerate(HALVINGS, start=1):
            hand.carry(*carried)
            page.wait_for_selector(f"#steps li:nth-child({number})")
            hand.bench.wait()
        hand.press("button", "Open")
        page.wait_for_selector("#steps li:nth-child(4)")
        hand.bench.wait()
        assert hand.bench.steps() == EIGHTHS
        assert "8 panels" in page.get_by_role("region", name="What it shows").inner_text()
        hand.press("link", "Print")
        page.get_by_role("img", name=re.compile("page 1 of")).first.wait_for()
        hand.press("button", "Make the pages")
        page.get_by_role("heading", name=re.compile("files are written")).wait_for()
        made = folder / title.lower().replace(" ", "-") / "worksheet.pdf"
        assert page_count(made.read_bytes()) >= 2
        hand.press("link", "Project")
        with page.context.expect_page() as opened:
            hand.press("link", "Open the slides")
        opened.value.get_by_role("heading", name=title).first.wait_for()
