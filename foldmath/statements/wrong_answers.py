"""Wrong answers, each by the rule that a pupil followed to it, and what pupils really wrote.

A rule is named by its key in ``wrong_answers.toml``, which holds what it tells a teacher, what to try next,
and its share. The rules for products are here; those that fit one kind of item stand with that item.
"""

import tomllib
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from functools import cache
from importlib.resources import files
from typing import Any, TypeAlias

from foldmath.plane.numbers import Exact
from foldmath.statements.products import Product
from foldmath.statements.ratios import Ratio, fraction, to_common_denominator, whole_number

Rule: TypeAlias = Callable[[Ratio, Ratio], Ratio | None]
"""Takes two factors as written, gives the answer as a pupil would write it; None where it gives no number."""


@dataclass(frozen=True)
class Published:
    """How many of the pupils in a study wrote an answer."""

    count: int
    pupils: int
    source: str

    @property
    def percent(self) -> int:
        """The share, to the nearest percent."""
        return (200 * self.count + self.pupils) // (2 * self.pupils)


@dataclass(frozen=True)
class Said:
    """An answer that is no number: a sign, a sentence, a list of steps; it is worth what it says."""

    text: str

    @property
    def value(self) -> str:
        """The answer itself."""
        return self.text


@dataclass(frozen=True)
class WrongAnswer:
    """An answer that a pupil may give.

    Args:
        answer: as the pupil would write it, not reduced.
        rule: the name of the rule behind it.
        published: who gave this very answer to this very item in a study; None where nobody asked it.
    """

    answer: Ratio | Said
    rule: str
    published: Published | None


def keep_common_denominator(first: Ratio, second: Ratio) -> Ratio | None:
    """3/5 × 1/5 = 3/5, and 3/5 × 1/4 = 12/20 × 5/20 = 60/20."""
    above, beside, common = to_common_denominator(first, second)
    return _answer(above * beside, common)


def add_instead(first: Ratio, second: Ratio) -> Ratio | None:
    """3/5 × 1/4 = 17/20."""
    above, beside, common = to_common_denominator(first, second)
    return _answer(above + beside, common)


def invert_first(first: Ratio, second: Ratio) -> Ratio | None:
    """3/5 × 1/4 = 5/3 × 1/4 = 5/12."""
    return _answer(first.denominator * second.numerator, first.numerator * second.denominator)


def invert_second(first: Ratio, second: Ratio) -> Ratio | None:
    """3/5 × 1/4 = 3/5 × 4/1 = 12/5, also got by multiplying crosswise."""
    return _answer(first.numerator * second.denominator, first.denominator * second.numerator)


def add_tops_and_bottoms(first: Ratio, second: Ratio) -> Ratio | None:
    """3/5 × 1/4 = 4/9."""
    return _answer(first.numerator + second.numerator, first.denominator + second.denominator)


def subtract_instead(first: Ratio, second: Ratio) -> Ratio | None:
    """3/5 × 1/4 = 7/20; the smaller from the larger, whichever comes first."""
    above, beside, common = to_common_denominator(first, second)
    return _answer(abs(above - beside), common)


def add_denominators(first: Ratio, second: Ratio) -> Ratio | None:
    """3/5 × 1/4 = 3/9."""
    return _answer(first.numerator * second.numerator, first.denominator + second.denominator)


def multiply_both_by_whole(first: Ratio, second: Ratio) -> Ratio | None:
    """3 × 2/5 = 6/15."""
    if first.whole == second.whole:
        return None
    whole, part = (first, second) if first.whole else (second, first)
    return _answer(whole.numerator * part.numerator, whole.numerator * part.denominator)


def count_for_size(first: Ratio, second: Ratio) -> Ratio | None:
    """1/4 × 1/2 = 8 and 4 × 1/2 = 8: the panels are counted, 4 × 2."""
    if not any(factor.unit_fraction for factor in (first, second)):
        return None
    if not all(factor.unit_fraction or factor.whole for factor in (first, second)):
        return None
    return _answer(max(first.numerator, first.denominator) * max(second.numerator, second.denominator), 1)


def _answer(above: int, below: int) -> Ratio | None:
    """Write an answer, unless it is no number or none that a pupil would leave standing."""
    if above <= 0 or below <= 0:
        return None
    return whole_number(above) if below == 1 else fraction(above, below)


