"""Fraction names against the library num2words, for every number that has a name here.

Source: num2words 0.5 (github.com/savoirfairelinux/num2words), cardinals and ordinals, English and Spanish.
That a half and a quarter have names of their own, and halves their plural, is [common practice, no source].
Spanish fractions are the library's ordinals from a fourth to a tenth only; the names above are those that the
Diccionario panhispánico de dudas (Real Academia Española, 2005) lists under "fraccionarios" [from memory].
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


@pytest.mark.parametrize("parts", range(4, 11))
def test_spanish_fractions_from_fourths_to_tenths_are_the_librarys_ordinals(parts):
    ordinal = num2words(parts, to="ordinal", lang="es")
    assert in_words(fraction(1, parts), "es") == f"un {ordinal}"
    for count in (*range(2, 21), *range(22, 31), *range(32, 100)):
        if count % 10 != 1 or count == 11:
            assert in_words(fraction(count, parts), "es") == f"{num2words(count, lang='es')} {ordinal}s"


FROM_MEMORY = {
    2: "medio",
    3: "tercio",
    11: "onceavo",
    12: "doceavo",
    13: "treceavo",
    14: "catorceavo",
    15: "quinceavo",
    16: "dieciseisavo",
    17: "diecisieteavo",
    18: "dieciochoavo",
    19: "diecinueveavo",
    20: "veinteavo",
    21: "veintiunavo",
    22: "veintidosavo",
    23: "veintitresavo",
    24: "veinticuatroavo",
}


def test_the_other_spanish_fractions_are_those_of_a_published_dictionary():
    assert {parts: in_words(fraction(1, parts), "es") for parts in FROM_MEMORY} == {
        parts: f"un {name}" for parts, name in FROM_MEMORY.items()
    }


@pytest.mark.parametrize("number", range(100))
def test_spanish_whole_numbers_are_the_librarys_cardinals(number):
    assert in_words(whole_number(number), "es") == num2words(number, lang="es")


@pytest.mark.parametrize("number", range(100))
def test_whole_numbers_are_the_librarys_cardinals(number):
    assert in_words(whole_number(number), "en-GB") == num2words(number)
