"""Branches: takes what something painted is, gives what the tag tree grows by wherever that is placed.

Source: ISO 32000-1:2008, 14.6 (marked content), 14.7.4 (structure content), 14.8.5.4.3 (bounds).
"""

from collections.abc import Callable, Iterable, Iterator, Sequence
from itertools import chain
from typing import NamedTuple, TypeAlias

from foldmath.pages.tags.kinds import LEVELS, Tag, heading
from foldmath.pages.tags.spoken import OPEN
from foldmath.values import frozen


class Bounds(NamedTuple):
    """Where a picture stands on its page, in points."""

    left: float
    bottom: float
    right: float
    top: float

    def told_at(self, x: float, y: float) -> str:
        """Give the entry that says so, moved."""
        left, bottom, right, top = self
        return f"/A<</O/Layout/BBox[{left + x:.2f} {bottom + y:.2f} {right + x:.2f} {top + y:.2f}]>>"


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
"""What is painted is one act after the other."""

AROUND, PAGE = -1, -2
"""Stand for the numbers of the element around a twig, and of its page."""


@frozen(kw_only=True)
class Twig:
    """Elements that stand side by side in another, and all that stand in them, numbered in order from 0.

    Args:
        around: what they stand in; None where that is whatever is open.
        elements: how many there are.
        objects: the elements, one a line, with their marks as ``%d``, what they name as ``%%d`` and bounds
            left ``OPEN``.
        named: what they name, in order: elements by their numbers, or ``AROUND`` or ``PAGE``.
        outer: the elements that stand in no other of them.
        owners: the element of each mark.
        bounds: of pictures, in order.
    """

    around: Tag | None
    elements: int
    objects: str
    named: tuple[int, ...]
    outer: tuple[int, ...]
    owners: tuple[int, ...]
    bounds: tuple[Bounds, ...]


class Branch(NamedTuple):
    """What is left by something that is painted, wherever it is placed.

    Args:
        code: its operators, with the numbers of its marks as ``%d``.
        twigs: by which the tree grows.
        level: of the last heading in it, or before it.
    """

    code: str
    twigs: tuple[Twig, ...]
    level: int


def branch(operators: Iterable[str], acts: Sequence[Act], level: int) -> Branch:
    """Make a branch.

    Args:
        operators: what is painted; what its marks are is left ``OPEN``.
        acts: what it is; whatever it begins it ends.
        level: of the heading before it.
    """
    leveled, level = _leveled(acts, level)
    first, *rest = "\n".join(operators).replace("%", "%%").split(OPEN)
    code = "".join([first, *(part for both in zip(_begins(leveled), rest, strict=True) for part in both)])
    return Branch(code, tuple(_twigs(leveled)), level)


def _leveled(acts: Iterable[Act], level: int) -> tuple[list[Act], int]:
    """Give headings their levels: at most one below that of the heading before (ISO 14289-1, 7.4.2)."""
    leveled: list[Act] = []
    for act in acts:
        if isinstance(act, Filled) and act.tag.kind in LEVELS:
            level = min(LEVELS[act.tag.kind], level + 1)
            leveled.append(act._replace(tag=heading(level)))
        else:
            leveled.append(act)
    return leveled, level


def _begins(acts: Iterable[Act]) -> Iterator[str]:
    """Give what fills the places that are left open in operators."""
    for act in acts:
        if isinstance(act, Filled):
            yield f"/{act.tag.kind} <</MCID %d>> BDC"
            yield from ["%d"] * (act.marks - 1)


def _twigs(acts: Iterable[Act]) -> Iterator[Twig]:
    """Part acts into what stands in each of the outermost elements, and what stands in none of them."""
    around: Tag | None = None
    within: list[Act] = []
    depth = 0
    for act in acts:
        depth += isinstance(act, Begun) - isinstance(act, Ended)
        if depth == 1 and isinstance(act, Begun):
            if within:
                yield _twig(None, within)
            around, within = act.tag, []
        elif depth or isinstance(act, Filled):
            within.append(act)
        else:
            yield _twig(around, within)
            within = []
    if within:
        yield _twig(None, within)


class Group:
    """An element that holds others, and what stands in it so far; the last may be a group that goes on."""

    def __init__(self, tag: Tag, number: int) -> None:
        self.tag, self.number = tag, number
        self.children: list[int] = []
        self.last: Group | None = None

    def take(self, numbers: Iterable[int]) -> None:
        """Take elements that no other goes on with."""
        self.children += numbers
        self.last = None

    def begun(self, tag: Tag, begin: Callable[[Tag], "Group"]) -> "Group":
        """Give the group in it that a tag begins, or goes on with."""
        group = self.last
        if not (tag.goes_on and group and group.tag.kind == tag.kind):
            group = begin(tag)
            self.children.append(group.number)
        self.last, group.last = group, None
        return group


def _twig(around: Tag | None, acts: Iterable[Act]) -> Twig:
    growing = _Growing()
    for act in acts:
        growing.grow(act)
    for group in growing.groups:
        growing.objects[group.number] += f"/K[{names(len(group.children), '%%d')}]{group.tag.more}>>"
        growing.named[group.number] += group.children
    return Twig(
        around=around,
        elements=len(growing.objects),
        objects="\n".join(growing.objects),
        named=tuple(chain.from_iterable(growing.named)),
        outer=tuple(growing.open[0].children),
        owners=tuple(growing.owners),
        bounds=tuple(growing.bounds),
    )


class _Growing:
    """A twig under way; what ``open`` begins with is around it."""

    def __init__(self) -> None:
        self.objects: list[str] = []
        self.named: list[list[int]] = []
        self.groups: list[Group] = []
        self.open = [Group(Tag(""), AROUND)]
        self.owners: list[int] = []
        self.bounds: list[Bounds] = []

    def grow(self, act: Act) -> None:
        """Grow by an act."""
        around = self.open[-1]
        if isinstance(act, Begun):
            self.open.append(around.begun(act.tag, self._group))
        elif isinstance(act, Filled):
            around.take([self._leaf(act)])
        else:
            self.open.pop()

    def _group(self, tag: Tag) -> Group:
        group = Group(tag, self._element(tag.kind))
        self.groups.append(group)
        return group

    def _leaf(self, leaf: Filled) -> int:
        number = self._element(leaf.tag.kind)
        self.owners += [number] * leaf.marks
        held = "%d" if leaf.marks == 1 else f"[{' '.join(['%d'] * leaf.marks)}]"
        self.objects[number] += f"/Pg %%d 0 R/K {held}{leaf.tag.more}{OPEN if leaf.bounds else ''}>>"
        self.named[number].append(PAGE)
        self.bounds += [leaf.bounds] if leaf.bounds else []
        return number

    def _element(self, kind: str) -> int:
        """Begin to tell an element, and give its number."""
        number = len(self.objects)
        self.objects.append(f"<</S/{kind}/P %%d 0 R")
        self.named.append([self.open[-1].number])
        return number


def names(count: int, number: str) -> str:
    """Name so many objects, each by its number, as it is left open."""
    return " ".join([f"{number} 0 R"] * count)
