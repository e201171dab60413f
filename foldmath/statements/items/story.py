"""Word problems: takes a frame and numbers, gives one telling of it with its answer.

Frames have no words; each language words them all (``words.stories``). Sensible numbers are found and worked
out by ``story_numbers``.
"""

import tomllib
from functools import cache
from importlib.resources import files
from typing import Any, ClassVar

from foldmath.plane.numbers import Exact, exact
from foldmath.statements.answers import working
from foldmath.statements.items.item import Difficulty, Item, ItemKind, equal_forms
from foldmath.statements.products import Product
from foldmath.statements.ratios import LARGEST_DENOMINATOR, Ratio, mixed_form, whole_number
from foldmath.statements.rules.problems import Telling
from foldmath.statements.rules.wrong_answers import likely_wrong_answers, without_folding
from foldmath.statements.story_numbers import DENOMINATORS, Asks, Filling, Ranges, worked
from foldmath.values import frozen

_TOLD = {
    Asks.PORTIONS: ("total", "amount"),
    Asks.QUANTITY: ("total", "take"),
    Asks.FLEET: ("total", "amount", "take"),
}
"""Which numbers a story tells; the amount and the part taken where nothing else stands here."""


@frozen(kw_only=True)
class StoryFrame:
    """A story without its numbers and without words.

    Args:
        name: its key, by which a language words it.
        scenario: where it happens.
        asks: what its numbers do.
        ranges: what its numbers may be.
        in_whole: whether the answer may be told as a part of the total too.
    """

    name: str
    scenario: str
    asks: Asks
    ranges: Ranges
    in_whole: bool

    @property
    def stretch(self) -> bool:
        """Whether it has a second step, or the trap "2/3 of it" against "2/3 m"."""
        return self.asks in (Asks.LEFT, Asks.MORE)


@frozen(kw_only=True)
class StoryItem(Item):
    """One telling of a story; its answer is whole, proper or mixed, in lowest terms.

    Args:
        frame: the story.
        numbers: those that its words may tell, by the names that stand for them.
        product: the product at its heart, in the order of "take of amount".
        name: of whom it tells; empty for anybody.
    """

    kind: ClassVar[ItemKind] = ItemKind.STORY

    answer: Ratio
    frame: StoryFrame
    numbers: tuple[tuple[str, Ratio], ...]
    product: Product
    name: str = ""

    @property
    def stretch(self) -> bool:
        """Whether it has a second step, or the trap "2/3 of it" against "2/3 m"."""
        return self.frame.stretch


@cache
def all_stories() -> tuple[StoryFrame, ...]:
    """Give the frame of every story."""
    text = files(__package__).joinpath("stories.toml").read_text(encoding="utf-8")
    return tuple(map(_frame, tomllib.loads(text)["stories"]))


@cache
def make_story(frame: StoryFrame, filling: Filling) -> StoryItem:
    """Tell a story with given numbers."""
    work = worked(frame.asks, filling)
    asked = work.product if frame.asks.one_product else Telling(frame.asks, filling, work)
    answer = mixed_form(work.value)
    numbers = {
        "take": filling.take,
        "amount": filling.amount,
        "total": whole_number(filling.total),
        "answer": answer,
    }
    if frame.in_whole:
        numbers["in_whole"] = mixed_form(work.value / exact(filling.total))
    return StoryItem(
        asks=f"{work.working.asked} = ",
        difficulty=Difficulty.STORY.of(filling.take, filling.amount, more=3 * frame.stretch),
        answer=answer,
        working=working(work.working),
        accepted=_other_forms(frame.asks, work.product, answer),
        wrong=without_folding(asked) if isinstance(asked, Product) else likely_wrong_answers(asked),
        problem=asked,
        shown=frozenset(numbers[name] for name in _TOLD.get(frame.asks, ("amount", "take"))),
        frame=frame,
        numbers=tuple(numbers.items()),
        product=work.product,
    )


def _other_forms(asks: Asks, product: Product, answer: Ratio) -> tuple[Ratio, ...]:
    """Give other ways to write the answer; things that are counted have none."""
    return () if asks.counted or asks is Asks.QUANTITY else equal_forms(answer, product)


def _frame(entry: dict[str, Any]) -> StoryFrame:
    ranges = Ranges(
        amount=_bounds(entry.get("amount")),
        take=_bounds(entry.get("take")),
        totals=tuple(entry.get("totals", ())),
        parts=tuple(entry.get("parts", DENOMINATORS)),
        largest=entry.get("largest", LARGEST_DENOMINATOR),
        steps=entry.get("steps", 0),
    )
    return StoryFrame(
        name=entry["name"],
        scenario=entry["scenario"],
        asks=Asks(entry["asks"]),
        ranges=ranges,
        in_whole=entry.get("in_whole", False),
    )


def _bounds(texts: list[str] | None) -> tuple[Exact, Exact] | None:
    if texts is None:
        return None
    least, largest = (exact(*map(int, text.split("/"))) for text in texts)
    return least, largest
