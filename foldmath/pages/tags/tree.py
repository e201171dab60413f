"""The tag tree: takes what is painted and what it is, page by page, gives the elements as objects of a file.

Source: ISO 32000-1:2008, 14.6 (marked content), 14.7.4 (structure content), 14.8.5.4.3 (bounds).
"""

from array import array
from collections.abc import Iterable, Sequence
from itertools import chain
from typing import NamedTuple, TypeAlias

from foldmath.pages.tags.kinds import LEVELS, Tag, heading

DOCUMENT = 1
"""The number of the object that everything stands in, in every file."""


class Told(NamedTuple):
    """The tags of some pages that follow each other, as objects of a file.

    They are numbered from 0 in the order in which they are told; a page is named by a number below that: the
    first is -1, the one after it -2. Whoever puts them into a file adds the number of the first.

    Args:
        objects: one a line, as they are written there, with the numbers of what they name left open.
        named: these numbers, in order.
        sections: the numbers of the elements that stand in the document itself.
        marks: the numbers of what tells for each page which element has each of its marks.
    """

    objects: bytes
    named: "array[int]"
    sections: tuple[int, ...]
    marks: tuple[int, ...]


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


class _Group:
    """An element that holds others, and what stands in it so far; the last may be a group that goes on."""

    def __init__(self, tag: Tag, number: int) -> None:
        self.tag, self.number = tag, number
        self.children: list[int] = []
        self.last: _Group | None = None


class Growth:
    """Grows a tree, page by page, and tells its elements as objects."""

    def __init__(self) -> None:
        self._objects: list[str] = []
        self._named: list[list[int]] = []
        self._groups: list[_Group] = []
        self._document = _Group(Tag("Document"), DOCUMENT)
        self._open = [self._document]
        self._marks: list[int] = []
        self._level = 0

    def page(self, acts: Iterable[Act]) -> list[str]:
        """Grow by a page, and give what fills the places left open in its operators, in order."""
        owners: list[int] = []
        begins: list[str] = []
        for act in acts:
            if isinstance(act, Filled):
                begins += self._leaf(act, owners)
            elif isinstance(act, Begun):
                self._begin(act.tag)
            else:
                self._open.pop()
        self._marks.append(len(self._objects))
        self._objects.append(_listed(owners))
        self._named.append(owners)
        return begins

    def told(self) -> Told:
        """Tell the tree, in which all that was begun is ended by now."""
        for group in self._groups:
            self._objects[group.number] += f"/K{_listed(group.children)}{group.tag.more}>>"
            self._named[group.number] += group.children
        return Told(
            "\n".join(self._objects).encode(),
            array("i", chain.from_iterable(self._named)),
            tuple(self._document.children),
            tuple(self._marks),
        )

    def _begin(self, tag: Tag) -> None:
        around = self._open[-1]
        last = around.last
        if not (tag.goes_on and last and last.tag.kind == tag.kind):
            last = _Group(tag, self._element(tag.kind, around))
            self._groups.append(last)
        around.last, last.last = last, None
        self._open.append(last)

    def _leaf(self, leaf: Filled, owners: list[int]) -> list[str]:
        kind, more, _ = self._below_the_last(leaf.tag) if leaf.tag.kind in LEVELS else leaf.tag
        around = self._open[-1]
        around.last = None
        number = self._element(kind, around)
        first, *others = marks = range(len(owners), len(owners) + leaf.marks)
        owners += [number] * leaf.marks
        held = f"[{' '.join(map(str, marks))}]" if others else str(first)
        bounds = leaf.bounds.told if leaf.bounds else ""
        self._objects[number] += f"/Pg %d 0 R/K {held}{more}{bounds}>>"
        self._named[number].append(-1 - len(self._marks))
        return [f"/{kind} <</MCID {first}>> BDC", *map(str, others)]

    def _element(self, kind: str, around: _Group) -> int:
        """Begin to tell an element, and give its number."""
        number = len(self._objects)
        inside = around is not self._document
        self._objects.append(f"<</S/{kind}/P {'%d' if inside else DOCUMENT} 0 R")
        self._named.append([around.number] if inside else [])
        around.children.append(number)
        return number

    def _below_the_last(self, tag: Tag) -> Tag:
        """Give a heading its level: at most one below that of the heading before it (ISO 14289-1, 7.4.2)."""
        self._level = min(LEVELS[tag.kind], self._level + 1)
        return heading(self._level)


def _listed(numbers: Sequence[int]) -> str:
    """Name objects, their numbers left open."""
    return f"[{' '.join(['%d 0 R'] * len(numbers))}]"
