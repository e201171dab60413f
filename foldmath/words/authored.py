"""What a language's authors wrote beside its catalogue: tables and lists, read from the language's folder."""

from collections.abc import Mapping
from functools import cache

from foldmath.words.languages import DEFAULT, folder_of, kin

# So mypy knows it too; typing itself is slow to import, and help must be quick.
TYPE_CHECKING = False
if TYPE_CHECKING:
    from typing import Any


def authored(language: str, name: str) -> str:
    """Give the text of a file that a language's authors wrote; a British one may be the American."""
    own = folder_of(language) / name
    if not own.is_file() and kin(language):
        return authored(DEFAULT, name)
    return own.read_text(encoding="utf-8")


@cache
def table(language: str, name: str) -> "Mapping[str, Any]":
    """Read a table of a language, such as ``stories.toml``; a British one holds what is not American.

    Raises:
        FileNotFoundError: the language has no such table.
    """
    text = authored(language, name)
    # Imported here, since American help needs no table and must be quick.
    import tomllib

    written = tomllib.loads(text)
    return _laid_over(table(DEFAULT, name), written) if kin(language) else written


def _laid_over(under: "Mapping[str, Any]", over: "Mapping[str, Any]") -> "Mapping[str, Any]":
    """Give one table with what another says instead; tables in it likewise."""
    return {**under, **{key: _instead(under.get(key), value) for key, value in over.items()}}


def _instead(under: object, value: object) -> object:
    return _laid_over(under, value) if isinstance(under, dict) and isinstance(value, dict) else value
