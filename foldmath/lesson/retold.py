"""A lesson in another language: takes its text, gives it with its author's own translations as its words."""

from collections.abc import Mapping, MutableMapping, MutableSequence
from re import DOTALL, MULTILINE, escape, sub
from typing import Any

import tomlkit

from foldmath.lesson.grammar.refusals import StepUnreadable
from foldmath.lesson.grammar.sentences import parse_step
from foldmath.lesson.labels import plain
from foldmath.words.steps import step_sentence
from foldmath.words.trade_words import trade_word

UNTOLD = ("steps", "practice", "translated")
"""What is said in a way of its own, is written alike in every language, or is no word of the lesson."""


def retold(text: str, language: str, written_in: str) -> str:
    """Give the text of a lesson in a language that it has words in; as it is where it has none.

    Its own words are those under ``[translated.…]``, those of the trade are the ones of every lesson; steps
    are said anew, but for a sentence such as "fold in half", which is not said without the paper as it lies.

    Args:
        text: of a lesson that can be read.
        language: that it is to have.
        written_in: the language that it has.
    """
    if language == written_in:
        return text
    document = tomlkit.parse(text)
    own = document.get("translated", {}).get(language)
    if own is None:
        return text
    told = {plain(first): str(other) for first, other in own.items()}
    for word in document.get("vocabulary", ()):
        trade = trade_word(str(word), written_in, language)
        if trade is not None:
            told.setdefault(plain(str(word)), str(trade))
    steps = document.get("steps", [])
    for place, step in enumerate(steps):
        steps[place] = _said_anew(str(step), language)
    _retell({key: document[key] for key in document if key not in UNTOLD}, told)
    document["title"] = told.get(plain(str(document["title"])), str(document["title"]))
    heading = rf"(?:\n#[^\n]*)*\n\[translated\.{escape(language)}\]\n(?:(?!\n\[).)*"
    without = sub(heading, "", tomlkit.dumps(document), flags=DOTALL).rstrip("\n")
    return sub(r"^title", f'language = "{language}"\ntitle', f"{without}\n", count=1, flags=MULTILINE)


def _said_anew(step: str, language: str) -> str:
    try:
        return step_sentence(parse_step(step), language)
    except StepUnreadable:
        return step


def _retell(values: Any, told: Mapping[str, str]) -> None:
    """Say every text in lists and tables, at any depth, in the other words."""
    if isinstance(values, MutableMapping):
        places = list(values.items())
    elif isinstance(values, MutableSequence):
        places = list(enumerate(values))
    else:
        return
    for place, value in places:
        if isinstance(value, str):
            if plain(value) in told:
                values[place] = told[plain(value)]
        else:
            _retell(value, told)
