"""Explaining a wrong answer: takes a question and an answer, gives what explains it, simplest first.

The search is exact and bounded: every rule, every way to follow it and every single slip is followed once,
and the answers that they lead to are looked up. An explanation that leads to many answers says little about
each, so its likelihood is shared among them; where chance would do nearly as well, it is no explanation.
"""

from collections import defaultdict
from collections.abc import Iterator, Mapping
from dataclasses import replace
from functools import lru_cache
from math import gcd
from typing import TypeAlias

from foldmath.marking.asking.questions import NumberQuestion
from foldmath.marking.judging.explanations import (
    DOUBLED,
    FOLLOWED_PER_MILLE,
    LEAST,
    REDUCED,
    RIGHT_PER_MILLE,
    SLIPS_PER_MILLE,
    UNSEEN_PER_MILLE,
    Explanation,
    Slip,
    Way,
    share,
)
from foldmath.marking.judging.workings import Working, right_working, rule_workings
from foldmath.plane.numbers import Exact, exact
from foldmath.statements.answers import Answer, Folds
from foldmath.statements.ratios import Ratio
from foldmath.statements.rules import Rule, likeliest_rules

Written: TypeAlias = tuple[int, int]

TABLES_KEPT = 4_096
"""Questions of which the table of explanations is kept; a class with own numbers has about as many."""


def explain(
    question: NumberQuestion,
    answer: Ratio,
    elsewhere: Mapping[Written, str] | None = None,
    followed: frozenset[Rule] = frozenset(),
) -> tuple[Explanation, ...]:
    """Give what explains a wrong answer: the simplest, and all that are as simple, likeliest first.

    Args:
        question: that was asked.
        answer: as written; its value is not that of the right one.
        elsewhere: the columns of the other questions of the page, by their right answers.
        followed: rules that the pupil follows in other answers, which makes them likelier here.
    """
    found = list(_table(question).get((answer.numerator, answer.denominator), ()))
    found += _elsewhere(question, answer, elsewhere or {})
    found += _rounded(question, answer)
    kept = [one for one in found if _likelihood(one, followed) >= LEAST]
    if not kept:
        return ()
    plainest = min(one.plainness for one in kept)
    best = [one for one in kept if one.plainness == plainest]
    by_name: dict[str, Explanation] = {}
    for one in sorted(best, key=lambda one: (_place(question, one), -one.per_mille)):
        by_name.setdefault(one.name, one)
    return tuple(by_name.values())


def _likelihood(explanation: Explanation, followed: frozenset[Rule]) -> Exact:
    """Give how likely an explanation is, once it is known what else the pupil does."""
    rule = explanation.rule
    if rule is None or rule not in followed:
        return explanation.per_mille
    return explanation.per_mille / share(rule) * exact(FOLLOWED_PER_MILLE)


def _place(question: NumberQuestion, explanation: Explanation) -> int:
    """Give the place of a rule among those of its problem, which stand as studies or teachers meet them."""
    rules = likeliest_rules(question.problem) if question.problem else ()
    return rules.index(explanation.rule) if explanation.rule else len(rules)


@lru_cache(maxsize=TABLES_KEPT)
def _table(question: NumberQuestion) -> dict[Written, tuple[Explanation, ...]]:
    """Follow everything that may explain an answer to a question."""
    found: defaultdict[Written, list[Explanation]] = defaultdict(list)
    for (above, below), one in _followed(question):
        if exact(above, below) == question.answer.value:
            continue
        found[above, below].append(one)
        if one.way is Way.RULE:
            for answer, likelihood in _other_forms(above, below):
                other = replace(one, as_written=False, per_mille=one.per_mille * likelihood)
                found[answer].append(other)
    return {answer: tuple(ones) for answer, ones in found.items()}


def _other_forms(above: int, below: int) -> Iterator[tuple[Written, Exact]]:
    """Give the simpler forms of an answer, and the doubled one."""
    simpler = [by for by in range(2, gcd(above, below) + 1) if above % by == below % by == 0]
    for by in simpler:
        yield (above // by, below // by), REDUCED / len(simpler)
    yield (2 * above, 2 * below), DOUBLED


def _followed(question: NumberQuestion) -> Iterator[tuple[Written, Explanation]]:
    """Give every answer that something leads to, with what leads there."""
    problem = question.problem
    workings = list(rule_workings(problem))
    ways = {rule: sum(other == rule for other, _ in workings) for rule, _ in workings}
    for rule, working in workings:
        if min(working.written) > 0:
            yield working.written, Explanation(way=Way.RULE, rule=rule, per_mille=share(rule) / ways[rule])
    if problem:
        for rule in likeliest_rules(problem):
            usual = () if rule in ways else rule.answers(problem)
            yield from _answered(usual, rule, share(rule))
            rare = rule.rare_answers(problem)
            yield from _answered(rare, rule, exact(UNSEEN_PER_MILLE, max(len(rare), 1)))
    for rule, working in workings:
        yield from _slipped(working, Explanation(way=Way.RULE_AND_SLIP, rule=rule, per_mille=share(rule)))
    right = right_working(problem)
    if right:
        yield from _slipped(right, Explanation(way=Way.SLIP, per_mille=exact(RIGHT_PER_MILLE)))
    for number in question.shown:
        likelihood = exact(UNSEEN_PER_MILLE, len(question.shown))
        yield (
            (number.numerator, number.denominator),
            Explanation(way=Way.COPIED, number=number, per_mille=likelihood),
        )


def _answered(
    answers: tuple[Answer | Folds, ...], rule: Rule, per_mille: Exact
) -> Iterator[tuple[Written, Explanation]]:
    """Give the numbers among a rule's own answers."""
    for answer in answers:
        if isinstance(answer, Ratio):
            given = (answer.numerator, answer.denominator)
            yield given, Explanation(way=Way.RULE, rule=rule, per_mille=per_mille)


def _slipped(working: Working, followed: Explanation) -> Iterator[tuple[Written, Explanation]]:
    """Give the answers that one slip leads to; the likelihood of a slip is shared among them."""
    slipped = list(working.slipped())
    for step, answer in slipped:
        wrong = answer[0] if step is working.above else answer[1]
        likelihood = followed.per_mille * exact(SLIPS_PER_MILLE, 1000) / len(slipped)
        if min(answer) > 0:
            yield answer, replace(followed, slip=Slip(step, wrong), per_mille=likelihood)


def _elsewhere(
    question: NumberQuestion, answer: Ratio, others: Mapping[Written, str]
) -> Iterator[Explanation]:
    """Look an answer up among the right answers to the page's other questions."""
    column = others.get((answer.numerator, answer.denominator), "")
    if column and column != question.column:
        likelihood = exact(ELSEWHERE_PER_MILLE, len(others))
        yield Explanation(way=Way.ELSEWHERE, number=answer, column=column, per_mille=likelihood)


def _rounded(question: NumberQuestion, answer: Ratio) -> Iterator[Explanation]:
    """Tell whether a decimal number is the right answer, rounded to its places."""
    places = answer.denominator
    if "." in answer.text and abs(answer.value - question.answer.value) * 2 * places <= exact(1):
        yield Explanation(way=Way.ROUNDED, number=answer, per_mille=exact(RIGHT_PER_MILLE))


ELSEWHERE_PER_MILLE = 20
"""Answers that belong to another question of the page [common practice, no source]."""
