"""Names in stories: takes items of a page and a lesson's names, gives each story one of them."""

from collections.abc import Iterator, Sequence
from dataclasses import replace
from itertools import count

from foldmath.statements.items import Item
from foldmath.statements.items.story import StoryItem


def with_names(items: Sequence[Item], names: Sequence[str], start: int) -> tuple[Item, ...]:
    """Lend names to the stories of a page, in turn.

    Args:
        items: of the page.
        names: none, and nobody in the stories has one.
        start: which of the names is the first on this page; past the last one they begin again.
    """
    turns = count(start)
    return tuple(_named(items, names, turns)) if names else tuple(items)


def _named(items: Sequence[Item], names: Sequence[str], turns: Iterator[int]) -> Iterator[Item]:
    for item in items:
        yield with_name(item, names, next(turns)) if isinstance(item, StoryItem) else item


def with_name(story: StoryItem, names: Sequence[str], turn: int) -> StoryItem:
    """Lend one of the names to a story, or none where there are none."""
    return replace(story, name=names[turn % len(names)]) if names else story
