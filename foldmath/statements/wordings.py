"""Words with numbers among them: takes what a person wrote, gives its numbers as values."""

import re
from collections.abc import Iterator
from typing import TypeAlias

from foldmath.statements.ratios import Ratio, decimal, fraction, mixed_number, whole_number
from foldmath.statements.single_signs import SINGLE_SIGNS
from foldmath.values import frozen

MOST_FIGURES = 5
"""A number with more figures is set as it was written: no bar or box is as wide."""

_COUNTED = rf"[1-9][0-9]{{0,{MOST_FIGURES - 1}}}"
_FIGURES = rf"(?:0|{_COUNTED})"
_NUMBER = re.compile(
    # Nothing of a longer thing is a number: no part of 3/4/2026, of 1,000 or of 007.
    r"(?<![\w/⁄.,])"
    rf"(?:(?:(?P<wholes>{_FIGURES})\s+)?(?P<above>{_FIGURES})[/⁄](?P<below>{_COUNTED})"
    rf"|(?P<before>{_FIGURES})?(?P<sign>[{''.join(SINGLE_SIGNS)}])"
    rf"|(?P<decimal>{_FIGURES}\.[0-9]{{1,{MOST_FIGURES}}})"
    rf"|(?P<whole>{_FIGURES}))"
    r"(?![\w/⁄]|[.,][0-9])"
)


@frozen
class Name:
    """A name among words, which may be of another script than theirs."""

    text: str

    def __str__(self) -> str:
        return self.text


Part: TypeAlias = str | Ratio | Name


@frozen
class Wording:
    """Words with numbers among them, which stay numbers until somebody shows them."""

    parts: tuple[Part, ...]

    def __str__(self) -> str:
        return "".join(map(str, self.parts))

    @property
    def numbers(self) -> tuple[Ratio, ...]:
        """The numbers, in the order in which they stand."""
        return tuple(part for part in self.parts if isinstance(part, Ratio))


def wording_of(text: str) -> Wording:
    """Read the numbers of a text: ``3/4``, ``1 1/2``, ``½``, ``2.5``, ``12``; all else stays words."""
    return Wording(tuple(_parts(text)))


def _parts(text: str) -> Iterator[str | Ratio]:
    end = 0
    for found in _NUMBER.finditer(text):
        if found.start() > end:
            yield text[end : found.start()]
        yield _number(found)
        end = found.end()
    if end < len(text):
        yield text[end:]


def _number(found: re.Match[str]) -> Ratio:
    if found["below"]:
        return _with_wholes(found["wholes"], int(found["above"]), int(found["below"]))
    if found["sign"]:
        return _with_wholes(found["before"], *SINGLE_SIGNS[found["sign"]])
    return decimal(found["decimal"]) if found["decimal"] else whole_number(int(found["whole"]))


def _with_wholes(wholes: str | None, above: int, below: int) -> Ratio:
    return mixed_number(int(wholes), above, below) if wholes else fraction(above, below)
