"""The words of the answers sheet and of what is said about it, by key."""

import tomllib
from functools import cache
from importlib.resources import files
from typing import Any


@cache
def words() -> dict[str, Any]:
    """Give the whole table; see ``words.toml``."""
    return tomllib.loads(files(__package__).joinpath("words.toml").read_text(encoding="utf-8"))


@cache
def typed(text: str) -> str:
    """Give the key of a word that a teacher may type, such as ``nothing`` for ``–``; empty if it is none."""
    plain = text.strip().casefold()
    return next((key for key, spelt in words()["typed"].items() if plain in spelt), "")
