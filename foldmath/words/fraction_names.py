"""Fractions in words, for pupils who learn English: takes a number as written, gives "two thirds"."""

import tomllib
from functools import cache
from importlib.resources import files
from typing import Any, assert_never

from foldmath.statements.ratios import Form, Ratio

NO_NAME = 0
"""A denominator that no language names."""


def in_words(ratio: Ratio, language: str) -> str:
    """Say a number: "two thirds", "three halves", "one and two fifths", "four".

    1/4 is "one fourth" in ``en-US`` and "one quarter" in ``en-GB``. A number that is read as figures, such
    as a decimal, 1/25 or 100, gives an empty text.
    """
    wholes, part = _wholes_and_part(ratio)
    said = [_counted(wholes)] if wholes is not None else []
    if part:
        said.append(_fraction(*part, language))
    if not all(said):
        return ""
    return _table()["joined"]["mixed"].format(wholes=said[0], part=said[1]) if len(said) > 1 else said[0]


def parts_named(denominator: int, language: str) -> str:
    """Name equal parts of a whole: "thirds", "fourths"; empty where a denominator has no name here."""
    names = _names(denominator, language)
    return names[1] if names else ""


def _wholes_and_part(ratio: Ratio) -> tuple[int | None, tuple[int, int] | None]:
    """Take a number apart as it is written: 7/5 stays seven fifths, and 1 2/5 has a whole."""
    match ratio.form:
        case Form.WHOLE:
            return ratio.numerator, None
        case Form.FRACTION:
            return None, (ratio.numerator, ratio.denominator)
        case Form.MIXED:
            return ratio.wholes, (ratio.above, ratio.denominator)
        case Form.DECIMAL | Form.PERCENT:
            return None, (ratio.numerator, NO_NAME)
    assert_never(ratio.form)


def _fraction(count: int, parts: int, language: str) -> str:
    names, counted = _names(parts, language), _counted(count)
    if not (names and counted):
        return ""
    fraction: str = _table()["joined"]["fraction"]
    return fraction.format(count=counted, name=names[0] if count == 1 else names[1])


def _counted(number: int) -> str:
    """Say a whole number from 0 to 99; larger ones are empty."""
    table = _table()
    if str(number) in table["ones"]:
        return str(table["ones"][str(number)])
    tens, ones = divmod(number, 10)
    name: str = table["tens"].get(str(tens), "")
    if not (name and ones):
        return name
    joined: str = table["joined"]["tens"]
    return joined.format(tens=name, ones=table["ones"][str(ones)])


def _names(parts: int, language: str) -> list[str]:
    """Give the name of one part and of many; nothing where parts have no name here."""
    table = _table()
    own: dict[str, list[str]] = table["parts_in"].get(language, {})
    return own.get(str(parts)) or table["parts"].get(str(parts), [])


@cache
def _table() -> dict[str, Any]:
    return tomllib.loads(files(__package__).joinpath("fraction_names.toml").read_text(encoding="utf-8"))
