"""A thousand pupils follow known rules, with slips; the rules are found again from their answers."""

from collections import defaultdict
from itertools import combinations
from random import Random

import pytest
from marking_a_class import PAGES, blank, marked, roster

from foldmath.marking.asking.questions import NumberQuestion
from foldmath.marking.evidence import evidence_of
from foldmath.marking.judging.workings import right_working, rule_workings
from foldmath.marking.next_lesson import next_lesson, rules_found
from foldmath.statements.items import Level
from foldmath.statements.products import Product
from foldmath.statements.ratios import fraction
from foldmath.statements.rules import LIKELIEST_FIRST

PUPILS = 1000
SLIPS = 0.15
"""How often an answer has a slip (an assumption of this test)."""

RULES = [rule for rule in LIKELIEST_FIRST[Product] if rule.code not in ("both", "count", "drop")]


@pytest.fixture(scope="module")
def simulated(tmp_path_factory):
    """Mark a class in which each pupil follows one rule in all products; give who followed what."""
    rng = Random(2026)
    levels = {f"Pupil {number}": Level.CORE for number in range(1, PUPILS + 1)}
    rows = blank(levels)
    columns = {question.column: question for question in PAGES.of_class(Level.CORE).questions}
    products = [column for column, question in columns.items() if isinstance(question.problem, Product)]
    followed = {}
    for row in rows[3:]:
        followed[row[0]] = rule = rng.choice(RULES)
        for column in products:
            ways = dict(reversed([(one, way) for one, way in rule_workings(columns[column].problem)]))
            if rule not in ways:
                continue
            above, below = ways[rule].written
            slips = list(ways[rule].slipped())
            if slips and rng.random() < SLIPS:
                _, (above, below) = rng.choice(slips)
            if above and below:
                row[rows[1].index(column)] = f"{above}/{below}"
    return followed, marked(tmp_path_factory.mktemp("simulated"), rows, roster(levels))


def ways_to_each_answer(question: NumberQuestion) -> dict[tuple[int, int], set[str]]:
    """Give by which rules, with a slip or without, each answer is reached; with no slip first."""
    plain, slipped = defaultdict(set), defaultdict(set)
    for rule, working in rule_workings(question.problem):
        plain[working.written].add(rule.name)
        for _, answer in working.slipped():
            slipped[answer].add(rule.name)
    for _, answer in right_working(question.problem).slipped():
        slipped[answer].add("right")
    return {answer: plain.get(answer) or slipped[answer] for answer in {*plain, *slipped}}


def test_the_rule_is_found_in_nearly_every_answer_that_identifies_one(simulated):
    followed, marks = simulated
    found = identifying = 0
    for pupil in marks.pupils:
        for answer in pupil.answers:
            question = answer.question
            if not answer.answer or answer.mark.verdict.good or not isinstance(question.problem, Product):
                continue
            above, below = map(int, answer.answer.split("/"))
            ways = ways_to_each_answer(question)[above, below]
            copied = fraction(above, below).text in [one.text for one in question.shown]
            if not copied and ways == {followed[pupil.pupil.label].name}:
                identifying += 1
                explanation = answer.mark.explanation
                found += explanation is not None and explanation.rule == followed[pupil.pupil.label]
    assert identifying > PUPILS
    assert 100 * found >= 95 * identifying


def test_the_next_products_tell_all_pairs_of_rules_found_apart(simulated, tmp_path):
    _, marks = simulated
    evidence = evidence_of(marks)
    rules = rules_found(evidence)
    assert set(RULES) <= set(rules)
    products = next_lesson(evidence, PAGES, tmp_path).products
    apart = set()
    for product in products:
        values = {rule.name: rule.answers(product)[0].value for rule in rules if rule.answers(product)}
        assert product.value not in values.values()
        apart |= {pair for pair in combinations(sorted(values), 2) if values[pair[0]] != values[pair[1]]}
    assert set(combinations(sorted(rule.name for rule in RULES), 2)) <= apart
