"""A real Chromium for tests of the slides; they are skipped where none is installed."""

from contextlib import contextmanager
from dataclasses import dataclass, field
from pathlib import Path

import pytest
from chromium import new_windows, until
from conftest import LESSONS, NAMES
from lessons_in_words import EIGHTHS, core_sheet, proved

from foldmath.lesson.proving import ProvedLesson
from foldmath.making import proved_lesson
from foldmath.slides.page import slides_html
from foldmath.slides.slides import Slide, slide_show

SCREENS = {"old": (1024, 768), "wide": (1280, 800), "full": (1920, 1080)}
SCREENS |= {"tablet": (768, 1024), "phone": (390, 844), "zoomed": (320, 256)}
"""Windows in CSS pixels; the last is 1280 by 1024 at a zoom of 400 % (W3C, WCAG 2.2, 1.4.10)."""

ALL = sorted(path.stem for path in LESSONS.glob("*.toml"))

MADE_UP = {
    "halvings": (*EIGHTHS, "open"),
    "behind": (
        "fold top edge to bottom edge, behind",
        "fold at 1/3 moving left, behind",
        "open last",
        "open",
    ),
    "gate": ("fold both edges to middle", "fold top and bottom edges to middle", "open"),
    "pleat": ("pleat width into 5", "pleat height into 3", "open last", "open"),
    "slanted": (
        "fold bottom left corner to top right corner",
        "fold along (0, 0) (1, 1) moving (0, 1)",
        "open",
    ),
    "cut": (*EIGHTHS, "open", "slit at height 1/2 from 1/4 to 3/4", EIGHTHS[0], "open"),
    "turned": (
        *EIGHTHS[:2],
        "turn over",
        "fold at 1/3 moving left",
        "turn left",
        "open last",
        "turn right",
        "open",
    ),
    "refolded": (*EIGHTHS, "open", "fold left edge to 1/3", "open", "turn over", *EIGHTHS[:1], "open"),
}
"""Steps that turn, refold and open in ways that our own lessons do not."""


@dataclass(kw_only=True)
class Show:
    """Slides open in a browser, and what the browser said and asked for meanwhile."""

    page: object
    made: ProvedLesson
    slides: tuple[Slide, ...]
    complaints: list[str] = field(default_factory=list)
    asked: list[str] = field(default_factory=list)

    def place(self) -> tuple[int, int]:
        """Give the number of the scene that shows, from 1, and its reveal."""
        scene, _, reveal = self.page.evaluate("location.hash").removeprefix("#scene-").partition("-")
        return int(scene), int(reveal or 0)

    def go(self, scene: int, reveal: int) -> None:
        """Go to a place by its address."""
        self.page.evaluate(f"location.hash = '#scene-{scene}-{reveal}'")
        self.wait_until(f"now.scene === {scene - 1} && now.reveal === {reveal}")

    def wait_until(self, true: str) -> None:
        """Wait until an expression is true."""
        until(self.page, lambda: self.page.evaluate(true), true)

    def press(self, *keys: str) -> None:
        """Press keys, one after the other."""
        for key in keys:
            self.page.keyboard.press(key)

    def seen(self) -> list[str]:
        """Give the words of the revealed parts that show, in the order in which they were revealed."""
        return self.page.evaluate(
            """[...document.querySelectorAll('.scene.here :is(p, div)[data-from]')]
               .filter((part) => part.checkVisibility({ visibilityProperty: true }))
               .map((part) => spoken(part).replace(/\\s+/g, ' ').trim())"""
        )


@contextmanager
def showing(browser, folder):
    """Give a function that opens the slides of a lesson in a browser, by way of a file in a folder."""
    contexts = []

    def show(made: ProvedLesson, screen: str = "wide", *, calm: bool = True) -> Show:
        width, height = SCREENS[screen]
        context = new_windows(
            browser,
            viewport={"width": width, "height": height},
            reduced_motion="reduce" if calm else "no-preference",
        )
        contexts.append(context)
        path = folder / "slides.html"
        path.write_text(slides_html(slide_show(made, core_sheet(made))), encoding="utf-8")
        told = Show(page=context.new_page(), made=made, slides=slide_show(made, core_sheet(made)).slides)
        told.page.on("console", lambda message: told.complaints.append(message.text))
        told.page.on("pageerror", lambda error: told.complaints.append(str(error)))
        told.page.on("request", lambda request: told.asked.append(request.url))
        told.page.goto(path.as_uri())
        told.wait_until("here().fittedTo.endsWith('true')")
        return told

    yield show
    for context in contexts:
        context.close()


@pytest.fixture
def shown_in(tmp_path):
    """Give a function that gives such a one in a browser of one's own."""
    return lambda browser: showing(browser, tmp_path)


@pytest.fixture
def shown(chromium, shown_in):
    """Give a function that opens the slides of a lesson."""
    with shown_in(chromium) as show:
        yield show


@pytest.fixture(scope="session", params=NAMES)
def lesson(request) -> ProvedLesson:
    """Give each of our own lessons in turn."""
    return proved_lesson(Path(LESSONS / f"{request.param}.toml"))[0]


@pytest.fixture(scope="session")
def eighths() -> ProvedLesson:
    """Give three halvings, opened, and one product."""
    return proved(
        "fold left edge to right edge",
        "fold top edge to bottom edge",
        "fold left edge to right edge",
        "open",
        practice=("2/3 × 4/5",),
    )


@pytest.fixture(scope="session")
def gathering() -> ProvedLesson:
    """Give a sheet that is slit and gathered."""
    halvings = (
        "fold left edge to right edge",
        "fold top edge to bottom edge",
        "fold left edge to right edge",
    )
    return proved(*halvings, "open", "slit at height 1/2 from 1/4 to 3/4", "gather into booklet")


@pytest.fixture(scope="session", params=[*ALL, *MADE_UP])
def folded(request) -> ProvedLesson:
    """Give each of our own lessons in turn, and those made up."""
    if request.param in MADE_UP:
        return proved(*MADE_UP[request.param])
    return proved_lesson(LESSONS / f"{request.param}.toml")[0]
