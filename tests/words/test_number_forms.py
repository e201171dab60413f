"""A whole number in its forms: every form says the same number."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from foldmath.words.number_forms import LARGEST, expanded_form, in_words, numeral, place_parts

values = st.integers(0, LARGEST)
languages = st.sampled_from(["en-US", "en-GB"])

ONES = ["zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven"]
ONES += ["twelve", "thirteen", "fourteen", "fifteen", "sixteen", "seventeen", "eighteen", "nineteen"]
TENS = ["twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety"]


def number_said(words: str) -> int:
    """Read a number in words, as people count it up: a hundred times what came before, and so on."""
    total = below = 0
    for word in words.replace("-", " ").replace(",", "").split():
        if word == "thousand":
            total, below = 1000 * below, 0
        elif word == "hundred":
            below *= 100
        elif word in TENS:
            below += 20 + 10 * TENS.index(word)
        elif word != "and":
            below += ONES.index(word)
    return total + below


@given(values, languages)
def test_the_words_say_the_number(value, language):
    assert number_said(in_words(value, language)) == value


@given(values)
def test_only_british_words_have_an_and(value):
    assert " and " not in in_words(value, "en-US")
    assert in_words(value, "en-GB").replace(" and ", " ") == in_words(value, "en-US")


@given(values)
def test_the_parts_of_the_expanded_form_add_up_and_each_has_one_figure_before_its_zeros(value):
    parts = place_parts(value)
    assert sum(parts) == value
    assert list(parts) == sorted(parts, reverse=True)
    assert all(str(part).rstrip("0") in set("123456789") for part in parts)
    assert expanded_form(value).replace(",", "") == (" + ".join(map(str, parts)) if parts else "0")


@given(values)
def test_the_numeral_reads_as_the_number(value):
    assert int(numeral(value).replace(",", "")) == value


@pytest.mark.parametrize(
    ("value", "figures", "words", "summed"),
    [
        (348, "348", "three hundred forty-eight", "300 + 40 + 8"),
        (4_825, "4,825", "four thousand, eight hundred twenty-five", "4,000 + 800 + 20 + 5"),
        (60_700, "60,700", "sixty thousand, seven hundred", "60,000 + 700"),
        (0, "0", "zero", "0"),
    ],
)
def test_forms_as_pupils_write_them(value, figures, words, summed):
    assert (numeral(value), in_words(value, "en-US"), expanded_form(value)) == (figures, words, summed)


@pytest.mark.parametrize("value", [-1, LARGEST + 1])
def test_numbers_outside_these_grades_are_refused(value):
    for form in (numeral, expanded_form, place_parts, lambda number: in_words(number, "en-US")):
        with pytest.raises(ValueError, match="a number from 0 to 999999"):
            form(value)
