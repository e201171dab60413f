"""The example on a page with most support: takes a lesson and the page's items, gives one more, to be solved.

Its numbers are its own, so that it solves nothing that a pupil of the class, on whatever level, is asked.
"""

from functools import lru_cache

from foldmath.lesson.proving import ProvedLesson
from foldmath.plane.numbers import ONE, Exact
from foldmath.practice.candidates import candidates
from foldmath.practice.choosing import choose, fills_a_row
from foldmath.practice.fold_candidates import all_of
from foldmath.practice.page_of_items import Page
from foldmath.practice.scope import LESSONS_KEPT, scope_of
from foldmath.statements.items import Item, ItemKind, Level
from foldmath.statements.ratios import Ratio


def example_beside(items: tuple[Item, ...], proved: ProvedLesson) -> Item | None:
    """Give the item that is solved before the others: the easiest of the first of their kinds that has one.

    Args:
        items: of the page, in their order.
        proved: the lesson; no page of its class asks it, works with its numbers or has its answer.

    Returns:
        None where there is no other item of any of their kinds, or sheets to shade leave no room for one.
    """
    if any(map(fills_a_row, items)):
        return None
    page = Page((*items, *_asked_of_class(proved)), ())
    without, sizes = proved.lesson.rules.without, _sizes(proved)
    kinds = dict.fromkeys(item.kind for item in items if item.kind is not ItemKind.OWN)
    fitting = (
        item
        for kind in kinds
        for item in _easy_first(kind, proved)
        if page.has_room_for(item) and item.asks not in without and _tells_nothing_of(sizes, item)
    )
    return next(fitting, None)


@lru_cache(maxsize=LESSONS_KEPT)
def _asked_of_class(proved: ProvedLesson) -> tuple[Item, ...]:
    return tuple(item for level in Level for item in choose(proved, level))


@lru_cache(maxsize=LESSONS_KEPT)
def _easy_first(kind: ItemKind, proved: ProvedLesson) -> tuple[Item, ...]:
    made = (make() for make in all_of(candidates(kind, scope_of(proved, Level.GUIDED))))
    return tuple(sorted(made, key=lambda item: item.difficulty))


@lru_cache(maxsize=LESSONS_KEPT)
def _sizes(proved: ProvedLesson) -> frozenset[Exact]:
    """Give the fractions of the sheet that its panels are, which the first page asks for."""
    return frozenset(size for moment in proved.moments for size in moment.sizes)


def _tells_nothing_of(sizes: frozenset[Exact], item: Item) -> bool:
    """Tell whether an answer is no size that is asked for; nor 2/2, which needs no example to be found."""
    answer = item.answer
    return not isinstance(answer, Ratio) or answer.whole or not (answer.value in sizes or answer.value == ONE)
