"""The tag tree: every element of a file in the order of reading, and the marks of its pages; how it grows.

Source: ISO 32000-1:2008, 14.6 (marked content), 14.7.4 (structure content), 14.8.5.4.3 (bounds).
"""

from collections.abc import Iterable
from typing import NamedTuple, TypeAlias

from foldmath.pages.tags.kinds import LEVELS, Tag, heading

ROOT = -1
"""The parent of elements that stand in the document itself."""

GROUP = -1
"""The mark of an element that holds others, and no ink of its own."""


class Element(NamedTuple):
    """An element of the tree.

    Args:
        kind: its structure type.
        parent: the number of the element it stands in, which comes before it.
        page: of the file, from 0, on which its ink is.
        mark: of its ink on that page, the first where it has several.
        more: further entries of its dictionary, as they are written there.
    """

    kind: str
    parent: int
    page: int
    mark: int
    more: str


class Bounds(NamedTuple):
    """Where a picture stands on its page, in points."""

    left: float
    bottom: float
    right: float
    top: float

    def moved(self, x: float, y: float) -> "Bounds":
        """Give the same, moved."""
        left, bottom, right, top = self
        return Bounds(left + x, bottom + y, right + x, top + y)

    @property
    def told(self) -> str:
        """The entry that says so."""
        left, bottom, right, top = self
        return f"/A<</O/Layout/BBox[{left:.2f} {bottom:.2f} {right:.2f} {top:.2f}]>>"


class Begun(NamedTuple):
    """From here on all ink stands in an element, up to where that is ended."""

    tag: Tag


class Filled(NamedTuple):
    """A leaf has its ink, with so many marks; a picture has bounds."""

    tag: Tag
    marks: int
    bounds: Bounds | None


class Ended(NamedTuple):
    """The element that was begun last is ended."""


ENDED = Ended()

Act: TypeAlias = Begun | Filled | Ended
"""What a tree grows by."""


class Tree:
    """Elements in the order of reading; ``marks`` has for every page the element of each of its marks."""

    def __init__(self) -> None:
        self.elements: list[Element] = []
        self.marks: list[list[int]] = []


class _Open:
    """An element that is being filled, and its last child, with what kind that is."""

    def __init__(self, number: int) -> None:
        self.number = number
        self.last, self.last_kind = ROOT, ""


class Growth:
    """Grows a tree, page by page."""

    def __init__(self) -> None:
        self.tree = Tree()
        self._open = [_Open(ROOT)]
        self._level = 0

    def page(self, acts: Iterable[Act]) -> list[str]:
        """Grow by a page, and give what fills the places left open in its operators, in order."""
        marks: list[int] = []
        self.tree.marks.append(marks)
        begins: list[str] = []
        for act in acts:
            if isinstance(act, Filled):
                begins += self._leaf(act, marks)
            elif isinstance(act, Begun):
                self._begin(act.tag)
            else:
                self._open.pop()
        return begins

    def _begin(self, tag: Tag) -> None:
        kind, more, goes_on = tag
        around = self._open[-1]
        if not (goes_on and around.last_kind == kind):
            around.last, around.last_kind = len(self.tree.elements), kind
            self._add(kind, around.number, GROUP, more)
        self._open.append(_Open(around.last))

    def _leaf(self, leaf: Filled, marks: list[int]) -> list[str]:
        kind, more, _ = self._below_the_last(leaf.tag) if leaf.tag.kind in LEVELS else leaf.tag
        around = self._open[-1]
        around.last_kind = kind
        first = len(marks)
        marks += [len(self.tree.elements)] * leaf.marks
        self._add(kind, around.number, first, more + leaf.bounds.told if leaf.bounds else more)
        return [f"/{kind} <</MCID {first}>> BDC", *map(str, range(first + 1, len(marks)))]

    def _add(self, kind: str, parent: int, mark: int, more: str) -> None:
        self.tree.elements.append(Element(kind, parent, len(self.tree.marks) - 1, mark, more))

    def _below_the_last(self, tag: Tag) -> Tag:
        """Give a heading its level: at most one below that of the heading before it (ISO 14289-1, 7.4.2)."""
        self._level = min(LEVELS[tag.kind], self._level + 1)
        return heading(self._level)


def joined(trees: Iterable[Tree]) -> Tree:
    """Join the trees of files whose pages are joined in the same order."""
    whole = Tree()
    for tree in trees:
        first, page = len(whole.elements), len(whole.marks)
        whole.elements += [
            Element(kind, parent if parent == ROOT else parent + first, there + page, mark, more)
            for kind, parent, there, mark, more in tree.elements
        ]
        whole.marks += [[number + first for number in marks] for marks in tree.marks]
    return whole
