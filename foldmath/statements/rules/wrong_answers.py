"""Wrong answers: takes a problem, gives the likeliest with the rules behind them, and who wrote them."""

import tomllib
from collections.abc import Iterable, Iterator
from functools import cache
from importlib.resources import files
from itertools import chain
from typing import Any

from foldmath.statements.answers import Answer, Worth, worth
from foldmath.statements.products import Product
from foldmath.statements.rules import Rule, likeliest_rules
from foldmath.statements.rules.folds import ADD_FOLDS, COUNT_FOR_SIZE, STOP_ONE_FOLD_EARLY
from foldmath.statements.rules.operations import ADD_INSTEAD, ADD_TOPS_AND_BOTTOMS
from foldmath.statements.rules.problems import Problem
from foldmath.values import frozen


@frozen
class Published:
    """How many of the pupils in a study wrote an answer."""

    count: int
    pupils: int
    source: str

    @property
    def percent(self) -> int:
        """The share, to the nearest percent."""
        return (200 * self.count + self.pupils) // (2 * self.pupils)


@frozen
class WrongAnswer:
    """An answer that a pupil may give.

    Args:
        answer: as the pupil would write it, not reduced.
        rule: the rule behind it.
        published: who gave this very answer to this very item in a study; None where nobody asked it.
    """

    answer: Answer
    rule: Rule
    published: Published | None


MOST_TOLD = 3
"""A key tells of this many wrong answers to an item."""

AT_EACH_FOLD = (COUNT_FOR_SIZE, ADD_FOLDS, STOP_ONE_FOLD_EARLY)
"""Rules of which nobody can speak where nothing is folded."""

OF_FRACTIONS_SEEN = (ADD_INSTEAD, ADD_TOPS_AND_BOTTOMS)
"""Rules that nobody follows where folds are told in words: there are no fractions to be added."""


def likely_wrong_answers(problem: Problem, most: int = MOST_TOLD) -> tuple[WrongAnswer, ...]:
    """Give the likeliest wrong answers to a problem, likeliest first.

    For an item of a study, the answers that its pupils wrote come first, by how many wrote them; all
    others follow by the likelihood of their rules. No two are equal, and none equals the right answer.
    """
    return told_apart(problem.value, _most_published_first(problem))[:most]


def without_folding(problem: Problem) -> tuple[WrongAnswer, ...]:
    """Give the likeliest wrong answers where nothing is folded, so that no panels and no folds are counted.

    No study asked it in such words, so none has a published share.
    """
    kept = _without(problem, AT_EACH_FOLD)
    return tuple(WrongAnswer(wrong.answer, wrong.rule, None) for wrong in kept)


def where_folds_are_told(problem: Problem) -> tuple[WrongAnswer, ...]:
    """Give the likeliest wrong answers where folds are told in words and no fraction is seen."""
    return _without(problem, OF_FRACTIONS_SEEN)


def _without(problem: Problem, rules: tuple[Rule, ...]) -> tuple[WrongAnswer, ...]:
    """Give the likeliest wrong answers that some rules do not lead to."""
    all_wrong = told_apart(problem.value, _most_published_first(problem))
    return tuple(wrong for wrong in all_wrong if wrong.rule not in rules)[:MOST_TOLD]


def told_apart(right: Worth, wrong: Iterable[WrongAnswer]) -> tuple[WrongAnswer, ...]:
    """Keep the answers that are wrong, and of those that are worth the same only the likeliest.

    Args:
        right: what the right answer is worth.
        wrong: answers got by rules, likeliest first; some may happen to be right.
    """
    by_value: dict[Worth, WrongAnswer] = {}
    for one in wrong:
        if worth(one.answer) != right:
            by_value.setdefault(worth(one.answer), one)
    return tuple(by_value.values())


def _most_published_first(problem: Problem) -> list[WrongAnswer]:
    return sorted(_answers(problem), key=lambda wrong: -wrong.published.count if wrong.published else 0)


def _answers(problem: Problem) -> Iterator[WrongAnswer]:
    """Follow every rule that acts on a problem, likeliest first; some answers may happen to be right."""
    for rule in likeliest_rules(problem):
        for answer in rule.answers(problem):
            known = published(problem.text, str(answer)) if isinstance(problem, Product) else None
            yield WrongAnswer(answer, rule, known)


def rare_wrong_answers(problem: Problem) -> Iterator[WrongAnswer]:
    """Give the answers that few of those who follow a rule write; none of them is right."""
    for rule in likeliest_rules(problem):
        yield from (WrongAnswer(answer, rule, None) for answer in rule.rare_answers(problem))


def rule_behind(problem: Problem, answer: Answer) -> Rule | None:
    """Give the likeliest rule that leads to a wrong answer: as it is written, or else its value."""
    if worth(answer) == problem.value:
        return None
    led_to = chain(_answers(problem), rare_wrong_answers(problem))
    given = [wrong for wrong in led_to if worth(wrong.answer) == worth(answer)]
    given.sort(key=lambda wrong: wrong.answer != answer)
    return given[0].rule if given else None


def published(item: str, answer: str) -> Published | None:
    """Find how many pupils gave this very answer to this very item, as both are written."""
    table = _studies()
    for entry in table["items"]:
        if entry["item"] == item and answer in entry["answers"]:
            source = table["sources"][entry["source"]]
            return Published(entry["answers"][answer], source["pupils"], source["short"])
    return None


@cache
def _studies() -> dict[str, Any]:
    return tomllib.loads(files(__package__).joinpath("published_answers.toml").read_text(encoding="utf-8"))
