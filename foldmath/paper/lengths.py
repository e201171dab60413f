"""Numbers and lengths as people write them: ``8.5 in``, ``8 1/2 in``, ``17/2 in``, read exactly."""

import re
import unicodedata
from typing import NamedTuple

from foldmath.errors import Unreadable
from foldmath.phrases import phrase
from foldmath.plane.numbers import Exact, exact, nearest_whole

MOST_DIGITS = 40
"""No number that a lesson needs is written with more digits than this."""

MILLIMETRES = {"mm": exact(1), "cm": exact(10), "in": exact(127, 5)}
"""The units of length, each in millimetres; an inch is 25.4 mm exactly (international yard, 1959)."""

SIXTEENTHS = 16
"""Rulers in inches are marked in sixteenths (common practice, no source)."""

_UNIT_SPELLINGS = {
    "mm": ("mm", "millimetre", "millimetres", "millimeter", "millimeters", "milímetro", "milímetros"),
    "cm": ("cm", "centimetre", "centimetres", "centimeter", "centimeters", "centímetro", "centímetros"),
    "in": ("in", "in.", "inch", "inches", '"', "″", "pulg", "pulg.", "pulgada", "pulgadas"),
}
_UNITS = {spelling: unit for unit, spellings in _UNIT_SPELLINGS.items() for spelling in spellings}

_NUMBER = re.compile(
    r"(?P<sign>[-−]?) \s* (?: (?:(?P<whole>\d+) \s+)? (?P<above>\d+) \s*/\s* (?P<below>\d+)"
    r" | (?P<digits>\d+) (?:\.(?P<decimals>\d+))? | \.(?P<only_decimals>\d+) )",
    re.VERBOSE | re.ASCII,
)
_DECIMAL_COMMA = re.compile(r",(?!\d{3}$)")
"""As in 21,5 cm; before three figures, as in 1,000 mm, a comma may part thousands, and is not read."""

_LENGTH = re.compile(r"(?P<number>.*?[\d.])\s*(?P<unit>[^\d\s.][^\d\s]*)", re.DOTALL | re.ASCII)


class NumberRefused(Unreadable):
    """Words that are no number, or no length, that can be used here."""


class Length(NamedTuple):
    """A length in its own unit: ``mm``, ``cm`` or ``in``."""

    number: Exact
    unit: str

    @property
    def in_millimetres(self) -> Exact:
        """The same length in millimetres."""
        return self.number * MILLIMETRES[self.unit]


def nearest_sixteenth(length_mm: Exact) -> Exact:
    """Give a length in inches, to the nearest sixteenth; a half goes up."""
    return exact(nearest_whole(length_mm / MILLIMETRES["in"] * SIXTEENTHS), SIXTEENTHS)


def plain_fractions(text: str) -> str:
    """Write single-character fractions such as ``½`` with a slash; ``8½`` becomes ``8 1/2``."""
    return "".join(_plain(sign) for sign in text).replace("\N{FRACTION SLASH}", "/").strip()


def _plain(sign: str) -> str:
    if unicodedata.decomposition(sign).startswith("<fraction>"):
        return " " + unicodedata.normalize("NFKC", sign)
    return sign


def read_number(text: str) -> Exact:
    """Read a whole number, decimal, fraction or mixed number exactly.

    Raises:
        NumberRefused: it is none, has more than ``MOST_DIGITS`` digits, or has 0 below its bar.
    """
    found = _NUMBER.fullmatch(plain_fractions(text))
    if not found:
        raise NumberRefused(
            phrase("{text} is not a number", text=_shown(text)), phrase("write it as 8.5, 17/2 or 8 1/2")
        )
    if sum(sign.isdigit() for sign in text) > MOST_DIGITS:
        raise NumberRefused(
            phrase("a number with more than {most} digits is too long", most=MOST_DIGITS),
            phrase("use a simpler number"),
        )
    number = _magnitude(found)
    return -number if found["sign"] else number


def _magnitude(found: re.Match[str]) -> Exact:
    if found["below"]:
        if not int(found["below"]):
            raise NumberRefused(
                phrase("no fraction has 0 as its denominator"), phrase("use a denominator of 1 or more")
            )
        return exact(int(found["whole"] or 0)) + exact(int(found["above"]), int(found["below"]))
    decimals = found["decimals"] or found["only_decimals"] or ""
    return exact(int((found["digits"] or "") + decimals), 10 ** len(decimals))


def read_length(text: str) -> Length:
    """Read a number with its unit; its decimals may follow a comma.

    Raises:
        NumberRefused: the number cannot be read, or its unit is missing or unknown.
    """
    found = _LENGTH.fullmatch(plain_fractions(text))
    if not found:
        raise NumberRefused(
            phrase("{text} is not a length", text=_shown(text)),
            phrase('write a number and its unit, as in "8.5 in"'),
        )
    unit = _UNITS.get(found["unit"].casefold())
    if unit is None:
        raise NumberRefused(
            phrase("{found} is not a unit of length here", found=_shown(found["unit"])),
            phrase("use in, cm or mm"),
        )
    return Length(read_number(_DECIMAL_COMMA.sub(".", found["number"])), unit)


def _shown(text: str, longest: int = 40) -> str:
    return f"'{text}'" if len(text) <= longest else f"'{text[:longest]}…'"
