"""Marking what is painted: ink on a page is a leaf of the tag tree, or an artifact, which is not read aloud.

Source: ISO 32000-1:2008, 14.6 (marked content), 14.7.4 (structure content), 14.8.2.2 (artifacts).
"""

from collections.abc import Iterator
from contextlib import contextmanager
from typing import Any, NamedTuple
from weakref import proxy

from foldmath.pages.tags.branches import ENDED, Act, Begun, Bounds, Filled
from foldmath.pages.tags.kinds import Tag
from foldmath.pages.tags.spoken import END, OPEN, Ink


class Place(NamedTuple):
    """Where a picture stands: its left, bottom, width and height, in points as the canvas lies."""

    left: float
    bottom: float
    width: float
    height: float


class Tags:
    """Writes marks into what is painted on a canvas, and keeps what the file's tree grows by.

    What is painted inside a leaf or an artifact belongs to it, whatever it is elsewhere. The marks' numbers
    are left open: those of a page are given when it is whole.
    """

    def __init__(self, canvas: Any) -> None:
        # A canvas has its tags; they do not keep it, so that it is let go as soon as its pages are pressed.
        self.canvas = proxy(canvas)
        self.acts: list[Act] = []
        self.sealed = False
        self.marks = 0

    @contextmanager
    def group(self, tag: Tag | None) -> Iterator[None]:
        """Hold all that is painted within in one element; None holds it in no element of its own."""
        if tag is None or self.sealed:
            yield
            return
        self.acts.append(Begun(tag))
        yield
        self.acts.append(ENDED)

    @contextmanager
    def leaf(self, tag: Tag, place: Place | None = None) -> Iterator[None]:
        """Make all that is painted within one leaf of the tree; a picture says its place."""
        if self.sealed:
            yield
            return
        bounds = self._bounds(place) if place else None
        self.marks = 1
        with self._marked(OPEN):
            yield
        self.acts.append(Filled(tag, self.marks, bounds))
        self.marks = 0

    def marked(self, ink: Ink) -> str:
        """Give ink whose parts stand for words, each marked in the leaf that is being filled."""
        if not self.marks:
            return ink.code
        self.marks += ink.marks
        return ink.marked

    @contextmanager
    def artifact(self) -> Iterator[None]:
        """Keep all that is painted within from being read aloud."""
        if self.sealed:
            yield
            return
        with self._marked("/Artifact BMC"):
            yield

    @contextmanager
    def _marked(self, begin: str) -> Iterator[None]:
        self.canvas.addLiteral(begin)
        self.sealed = True
        yield
        self.sealed = False
        self.canvas.addLiteral(END)

    def _bounds(self, place: Place) -> Bounds:
        """Say where a picture stands on its page."""
        left, bottom, width, height = place
        corners = [
            self.canvas.absolutePosition(x, y)
            for x, y in ((left, bottom), (left + width, bottom), (left + width, bottom + height))
        ]
        across, up = zip(*corners, (corners[0][0], corners[2][1]), strict=True)
        return Bounds(min(across), min(up), max(across), max(up))
