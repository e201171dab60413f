"""What pupils really wrote is explained, and what nobody meant is not."""

import tomllib
from pathlib import Path

import pytest

from foldmath.marking.asking.questions import NumberQuestion
from foldmath.marking.judging.explaining import explain
from foldmath.marking.judging.explanations import Explanation
from foldmath.statements.products import parse_product
from foldmath.statements.ratios import Ratio, fraction

STUDY = tomllib.loads(Path(__file__).with_name("siegler_2011_answers.toml").read_text("utf-8"))
ITEMS = [item for item in STUDY if item != "codes"]
PUPILS = 48

RANDOM = [fraction(above, below) for above in range(1, 31) for below in range(2, 31)]
MOST_AT_RANDOM = 8
"""Percent of them that may be explained."""


def ratio(text: str) -> Ratio:
    return fraction(*map(int, text.split("/")))


def question(item: str) -> NumberQuestion:
    product = parse_product(item)
    shown = (product.first, product.second)
    return NumberQuestion(column="1", asks=item, problem=product, answer=product.unreduced, shown=shown)


def wrong_answers() -> list[tuple[str, int, tuple[Explanation, ...]]]:
    """Give for each wrong answer its code, how many gave it, and what explains it."""
    found = []
    for item in ITEMS:
        asked = question(item)
        for code, answers in STUDY[item].items():
            for answer, count in answers.items():
                if ratio(answer).value != asked.answer.value:
                    found.append((code, count, explain(asked, ratio(answer))))
    return found


def test_the_table_has_every_pupil_of_the_study():
    assert [sum(sum(answers.values()) for answers in STUDY[item].values()) for item in ITEMS] == [PUPILS] * 2
    assert sum(count for _, count, _ in wrong_answers()) == 39


def test_at_least_34_of_the_39_wrong_answers_are_explained():
    assert sum(count for _, count, found in wrong_answers() if found) >= 34


@pytest.mark.parametrize("item", [*ITEMS, "2/3 × 4/5", "3/4 × 1/2", "5/6 × 2/3", "3/5 × 1/4", "2/3 × 3/5"])
def test_few_fractions_that_mean_nothing_are_explained(item):
    asked = question(item)
    wrong = [answer for answer in RANDOM if answer.value != asked.answer.value]
    explained = sum(bool(explain(asked, answer)) for answer in wrong)
    assert 100 * explained <= MOST_AT_RANDOM * len(wrong)


def test_the_pupil_who_multiplied_above_one_of_two_denominators_is_understood():
    """One of 48 wrote 3/5 to 3/5 × 1/2, which may be copied as well: both are named."""
    assert STUDY["3/5 × 1/2"]["O"]["3/5"] == 1
    found = explain(question("3/5 × 1/2"), ratio("3/5"))
    assert [one.name for one in found] == ["keep_common_denominator", "copied"]


def test_where_the_researchers_coded_a_strategy_that_is_the_rule_named():
    coded = [
        (STUDY["codes"][code], count, found)
        for code, count, found in wrong_answers()
        if code in STUDY["codes"] and found and found[0].rule
    ]
    agreed = sum(count for rules, count, found in coded if found[0].rule.name in rules)
    assert sum(count for _, count, _ in coded) == 20
    assert 100 * agreed >= 95 * sum(count for _, count, _ in coded)
