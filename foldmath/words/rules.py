"""A wrong-answer rule in words: what it tells a teacher about a pupil's thinking, and what to try next."""

import tomllib
from functools import cache
from importlib.resources import files
from typing import Any

from foldmath.statements.rules import Rule


def what_it_tells(rule: Rule) -> str:
    """Give the sentence that tells a teacher what an answer by this rule says about a pupil's thinking."""
    return _words()[rule.name]["tells"]


def what_to_try(rule: Rule) -> str:
    """Give the sentence that tells a teacher what to try next with a pupil who follows this rule."""
    return _words()[rule.name]["try"]


@cache
def _words() -> dict[str, dict[str, str]]:
    table: dict[str, Any] = tomllib.loads(
        files(__package__).joinpath("rules.toml").read_text(encoding="utf-8")
    )
    return table
