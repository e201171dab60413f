"""Spanish changes "y" and "o" before their own sounds."""

import pytest

from foldmath.phrases import listed, phrase
from foldmath.words.saying import say


@pytest.mark.parametrize(
    ("names", "said"),
    [
        (["Ana", "Inés"], "Ana e Inés"),
        (["Ana", "Hilda"], "Ana e Hilda"),
        (["agua", "hielo"], "agua y hielo"),
        (["Ana", "Eva"], "Ana y Eva"),
        (["Ana", "Íñigo"], "Ana e Íñigo"),
    ],
)
def test_names_are_joined_as_they_are_spoken(names, said):
    assert say(listed(names), "es") == said


@pytest.mark.parametrize(
    ("last", "said"), [("8", "7 u 8"), ("11", "7 u 11"), ("12", "7 o 12"), ("110", "7 o 110")]
)
def test_so_is_a_choice(last, said):
    assert say(phrase("{first} or {last}", first="7", last=last), "es") == said


def test_english_joins_as_it_is_written():
    assert say(listed(["Ana", "Inés"]), "en-US") == "Ana and Inés"
