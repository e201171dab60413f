"""The words of a class list, in any of our languages: its columns, its levels, what languages are called."""

from collections.abc import Iterator, Mapping
from difflib import get_close_matches
from functools import cache

from foldmath.phrases import Said, phrase
from foldmath.statements.items import Level
from foldmath.words.authored import table
from foldmath.words.languages import kin, languages, named

TYPED = "typed.toml"

LEVELS_SAID = phrase("guided, core or stretch")


@cache
def column_words() -> Mapping[str, str]:
    """Give every word that may head a column, with the column that it names, such as ``level``."""
    return dict(_words("columns"))


@cache
def level_words() -> Mapping[str, Level]:
    """Give every word that may name a level, with that level."""
    return {word: Level(name) for word, name in _words("levels")}


def level_called(word: str) -> Level | None:
    """Give the level that a word names, however its letters are; None if it names none."""
    return level_words().get(word.casefold())


def levels_offered(word: str) -> Said:
    """Give what may stand in the place of a word that names no level: the one that it is like, else all."""
    near = get_close_matches(word.casefold(), level_words(), n=1, cutoff=0.5)
    return near[0] if near else LEVELS_SAID


@cache
def language_words() -> Mapping[str, str]:
    """Give every name of a language, such as ``spanish``, with that language, or its tongue alone."""
    return dict(_words("languages"))


def language_called(word: str) -> str | None:
    """Give the language, or the tongue alone, that a name or a code means; None if it means none."""
    return language_words().get(word.casefold()) or named(word)


def _words(kind: str) -> Iterator[tuple[str, str]]:
    """Give words of a kind with what they name, language by language."""
    for language in languages():
        # An English list is said alike wherever English is spoken.
        named = {} if kin(language) else table(language, TYPED)[kind]
        yield from ((word, name) for name, words in named.items() for word in words)
