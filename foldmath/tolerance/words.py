"""The words of this room, from ``words.toml``."""

import tomllib
from functools import cache
from importlib.resources import files

from foldmath.phrases import Phrase, Said, phrase


def worded(group: str, key: str, **figures: Said) -> Phrase:
    """Give one line of the word list, with its figures."""
    return phrase(str(_words()[group][key]), **figures)


def heads(group: str) -> tuple[Phrase, ...]:
    """Give the heads of a table."""
    return tuple(phrase(head) for head in _words()[group]["heads"])


@cache
def _words() -> dict[str, dict[str, list[str] | str]]:
    return tomllib.loads(files(__package__).joinpath("words.toml").read_text(encoding="utf-8"))
