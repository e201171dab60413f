"""The same two weights for a page in a browser: fewer letters, in a file that browsers unpack.

A page of slides needs no other file, so its letters come along in it: those of European languages in Latin
letters, the same for every lesson and packed once; others are set as the browser can. The format is WOFF 1.0,
since the tighter WOFF 2.0 would need one more library to save a few kilobytes.

Source:
    WOFF File Format 1.0 (W3C Recommendation, 2012); The "data" URL scheme, RFC 2397.
"""

from base64 import b64encode
from io import BytesIO
from pathlib import Path

from foldmath.kept_beside import keep_beside
from foldmath.typeface.cutting import CUT, WEIGHTS, cut_font

LATIN = (*range(0x20, 0x7F), *range(0xA0, 0x180))
"""Basic Latin, Latin-1 Supplement and Latin Extended-A (Unicode)."""

SIGNS = "–—‘’“”„…•−≤≥≠≈"
"""Dashes, quotation marks and signs of arithmetic that lie past these."""

COPYRIGHT, LICENCE, LICENCE_PLACE = 0, 13, 14
FAMILY, STYLE, FULL_NAME, POSTSCRIPT_NAME = 1, 2, 4, 6
"""Names in a font (OpenType specification, the table ``name``): whose it is goes with it."""


def faces() -> str:
    """Give the rules of a style sheet that bring the letters along, as ``Lexend``."""
    return "".join(
        f'@font-face{{font-family:"Lexend";font-weight:{weight};font-display:block;'
        f"src:url(data:font/woff;base64,{b64encode(screen_font(name)).decode()})}}\n"
        for name, weight in WEIGHTS.items()
    )


def screen_font(name: str) -> bytes:
    """Give a cut as a WOFF file: from beside this module, or made and, where possible, kept there."""
    path = Path(__file__).with_name(f"{name}.{CUT}.woff")
    if path.is_file():
        return path.read_bytes()
    made = _packed(cut_font(name))
    keep_beside(made, path)
    return made


def _packed(cut: bytes) -> bytes:
    """Leave out other letters and hints for coarse screens; the same cut gives the same bytes."""
    # Imported here, since only a checkout's first run packs.
    from fontTools.subset import Options, Subsetter
    from fontTools.ttLib import TTFont

    font = TTFont(BytesIO(cut), recalcTimestamp=False)
    kept = [COPYRIGHT, FAMILY, STYLE, FULL_NAME, POSTSCRIPT_NAME, LICENCE, LICENCE_PLACE]
    subsetter = Subsetter(Options(hinting=False, layout_features=[], name_IDs=kept))
    subsetter.populate(unicodes=LATIN, text=SIGNS)
    subsetter.subset(font)
    font.flavor = "woff"
    written = BytesIO()
    font.save(written)
    return written.getvalue()
