"""Choosing items: takes a proved lesson, a level and a seed, gives the items of a page, easy to hard.

The lesson's own products come first, what its teacher wrote in her own words comes last. The kinds between
are the same for every seed, so that a class with numbers of its own for every pupil can still talk about the
same questions; chance chooses only the numbers.
"""

from collections.abc import Collection, Mapping
from functools import lru_cache
from itertools import cycle, islice
from random import Random

from foldmath.lesson.kinds import kinds_for, reach
from foldmath.lesson.lesson import Lesson
from foldmath.lesson.proving import ProvedLesson
from foldmath.paper.steps import FoldStep, Gather, Slit
from foldmath.practice.candidates import SHEETS_TO_A_COLUMN, candidates
from foldmath.practice.fold_candidates import Group
from foldmath.practice.keeping import kept_items, with_kept
from foldmath.practice.naming import with_names
from foldmath.practice.page_of_items import Page
from foldmath.practice.scope import LESSONS_KEPT, Scope, scope_of
from foldmath.statements.items import Item, ItemKind, Level, Reach, ShadeItem, make_shade
from foldmath.statements.products import Product

__all__ = ["Item", "Level", "choose"]

CHOOSING = 14
"""The version of the choosing: one more whenever a lesson gets other items than before.

It is in the codes at the foot, so that a page made before is known, and never marked by other items.
"""

USUAL = 6
"""How many items a page has, unless a lesson says otherwise: as many as fill the second side of a sheet."""

GUIDED_SHARE = (4, 7)
"""A page with most support has four items for every seven of the others."""

MOST_NAMED = 3
"""So many of the lesson's own products stand on every page; a core page of the class's has them all."""

ENOUGH_MODELS = 2
"""Beside so many of the lesson's own products, a plan's further model to shade comes last of all, and each
product more takes another item's place too: sheets to shade take the room of two items."""

ROOM_OF_MANY_SHEETS = 2
"""So many other items have no room beside such a row, or beside sheets that are shaded twice, of which there
is much to say; on a page with most support the example has no room beside a row."""

MOST_PAGES = 12
"""So many pages are begun afresh where some kind found no room for its item."""

MOST_FORMS = 15
"""No kind of item has more forms."""

