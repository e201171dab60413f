"""Names come out right in print, or are known not to."""

import pytest
from fontTools.ttLib import TTFont
from hypothesis import given
from hypothesis import strategies as st

from foldmath.drawing.rendering.fonts import font_file
from foldmath.pages.lettering import shaping
from foldmath.pages.pdf import glyphs
from foldmath.pages.pdf.glyphs import Lack, lack_of

FONTS = [TTFont(font_file(name)).getBestCmap() for name in ("DejaVuSans", "DejaVuSans-Bold")]


@pytest.mark.parametrize(
    "name",
    [
        "Ann Oak",
        "Zoë Müller-Strauß",
        "Łukasz Żak",
        "Nguyễn Thị Hồng",
        "Ọlá",
        "Νίκος",
        "Юлия",
        "Անի",
        "ნინო",
        "ᐃᓄᒃ",
        "Mª José",
        "Keola Kaʻahu",
        "O’Neill",
        "O'Brien-Smith (2)",
        "Team 3 & 4",
        "#4",
    ],
)
def test_scripts_whose_letters_stand_side_by_side_print(name):
    assert lack_of(name) is None


@pytest.mark.parametrize(
    "name",
    [
        pytest.param("Zoe\u0308", id="a letter and a mark apart"),
        pytest.param("Ann 😀", id="a face, of which the font has a glyph"),
        pytest.param("Ann ★", id="a star"),
        pytest.param("Ann\u200b", id="a space of no width"),
        pytest.param("An\u00adn", id="a hyphen that may not show"),
        pytest.param("Ann\u202eOak", id="a turn of direction"),
        pytest.param("Ann\tOak", id="a tab"),
        pytest.param("\ue000", id="private use"),
        pytest.param("", id="nothing"),
        pytest.param(" ", id="a space"),
    ],
)
def test_what_is_no_word_of_any_script_is_known(name):
    assert lack_of(name) is Lack.LETTERS


@pytest.mark.parametrize(
    "name",
    [
        pytest.param("محمد", id="Arabic, joined and from right to left"),
        pytest.param("שרה", id="Hebrew, from right to left"),
        pytest.param("ߒߞߏ", id="N'Ko, joined and from right to left"),
        pytest.param("आशा", id="Devanagari, reordered"),
        pytest.param("தமிழ்", id="Tamil, reordered"),
        pytest.param("สมชาย", id="Thai"),
        pytest.param("ລາວ", id="Lao, of which the font has letters"),
        pytest.param("Ọ́lá", id="a mark for which no letter is composed"),
        pytest.param("٣", id="Arabic figures"),
    ],
)
def test_letters_that_join_or_run_left_need_the_libraries_that_set_them(name, monkeypatch):
    monkeypatch.setattr(glyphs, "can_shape", lambda: False)
    assert lack_of(name) is Lack.LIBRARIES


@pytest.mark.parametrize("name", ["李明", "김민준", "አበበ", "Ann 李"])
def test_letters_that_stand_side_by_side_need_a_font_alone(name, monkeypatch):
    monkeypatch.setattr(glyphs, "can_shape", lambda: False)
    monkeypatch.setattr(shaping, "face_with", lambda *_: None)
    assert lack_of(name) is Lack.FONTS
    monkeypatch.setattr(shaping, "face_with", lambda *_: font_file("DejaVuSans"))
    assert lack_of(name) is None


@given(st.text(st.characters(codec="utf-8"), min_size=1, max_size=3))
def test_whatever_prints_with_the_pages_own_fonts_has_a_glyph_in_both(text):
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(shaping, "face_with", lambda *_: None)
        if lack_of(text) is None:
            assert all(ord(sign) in font for sign in text for font in FONTS)


@given(st.text(st.characters(min_codepoint=33, max_codepoint=126), min_size=1))
def test_every_sign_of_a_plain_keyboard_prints(text):
    assert lack_of(text) is None
