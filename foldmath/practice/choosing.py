"""Choosing items: takes a proved lesson, a level and a seed, gives the items of a page, easy to hard.

The lesson's own products come first. The kinds that follow are the same for every seed, so that a class with
numbers of its own for every pupil can still talk about the same questions; chance chooses only the numbers.
"""

from collections import Counter
from collections.abc import Iterable
from functools import cache
from itertools import cycle, islice
from random import Random
from typing import TypeAlias

from foldmath.lesson.kinds import kinds_for, reach
from foldmath.lesson.lesson import Lesson
from foldmath.lesson.proving import ProvedLesson
from foldmath.practice.candidates import candidates
from foldmath.practice.fold_candidates import Group, all_of
from foldmath.practice.scope import scope_of
from foldmath.statements.answers import Answer, Working
from foldmath.statements.expressions import Claim, Comparison, Expression, Figures, factors
from foldmath.statements.items import Item, ItemKind, Level, Reach, make_shade
from foldmath.statements.products import Product

__all__ = ["Item", "Level", "choose"]

CHOOSING = 1
"""The version of the choosing: one more whenever a lesson gets other items than before.

It is in the codes at the foot, so that a page made before is known, and never marked by other items.
"""

FEW, MANY = 6, 7
"""How many items a page has, unless a lesson says otherwise: many where it names several products."""

GUIDED_SHARE = (4, 7)
"""A page with most support has four items for every seven of the others."""

MOST_NAMED = 3
"""So many of the lesson's own products stand on every page; a core page of the class's has them all."""

SEVERAL_NAMED = 2
"""From so many products of its own on, a lesson has many items."""

MOST_TRIALS = 12
"""So many numbers of a group are tried by chance before all are tried in turn."""

SIGNS = (Comparison.LESS, Comparison.GREATER, Comparison.EQUAL)
"""Answers of which there are few, so that a page with many comparisons has them more than once."""

Worked: TypeAlias = Claim | frozenset[tuple[Expression, int]]
"""What is worked out: a comparison, or factors and how often each stands there."""

MOST_PAGES = 12
"""So many pages are begun afresh where some kind found no room for its item."""

K = ItemKind
PLANS: dict[tuple[Reach, Level], tuple[ItemKind, ...]] = {
    (Reach.NAMING, Level.GUIDED): (K.COUNT_OR_SIZE, K.SAME_SIZE, K.HOW_MANY_PIECES, K.EXPLAIN),
    (Reach.NAMING, Level.CORE): (
        K.COUNT_OR_SIZE,
        K.MEND,
        K.EXPLAIN,
        K.SAME_SIZE,
        K.HOW_MANY_PIECES,
        K.REPEATED_HALVING,
        K.SAME_SIZE,
    ),
    (Reach.NAMING, Level.STRETCH): (
        K.MISSING_FACTOR,
        K.WHICH_FOLD,
        K.MEND,
        K.EXPLAIN,
        K.REPEATED_HALVING,
        K.SAME_SIZE,
        K.HOW_MANY_PIECES,
    ),
    (Reach.BY_WHOLES, Level.GUIDED): (K.SHADE, K.COUNT_OR_SIZE, K.EXPLAIN, K.SAME_SIZE),
    (Reach.BY_WHOLES, Level.CORE): (
        K.SHADE,
        K.MEND,
        K.EXPLAIN,
        K.STORY,
        K.HOW_MANY_PIECES,
        K.COUNT_OR_SIZE,
        K.SAME_SIZE,
        K.REPEATED_HALVING,
    ),
    (Reach.BY_WHOLES, Level.STRETCH): (
        K.MISSING_FACTOR,
        K.BIGGER_OR_SMALLER,
        K.WHICH_FOLD,
        K.SHADE,
        K.REPEATED_HALVING,
        K.MEND,
        K.EXPLAIN,
        K.STORY,
    ),
    (Reach.PAIRS, Level.GUIDED): (K.COUNT_OR_SIZE, K.EXPLAIN, K.SHADE, K.SAME_SIZE),
    (Reach.PAIRS, Level.CORE): (
        K.MEND,
        K.EXPLAIN,
        K.STORY,
        K.COUNT_OR_SIZE,
        K.HOW_MANY_PIECES,
        K.REPEATED_HALVING,
        K.SHADE,
        K.SAME_SIZE,
    ),
    (Reach.PAIRS, Level.STRETCH): (
        K.MISSING_FACTOR,
        K.BIGGER_OR_SMALLER,
        K.REPEATED_HALVING,
        K.WHICH_FOLD,
        K.MEND,
        K.SHADE,
        K.EXPLAIN,
        K.STORY,
    ),
}
"""The kinds of item on a page, in the order in which they are given a place [common practice, no source]."""


