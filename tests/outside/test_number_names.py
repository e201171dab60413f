"""Fraction names against the library num2words, for every number that has a name here.

Source: num2words 0.5 (github.com/savoirfairelinux/num2words), its cardinals and ordinals in English. That a
half and a quarter have names of their own, and halves their plural, is [common practice, no source].
"""

import pytest
from num2words import num2words

from foldmath.statements.ratios import fraction, whole_number
from foldmath.words.fraction_names import in_words


@pytest.mark.parametrize("parts", [3, *range(5, 25)])
def test_every_fraction_is_said_with_the_librarys_cardinal_and_ordinal(parts):
    ordinal = num2words(parts, to="ordinal")
    for count in range(1, 100):
        name = ordinal if count == 1 else f"{ordinal}s"
        assert in_words(fraction(count, parts), "en-US") == f"{num2words(count)} {name}"


def test_fourths_of_the_united_states_are_the_librarys_ordinal():
    assert in_words(fraction(3, 4), "en-US") == f"{num2words(3)} {num2words(4, to='ordinal')}s"


@pytest.mark.parametrize("number", range(100))
def test_whole_numbers_are_the_librarys_cardinals(number):
    assert in_words(whole_number(number), "en-GB") == num2words(number)
