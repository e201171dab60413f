"""Saying phrases: takes what is to be said and a language, gives the words."""

from typing import Any

from foldmath.errors import FileRefused, FoldmathError, Problem
from foldmath.phrases import Phrase, Said, phrase
from foldmath.words.catalogues import catalogue


def say(said: Said, language: str) -> str:
    """Say a phrase in a language; words that are no phrase stay as they are."""
    if not isinstance(said, Phrase):
        return said
    words = catalogue(language)
    text = words.ngettext(said.text, said.plural, said.count) if said.plural else words.gettext(said.text)
    return text.format(**{name: _said(value, language) for name, value in said.values})


def _said(value: Any, language: str) -> str:
    if isinstance(value, Phrase | str):
        return say(value, language)
    if isinstance(value, int):
        return str(value)
    # Imported here, since help holds no step, and the exact numbers of steps are slow to import.
    from foldmath.paper.steps import Step
    from foldmath.words.steps import step_sentence

    return step_sentence(value, language) if isinstance(value, Step) else str(value)


def say_error(error: FoldmathError, language: str) -> str:
    """Say what is wrong and how to mend it; the slips of a file, each with its place."""
    if not isinstance(error, FileRefused):
        return _said_slip(error, language)
    others = [say(error.others, language)] if error.others else []
    return "\n".join([*(_said_slip(slip, language) for slip in error.shown), *others])


def _said_slip(slip: Problem | FoldmathError, language: str) -> str:
    lines = [say(slip.heading, language)]
    if slip.words:
        lines.append("    " + say(phrase("here: {words}", words=slip.words), language))
    if slip.hint:
        lines.append("    " + say(phrase("try:  {remedy}", remedy=slip.hint), language))
    return "\n".join(lines)
