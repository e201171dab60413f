"""The tag tree: takes what is painted and what it is, page by page, gives the elements as objects of a file.

Source: ISO 32000-1:2008, 14.7.4 (structure content).
"""

from array import array
from collections.abc import Iterator
from contextlib import contextmanager
from itertools import chain
from typing import NamedTuple

from foldmath.pages.tags.branches import Branch, Group, Twig, names
from foldmath.pages.tags.kinds import Tag
from foldmath.pages.tags.spoken import OPEN

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


class Growth:
    """Grows a tree, page by page, and tells its elements as objects."""

    def __init__(self) -> None:
        self._objects: list[str] = []
        self._named: list[list[int]] = []
        self._told = 0
        self._groups: list[tuple[int, Group]] = []
        self._document = Group(Tag("Document"), DOCUMENT)
        self._open = self._document
        self._pages: list[int] = []
        self._owners: list[int] = []
        self.level = 0

    @contextmanager
    def section(self, tag: Tag) -> Iterator[None]:
        """Hold the pages of a document in an element of their own."""
        self._open = self._document.begun(tag, self._section)
        yield
        self._open = self._document

    def grow(self, branch: Branch, x: float, y: float) -> str:
        """Grow by what is placed at (x, y) on a page, in points, and give its operators."""
        first = len(self._owners)
        for twig in branch.twigs:
            self._grow(twig, x, y)
        self.level = branch.level
        return branch.code % tuple(range(first, len(self._owners)))

    def end_page(self) -> None:
        """Go on with the next page."""
        self._pages.append(self._told)
        self._tell(f"[{names(len(self._owners), '%d')}]", self._owners, 1)
        self._owners = []

    def told(self) -> Told:
        """Tell the tree, whose sections are ended."""
        for place, group in self._groups:
            self._objects[place] += f"/K[{names(len(group.children), '%d')}]{group.tag.more}>>"
            self._named[place] += group.children
        return Told(
            "\n".join(self._objects).encode(),
            array("i", chain.from_iterable(self._named)),
            tuple(self._document.children),
            tuple(self._pages),
        )

    def _grow(self, twig: Twig, x: float, y: float) -> None:
        around = self._open.begun(twig.around, self._begin) if twig.around else self._open
        first, mark = self._told, len(self._owners)
        around.take([first + number for number in twig.outer])
        self._owners += [first + number for number in twig.owners]
        objects = twig.objects % tuple(range(mark, len(self._owners)))
        for bounds in twig.bounds:
            objects = objects.replace(OPEN, bounds.told_at(x, y), 1)
        numbers = [*range(first, first + twig.elements), -1 - len(self._pages), around.number]
        self._tell(objects, [numbers[one] for one in twig.named], twig.elements)

    def _section(self, tag: Tag) -> Group:
        return self._group(tag, f"{DOCUMENT}", [])

    def _begin(self, tag: Tag) -> Group:
        return self._group(tag, "%d", [self._open.number])

    def _group(self, tag: Tag, parent: str, named: list[int]) -> Group:
        group = Group(tag, self._told)
        self._groups.append((len(self._objects), group))
        self._tell(f"<</S/{tag.kind}/P {parent} 0 R", named, 1)
        return group

    def _tell(self, objects: str, named: list[int], count: int) -> None:
        """Tell so many objects, and what they name."""
        self._objects.append(objects)
        self._named.append(named)
        self._told += count
