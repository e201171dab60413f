"""A page of items under way: takes one item after the other, and tells which it still has room for."""

from collections import Counter
from collections.abc import Iterable, Iterator
from itertools import groupby
from random import Random

from foldmath.practice.fold_candidates import Group, all_of
from foldmath.statements.answers import Answer, Worked
from foldmath.statements.expressions import Claim, Comparison, Figures
from foldmath.statements.items import Item, ItemKind

MOST_TRIALS = 12
"""So many numbers of a group are tried by chance before all are tried in turn."""

SIGNS = (Comparison.LESS, Comparison.GREATER, Comparison.EQUAL)
"""Answers of which there are few, so that a page with many comparisons has them more than once."""


class Page:
    """The items chosen so far, and what they ask, answer and show."""

    def __init__(self, own: Iterable[Item], core: Iterable[Item]) -> None:
        """Begin with a lesson's own products; no item of ``core`` is asked again, or in an easier form."""
        self.items: list[Item] = []
        self.core = tuple(core)
        self.least: dict[ItemKind, int] = {}
        for item in self.core:
            self.least[item.kind] = max(item.difficulty, self.least.get(item.kind, 0))
        self.asked: set[str] = {item.asks for item in self.core}
        self.worked: set[Worked] = set()
        self.answers: Counter[Answer] = Counter()
        self.answered: set[Answer] = set()
        self.shown: set[Figures] = set()
        self.drawn: list[Group] = []
        for item in own:
            self.take(item)

    def take(self, item: Item) -> None:
        """Put an item on the page."""
        self.items.append(item)
        self.asked.add(item.asks)
        self.worked.add(item.working.worked)
        if item.kind is ItemKind.OWN:
            # The numbers of a text give nothing else away, and no half that a fold shows gives hers away.
            return
        self.answers[item.answer] += 1
        self.answered.add(item.answer)
        self.shown |= item.shown

    def has_room_for(self, item: Item) -> bool:
        """Tell whether an item is new, hard enough, gives no answer away and has its own not given.

        Nor does a sentence stand on a page twice.
        """
        return (
            item.difficulty >= self.least.get(item.kind, 0)
            and item.asks not in self.asked
            and self._may_be_answered(item.answer)
            and item.answer not in self.shown
            and item.answer not in item.shown
            and item.shown.isdisjoint(self.answered)
            and item.working.worked not in self.worked
            and not any(isinstance(figures, Claim) for figures in item.shown & self.shown)
        )

    def _may_be_answered(self, answer: Answer) -> bool:
        """Tell whether an answer is new; a sign may come again, if the page has other signs as often."""
        if answer not in SIGNS:
            return answer not in self.answers
        return 2 * self.answers[answer] <= sum(self.answers[sign] for sign in SIGNS)

    def takes_any(self, groups: tuple[Group, ...]) -> bool:
        """Tell whether there is room for any of many items."""
        return any(self.has_room_for(make()) for make in all_of(groups))

    def drew_from(self, groups: tuple[Group, ...]) -> None:
        """Find out from which of some groups the items came that were put on the page without being drawn."""
        asked = {item.asks for item in self.items}
        self.drawn += [group for group in groups for make in group if make().asks in asked]

    def take_one(self, groups: tuple[Group, ...], rng: Random, turn: int | None = None) -> bool:
        """Put an item on the page: one found by chance, or else the first in turn; tells if there was one.

        Of one kind it is another story, slip or reason than those that stand there, while there are others.

        Args:
            groups: where it may come from.
            rng: the chance.
            turn: whose turn it is, so that each group comes first as often; None leaves it to chance.
        """
        in_order = sorted(_in_turn(groups, rng, turn), key=self._times_drawn_from)
        for _, alike in groupby(in_order, key=self._times_drawn_from):
            for group, item in _tried(tuple(alike), rng):
                if self.has_room_for(item):
                    self.take(item)
                    self.drawn.append(group)
                    return True
        return False

    def _times_drawn_from(self, group: Group) -> int:
        return sum(drawn is group for drawn in self.drawn)


def _tried(groups: tuple[Group, ...], rng: Random) -> Iterator[tuple[Group, Item]]:
    """Give items that are tried one after the other, some of each group by chance, then all in turn."""
    yield from ((group, rng.choice(group)()) for group in groups for _ in range(MOST_TRIALS))
    yield from ((group, make()) for group in groups for make in group)


def _in_turn(groups: tuple[Group, ...], rng: Random, turn: int | None) -> list[Group]:
    """Give the group whose turn it is, then the others by chance."""
    mixed = rng.sample(groups, len(groups))
    if turn is None or not groups:
        return mixed
    first = groups[turn % len(groups)]
    return [first, *(group for group in mixed if group is not first)]
