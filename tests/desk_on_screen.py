"""A desk that is served, and a real Chromium before it: edges and corners are dragged as a hand does it."""

import socket
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import pytest

from foldmath.desk.serving import answering
from foldmath.desk.shelf.shelf import Shelf
from foldmath.desk.visits.desk import Desk

READY = 'body[data-ready]:not([data-ready=""])'
"""What a page says of itself when the sheet can be taken."""

FRAMES = "() => new Promise((drawn) => requestAnimationFrame(() => requestAnimationFrame(drawn)))"


@contextmanager
def served_apart(tmp_path_factory: pytest.TempPathFactory, pictures: Any) -> Iterator[Desk]:
    """Serve a desk with a folder, and a history of acts, of its own."""
    with pytest.MonkeyPatch.context() as state:
        state.setenv("XDG_STATE_HOME", str(tmp_path_factory.mktemp("state")))
        with served(tmp_path_factory.mktemp("lessons"), pictures) as desk:
            yield desk


@contextmanager
def served(folder: Path, pictures: Any, language: str = "en-US") -> Iterator[Desk]:
    """Serve a desk on a free port."""
    listening = socket.socket()
    listening.bind(("127.0.0.1", 0))
    desk = Desk(
        shelf=Shelf(folder.resolve()),
        port=listening.getsockname()[1],
        language=language,
        pictures=pictures,
    )
    with answering(desk, listening, lambda: None):
        yield desk


@dataclass
class Bench:
    """The folding page of a lesson in a browser.

    Args:
        page: where it shows.
        complaints: what the browser said in its console.
        session: by which fingers are sent; one is begun when it is needed.
    """

    page: Any
    complaints: list[str]
    session: Any = None

    def wait(self) -> None:
        """Wait until the sheet can be taken."""
        self.page.wait_for_selector(READY)

    def settle(self) -> None:
        """Wait until what hands did is heard, which comes before the next frame is drawn, and done."""
        self.page.evaluate(FRAMES)
        self.wait()

    def steps(self) -> list[str]:
        """Give the sentences of the list of steps, as they are written."""
        lines = self.page.get_by_role("list", name="Steps").locator(".sentence")
        return [line.get_attribute("data-written") for line in lines.all()]

    def coming(self) -> str:
        """Give the sentence of the fold to come."""
        return self.page.locator("#coming").inner_text().strip()

    def spoken(self) -> str:
        """Give what is said to those who listen, once it is."""
        return self.page.wait_for_selector("#spoken:not(:empty)", state="attached").inner_text()

    def middle_of(self, name: str) -> tuple[float, float]:
        """Give where an edge or a corner is on the screen."""
        box = self.page.get_by_role("button", name=name, exact=True).locator(".mark").bounding_box()
        return box["x"] + box["width"] / 2, box["y"] + box["height"] / 2

    def size(self) -> tuple[float, float]:
        """Give how wide and high the whole sheet is on the screen."""
        box = self.page.locator(".bench-picture .whole").bounding_box()
        return box["width"], box["height"]

    def carry(self, name: str, across: float, down: float) -> None:
        """Take an edge or a corner with the mouse and hold it elsewhere, by shares of the whole sheet."""
        x, y = self.middle_of(name)
        width, height = self.size()
        mouse = self.page.mouse
        mouse.move(x, y)
        mouse.down()
        for part in (0.3, 0.7, 1):
            mouse.move(x + part * across * width, y + part * down * height)

    def let_go(self) -> None:
        """Let go of what the mouse holds, and wait for the sheet to lie."""
        self.page.mouse.up()
        self.settle()

    def touch(self, kind: str, *fingers: tuple[float, float]) -> None:
        """Send a touch of fingers at places on the screen: ``touchStart``, ``touchMove`` or ``touchEnd``."""
        points = [{"x": x, "y": y, "id": number} for number, (x, y) in enumerate(fingers)]
        self.session = self.session or self.page.context.new_cdp_session(self.page)
        self.session.send("Input.dispatchTouchEvent", {"type": kind, "touchPoints": points})
