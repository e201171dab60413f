"""Wrong answers to a product, each by the rule behind it."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from foldmath.plane.numbers import ZERO
from foldmath.statements.expressions import Comparison
from foldmath.statements.products import Product, parse_product
from foldmath.statements.ratios import fraction, whole_number
from foldmath.statements.rules import named
from foldmath.statements.rules.registry import likeliest_rules
from foldmath.statements.rules.wrong_answers import (
    WrongAnswer,
    likely_wrong_answers,
    rare_wrong_answers,
    rule_behind,
    told_apart,
    without_folding,
)


@pytest.mark.parametrize(
    ("rule", "product", "answer"),
    [
        ("keep_common_denominator", "2/7 × 3/7", "6/7"),
        ("keep_common_denominator", "1/2 × 1/3", "6/6"),
        ("add_instead", "1/2 × 1/3", "5/6"),
        ("invert_first", "2/3 × 4/5", "12/10"),
        ("invert_second", "2/3 × 4/5", "10/12"),
        ("add_denominators", "2/3 × 4/5", "8/8"),
        ("add_tops_and_bottoms", "2/3 × 4/5", "6/8"),
        ("subtract_instead", "2/3 × 4/5", "2/15"),
        ("multiply_both_by_whole", "3 × 2/5", "6/15"),
        ("multiply_both_by_whole", "2/5 × 3", "6/15"),
        ("drop_denominator", "3 × 2/5", "6"),
        ("drop_denominator", "2/5 × 3", "6"),
        ("part_for_whole", "2/3 × 4/5", "8/12"),
        ("all_shaded", "2/3 × 4/5", "12/15, 14/15"),
        ("count_for_size", "1/4 × 1/2", "8"),
        ("count_for_size", "4 × 1/2", "8"),
    ],
)
def test_each_rule_gives_the_answer_that_a_pupil_writes(rule, product, answer):
    asked = parse_product(product)
    assert ", ".join(given.text for given in named(rule).answers(asked)) == answer


@pytest.mark.parametrize(
    ("rule", "product"),
    [
        ("multiply_both_by_whole", "1/2 × 1/3"),
        ("multiply_both_by_whole", "2 × 3"),
        ("count_for_size", "2/3 × 1/2"),
        ("count_for_size", "2 × 3"),
        ("subtract_instead", "1/2 × 2/4"),
        ("drop_denominator", "2/5 × 1/2"),
        ("part_for_whole", "2/3 × 1/5"),
        ("part_for_whole", "2/3 × 5/4"),
        ("all_shaded", "3/2 × 1/5"),
    ],
)
def test_a_rule_that_does_not_fit_a_product_gives_no_answer(rule, product):
    asked = parse_product(product)
    assert named(rule).answers(asked) == ()


@pytest.mark.parametrize(
    ("product", "answers"),
    [
        ("2/3 × 4/5", ["8/5", "8/3"]),
        ("1/2 × 3/4", ["3/4", "3/2"]),
        ("2/5 × 3/5", []),
        ("3 × 2/5", []),
    ],
)
def test_one_of_two_denominators_may_be_kept_which_no_key_has_room_for(product, answers):
    asked = parse_product(product)
    rare = list(rare_wrong_answers(asked))
    assert [str(wrong.answer) for wrong in rare] == answers
    assert {rule_behind(asked, wrong.answer) for wrong in rare} <= {named("keep_common_denominator")}
    assert not {str(wrong.answer) for wrong in likely_wrong_answers(asked, most=99)} & {*answers}


def test_an_answer_as_it_is_written_tells_more_than_its_value():
    """3/4 has the value of all that is shaded for 1/2 × 3/4, which is written 6/8."""
    asked = parse_product("1/2 × 3/4")
    assert rule_behind(asked, fraction(3, 4)) == named("keep_common_denominator")
    assert rule_behind(asked, fraction(6, 8)) == named("all_shaded")


@pytest.mark.parametrize(
    ("product", "answers"),
    [
        ("2/3 × 4/5", ["120/15", "22/15", "6/8"]),
        ("2/3 of 4/5", ["120/15", "22/15", "6/8"]),
        ("3 × 2/5", ["6/15", "6", "17/5"]),
        ("1/4 × 1/2", ["2/4", "8", "3/4"]),
    ],
)
def test_the_likeliest_wrong_answers_come_first(product, answers):
    assert [str(wrong.answer) for wrong in likely_wrong_answers(parse_product(product))] == answers


def test_a_published_share_stands_only_beside_the_published_item_and_answer():
    first, *_ = likely_wrong_answers(parse_product("3/5 × 1/5"))
    assert first.published is not None
    assert (first.published.count, first.published.pupils, first.published.percent) == (44, 120, 37)
    assert all(wrong.published is None for wrong in likely_wrong_answers(parse_product("1/5 × 3/5")))
    assert all(wrong.published is None for wrong in likely_wrong_answers(parse_product("3/5 of 1/5")))


def test_an_answer_written_otherwise_is_still_known_by_its_value():
    product = parse_product("3/5 × 1/4")
    assert rule_behind(product, whole_number(3)) == named("keep_common_denominator")
    assert rule_behind(product, fraction(3, 20)) is None
    assert rule_behind(product, fraction(6, 40)) is None


def test_answers_are_told_apart_by_what_they_are_worth():
    keep, add, flip = named("keep_common_denominator"), named("add_instead"), named("invert_first")
    wrong = told_apart(
        fraction(1, 2).value,
        [
            WrongAnswer(fraction(2, 3), keep, None),
            WrongAnswer(fraction(4, 6), add, None),
            WrongAnswer(fraction(2, 4), add, None),
            WrongAnswer(Comparison.GREATER, flip, None),
        ],
    )
    assert [(one.rule, str(one.answer)) for one in wrong] == [(keep, "2/3"), (flip, ">")]


def test_where_nothing_is_folded_no_panels_are_counted():
    product = parse_product("3 × 1/2")
    assert "count_for_size" in [wrong.rule.name for wrong in likely_wrong_answers(product)]
    assert "count_for_size" not in [wrong.rule.name for wrong in without_folding(product)]
    assert all(wrong.published is None for wrong in without_folding(parse_product("3/5 × 1/5")))


factors = st.one_of(
    st.builds(whole_number, st.integers(1, 12)),
    st.builds(fraction, st.integers(1, 12), st.integers(1, 12)),
)


@settings(max_examples=150, deadline=None)
@given(st.builds(Product, factors, factors), st.integers(1, 9))
def test_wrong_answers_are_wrong_different_and_above_nothing(product, most):
    answers = [wrong.answer for wrong in likely_wrong_answers(product, most)]
    values = [answer.value for answer in answers]
    assert len(answers) <= most
    assert product.value not in values
    assert len(set(values)) == len(values)
    assert all(value > ZERO for value in values)
    assert len({answer.text for answer in answers}) == len(answers)


def test_published_answers_come_first_the_commonest_before_the_rarer_and_others_by_their_rules():
    answers = likely_wrong_answers(parse_product("3/5 × 1/5"))
    counts = [wrong.published.count if wrong.published else 0 for wrong in answers]
    assert counts == sorted(counts, reverse=True)
    assert counts[0] > 0
    unpublished = likely_wrong_answers(parse_product("2/3 × 4/7"))
    rules = [rule.name for rule in likeliest_rules(parse_product("2/3 × 4/7"))]
    places = [rules.index(wrong.rule.name) for wrong in unpublished]
    assert places == sorted(places)
