"""Word problems: takes a story and a source of chance, gives one telling of it with its answer.

All words stand in ``stories.toml``; the numbers are chosen and worked out by ``story_numbers``.
"""

import re
import tomllib
from dataclasses import dataclass
from functools import cache
from importlib.resources import files
from random import Random
from typing import Any, ClassVar

from foldmath.plane.numbers import ONE, Exact, exact
from foldmath.statements.items.item import Item, ItemKind, figures_in, other_forms, weight
from foldmath.statements.products import Product
from foldmath.statements.ratios import Ratio, fraction, mixed_form, whole_number
from foldmath.statements.rules.problems import Telling
from foldmath.statements.rules.wrong_answers import likely_wrong_answers, without_folding
from foldmath.statements.story_numbers import DENOMINATORS, Asks, Filling, Ranges, fillings, worked

LARGEST_DENOMINATOR = 24
"""Pupils' sentences have no larger one (common practice, no source)."""

_DIFFICULTIES = {
    Asks.PORTIONS: 14,
    Asks.QUANTITY: 16,
    Asks.PART: 18,
    Asks.AREA: 18,
    Asks.FLEET: 22,
    Asks.MINUTES: 22,
    Asks.LEFT: 25,
    Asks.MORE: 27,
}
"""How hard the telling alone makes an item; what its numbers add comes on top."""

_PLACEHOLDER = re.compile(r"\{(\w+)(?::(\w+)\|(\w+))?\}")


@dataclass(frozen=True)
class StoryTemplate:
    """A story without its numbers, in one language.

    Args:
        name: its key.
        scenario: where it happens.
        asks: what its numbers do.
        ranges: what its numbers may be.
        sentences: with placeholders; the last one is the question.
        unit: of the answer, with placeholders.
        answer: a sentence with the answer, with placeholders.
        also: the answer as a part of the total, with placeholders; empty if it is not said so.
    """

    name: str
    scenario: str
    asks: Asks
    ranges: Ranges
    sentences: tuple[str, ...]
    unit: str
    answer: str
    also: str

    @property
    def stretch(self) -> bool:
        """Whether it has a second step, or the trap "2/3 of it" against "2/3 m"."""
        return self.asks in (Asks.LEFT, Asks.MORE)


@dataclass(frozen=True, kw_only=True)
class StoryItem(Item):
    """One telling of a story; its answer is whole, proper or mixed, in lowest terms.

    Args:
        scenario: where it happens.
        sentences: fractions written as ``2/3``; the last one is the question.
        product: the product at its heart, in the order of "take of amount".
        unit: of the answer and of the wrong answers: ``m``, ``of the bed``, ``boats``.
        answer_sentence: a whole sentence with the answer.
        stretch: whether it has a second step, or the trap "2/3 of it" against "2/3 m".
    """

    kind: ClassVar[ItemKind] = ItemKind.STORY

    scenario: str
    sentences: tuple[str, ...]
    product: Product
    unit: str
    answer_sentence: str
    stretch: bool


@cache
def all_stories(language: str) -> tuple[StoryTemplate, ...]:
    """Give every story, spelt as a language spells it."""
    words: dict[str, str] = _table()["words"][language]
    return tuple(_template(entry, words) for entry in _table()["stories"])


def tell(template: StoryTemplate, rng: Random) -> StoryItem:
    """Tell a story with numbers that chance chooses among the sensible ones."""
    return told(template, rng.choice(fillings(template.asks, template.ranges)))


def every_telling(template: StoryTemplate) -> tuple[StoryItem, ...]:
    """Tell a story with all its sensible numbers in turn."""
    return tuple(told(template, filling) for filling in fillings(template.asks, template.ranges))


def told(template: StoryTemplate, filling: Filling) -> StoryItem:
    """Tell a story with given numbers."""
    work = worked(template.asks, filling)
    asked = work.product if template.asks.one_product else Telling(template.asks, filling, work)
    answer = mixed_form(work.value)
    numbers = {
        "take": filling.take,
        "amount": filling.amount,
        "total": whole_number(filling.total),
        "answer": answer,
    }
    sentences = tuple(_filled(sentence, numbers) for sentence in template.sentences)
    accepted = list(_other_forms(template.asks, work.product, answer))
    if template.also:
        in_whole = {"answer": mixed_form(work.value / exact(filling.total))}
        accepted.append(_filled(template.also, in_whole))
    return StoryItem(
        asks=f"{work.asked} = ",
        difficulty=_DIFFICULTIES[template.asks] + weight(work.product.first, work.product.second),
        answer=answer.text,
        working=work.working,
        accepted=tuple(accepted),
        wrong=without_folding(asked) if isinstance(asked, Product) else likely_wrong_answers(asked),
        problem=asked,
        shown=figures_in(*sentences) - frozenset(sentences),
        scenario=template.scenario,
        sentences=sentences,
        product=work.product,
        unit=_filled(template.unit, numbers),
        answer_sentence=_filled(template.answer, numbers),
        stretch=template.stretch,
    )


def _other_forms(asks: Asks, product: Product, answer: Ratio) -> tuple[str, ...]:
    """Give other ways to write the answer, the unreduced product first; things that are counted have none."""
    if asks.counted or asks is Asks.QUANTITY:
        return ()
    lowest = fraction(answer.numerator, answer.denominator)
    forms = [fraction(n * lowest.numerator, n * lowest.denominator) for n in (1, 2, 3)]
    if answer.whole:
        forms = []
    if product.accepts(answer):
        forms.insert(0, product.unreduced)
    kept = [form for form in forms if form.denominator <= LARGEST_DENOMINATOR]
    return other_forms(answer, *kept)


def _filled(text: str, numbers: dict[str, Ratio]) -> str:
    """Put numbers, and the forms of words that go with them, in the place of their names."""

    def put(found: re.Match[str]) -> str:
        name, one, many = found.groups()
        if one is None:
            return numbers[name].text
        return str(one if numbers[name].value <= ONE else many)

    return _PLACEHOLDER.sub(put, text)


def _template(entry: dict[str, Any], words: dict[str, str]) -> StoryTemplate:
    def spelt(text: str) -> str:
        for name, word in words.items():
            text = text.replace(f"{{{name}}}", word)
        return text

    ranges = Ranges(
        _bounds(entry.get("amount")),
        _bounds(entry.get("take")),
        tuple(entry.get("totals", ())),
        tuple(entry.get("parts", DENOMINATORS)),
        entry.get("largest", LARGEST_DENOMINATOR),
        entry.get("steps", 0),
    )
    return StoryTemplate(
        entry["name"],
        entry["scenario"],
        Asks(entry["asks"]),
        ranges,
        tuple(spelt(sentence) for sentence in entry["sentences"]),
        entry["unit"],
        spelt(entry["answer"]),
        entry.get("also", ""),
    )


def _bounds(texts: list[str] | None) -> tuple[Exact, Exact] | None:
    if texts is None:
        return None
    least, largest = (exact(*map(int, text.split("/"))) for text in texts)
    return least, largest


@cache
def _table() -> dict[str, Any]:
    return tomllib.loads(files(__package__).joinpath("stories.toml").read_text(encoding="utf-8"))
