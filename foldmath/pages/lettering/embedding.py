"""Embedding: takes the letters that stand in a file, writes the fonts that have them, and what each tells.

Source: ISO 32000-1:2008, 9.6.3 (TrueType fonts), 9.7 (composite fonts), 9.10.3 (what codes stand for).
"""

from collections.abc import Iterable, Mapping
from functools import cache
from itertools import chain
from struct import pack_into
from typing import Any

from reportlab.lib.rl_accel import fp_str
from reportlab.pdfbase.pdfdoc import (
    DummyDoc,
    PDFArray,
    PDFDictionary,
    PDFName,
    PDFObject,
    PDFStream,
    PDFString,
    PDFZCompress,
)

from foldmath.pages.lettering.faces import glyph_font
from foldmath.pages.lettering.glyph_fonts import NO_GLYPH, GlyphFont, Letter
from foldmath.pages.tags.objects import File

MOST_AT_ONCE = 100
"""So many codes may be told between ``beginbfchar`` and ``endbfchar``."""

CODES = """/CIDInit /ProcSet findresource begin
12 dict begin
begincmap
/CIDSystemInfo <</Registry (Adobe) /Ordering (UCS) /Supplement 0>> def
/CMapName /Adobe-Identity-UCS def
/CMapType 2 def
1 begincodespacerange
<{least}> <{most}>
endcodespacerange
{told}endcmap
CMapName currentdict /CMap defineresource pop
end
end"""


class _Named(PDFObject):
    """An object of a file, by its number."""

    def __init__(self, number: int) -> None:
        self.number = number

    def format(self, document: object) -> bytes:  # noqa: ARG002 (reportlab's)
        """Give what names it."""
        return b"%d 0 R" % self.number


class _Objects(DummyDoc):
    """What reportlab takes for its document: each object goes into the file as soon as it is named."""

    compression = True
    defaultStreamFilters = None  # noqa: N815 (reportlab's)

    def __init__(self, file: File) -> None:
        self.file = file

    def Reference(self, told: PDFDictionary | PDFStream, name: str = "") -> _Named:  # noqa: ARG002, N802 (reportlab's)
        """Put an object into the file, and give what names it."""
        (number,) = self.file.numbers(1)
        self.file.add(number, told.format(self))
        return _Named(number)


def embedded(file: File, letters: Iterable[Letter]) -> dict[str, int]:
    """Write into a file the fonts that it needs, each with no more than its letters.

    Returns:
        Their numbers, by the names by which pages ask for them.
    """
    document = _Objects(file)
    by_font: dict[str, list[Letter]] = {}
    for letter in letters:
        by_font.setdefault(letter.font, []).append(letter)
    return {
        resource: document.Reference(_font(document, glyph_font(name), number, codes)).number
        for name, some in sorted(by_font.items())
        for number, (resource, codes) in enumerate(sorted(glyph_font(name).by_file_font(some).items()))
    }


def _font(document: _Objects, font: GlyphFont, number: int, codes: Mapping[int, Letter]) -> PDFDictionary:
    """Write one font, as the codes ask for it."""
    face: Any = font.face
    name = f"{_tag(number)}+{face.name.decode('latin-1')}{face.subfontNameX.decode('latin-1')}"
    told = {
        "Type": PDFName("Font"),
        "BaseFont": PDFName(name),
        "ToUnicode": document.Reference(_told(codes, font.code_bytes)),
    }
    kind = _simple if font.code_bytes == 1 else _composite
    return PDFDictionary({**told, **kind(document, face, name, codes)})


def _tag(number: int) -> str:
    """Give the tag of a subset: six capital letters."""
    return f"{number:06}".translate(str.maketrans("0123456789", "ABCDEFGHIJ"))


def _simple(document: _Objects, face: Any, name: str, codes: Mapping[int, Letter]) -> dict[str, object]:
    """Say what a font of one-byte codes has of its own; codes that stand for no sign are no glyph."""
    signs = [ord(codes[code].sign) if code in codes else NO_GLYPH for code in range(max(codes) + 1)]
    return {
        "Subtype": PDFName("TrueType"),
        "FirstChar": 0,
        "LastChar": len(signs) - 1,
        "Widths": PDFArray(_written(face.getCharWidth(sign)) for sign in signs),
        "FontDescriptor": face.addSubsetObjects(document, name, signs),
    }


def _composite(document: _Objects, face: Any, name: str, codes: Mapping[int, Letter]) -> dict[str, object]:
    """Say what a font of two-byte codes has of its own, and which glyph each code is."""
    signs = {code: ord(letter.sign) for code, letter in sorted(codes.items())}
    glyphs = {code: face.charToGlyph.get(sign, NO_GLYPH) for code, sign in signs.items()}
    # Glyphs are cut out in the order in which they are asked for, after the one that stands for none.
    places = {glyph: place for place, glyph in enumerate(dict.fromkeys([NO_GLYPH, *glyphs.values()]))}
    numbers = bytearray(2 * (max(codes) + 1))
    for code, glyph in glyphs.items():
        pack_into(">H", numbers, 2 * code, places[glyph])
    widths = [(code, PDFArray([_written(face.getCharWidth(sign))])) for code, sign in signs.items()]
    descendant = {
        "Type": PDFName("Font"),
        "Subtype": PDFName("CIDFontType2"),
        "BaseFont": PDFName(name),
        "CIDSystemInfo": PDFDictionary(
            {"Registry": PDFString("Adobe"), "Ordering": PDFString("Identity"), "Supplement": 0}
        ),
        "FontDescriptor": face.addSubsetObjects(document, name, list(signs.values())),
        "W": PDFArray(chain.from_iterable(widths)),
        "CIDToGIDMap": document.Reference(PDFStream(content=bytes(numbers), filters=[PDFZCompress])),
    }
    return {
        "Subtype": PDFName("Type0"),
        "Encoding": PDFName("Identity-H"),
        "DescendantFonts": PDFArray([document.Reference(PDFDictionary(descendant))]),
    }


@cache
def _written(length: float) -> bytes:
    """Write a number as reportlab does; few widths of a font differ, and all of them stand in every file."""
    return fp_str(length).encode()


def _told(codes: Mapping[int, Letter], code_bytes: int) -> PDFStream:
    """Say what codes of so many bytes stand for."""
    digits = 2 * code_bytes
    lines = [
        f"<{code:0{digits}X}> <{(letter.told or letter.sign).encode('utf-16-be').hex().upper()}>\n"
        for code, letter in sorted(codes.items())
        if code != NO_GLYPH
    ]
    parts = [lines[start : start + MOST_AT_ONCE] for start in range(0, len(lines), MOST_AT_ONCE)]
    told = "".join(f"{len(part)} beginbfchar\n{''.join(part)}endbfchar\n" for part in parts)
    content = CODES.format(least="0" * digits, most="F" * digits, told=told)
    return PDFStream(content=content, filters=[PDFZCompress])
