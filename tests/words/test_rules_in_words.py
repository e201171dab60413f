"""What a wrong-answer rule tells a teacher, in words."""

import pytest

from foldmath.statements.rules import RULES
from foldmath.words.authored import table
from foldmath.words.languages import languages
from foldmath.words.rules import what_it_tells, what_to_try

MOST_WORDS = 14
"""Teachers read what to try in a glance (common practice, no source)."""


@pytest.mark.parametrize("language", languages())
def test_every_rule_has_its_words_and_no_words_are_left_over(language):
    words = table(language, "rules.toml")
    assert words.keys() == {rule.name for rule in RULES}
    assert all(entry.keys() == {"tells", "try"} for entry in words.values())


@pytest.mark.parametrize("language", languages())
def test_every_rule_says_what_it_tells_and_what_to_try_in_a_short_sentence_or_two(language):
    for rule in RULES:
        told, tried = what_it_tells(rule, language), what_to_try(rule, language)
        assert told.endswith(".")
        assert told.count(".") == 1
        assert tried.endswith((".", "?"))
        assert len(tried.split()) <= MOST_WORDS, tried
