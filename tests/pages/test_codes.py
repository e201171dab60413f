"""Every sign of a font has one code, the same in every file, by which readers find it again."""

from io import BytesIO

import pytest

from foldmath.drawing.rendering.fonts import font_file
from foldmath.pages.lettering.glyph_fonts import ASCII, GlyphFont, Letter, PageFont, letters_of
from foldmath.pages.pdf import fonts
from foldmath.typeface.cutting import cut_font

GLYPHS = (0, 1, 222, 223, 700)
PAGE = PageFont("Page", BytesIO(cut_font(fonts.REGULAR)))
OTHER = GlyphFont("Other", str(font_file("DejaVuSans")))
both = pytest.mark.parametrize("font", [PAGE, OTHER], ids=["page", "other"])


@both
def test_no_two_signs_or_glyphs_share_a_code_and_none_has_that_of_no_glyph(font):
    signs = [chr(sign) for sign in font.face.charToGlyph if chr(sign) != "\u00a0"]
    signs += [font.sign_of(glyph) for glyph in GLYPHS]
    shown = {font.shown(sign) for sign in signs}
    assert len(shown) == len(set(signs))
    assert all(int.from_bytes(code) for _, code in shown)


def test_the_first_font_of_pages_has_ascii_by_its_own_codes_and_the_signs_of_sums():
    for sign in map(chr, ASCII):
        assert PAGE.shown(sign) == ("/Page+0", sign.encode())
    assert {PAGE.shown(sign)[0] for sign in "é×÷−…’≤"} == {"/Page+0"}
    assert PAGE.shown("Ř")[0] == "/Page+1"


@both
def test_a_space_that_keeps_words_together_is_shown_as_any_other(font):
    assert font.shown("\u00a0") == font.shown(" ")
    assert list(letters_of("\u00a0", font.fontName)) == [Letter(font.fontName, " ")]


def test_of_two_words_for_one_glyph_the_first_is_told():
    sign = OTHER.sign_of(7)
    first, second = Letter("Other", sign, "a"), Letter("Other", sign, "b")
    ((code, letter),) = OTHER.by_file_font([first, second])["/Other"].items()
    assert letter is first
    assert code == int.from_bytes(OTHER.shown(sign)[1])
