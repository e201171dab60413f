"""The words of the guide sheets, from their word list."""

import tomllib
from collections.abc import Mapping
from functools import cache
from importlib.resources import files
from typing import Any


@cache
def wording() -> Mapping[str, Mapping[str, Any]]:
    """Read the word list ``guides.toml``."""
    source = files(__package__).joinpath("guides.toml")
    return tomllib.loads(source.read_text(encoding="utf-8"))
