"""What a sign asks of those who set it: nothing, or that it be joined to others, stacked or reordered.

Sources:
    The Unicode Standard, Annex 9 (directions), Annex 15 (composed form); Unicode Character Database
    as Python has it.
"""

import re
import unicodedata
from functools import cache
from importlib.util import find_spec
from itertools import groupby

SIDE_BY_SIDE = (
    "LATIN",
    "GREEK",
    "CYRILLIC",
    "ARMENIAN",
    "GEORGIAN",
    "CANADIAN SYLLABICS",
    "TIFINAGH",
    "ETHIOPIC",
    "CHEROKEE",
    "CJK UNIFIED",
    "IDEOGRAPHIC",
    "HIRAGANA",
    "KATAKANA",
    "BOPOMOFO",
    "HANGUL SYLLABLE",
)
"""Scripts whose letters stand side by side from left to right, as their names in Unicode begin."""

LETTERS_OF_NO_SCRIPT = ("MODIFIER LETTER", "FEMININE ORDINAL", "MASCULINE ORDINAL")
"""Such as the ʻokina, and the ª of a shortened name."""

PLAIN_CATEGORIES = ("Pc", "Pd", "Ps", "Pe", "Pi", "Pf", "Po", "Sm", "Sc")
"""Punctuation and signs; other symbols, emoji among them, are left out."""

JOINERS = ("\u200c", "\u200d")
"""Zero width non-joiner and joiner: they belong to the spelling of Persian and of many Indian names."""

ISOLATES = ("\u2068", "\u2069")
"""First strong isolate, and its end: what stands between them is put in order by itself."""

_PLAIN = re.compile(
    "[\\x00-\u02ff\u0370-\u0482\u048a-\u058a\u1e00-\u200a\u2010-\u2027\u202f-\u205f\u2070-\u2bff]*"
)
"""Stretches of Unicode without marks, letters that join, or a direction from right to left."""


def is_plain(text: str) -> bool:
    """Tell whether a text can be set one sign after the other by any font that has them."""
    return _PLAIN.fullmatch(text) is not None


@cache
def stands_alone(sign: str) -> bool:
    """Tell whether a sign keeps its shape and place whatever stands beside it."""
    if sign.isascii():
        return sign.isprintable()
    category = unicodedata.category(sign)
    if runs_left(sign) or unicodedata.bidirectional(sign) == "AN":
        return False
    if category.startswith("L"):
        return unicodedata.name(sign, "").startswith(SIDE_BY_SIDE + LETTERS_OF_NO_SCRIPT)
    return category in PLAIN_CATEGORIES


@cache
def can_be_joined(sign: str) -> bool:
    """Tell whether a sign is a letter, a mark or a figure of some script, so that shaping knows its place."""
    return unicodedata.category(sign) in ("Lu", "Ll", "Lt", "Lo", "Lm", "Mn", "Mc", "Nd") or sign in JOINERS


def is_joined(sign: str) -> bool:
    """Tell whether a sign may change its shape or place by what stands beside it."""
    return can_be_joined(sign) and not stands_alone(sign)


def is_attached(sign: str) -> bool:
    """Tell whether a sign belongs to the letter before it."""
    return unicodedata.category(sign).startswith("M") or sign in JOINERS


def runs_left(sign: str) -> bool:
    """Tell whether a sign is a letter that is read from right to left."""
    return unicodedata.bidirectional(sign) in ("R", "AL")


@cache
def script_of(sign: str) -> str:
    """Give the script of a letter as its name in Unicode begins, as ``DEVANAGARI``; empty for other signs."""
    if not unicodedata.category(sign).startswith("L"):
        return ""
    name = unicodedata.name(sign, "")
    return "" if name.startswith(LETTERS_OF_NO_SCRIPT) else name.split(" ")[0]


def stretches(text: str) -> list[tuple[str, str]]:
    """Part a text where its script changes; signs of no script make stretches of their own.

    Returns:
        The script of each stretch, or an empty name, and the stretch.
    """
    parts = groupby(with_attached(text), lambda signs: script_of(signs[0]))
    return [(script, "".join(part)) for script, part in parts]


def with_attached(text: str) -> list[str]:
    """Give each sign of a text, with those that are attached to it."""
    signs: list[str] = []
    for sign in text:
        if signs and is_attached(sign):
            signs[-1] += sign
        else:
            signs.append(sign)
    return signs


@cache
def can_shape() -> bool:
    """Tell whether the libraries are there that join letters and put directions in order."""
    return all(find_spec(library) for library in ("uharfbuzz", "bidi"))
