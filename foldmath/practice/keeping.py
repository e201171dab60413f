"""Items that a teacher keeps or writes: takes a page as it was chosen, gives it with hers on it, no longer.

What is kept is known by what it asks. Where a lesson changes so that its class can no longer be asked it, it
stays in the file and off the page.
"""

from collections.abc import Iterator, Mapping
from random import Random

from foldmath.lesson.kinds import kinds_for
from foldmath.lesson.lesson import Lesson
from foldmath.practice.candidates import candidates
from foldmath.practice.fold_candidates import all_of
from foldmath.practice.page_of_items import Page
from foldmath.practice.scope import Scope
from foldmath.statements.items import Item, ItemKind

GIVES_WAY = {ItemKind.OWN: ItemKind.STORY}
"""What a teacher tells in her own words takes the place of a story; other kinds that of one like them."""


def kept_items(lesson: Lesson, scope: Scope) -> dict[str, Item]:
    """Give the items that a lesson keeps for the level of a scope, by what they ask, as it names them."""
    wanted = [kept.asks for kept in lesson.rules.keep if kept.level is scope.level]
    if not wanted:
        return {}
    found = {item.asks: item for item in _all_items(lesson, scope) if item.asks in wanted}
    return {asks: found[asks] for asks in wanted if asks in found}


def _all_items(lesson: Lesson, scope: Scope) -> Iterator[Item]:
    for kind in kinds_for(lesson.grade, lesson.followed):
        yield from (make() for make in all_of(candidates(kind, scope)))


def with_kept(page: Page, own: Mapping[str, Item], kept: Mapping[str, Item], scope: Scope) -> Page:
    """Put kept items on a page, each in the place of one of its kind, or else of the last that got a place.

    The others stay as they are, but where one gives a kept one away another of its kind comes.

    Args:
        page: as it was chosen; as it is where it has all of the kept ones already.
        own: the lesson's products, with which the page begins.
        kept: those that must be there, even if there are more than the page was to have.
        scope: what others are chosen from.
    """
    asked = {item.asks for item in page.items}
    if asked.issuperset(kept):
        return page
    rest = [item for item in page.items if item.asks not in own and item.asks not in kept]
    for asks in (asks for asks in kept if asks not in asked):
        kind = GIVES_WAY.get(kept[asks].kind, kept[asks].kind)
        alike = [item for item in rest if item.kind is kind]
        for item in (alike or rest)[-1:]:
            rest.remove(item)
    renewed = Page((*own.values(), *(item for asks, item in kept.items() if asks not in own)), page.core)
    for item in rest:
        if renewed.has_room_for(item):
            renewed.take(item)
        else:
            groups = candidates(item.kind, scope)
            renewed.drew_from(groups)
            renewed.take_one(groups, Random(item.asks))
    return renewed
