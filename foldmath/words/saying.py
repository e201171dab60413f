"""Saying phrases: takes what is to be said and a language, gives the words."""

from typing import Any

from foldmath.phrases import Phrase, Said
from foldmath.words.catalogues import catalogue


def say(said: Said, language: str) -> str:
    """Say a phrase in a language; words that are no phrase stay as they are."""
    if not isinstance(said, Phrase):
        return said
    words = catalogue(language)
    text = words.ngettext(said.text, said.plural, said.count) if said.plural else words.gettext(said.text)
    return text.format(**{name: _said(value, language) for name, value in said.values})


def _said(value: Any, language: str) -> str:
    return say(value, language) if isinstance(value, Phrase | str) else str(value)
