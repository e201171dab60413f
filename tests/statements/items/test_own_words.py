"""An item in a teacher's own words has all that any item has, worked out from the sum behind it."""

import pytest
from answered_again import number
from own_words import BED, SOIL, own

from foldmath.statements.checking.claims import check_claim


def names(item):
    return [wrong.rule.name for wrong in item.wrong]


def test_the_answer_is_in_lowest_terms_and_mixed_and_other_forms_are_right_too():
    assert [str(form) for form in (BED.answer, *BED.accepted)] == ["1/2", "6/12", "2/4", "3/6"]
    assert [str(form) for form in (SOIL.answer, *SOIL.accepted)] == ["7 1/2", "15/2", "30/4", "45/6"]


@pytest.mark.parametrize(
    ("asked", "rules"),
    [
        ("2/3 × 3/4", ["keep_common_denominator", "add_instead", "add_tops_and_bottoms"]),
        ("5 × 3/4", ["multiply_both_by_whole", "drop_denominator", "add_instead"]),
        ("1/2 + 1/4", ["add_tops_and_bottoms"]),
        ("3 ÷ 1/4", ["take_part_of_number", "count_one_sheet", "add_numbers"]),
        ("1/4 ÷ 3", ["multiply_for_divide", "add_denominators"]),
        ("1/2 × 1/3 × 3/4", ["add_tops_and_bottoms", "add_instead"]),
        ("(1/2)^3", ["times_exponent", "times_exponent"]),
        ("3/4 − 1/8", []),
        ("2 × (1/2 + 1/4)", []),
    ],
)
def test_likely_wrong_answers_are_those_of_the_kind_of_sum_and_none_counts_folds(asked, rules):
    item = own("How much?", asked)
    assert names(item) == rules
    assert all(check_claim(sentence).true for sentence in str(item.working).split(", "))
    assert all(number(str(wrong.answer)) != number(str(item.answer)) for wrong in item.wrong)
    assert all(wrong.published is None for wrong in item.wrong)


def test_a_wrong_answer_that_nobody_would_write_is_left_out():
    """Over a common denominator 99/98 × 100/99 is 96049800/9702."""
    assert names(own("How much?", "99/98 × 100/99")) == ["add_tops_and_bottoms"]


def test_one_sheet_shows_a_product_of_two_parts_and_nothing_else_is_drawn():
    assert (BED.sheets.columns, BED.sheets.rows, BED.sheets.counted) == (3, 4, 6)
    for asked in ("5 × 1 1/2", "4/3 × 1/2", "2/5 of 3", "1/2 + 1/4", "3 ÷ 1/4", "1/13 × 1/2"):
        assert own("How much?", asked).sheets is None


@pytest.mark.parametrize(
    ("text", "strange"),
    [
        ("How many trays?", True),
        ("A bed is 5/8 planted.", True),
        ("A bed is 6/8 planted.", False),
        ("A bed is ¾ planted.", False),
    ],
)
def test_it_is_strange_where_no_number_of_the_sum_stands_in_the_text_in_whatever_form(text, strange):
    assert own(text, "2/3 × 3/4").strange is strange
