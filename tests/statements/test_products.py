"""Practice products as teachers write them, and the answers to accept."""

import pytest

from foldmath.plane.numbers import exact
from foldmath.statements.products import parse_product
from foldmath.statements.ratios import fraction, mixed_number, whole_number
from foldmath.statements.refusals import SentenceRefused


@pytest.mark.parametrize(
    ("typed", "asked", "unreduced", "lowest", "mixed"),
    [
        ("2/3 × 4/5", "2/3 × 4/5", "8/15", "8/15", "8/15"),
        ("3/4x1/2", "3/4 × 1/2", "3/8", "3/8", "3/8"),
        ("3 * 2/5", "3 × 2/5", "6/5", "6/5", "1 1/5"),
        ("2/3 of 4/5", "2/3 of 4/5", "8/15", "8/15", "8/15"),
        ("1 1/2 × ⅔", "1 1/2 × 2/3", "6/6", "1", "1"),
        ("2/4 × 2/3", "2/4 × 2/3", "4/12", "1/3", "1/3"),
        ("(2/3) × 4", "2/3 × 4", "8/3", "8/3", "2 2/3"),
        ("2 × 3", "2 × 3", "6", "6", "6"),
    ],
)
def test_factors_stay_as_written_and_the_product_is_given_in_every_form(
    typed, asked, unreduced, lowest, mixed
):
    product = parse_product(typed)
    assert product.text == asked
    assert (product.unreduced.text, product.lowest.text, product.mixed.text) == (unreduced, lowest, mixed)
    assert {ratio.value for ratio in product.equivalents} == {product.value}
    assert len({ratio.text for ratio in product.equivalents}) == len(product.equivalents)


def test_any_equal_number_is_accepted_and_no_other():
    product = parse_product("3 × 2/5")
    assert all(map(product.accepts, [fraction(6, 5), fraction(600, 500), mixed_number(1, 1, 5)]))
    assert not any(map(product.accepts, [fraction(6, 15), whole_number(1)]))


def test_a_mixed_number_is_kept_with_its_own_denominator():
    first = parse_product("1 2/4 × 1/2").first
    assert (first.text, first.numerator, first.denominator, first.value) == ("1 2/4", 6, 4, exact(3, 2))


def test_only_a_whole_number_is_called_whole():
    product = parse_product("3 × 3/1")
    assert (product.first.whole, product.second.whole) == (True, False)


@pytest.mark.parametrize(
    ("text", "column", "message", "hint"),
    [
        ("", 1, "no sentence", "2/3 × 4/5"),
        ("2/3", 1, "two numbers", "2/3 × 4/5"),
        ("2/3 + 4/5", 1, "two numbers", "2/3 × 4/5"),
        ("1/2 × 1/3 × 1/4", 1, "two numbers", "2/3 × 4/5"),
        ("1/2 × 3/4 = 3/8", 11, "no answer", "2/3 × 4/5"),
        ("1/2 times 3/4", 5, "not arithmetic I can read", "1/2 × 3/4"),
        ("1/2 3/4", 5, "sign is missing", "1/2 × 3/4"),
        ("1/2 × 3/0", 7, "cannot be 0", "a number that is not 0, such as 1/2 or 2"),
        ("1/2 × 0/3", 7, "factor of 0", "2/3 × 4/5"),
        ("1/2 × 0", 7, "factor of 0", "2/3 × 4/5"),
        ("1/2 × 1/10001", 9, "larger than 10000", "2/3 × 4/5"),
        ("1/2 × 9999 1/9", 7, "89992 parts", "2/3 × 4/5"),
    ],
)
def test_what_is_no_product_to_practise_is_refused_with_its_place(text, column, message, hint):
    with pytest.raises(SentenceRefused, match=message) as refusal:
        parse_product(text)
    assert (refusal.value.column, str(refusal.value.hint)) == (column, hint)


def test_factors_up_to_the_stated_size_are_taken():
    assert parse_product("10000/9999 × 1/10000").unreduced.text == "10000/99990000"
