"""Marking what is painted: ink on a page is a leaf of the tag tree, or an artifact, which is not read aloud.

Source: ISO 32000-1:2008, 14.6 (marked content), 14.7.4 (structure content), 14.8.2.2 (artifacts).
"""

from collections.abc import Iterator
from contextlib import contextmanager
from typing import Any, NamedTuple

from foldmath.pages.tags.kinds import LEVELS, Tag, heading
from foldmath.pages.tags.spoken import END, Ink
from foldmath.pages.tags.tree import ROOT, Tree


class Place(NamedTuple):
    """Where a picture stands: its left, bottom, width and height, in points as the canvas lies."""

    left: float
    bottom: float
    width: float
    height: float


class _Open:
    """An element that is being filled, and its last child, with what kind that is."""

    def __init__(self, number: int) -> None:
        self.number = number
        self.last, self.last_kind = ROOT, ""


class Tags:
    """Writes marks on the pages of a file as they are painted, and grows the file's tree.

    What is painted inside a leaf or an artifact belongs to it, whatever it is elsewhere.
    """

    def __init__(self, canvas: Any, tree: Tree) -> None:
        self.canvas, self.tree = canvas, tree
        self.open = [_Open(ROOT)]
        self.sealed = False
        self.level = 0
        self.filled: int | None = None

    @contextmanager
    def group(self, tag: Tag | None) -> Iterator[None]:
        """Hold all that is painted within in one element; None holds it in no element of its own."""
        if tag is None or self.sealed:
            yield
            return
        kind, more, goes_on = tag
        around = self.open[-1]
        if not (goes_on and around.last_kind == kind):
            around.last, around.last_kind = self.tree.group(kind, around.number, more), kind
        self.open.append(_Open(around.last))
        yield
        self.open.pop()

    @contextmanager
    def leaf(self, tag: Tag, place: Place | None = None) -> Iterator[None]:
        """Make all that is painted within one leaf of the tree; a picture says its place."""
        if self.sealed:
            yield
            return
        kind, more, _ = self._below_the_last(tag) if tag.kind in LEVELS else tag
        around = self.open[-1]
        mark = self.tree.leaf(kind, around.number, more + self._bounds(place) if place else more)
        self.filled, around.last_kind = len(self.tree.elements) - 1, kind
        with self._marked(f"/{kind} <</MCID {mark}>> BDC"):
            yield
        self.filled = None

    def marked(self, ink: Ink) -> str:
        """Give ink whose parts stand for words, each marked in the leaf that is being filled."""
        if self.filled is None:
            return ink.code
        return ink.marked % tuple(self.tree.go_on(self.filled, ink.marks)) if ink.marks else ink.code

    def _below_the_last(self, tag: Tag) -> Tag:
        """Give a heading its level: at most one below that of the heading before it (ISO 14289-1, 7.4.2)."""
        self.level = min(LEVELS[tag.kind], self.level + 1)
        return heading(self.level)

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

    def _bounds(self, place: Place) -> str:
        """Say where a picture stands on its page (ISO 32000-1:2008, 14.8.5.4.3)."""
        left, bottom, width, height = place
        corners = [
            self.canvas.absolutePosition(x, y)
            for x, y in ((left, bottom), (left + width, bottom), (left + width, bottom + height))
        ]
        across, up = zip(*corners, (corners[0][0], corners[2][1]), strict=True)
        return f"/A<</O/Layout/BBox[{min(across):.2f} {min(up):.2f} {max(across):.2f} {max(up):.2f}]>>"
