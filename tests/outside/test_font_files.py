"""Fonts are read as reportlab (reportlab.com), whose file format they go into, reads them by itself."""

from pathlib import Path

import pytest
from reportlab.pdfbase.ttfonts import TTFontFace

from foldmath.drawing.rendering.fonts import font_file
from foldmath.pages.lettering.font_files import FontFile
from foldmath.typeface.cutting import WEIGHTS, cut_font

COME_ALONG = sorted(font_file("DejaVuSans").parent.glob("*.ttf"))
READ_OTHERWISE = {"_pdfScale", "glyphToChar", "_pos"}
"""A function, what nobody asks for, and how far the reading came."""


def told(face):
    return {name: value for name, value in vars(face).items() if name not in READ_OTHERWISE}


@pytest.mark.parametrize("path", COME_ALONG, ids=lambda path: path.stem)
def test_every_sign_width_and_place_of_a_font_is_read(path):
    assert told(FontFile(str(path))) == told(TTFontFace(str(path)))


@pytest.mark.parametrize("name", WEIGHTS)
def test_the_pages_own_typeface_is_read_so_too(name, tmp_path):
    path = Path(tmp_path, "cut.ttf")
    path.write_bytes(cut_font(name))
    assert told(FontFile(str(path))) == told(TTFontFace(str(path)))
