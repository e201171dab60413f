"""Which words come out right in print: those whose every sign has a glyph, set one after another.

Nothing here shapes or reorders letters, so scripts that need it are refused rather than printed wrong.
"""

import unicodedata
from functools import cache
from typing import cast

from reportlab.pdfbase import pdfmetrics
from reportlab.pdfbase.ttfonts import TTFont

from foldmath.pages.pdf.fonts import BOLD, REGULAR, register_fonts

SCRIPTS = ("LATIN", "GREEK", "CYRILLIC", "ARMENIAN", "GEORGIAN", "CANADIAN SYLLABICS", "TIFINAGH")
"""Scripts whose letters stand side by side from left to right, as their names in Unicode begin."""

LETTERS_OF_NO_SCRIPT = ("MODIFIER LETTER", "FEMININE ORDINAL", "MASCULINE ORDINAL")
"""Such as the ʻokina, and the ª of a shortened name."""

PLAIN_CATEGORIES = ("Pc", "Pd", "Ps", "Pe", "Pi", "Pf", "Po", "Sm", "Sc")
"""Punctuation and signs; other symbols, emoji among them, are left out."""


def prints_right(text: str) -> bool:
    """Tell whether a text prints as it should: composed, from left to right, and all of it in both fonts.

    Sources:
        The Unicode Standard, Annex 9 (directions), Annex 15 (composed form); Unicode Character Database
        as Python has it.
    """
    if not text.strip() or not unicodedata.is_normalized("NFC", text):
        return False
    return all(map(_stands_alone, text)) and set(map(ord, text)) <= _drawn()


def _stands_alone(sign: str) -> bool:
    """Tell whether a sign keeps its shape and place whatever stands beside it."""
    if sign.isascii():
        return sign.isprintable()
    category = unicodedata.category(sign)
    if unicodedata.bidirectional(sign) in ("R", "AL", "AN"):
        return False
    if category.startswith("L"):
        return unicodedata.name(sign, "").startswith(SCRIPTS + LETTERS_OF_NO_SCRIPT)
    return category in PLAIN_CATEGORIES


@cache
def _drawn() -> frozenset[int]:
    """Give the signs that both fonts draw."""
    register_fonts()
    regular, bold = (cast(TTFont, pdfmetrics.getFont(name)).face for name in (REGULAR, BOLD))
    return frozenset(regular.charToGlyph) & frozenset(bold.charToGlyph)
