"""Wrong-answer rules as values: the registry is whole; each problem has its slips, likeliest first."""

import pickle
from typing import get_args

import pytest

from foldmath.statements.items import Repeated
from foldmath.statements.items.repeated_halving import make_repeated_halving
from foldmath.statements.ratios import fraction, whole_number
from foldmath.statements.rules import LIKELIEST_FIRST, RULES, likeliest_rules, named
from foldmath.statements.rules.problems import (
    EqualPanels,
    FoldsAsked,
    MissingFactor,
    OtherName,
    PanelCut,
    PartsOfParts,
    Problem,
    SheetsCut,
    Sum,
    UnequalPanels,
)
from foldmath.statements.rules.product_compared import ProductCompared
from foldmath.statements.rules.wrong_answers import likely_wrong_answers

HALF, THIRD, TWO_THIRDS = fraction(1, 2), fraction(1, 3), fraction(2, 3)


def test_every_rule_has_a_name_of_its_own_and_a_code_that_fits_a_narrow_column():
    assert len({rule.name for rule in RULES}) == len({rule.code for rule in RULES}) == len(RULES) == 44
    assert all(1 <= len(rule.code) <= 5 and rule.code.isalpha() for rule in RULES)


def test_every_kind_of_problem_lists_exactly_the_rules_that_act_on_it():
    assert set(LIKELIEST_FIRST) == {*get_args(Problem), *get_args(FoldsAsked)}
    for kind, rules in LIKELIEST_FIRST.items():
        assert {rule for rule in RULES if rule.acts_on(kind)} == set(rules)
        assert len(set(rules)) == len(rules)


def test_a_rule_is_found_by_its_name_and_stays_itself_between_processes():
    for rule in RULES:
        assert named(rule.name) is rule
        assert pickle.loads(pickle.dumps(rule)) == rule


def test_a_rule_makes_nothing_of_a_kind_of_problem_on_which_it_does_not_act():
    assert named("keep_numerator").answers(SheetsCut(3, 4)) == ()
    assert named("add_folds").answers(UnequalPanels(3, 2)) == ()


@pytest.mark.parametrize(
    ("problem", "slips"),
    [
        (Sum(fraction(3, 5), fraction(1, 4)), {"add_tops_and_bottoms": "4/9"}),
        (
            MissingFactor(fraction(1, 4), fraction(1, 8), HALF),
            {
                "multiply_what_is_shown": "1/32",
                "count_for_size": "2",
                "subtract_to_undo": "1/8",
            },
        ),
        (
            MissingFactor(TWO_THIRDS, fraction(8, 15), fraction(4, 5)),
            {
                "multiply_what_is_shown": "16/45",
                "subtract_tops_and_bottoms": "6/12",
                "subtract_to_undo": "2/15",
            },
        ),
        (OtherName(fraction(2, 4), 2), {"keep_numerator": "2/8", "add_to_both": "6/8"}),
        (ProductCompared(TWO_THIRDS, HALF), {"multiplying_makes_more": ">"}),
        (ProductCompared(whole_number(2), HALF), {"fractions_make_less": "<"}),
        (ProductCompared(whole_number(1), HALF), {"multiplying_makes_more": ">", "fractions_make_less": "<"}),
        (ProductCompared(whole_number(2), fraction(2, 5), whole_number(1)), {"compare_one_number": ">"}),
        (
            ProductCompared(whole_number(2), TWO_THIRDS, whole_number(1), turned=True),
            {"compare_one_number": ">"},
        ),
        (SheetsCut(3, 4), {"take_part_of_number": "3/4", "count_one_sheet": "4", "add_numbers": "7"}),
        (PanelCut(4, 3), {"multiply_for_divide": "3/4", "count_for_size": "12", "add_denominators": "1/7"}),
        (PartsOfParts((HALF,) * 3), {"add_folds": "1/6", "count_for_size": "8", "add_instead": "3/2"}),
        (
            PartsOfParts((HALF, THIRD, TWO_THIRDS)),
            {"add_tops_and_bottoms": "4/8", "add_instead": "3/2", "stop_one_fold_early": "1/6"},
        ),
    ],
)
def test_the_likeliest_slips_come_first(problem, slips):
    wrong = likely_wrong_answers(problem)
    assert [(one.rule.name, str(one.answer)) for one in wrong] == list(slips.items())


def test_who_adds_at_folds_folds_into_parts_that_add_up_the_most_alike_first():
    (rule,) = likeliest_rules(EqualPanels(3, 2))
    first, second = rule.answers(EqualPanels(3, 2))
    assert [step.parts for step in first.steps] == [3, 3]
    assert second.steps[1].parts == 4


def test_no_sum_of_parts_has_more_than_a_pleat_makes():
    (rule,) = likeliest_rules(EqualPanels(12, 2))
    (only,) = rule.answers(EqualPanels(12, 2))
    assert [step.parts for step in only.steps] == [12, 12]


@pytest.mark.parametrize("factors", [(HALF,) * 2, (HALF,) * 3, (THIRD, THIRD)])
def test_nobody_adds_fractions_of_folds_that_are_told_in_words_and_who_multiplies_may(factors):
    told, asked = (make_repeated_halving(factors, how) for how in (Repeated.FOLDS, Repeated.PRODUCT))
    adding = {"add_instead", "add_tops_and_bottoms"}
    assert adding.isdisjoint(one.rule.name for one in told.wrong)
    assert not adding.isdisjoint(one.rule.name for one in asked.wrong)
    assert told.wrong
