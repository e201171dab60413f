"""The tag tree being written: every element of a file in the order of reading, and the marks of its pages."""

from collections.abc import Iterable
from typing import NamedTuple

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


class Tree:
    """Elements in the order of reading; ``marks`` has for every page the element of each of its marks."""

    def __init__(self) -> None:
        self.elements: list[Element] = []
        self.marks: list[list[int]] = []

    def begin_page(self) -> None:
        """Begin the next page of the file."""
        self.marks.append([])

    def group(self, kind: str, parent: int, more: str) -> int:
        """Add an element that will hold others, and give its number."""
        self.elements.append(Element(kind, parent, len(self.marks) - 1, GROUP, more))
        return len(self.elements) - 1

    def leaf(self, kind: str, parent: int, more: str) -> int:
        """Add an element that has ink on this page, and give its mark there."""
        marks = self.marks[-1]
        marks.append(len(self.elements))
        self.elements.append(Element(kind, parent, len(self.marks) - 1, len(marks) - 1, more))
        return len(marks) - 1

    def go_on(self, number: int, count: int) -> range:
        """Give so many more marks on this page to the element that has the last one."""
        marks = self.marks[-1]
        marks += [number] * count
        return range(len(marks) - count, len(marks))


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
