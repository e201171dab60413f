"""Lexend, cut for print: two weights of the variable font, with figures and spaces that are equally wide.

Lexend was drawn for early readers (one-storey a, wide and open letters). Cutting takes a second, so the cuts
are made when the package is built; in a checkout they are made once and kept beside this file.

Source:
    Lexend, SIL Open Font License 1.1, as the package ``fontpkg-lexend`` brings it.
"""

from importlib.resources import files
from io import BytesIO
from pathlib import Path
from typing import Any

from foldmath.kept_beside import keep_beside

WEIGHTS = {"Lexend": 400, "Lexend-Bold": 700}
"""Of the cuts, by the names that pages know them by."""

FIGURE_WIDTH = 0.61
"""Of the em: as narrow as the widest figure (a bold 4) allows; in the font they are 0.50 to 0.62 wide."""

SPACE_WIDTH = 0.28
"""Of the em, as in the regular weight."""

CUT = 1
"""Raised whenever a cut comes out otherwise, so that one kept from before is not taken for it."""

SHAPING = ("GDEF", "GPOS", "GSUB", "STAT")
"""Tables that the pages, which set sign after sign, do not read."""

FIGURES = "0123456789"

FULL_NAME, POSTSCRIPT_NAME = 4, 6
WINDOWS_ENGLISH = (3, 1, 0x409)
"""Names in a font: which, and in which encoding and language (OpenType specification, the table ``name``)."""


def cut_font(name: str) -> bytes:
    """Give a cut as a TrueType file: from beside this module, or made and, where possible, kept there."""
    path = Path(__file__).with_name(f"{name}.{CUT}.ttf")
    if path.is_file():
        return path.read_bytes()
    made = _cut(name)
    keep_beside(made, path)
    return made


def _cut(name: str) -> bytes:
    """Cut one weight, by its name; the same font gives the same bytes."""
    # Imported here, since only a checkout's first run cuts.
    from fontTools.ttLib import TTFont
    from fontTools.varLib.instancer import instantiateVariableFont

    source = files("fontpkg_lexend").joinpath("files", "Lexend[wght].ttf").read_bytes()
    font = TTFont(BytesIO(source), recalcTimestamp=False)
    font = instantiateVariableFont(font, {"wght": WEIGHTS[name]})
    width = round(FIGURE_WIDTH * font["head"].unitsPerEm)
    names, outlines = font.getBestCmap(), font["glyf"]
    for figure in FIGURES:
        glyph = names[ord(figure)]
        shift = (width - font["hmtx"][glyph][0]) // 2
        outlines[glyph].coordinates.translate((shift, 0))
        outlines[glyph].recalcBounds(outlines)
        font["hmtx"][glyph] = (width, outlines[glyph].xMin)
    # Lines are broken before it is known which words are bold.
    font["hmtx"][names[ord(" ")]] = (round(SPACE_WIDTH * font["head"].unitsPerEm), 0)
    _name(font, name)
    for table in SHAPING:
        if table in font:
            del font[table]
    written = BytesIO()
    font.save(written)
    return written.getvalue()


def _name(font: Any, name: str) -> None:
    """Name a cut by its weight: files tell their fonts apart by these names."""
    for name_id in (FULL_NAME, POSTSCRIPT_NAME):
        font["name"].setName(name, name_id, *WINDOWS_ENGLISH)
