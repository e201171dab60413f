"""Fonts for glyphs that no sign names, such as joined letters, which tell readers what they stand for."""

import re
from functools import cache
from io import BytesIO
from pathlib import Path
from typing import Any, cast
from weakref import WeakKeyDictionary

from reportlab.pdfbase import pdfmetrics
from reportlab.pdfbase.pdfdoc import PDFDocument, PDFStream
from reportlab.pdfbase.ttfonts import ShapedStr, TTFont

FIRST_GLYPH = 0xF0000
"""Glyphs go by signs of Unicode's private plane 15, by their numbers in the font: the same in every run."""

NO_TEXT = "\u200b"
"""What a glyph stands for whose letters are told by the glyph beside it."""


UNUSED = re.compile("^<[0-9A-F]{2}> <0000>\n", re.MULTILINE)
"""How reportlab writes the codes of a subset that no sign has: U+0000 is forbidden (ISO 14289-1, 7.21.7)."""

CODE = re.compile("^<[0-9A-F]{2}> <[0-9A-F]{4,}>$", re.MULTILINE)
COUNTED = re.compile(r"^\d+ beginbfchar$", re.MULTILINE)
"""Before the codes stands how many there are."""

BEYOND_FOUR_DIGITS = re.compile("<([0-9A-F]{5,6})>")
"""How reportlab writes a sign beyond Unicode's first plane, where UTF-16 is asked for."""


class Glyphs(ShapedStr):
    """Glyphs in the order seen, as signs of the private plane; ``told`` is what each stands for."""

    told: tuple[str, ...] = ()


class GlyphFont(TTFont):
    """A font that also writes ``Glyphs``, and tells readers of a page what they stand for."""

    def __init__(self, name: str, file: str | BytesIO) -> None:
        super().__init__(name, file, asciiReadable=False)
        self.told: WeakKeyDictionary[PDFDocument, dict[int, str]] = WeakKeyDictionary()

    def sign_of(self, glyph: int) -> str:
        """Give the sign by which a glyph goes, by its number."""
        code = FIRST_GLYPH + glyph
        if code not in self.face.charToGlyph:
            self.face.charToGlyph[code] = glyph
            self.face.charWidths[code] = self.scaled(self.face.hmetrics[glyph][0])
        return chr(code)

    def scaled(self, length: float) -> float:
        """Give a length in the font's own units in thousandths of the em."""
        return float(self.pdfScale(length))  # type: ignore[no-untyped-call]

    def splitString(self, text: str, doc: PDFDocument, encoding: str = "utf-8") -> Any:  # noqa: N802 (reportlab's)
        """Part a text by the subsets of a document's font, and keep what its glyphs stand for."""
        if isinstance(text, Glyphs):
            told = self.told.setdefault(doc, {})
            for sign, words in zip(text, text.told, strict=True):
                told.setdefault(ord(sign), words)
        return super().splitString(text, doc, encoding)

    def addObjects(self, doc: PDFDocument) -> None:  # noqa: N802 (reportlab's)
        """Write the font into a document, with what each of its signs stands for."""
        super().addObjects(doc)
        told = self.told.pop(doc, {})

        def in_unicode(code: re.Match[str]) -> str:
            words = told.get(int(code[1], 16)) or chr(int(code[1], 16))
            return f"<{words.encode('utf-16-be').hex().upper()}>"

        for name, held in doc.idToObject.items():
            if name.startswith("toUnicodeCMap:") and isinstance(held, PDFStream):
                held.content = BEYOND_FOUR_DIGITS.sub(in_unicode, _without_unused(held.content))


def _without_unused(codes: str) -> str:
    used = UNUSED.sub("", codes)
    return COUNTED.sub(f"{len(CODE.findall(used))} beginbfchar", used)


def glyph_font(name: str) -> GlyphFont:
    """Give a registered font.

    Raises:
        KeyError: no font of that name is registered.
    """
    return cast(GlyphFont, pdfmetrics.getFont(name))


@cache
def registered(path: Path) -> str:
    """Make a font file known to reportlab, and give the font's name."""
    if path.stem not in pdfmetrics.getRegisteredFontNames():
        pdfmetrics.registerFont(GlyphFont(path.stem, str(path)))
    return path.stem