FOLDS_TO_A_SIDE = 3
"""So many folds fill the first side of a page; one more lays the sheet ready for the scissors."""

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
        K.WHICH_FOLD,
        K.SAME_SIZE,
    ),
    (Reach.NAMING, Level.STRETCH): (
        K.MISSING_FACTOR,
        K.WHICH_FOLD,
        K.MEND,
        K.EXPLAIN,
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


def choose(proved: ProvedLesson, level: Level, *, seed: int | None = None) -> tuple[Item, ...]:
    """Choose the items of one page.

    Args:
        proved: the lesson; its products come first, as items to shade, in its own order. What it keeps stands
            on the class's page; a pupil with numbers of his or her own has others.
        level: of support.
        seed: of numbers of a pupil's own; None for the lesson's, which follow from its title and steps.

    Returns:
        The items, those that the lesson does not name sorted easy to hard, and the teacher's own words last;
        fewer than usual where the lesson's rules allow no more different ones.
    """
    lesson, scope = proved.lesson, scope_of(proved, level)
    own = {item.asks: item for item in _own(proved, level, seed)}
    hers = {item.asks: item for item in lesson.items_of(level)}
    kept = kept_items(lesson, scope) if seed is None else {}
    stays = {**kept, **hers}
    page = with_kept(_first_choice(proved, scope, own, seed), own, stays, scope)
    for item in page.items[len(own) :]:
        if item.asks in lesson.rules.without and item.asks not in stays:
            page = _exchanged(page, item, lesson.rules.without, candidates(item.kind, scope))
    chosen = (item for item in page.items[len(own) :] if item.asks not in hers)
    in_order = sorted(chosen, key=lambda item: (item.difficulty, item.asks))
    start = list(Level).index(level) if seed is None else seed
    return with_names((*own.values(), *in_order, *hers.values()), lesson.names, start)


def _own(proved: ProvedLesson, level: Level, seed: int | None) -> list[ShadeItem]:
    """Give the lesson's own products as items to shade."""
    return [make_shade(product) for product in _named(proved.lesson, level, seed)]


def _first_choice(proved: ProvedLesson, scope: Scope, own: Mapping[str, Item], seed: int | None) -> Page:
    """Choose a page as if a teacher kept and wrote nothing but her products."""
    lesson, level = proved.lesson, scope.level
    rng = Random(_chance(lesson, level, seed))
    kinds = _kinds(lesson, level, own.values())
    # An example like the lesson's own products has the room of an item.
    solved = bool(own) and level is Level.GUIDED
    count = max(_count(lesson, level) - solved, len(own))
    core = _easier(proved, level)
    fitting = _harder(proved, kinds, scope)
    kinds, core = (fitting, core) if fitting else (kinds, ())
    for _ in range(MOST_PAGES):
        page = Page(own.values(), core)
        wanted = islice(cycle(kinds), count - len(own))
        if all(page.take_one(candidates(kind, scope), rng, _turn(lesson, kind, seed)) for kind in wanted):
            break
    else:
        # Kinds that the plan has in store come before a second item of one that is on the page.
        spare = count - len(own)
        _fill(page, count, [candidates(kind, scope) for kind in (*kinds[spare:], *kinds[:spare])], rng)
    return page


def _easier(proved: ProvedLesson, level: Level) -> tuple[Item, ...]:
    """Give the items that those of a page are harder than: at stretch those of the core page, else none."""
    return _chosen_at_core(proved) if level is Level.STRETCH else ()


@lru_cache(maxsize=LESSONS_KEPT)
def _harder(proved: ProvedLesson, kinds: tuple[ItemKind, ...], scope: Scope) -> tuple[ItemKind, ...]:
    """Give the kinds of which there is an item that those of the core page leave room for."""
    harder = Page((), _easier(proved, scope.level))
    return tuple(kind for kind in kinds if harder.takes_any(candidates(kind, scope)))


def places(lesson: Lesson, level: Level) -> int:
    """Tell how many items of a page are chosen, in whose places a teacher's own words may stand."""
    return max(_count(lesson, level) - len(_named(lesson, level, None)), 0)


def _exchanged(page: Page, item: Item, without: frozenset[str], groups: tuple[Group, ...]) -> Page:
    """Take another item of the same kind for one that is not wanted; all others stay as they are.

    Where there is no other of its kind, its place stays empty.
    """
    rest = Page((other for other in page.items if other is not item), page.core)
    rest.asked |= without
    rest.drew_from(groups)
    rest.take_one(groups, Random(item.asks))
    return rest


def _fill(page: Page, count: int, kinds: list[tuple[Group, ...]], rng: Random) -> None:
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
    return f"{lesson.as_written.title}|{steps}|{level.value}|{'' if own is None else own}"


def _turn(lesson: Lesson, kind: ItemKind, seed: int | None) -> int | None:
    """Tell whose turn it is at the forms of a kind; of each kind it begins with another pupil."""
    own = lesson.rules.seed if seed is None else seed
    return None if own is None else own + _first_turn(lesson.as_written.title, kind)


@lru_cache(maxsize=LESSONS_KEPT * len(ItemKind))
def _first_turn(title: str, kind: ItemKind) -> int:
    return Random(f"{title}|{kind.value}").randrange(MOST_FORMS)


@lru_cache(maxsize=LESSONS_KEPT)
def _chosen_at_core(proved: ProvedLesson) -> tuple[Item, ...]:
    """Give the items of the class's core page that the lesson does not name."""
    named = {make_shade(product).asks for product in _named(proved.lesson, Level.CORE, None)}
    items = choose(proved, Level.CORE)
    return tuple(item for item in items if item.asks not in named and item.kind is not ItemKind.OWN)


def _named(lesson: Lesson, level: Level, seed: int | None) -> list[Product]:
    """Give the lesson's own products that stand on a page, a pupil's own numbers beside them or not."""
    if level is Level.CORE and seed is None:
        return [written.product for written in lesson.practice]
    return on_every_page(lesson)


def on_every_page(lesson: Lesson) -> list[Product]:
    """Give the lesson's own products with which every page begins, whatever its level and its numbers."""
    return [written.product for written in lesson.practice[:MOST_NAMED]]


def _count(lesson: Lesson, level: Level) -> int:
    """Tell how many items a page has."""
    count = lesson.rules.count or USUAL - 2 * _crowded(lesson, level)
    if level is Level.GUIDED:
        share, of = GUIDED_SHARE
        return -(-count * share // of)
    own = [make_shade(product) for product in _named(lesson, level, None)]
    taken = sum(ROOM_OF_MANY_SHEETS for item in own if fills_a_row(item) or _shaded_twice(item))
    taken += max(len(own) - ENOUGH_MODELS, 0)
    return count if lesson.rules.count else max(count - taken, min(count, len(own) + 1))


def fills_a_row(item: Item) -> bool:
    """Tell whether an item has more sheets to shade than stand side by side in a column."""
    return isinstance(item, ShadeItem) and item.sheet_count > SHEETS_TO_A_COLUMN


def _shaded_twice(item: ShadeItem) -> bool:
    """Tell whether an item has several sheets of which a part is shaded again."""
    return item.sheets is not None and item.sheet_count > 1 and item.sheets.times > 1


def _crowded(lesson: Lesson, level: Level) -> bool:
    """Tell whether models stand below what is told of a booklet, since folds fill the first side."""
    folds = sum(isinstance(written.step, FoldStep) for written in lesson.steps)
    told = folds > FOLDS_TO_A_SIDE and lesson.has(Slit) and lesson.has(Gather)
    return told and level is Level.CORE and len(lesson.practice) >= ENOUGH_MODELS


def _kinds(lesson: Lesson, level: Level, own: Collection[Item]) -> tuple[ItemKind, ...]:
    """Give the kinds to choose, those that the lesson asks for or else those of the plan."""
    fitting = kinds_for(lesson.grade, lesson.followed)
    plan = PLANS[reach(lesson.grade, lesson.followed), level]
    if len(own) >= ENOUGH_MODELS or any(map(fills_a_row, own)):
        plan = tuple(sorted(plan, key=lambda kind: kind is ItemKind.SHADE))
    if _crowded(lesson, level):
        # What a student writes is judged there, and put right: so of two mistakes one is enough.
        plan = tuple(sorted(plan, key=lambda kind: kind in (ItemKind.MEND, ItemKind.EXPLAIN)))
    return tuple(kind for kind in lesson.rules.kinds or plan if kind in fitting)
