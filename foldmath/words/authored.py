"""What a language's authors wrote beside its catalogue: tables and lists, read from ``locale``."""

import tomllib
from collections.abc import Mapping
from functools import cache
from pathlib import Path
from typing import Any

from foldmath.words.languages import DEFAULT

LOCALE = Path(__file__).parent / "locale"


@cache
def table(language: str, name: str) -> Mapping[str, Any]:
    """Read a table of a language, such as ``stories.toml``; a British one holds what is not American.

    Raises:
        FileNotFoundError: the language has no such table.
    """
    own = LOCALE / language.replace("-", "_") / name
    written = tomllib.loads(own.read_text(encoding="utf-8"))
    kin = language != DEFAULT and language.partition("-")[0] == DEFAULT.partition("-")[0]
    return {**table(DEFAULT, name), **written} if kin else written
