"""Fractions in words, as English-speaking classes say them."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from foldmath.statements.ratios import decimal, fraction, mixed_number, whole_number
from foldmath.words.fraction_names import in_words, parts_named

DENOMINATORS = st.integers(2, 24)
LANGUAGES = ("en-US", "en-GB")


@pytest.mark.parametrize(
    ("ratio", "words"),
    [
        (fraction(1, 2), "one half"),
        (fraction(3, 2), "three halves"),
        (fraction(2, 3), "two thirds"),
        (fraction(1, 8), "one eighth"),
        (fraction(5, 5), "five fifths"),
        (fraction(11, 12), "eleven twelfths"),
        (fraction(8, 15), "eight fifteenths"),
        (fraction(1, 21), "one twenty-first"),
        (fraction(5, 22), "five twenty-seconds"),
        (fraction(60, 20), "sixty twentieths"),
        (fraction(23, 24), "twenty-three twenty-fourths"),
        (mixed_number(1, 2, 5), "one and two fifths"),
        (mixed_number(2, 1, 2), "two and one half"),
        (whole_number(8), "eight"),
        (whole_number(36), "thirty-six"),
        (whole_number(40), "forty"),
    ],
)
@pytest.mark.parametrize("language", LANGUAGES)
def test_a_number_is_said_as_it_is_written(ratio, words, language):
    assert in_words(ratio, language) == words


@pytest.mark.parametrize(
    ("language", "one", "three", "parts"),
    [
        ("en-US", "one fourth", "three fourths", "fourths"),
        ("en-GB", "one quarter", "three quarters", "quarters"),
    ],
)
def test_fourths_are_quarters_in_england(language, one, three, parts):
    assert in_words(fraction(1, 4), language) == one
    assert in_words(fraction(3, 4), language) == three
    assert parts_named(4, language) == parts


@pytest.mark.parametrize(
    "ratio", [fraction(1, 25), fraction(100, 3), whole_number(100), decimal("0.5"), fraction(3, 1)]
)
def test_what_no_class_reads_in_words_stays_without_them(ratio):
    assert in_words(ratio, "en-US") == ""


@pytest.mark.parametrize("language", LANGUAGES)
@given(parts=DENOMINATORS, counts=st.tuples(st.integers(1, 99), st.integers(1, 99)), other=DENOMINATORS)
def test_two_fractions_that_are_written_unlike_are_said_unlike(language, parts, counts, other):
    one, two = fraction(counts[0], parts), fraction(counts[1], other)
    assert (in_words(one, language) == in_words(two, language)) == (one == two)


@given(parts=DENOMINATORS, count=st.integers(1, 99))
def test_one_part_is_said_in_the_singular_and_more_in_the_plural(parts, count):
    said = in_words(fraction(count, parts), "en-US")
    assert said.endswith(parts_named(parts, "en-US")) == (count != 1)
    assert said
