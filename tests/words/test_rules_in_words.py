"""What a wrong-answer rule tells a teacher, in words."""

import tomllib
from importlib.resources import files

from foldmath import words
from foldmath.statements.rules import RULES
from foldmath.words.rules import what_it_tells, what_to_try


def test_every_rule_has_its_words_and_no_words_are_left_over():
    table = tomllib.loads(files(words).joinpath("rules.toml").read_text(encoding="utf-8"))
    assert table.keys() == {rule.name for rule in RULES}
    assert all(entry.keys() == {"tells", "try"} for entry in table.values())


def test_every_rule_says_what_it_tells_and_what_to_try_in_a_short_sentence_or_two():
    for rule in RULES:
        told, tried = what_it_tells(rule), what_to_try(rule)
        assert told.endswith(".")
        assert told.count(".") == 1
        assert tried.endswith((".", "?"))
        assert len(tried.split()) <= 13, tried