RULES: dict[str, Rule] = {
    rule.__name__: rule
    for rule in (
        keep_common_denominator,
        add_instead,
        invert_first,
        add_tops_and_bottoms,
        invert_second,
        subtract_instead,
        add_denominators,
        multiply_both_by_whole,
        count_for_size,
    )
}
"""Every rule by its name, in the order of the shares in the studies."""


MOST_TOLD = 3
"""A key tells of this many wrong answers to an item."""


def likely_wrong_answers(product: Product, most: int = MOST_TOLD) -> tuple[WrongAnswer, ...]:
    """Give the likeliest wrong answers to a product, likeliest first.

    For an item of a study, the answers that its pupils wrote come first, by how many wrote them; all
    others follow by the shares of their rules. No two are equal, and none equals the right answer.
    """
    given = sorted(
        _wrong_answers(product), key=lambda wrong: -wrong.published.count if wrong.published else 0
    )
    by_value: dict[Exact | str, WrongAnswer] = {}
    for wrong in given:
        by_value.setdefault(wrong.answer.value, wrong)
    return tuple(by_value.values())[:most]


def told_apart(
    right: Exact | str, *given: tuple[str, Ratio | Said | None], most: int = MOST_TOLD
) -> tuple[WrongAnswer, ...]:
    """Keep the answers that are wrong, and of those that are worth the same only the likeliest.

    Args:
        right: what the right answer is worth.
        given: rules and the answers got by them, likeliest first; None where a rule gives none.
        most: how many are kept.
    """
    by_value: dict[Exact | str, WrongAnswer] = {}
    for rule, answer in given:
        if answer and answer.value != right:
            by_value.setdefault(answer.value, WrongAnswer(answer, rule, None))
    return tuple(by_value.values())[:most]


def _wrong_answers(product: Product) -> Iterator[WrongAnswer]:
    for name in _likeliest_rules(product):
        answer = RULES[name](product.first, product.second)
        if answer and not product.accepts(answer):
            yield WrongAnswer(answer, name, published(product.text, answer.text))


def _likeliest_rules(product: Product) -> list[str]:
    """Put the rules for kinds of product that no study asked where a teacher meets them."""
    names = list(RULES)
    factors = (product.first, product.second)
    if product.first.whole != product.second.whole:
        first = ["multiply_both_by_whole", "count_for_size"]
    elif all(factor.unit_fraction for factor in factors):
        first = ["keep_common_denominator", "count_for_size"]
    else:
        first = []
    return list(dict.fromkeys(first + names))


def rule_behind_product(product: Product, answer: Ratio) -> str | None:
    """Name the likeliest rule that gives a wrong answer: as it is written, or else its value."""
    given = [wrong for wrong in _wrong_answers(product) if wrong.answer.value == answer.value]
    given.sort(key=lambda wrong: wrong.answer.text != answer.text)
    return given[0].rule if given else None


def rule_behind_sum(first: Ratio, second: Ratio, answer: Ratio) -> str | None:
    """Name the rule behind a wrong answer to a sum, where it is tops and bottoms added."""
    given = add_tops_and_bottoms(first, second)
    right = answer.value == first.value + second.value
    return add_tops_and_bottoms.__name__ if given and given.value == answer.value and not right else None


def what_it_tells(rule: str) -> str:
    """Give the sentence that tells a teacher what an answer by this rule says about a pupil's thinking."""
    told: str = _table("wrong_answers.toml")[rule]["tells"]
    return told


def what_to_try(rule: str) -> str:
    """Give the sentence that tells a teacher what to try next with a pupil who follows this rule."""
    tried: str = _table("wrong_answers.toml")[rule]["try"]
    return tried


def published(item: str, answer: str) -> Published | None:
    """Find how many pupils gave this very answer to this very item, as both are written."""
    table = _table("published_answers.toml")
    for entry in table["items"]:
        if entry["item"] == item and answer in entry["answers"]:
            source = table["sources"][entry["source"]]
            return Published(entry["answers"][answer], source["pupils"], source["short"])
    return None


@cache
def _table(name: str) -> dict[str, Any]:
    return tomllib.loads(files(__package__).joinpath(name).read_text(encoding="utf-8"))
