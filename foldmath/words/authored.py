"""What a language's authors wrote beside its catalogue: tables and lists, read from ``locale``."""

import tomllib
from collections.abc import Mapping
from functools import cache
from typing import Any

from foldmath.words.catalogues import LOCALE
from foldmath.words.languages import DEFAULT


def authored(language: str, name: str) -> str:
    """Give the text of a file that a language's authors wrote; a British one may be the American."""
    own = LOCALE / language.replace("-", "_") / name
    if not own.is_file() and _kin(language):
        return authored(DEFAULT, name)
    return own.read_text(encoding="utf-8")


@cache
def table(language: str, name: str) -> Mapping[str, Any]:
    """Read a table of a language, such as ``stories.toml``; a British one holds what is not American.

    Raises:
        FileNotFoundError: the language has no such table.
    """
    written = tomllib.loads(authored(language, name))
    return {**table(DEFAULT, name), **written} if _kin(language) else written


def _kin(language: str) -> bool:
    return language != DEFAULT and language.partition("-")[0] == DEFAULT.partition("-")[0]
