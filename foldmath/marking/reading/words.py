"""The words of the answers sheet, and those that a teacher may type into it, in any of our languages."""

import tomllib
from collections.abc import Iterator, Mapping
from functools import cache
from importlib.resources import files
from typing import Any

from foldmath.phrases import Phrase, Said, phrase
from foldmath.words.authored import table
from foldmath.words.languages import kin, languages
from foldmath.words.saying import say

TYPED = "typed.toml"


@cache
def _words() -> Mapping[str, str]:
    return tomllib.loads(files(__package__).joinpath("words.toml").read_text(encoding="utf-8"))


def sheet_phrase(key: str, **values: Said) -> Phrase:
    """Give a word of the sheet itself, such as the head of its first column; see ``words.toml``."""
    return phrase(_words()[key], **values)


def sheet_word(key: str, language: str, **values: Said) -> str:
    """Say a word of the sheet in a language."""
    return say(sheet_phrase(key, **values), language)


@cache
def sheet_words(key: str) -> frozenset[str]:
    """Give a word of the sheet as each of our languages says it: sheets are read in all of them."""
    return frozenset(sheet_word(key, language) for language in languages())


def each_language() -> Iterator[tuple[str, Mapping[str, Any]]]:
    """Give what a teacher may type, language by language; sheets are read in all of them."""
    return ((language, table(language, TYPED)) for language in languages() if not kin(language))


@cache
def spelt(key: str) -> tuple[str, ...]:
    """Give every way in which a word may be typed, such as ``nothing``."""
    return tuple(word for _, written in each_language() for word in written["typed"][key])


@cache
def typed(text: str, among: frozenset[str] = frozenset()) -> str:
    """Give the key of a word that a teacher may type, such as ``nothing`` for ``–``; empty if it is none.

    Args:
        text: as it was typed.
        among: the keys that are meant; all where none are given.
    """
    plain = text.strip().casefold()
    written = (one for _, language in each_language() for one in language["typed"].items())
    return next((key for key, ways in written if plain in ways and (not among or key in among)), "")