class _Page:
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
        self.shown: set[Figures] = set()
        for item in own:
            self.take(item)

    def take(self, item: Item) -> None:
        """Put an item on the page."""
        self.items.append(item)
        self.asked.add(item.asks)
        self.worked.add(_worked(item.working))
        self.answers[item.answer] += 1
        self.shown |= item.shown

    def has_room_for(self, item: Item) -> bool:
        """Tell whether an item is new, hard enough, gives no answer away and has its own not given."""
        return (
            item.difficulty >= self.least.get(item.kind, 0)
            and item.asks not in self.asked
            and self._may_be_answered(item.answer)
            and item.answer not in self.shown | item.shown
            and self.answers.keys().isdisjoint(item.shown)
            and _worked(item.working) not in self.worked
        )

    def _may_be_answered(self, answer: Answer) -> bool:
        """Tell whether an answer is new; a sign may come again, if the page has other signs as often."""
        if answer not in SIGNS:
            return answer not in self.answers
        return 2 * self.answers[answer] <= sum(self.answers[sign] for sign in SIGNS)

    def takes_any(self, groups: tuple[Group, ...]) -> bool:
        """Tell whether there is room for any of many items."""
        return any(self.has_room_for(make()) for make in all_of(groups))

    def take_one(self, groups: tuple[Group, ...], rng: Random) -> bool:
        """Put an item on the page: one found by chance, or else the first in turn; tells if there was one."""
        for group in rng.sample(groups, len(groups)):
            for _ in range(MOST_TRIALS):
                item = rng.choice(group)()
                if self.has_room_for(item):
                    self.take(item)
                    return True
        made = (make() for make in all_of(groups))
        first = next((item for item in made if self.has_room_for(item)), None)
        if first:
            self.take(first)
        return first is not None


@cache
def _worked(working: Working) -> Worked:
    """Give the factors that a working begins with: 2/3 × 1/2 is 1/2 × 2/3; a comparison is a whole."""
    first = working.claims[0]
    if first.comparisons[0] is not Comparison.EQUAL:
        return first
    return frozenset(Counter(factors(first.asked)).items())


def choose(proved: ProvedLesson, level: Level, *, seed: int | None = None) -> tuple[Item, ...]:
    """Choose the items of one page.

    Args:
        proved: the lesson; its products come first, as items to shade, in its own order.
        level: of support.
        seed: of numbers of a pupil's own; None for the lesson's, which follow from its title and steps.

    Returns:
        The items, those that the lesson does not name sorted easy to hard; fewer than usual where the
        lesson's rules allow no more different ones.
    """
    lesson = proved.lesson
    scope = scope_of(proved, level)
    rng = Random(_chance(lesson, level, seed))
    kinds = _kinds(lesson, level)
    own = {item.asks: item for item in map(make_shade, _named(lesson, level, seed))}
    count = max(_count(lesson, level), len(own))
    core = _chosen_at_core(proved) if level is Level.STRETCH else ()
    harder = _Page((), core)
    fitting = tuple(kind for kind in kinds if harder.takes_any(candidates(kind, scope)))
    kinds, core = (fitting, core) if fitting else (kinds, ())
    for _ in range(MOST_PAGES):
        page = _Page(own.values(), core)
        wanted = islice(cycle(kinds), count - len(own))
        if all(page.take_one(candidates(kind, scope), rng) for kind in wanted):
            break
    else:
        _fill(page, count, [candidates(kind, scope) for kind in kinds], rng)
    for item in page.items[len(own) :]:
        if item.asks in lesson.rules.without:
            page = _exchanged(page, item, lesson.rules.without, candidates(item.kind, scope))
    chosen = sorted(page.items[len(own) :], key=lambda item: (item.difficulty, item.asks))
    return (*own.values(), *chosen)


def _exchanged(page: _Page, item: Item, without: frozenset[str], groups: tuple[Group, ...]) -> _Page:
    """Take another item of the same kind for one that is not wanted; all others stay as they are.

    Where there is no other of its kind, its place stays empty.
    """
    rest = _Page((other for other in page.items if other is not item), page.core)
    rest.asked |= without
    rest.take_one(groups, Random(item.asks))
    return rest


def _fill(page: _Page, count: int, kinds: list[tuple[Group, ...]], rng: Random) -> None:
    """Fill a page on which some kind finds no room with items of the others, as far as there are any."""
    grown = True
    while grown and len(page.items) < count:
        grown = False
        for groups in kinds:
            grown |= len(page.items) < count and page.take_one(groups, rng)


def _chance(lesson: Lesson, level: Level, seed: int | None) -> str:
    """Give what chance starts from; text, since its use is the same on every machine and in every run."""
    steps = "; ".join(step.text for step in lesson.steps)
    own = lesson.rules.seed if seed is None else seed
    return f"{lesson.title}|{steps}|{level.value}|{'' if own is None else own}"


def _chosen_at_core(proved: ProvedLesson) -> tuple[Item, ...]:
    """Give the items of the class's core page that the lesson does not name."""
    named = {make_shade(product).asks for product in _named(proved.lesson, Level.CORE, None)}
    return tuple(item for item in choose(proved, Level.CORE) if item.asks not in named)


def _named(lesson: Lesson, level: Level, seed: int | None) -> list[Product]:
    """Give the lesson's own products that stand on a page, a pupil's own numbers beside them or not."""
    products = [written.product for written in lesson.practice]
    return products if level is Level.CORE and seed is None else products[:MOST_NAMED]


def _count(lesson: Lesson, level: Level) -> int:
    usual = MANY if len(lesson.practice) >= SEVERAL_NAMED else FEW
    count = lesson.rules.count or max(usual, len(lesson.practice))
    if level is not Level.GUIDED:
        return lesson.rules.count or (count if level is Level.CORE else usual)
    share, of = GUIDED_SHARE
    return -(-(lesson.rules.count or usual) * share // of)


def _kinds(lesson: Lesson, level: Level) -> tuple[ItemKind, ...]:
    """Give the kinds to choose, those that the lesson asks for or else those of the plan."""
    fitting = kinds_for(lesson.grade, lesson.followed)
    wanted = lesson.rules.kinds or PLANS[reach(lesson.grade, lesson.followed), level]
    return tuple(kind for kind in wanted if kind in fitting)
