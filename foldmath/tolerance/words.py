"""The words of this room, from ``words.toml``."""

import tomllib
from functools import cache
from importlib.resources import files


def said(group: str, key: str, **figures: str) -> str:
    """Fill in one line of the word list."""
    return str(_words()[group][key]).format(**figures)


def heads(group: str) -> tuple[str, ...]:
    """Give the heads of a table."""
    return tuple(_words()[group]["heads"])


@cache
def _words() -> dict[str, dict[str, list[str] | str]]:
    return tomllib.loads(files(__package__).joinpath("words.toml").read_text(encoding="utf-8"))
