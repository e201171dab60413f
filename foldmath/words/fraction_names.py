"""Fractions in words, for pupils who learn the language: takes a number as written, gives "two thirds"."""

from collections.abc import Iterator, Mapping
from typing import Any, assert_never

from foldmath.statements.ratios import Form, Ratio, fraction
from foldmath.words.authored import table

NO_NAME = 0
"""A denominator that no language names."""

LARGEST_COUNT, MOST_PARTS = 99, 24
"""Numbers and parts that have names."""


def in_words(ratio: Ratio, language: str) -> str:
    """Say a number: "two thirds", "three halves", "one and two fifths", "four".

    1/4 is "one fourth" in ``en-US``, "one quarter" in ``en-GB`` and "un cuarto" in ``es``. A number that is
    read as figures, such as a decimal, 1/25 or 100, gives an empty text.
    """
    names = _Names(language)
    wholes, part = _wholes_and_part(ratio)
    said = [names.number(wholes)] if wholes is not None else []
    if part:
        said.append(names.after_wholes(*part) if said else names.fraction(*part))
    if not all(said):
        return ""
    return names.joined("mixed", wholes=said[0], part=said[1]) if len(said) > 1 else said[0]


def parts_named(denominator: int, language: str) -> str:
    """Name equal parts of a whole: "thirds", "fourths"; empty where a denominator has no name here."""
    names = _Names(language).parts(denominator)
    return names[1] if names else ""


def also_written(language: str) -> Iterator[tuple[str, Ratio]]:
    """Give the other names that people write for fractions, such as "duodécimo" for a twelfth.

    Each with the number of parts before it: "tres cuartas partes".
    """
    names = _Names(language)
    for parts, others in table(language, "fraction_names.toml").get("read_too", {}).items():
        for count in range(1, LARGEST_COUNT + 1):
            for other in others:
                yield f"{names.before_parts(count)} {other}", fraction(count, int(parts))


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


class _Names:
    """The names that a language has for numbers and parts, and how it joins them."""

    def __init__(self, language: str) -> None:
        self.table: Mapping[str, Any] = table(language, "fraction_names.toml")

    def joined(self, how: str, **words: str) -> str:
        text: str = self.table["joined"][how]
        return text.format(**words)

    def fraction(self, count: int, parts: int) -> str:
        names, counted = self.parts(parts), self.before_parts(count)
        if not (names and counted):
            return ""
        return self.joined("fraction", count=counted, name=names[0] if count == 1 else names[1])

    def after_wholes(self, count: int, parts: int) -> str:
        """Say the part of a mixed number, which some languages shorten: "uno y medio"."""
        short: str = self.table.get("after_wholes", {}).get(f"{count}/{parts}", "")
        return short or self.fraction(count, parts)

    def number(self, number: int) -> str:
        """Say a whole number from 0 to ``LARGEST_COUNT``; larger ones are empty."""
        return self._number(number, self.table["ones"])

    def before_parts(self, number: int) -> str:
        """Say a number that counts parts: "un", "veintiún", where a language shortens it there."""
        return self._number(number, {**self.table["ones"], **self.table.get("before_parts", {})})

    def _number(self, number: int, ones: Mapping[str, str]) -> str:
        if str(number) in ones:
            return ones[str(number)]
        tens, rest = divmod(number, 10)
        name: str = self.table["tens"].get(str(tens), "")
        return self.joined("tens", tens=name, ones=ones[str(rest)]) if name and rest else name

    def parts(self, parts: int) -> list[str]:
        """Give the name of one part and of many; nothing where parts have no name here."""
        found: list[str] = self.table["parts"].get(str(parts), [])
        return found
