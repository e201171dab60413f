"""Which words come out right in print: those whose every sign has a glyph, in its shape and place."""

import unicodedata
from enum import Enum

from foldmath.pages.lettering.shaping import draws
from foldmath.pages.lettering.signs import can_be_joined, can_shape, stands_alone
from foldmath.pages.pdf.fonts import BOLD, REGULAR, register_fonts


class Lack(Enum):
    """What keeps words from being printed."""

    LETTERS = "letters"
    """They hold signs that are not letters of any script, or letters and marks that are apart."""

    LIBRARIES = "libraries"
    """Their letters join, or are read from right to left, and what sets those is not installed."""

    FONTS = "fonts"
    """No font that is installed has their letters."""


def lack_of(text: str) -> Lack | None:
    """Tell what keeps a text from being printed right.

    None where nothing does: it is composed, and all of it is in some font, in both weights.
    """
    if not text.strip() or not unicodedata.is_normalized("NFC", text):
        return Lack.LETTERS
    joined = [sign for sign in text if not stands_alone(sign)]
    if not all(map(can_be_joined, joined)):
        return Lack.LETTERS
    if joined and not can_shape():
        return Lack.LIBRARIES
    register_fonts()
    return None if all(draws(text, font) for font in (REGULAR, BOLD)) else Lack.FONTS
