"""Fonts whose signs and glyphs have the same codes in every file, so that ink can go from one to another.

Glyphs that no sign names, such as joined letters, go by signs of their own, and tell what they stand for.
"""

from collections.abc import Iterable
from functools import cache
from io import BytesIO
from itertools import count
from pathlib import Path
from typing import NamedTuple
from weakref import WeakKeyDictionary

from reportlab.pdfbase import pdfmetrics
from reportlab.pdfbase.pdfdoc import PDFName
from reportlab.pdfbase.ttfonts import ShapedStr, TTEncoding, TTFont

from foldmath.pages.lettering.font_files import FontFile

FIRST_GLYPH = 0xF0000
"""Glyphs go by signs of Unicode's private plane 15, by their numbers in the font: the same in every run."""

NO_TEXT = "\u200b"
"""What a glyph stands for whose letters are told by the glyph beside it."""

SPACE, NO_BREAK_SPACE = " ", "\u00a0"
"""The second is shown as the first is."""

NO_GLYPH = 0

BYTE = 0x100
"""A simple font in a file has so many codes; the first is no glyph, and one is a space in all of them."""

ASCII = range(0x21, 0x7F)
USUAL = (range(BYTE), range(0x2010, 0x2040), range(0x2200, 0x2300))
"""Signs that are given codes first: letters of western languages, punctuation, and signs of sums."""


class Glyphs(ShapedStr):
    """Glyphs in the order seen, as signs of the private plane; ``told`` is what each stands for."""

    told: tuple[str, ...] = ()


class Letter(NamedTuple):
    """A sign that stands on a page, in a registered font; ``told`` is what a glyph stands for, else empty."""

    font: str
    sign: str
    told: str = ""


def letters_of(text: str, font: str) -> Iterable[Letter]:
    """Give the letters of a text."""
    if isinstance(text, Glyphs):
        return (Letter(font, sign, words) for sign, words in zip(text, text.told, strict=True))
    return (_plain(font, sign) for sign in text.replace(NO_BREAK_SPACE, SPACE))


@cache
def _plain(font: str, sign: str) -> Letter:
    """Give a letter; the very same for the same, which is quickly compared."""
    return Letter(font, sign)


class GlyphFont(TTFont):
    """A font that also writes ``Glyphs``; in a file it is one font, with codes of two bytes.

    Args:
        name: by which it is registered.
        file: that has it.
    """

    code_bytes = 2

    def __init__(self, name: str, file: str | BytesIO) -> None:
        # Not as reportlab begins a font: it would read the file by itself, which takes three times as long.
        self.fontName, self.face, self.encoding = name, FontFile(file), TTEncoding()
        self.state = WeakKeyDictionary()
        self._asciiReadable, self.shapable = False, True
        self.resource = PDFName(name)
        self.codes = self._codes(self.face.charToGlyph)
        self.signs = len(self.codes)

    def sign_of(self, glyph: int) -> str:
        """Give the sign by which a glyph goes, by its number."""
        sign = FIRST_GLYPH + glyph
        if sign not in self.face.charToGlyph:
            self.face.charToGlyph[sign] = glyph
            self.face.charWidths[sign] = self.scaled(self.face.hmetrics[glyph][0])
            self.codes[sign] = self._glyph_code(glyph)
        return chr(sign)

    def scaled(self, length: float) -> float:
        """Give a length in the font's own units in thousandths of the em."""
        return float(self.pdfScale(length))  # type: ignore[no-untyped-call]

    def shown(self, sign: str) -> tuple[str, bytes]:
        """Give the name by which pages ask for the font that has a sign, and the code of the sign there."""
        return self.resource, self._code(sign).to_bytes(2)

    def by_file_font(self, letters: Iterable[Letter]) -> dict[str, dict[int, Letter]]:
        """Give the letters by the names of the fonts in a file and by their codes, where they are first."""
        fonts: dict[str, dict[int, Letter]] = {}
        for letter in letters:
            if ord(letter.sign) >= FIRST_GLYPH:
                # What another process has set is not known in this one yet.
                self.sign_of(ord(letter.sign) - FIRST_GLYPH)
            resource, code = self.shown(letter.sign)
            fonts.setdefault(resource, {}).setdefault(int.from_bytes(code), letter)
        return fonts

    def _code(self, sign: str) -> int:
        return self.codes.get(ord(SPACE if sign == NO_BREAK_SPACE else sign), NO_GLYPH)

    def _codes(self, signs: Iterable[int]) -> dict[int, int]:
        return {sign: code for code, sign in enumerate(sorted(signs), start=1)}

    def _glyph_code(self, glyph: int) -> int:
        return 1 + self.signs + glyph


class PageFont(GlyphFont):
    """A font of all pages; in a file it is as many simple fonts as its signs need, with codes of one byte."""

    code_bytes = 1

    def shown(self, sign: str) -> tuple[str, bytes]:
        """Give the name by which pages ask for the font that has a sign, and the code of the sign there."""
        font, code = divmod(self._code(sign), BYTE)
        return f"{self.resource}+{font}", bytes((code,))

    def _codes(self, signs: Iterable[int]) -> dict[int, int]:
        """Give each sign its code, and with it the simple font that has it: ASCII its own, in the first."""
        own = {sign: sign for sign in signs if sign in ASCII}
        rest = {*signs} - own.keys() - {ord(SPACE)}
        in_order = sorted(rest, key=lambda sign: (not any(sign in some for some in USUAL), sign))
        free = (code for code in count() if code % BYTE not in (NO_GLYPH, ord(SPACE)) and code not in ASCII)
        return {**own, **dict(zip(in_order, free, strict=False)), ord(SPACE): ord(SPACE)}

    def _glyph_code(self, glyph: int) -> int:
        font, code = divmod(glyph, BYTE - ASCII.start)
        return BYTE * (1 + self.signs // (BYTE - ASCII.start) + font) + ASCII.start + code


@cache
def registered(path: Path) -> str:
    """Make a font file known to reportlab, and give the font's name."""
    if path.stem not in pdfmetrics.getRegisteredFontNames():
        pdfmetrics.registerFont(GlyphFont(path.stem, str(path)))
    return path.stem
