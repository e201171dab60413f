"""What a wrong-answer rule tells a teacher, in words."""

import pytest

from foldmath.practice.candidates import MENDED, MENDED_BY_WHOLES
from foldmath.statements.rules import RULES
from foldmath.statements.rules.folds import ADD_FOLDS, COUNT_FOR_SIZE
from foldmath.words.authored import table
from foldmath.words.languages import languages
from foldmath.words.rules import short_name, what_it_tells, what_to_try, what_went_wrong

MOST_WORDS = 14
"""Teachers read what to try in a glance (common practice, no source)."""

MOST_WORDS_FOR_PUPILS = 12
"""In a sentence (common practice, no source)."""

LONGEST_SHORT_NAME = 6
"""Letters that a line of a column of the plan's grid has room for; two lines are the most."""


@pytest.mark.parametrize("language", languages())
def test_every_rule_has_its_words_and_no_words_are_left_over(language):
    words = table(language, "rules.toml")
    assert words.keys() == {rule.name for rule in RULES}
    mended = {rule.name for rule in (*MENDED, *MENDED_BY_WHOLES, COUNT_FOR_SIZE, ADD_FOLDS)}
    for name, entry in words.items():
        assert entry.keys() - {"short"} == {"tells", "try"} | ({"wrong"} if name in mended else set())


@pytest.mark.parametrize("language", languages())
def test_what_went_wrong_in_an_answer_to_correct_is_a_whole_sentence_for_pupils(language):
    for rule in (*MENDED, *MENDED_BY_WHOLES, COUNT_FOR_SIZE, ADD_FOLDS):
        said = what_went_wrong(rule, language)
        assert said != what_it_tells(rule, language)
        assert said.endswith(".")
        assert len(said.split()) <= MOST_WORDS_FOR_PUPILS, said


@pytest.mark.parametrize("language", languages())
def test_every_rule_says_what_it_tells_and_what_to_try_in_a_short_sentence_or_two(language):
    for rule in RULES:
        told, tried = what_it_tells(rule, language), what_to_try(rule, language)
        assert told.endswith(".")
        assert told.count(".") == 1
        assert tried.endswith((".", "?"))
        assert len(tried.split()) <= MOST_WORDS, tried


@pytest.mark.parametrize("language", languages())
def test_every_rule_has_a_short_name_of_its_own_for_a_narrow_column(language):
    names = [short_name(rule, language) for rule in RULES]
    assert len(set(names)) == len(names)
    assert max(len(word) for name in names for word in name.split()) <= LONGEST_SHORT_NAME
    assert max(len(name.split()) for name in names) <= 2


def test_short_names_are_the_languages_own():
    keep = next(rule for rule in RULES if rule.name == "keep_common_denominator")
    names = {language: short_name(keep, language) for language in ("en-US", "en-GB", "es")}
    assert names == {"en-US": "same bottom", "en-GB": "same bottom", "es": "deja"}
