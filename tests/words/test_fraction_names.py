"""Fractions in words, as classes say them."""

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


@pytest.mark.parametrize(
    ("ratio", "words"),
    [
        (fraction(1, 2), "un medio"),
        (fraction(3, 2), "tres medios"),
        (fraction(2, 3), "dos tercios"),
        (fraction(3, 8), "tres octavos"),
        (fraction(1, 12), "un doceavo"),
        (fraction(16, 15), "dieciséis quinceavos"),
        (fraction(21, 22), "veintiún veintidosavos"),
        (fraction(31, 5), "treinta y un quintos"),
        (fraction(42, 20), "cuarenta y dos veinteavos"),
        (mixed_number(1, 1, 2), "uno y medio"),
        (mixed_number(2, 1, 4), "dos y un cuarto"),
        (mixed_number(21, 2, 3), "veintiuno y dos tercios"),
        (whole_number(1), "uno"),
        (whole_number(31), "treinta y uno"),
        (whole_number(40), "cuarenta"),
        (whole_number(100), ""),
        (fraction(1, 25), ""),
    ],
)
def test_a_number_is_said_in_spanish(ratio, words):
    assert in_words(ratio, "es") == words


@pytest.mark.parametrize("language", [*LANGUAGES, "es"])
@given(parts=DENOMINATORS, counts=st.tuples(st.integers(1, 99), st.integers(1, 99)), other=DENOMINATORS)
def test_two_fractions_that_are_written_unlike_are_said_unlike(language, parts, counts, other):
    one, two = fraction(counts[0], parts), fraction(counts[1], other)
    assert (in_words(one, language) == in_words(two, language)) == (one == two)


@pytest.mark.parametrize("language", [*LANGUAGES, "es"])
@given(parts=DENOMINATORS, count=st.integers(1, 99))
def test_one_part_is_said_in_the_singular_and_more_in_the_plural(language, parts, count):
    said = in_words(fraction(count, parts), language)
    assert said.endswith(parts_named(parts, language)) == (count != 1)
    assert said
