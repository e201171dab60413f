"""The sum behind an item in a teacher's own words: what is read, and what is refused with its place."""

import pytest

from foldmath.statements.expressions import value
from foldmath.statements.products import LARGEST
from foldmath.statements.refusals import SentenceRefused
from foldmath.statements.sums import parse_sum


@pytest.mark.parametrize(
    ("text", "answer"),
    [
        ("3/4 × 1/2", "3/8"),
        ("1/2 of 3/4", "3/8"),
        ("3 ÷ 1/4", "12"),
        ("1/2 + 1/4", "3/4"),
        ("2 × (1 − 1/4)", "3/2"),
        ("1/2 + 1/3 + 1/4 + 1/5 + 1/6 + 1/7", "223/140"),
        ("(1/2 + 1/3) × (1/4 + 2/3) ÷ (1/2 − 1/3)", "55/12"),
        (f"{LARGEST} × 1/{LARGEST}", "1"),
    ],
)
def test_a_sum_is_whatever_one_side_of_a_claim_may_be(text, answer):
    assert str(value(parse_sum(text))) == answer


@pytest.mark.parametrize(
    ("text", "column", "message"),
    [
        ("3/4 × 1/2 = 3/8", 11, "no answer in it"),
        ("3/4", 1, "two numbers or more"),
        ("-3/4", 1, "two numbers or more"),
        ("1/2 − 1/2", 1, "not above 0"),
        ("1/2 − 3/4", 1, "not above 0"),
        (f"1/2 × {LARGEST + 1}", 7, "larger than"),
        ("1/2 + 1/3 + 1/4 + 1/5 + 1/6 + 1/7 + 1/8", 1, "at most 6 numbers"),
        ("(1/2 + 1/3) × (1/4 + 2/3) ÷ (15/21 − 1/3)", 1, "40 characters"),
        ("101 × 101", 1, f"above {LARGEST}"),
        ("1/101 × 1/101", 1, f"above {LARGEST}"),
        ("3/4 ** 1/2", 6, ""),
        ("three fourths", 1, "not arithmetic"),
        ("  ", 1, "no sentence"),
        ("1 ÷ 0", 3, "divided by 0"),
    ],
)
def test_what_is_no_sum_is_refused_with_its_place_and_a_sum_that_works(text, column, message):
    with pytest.raises(SentenceRefused) as caught:
        parse_sum(text)
    assert caught.value.column == column
    assert message in str(caught.value.message)
    assert str(caught.value.hint)
