"""Any script on a page: letters joined, in the order in which they are seen, read back as they were typed."""

from io import BytesIO

import pdfplumber
import pypdfium2
import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from pages.scripts import NAMES, printable

from foldmath.drawing.rendering.fonts import font_file
from foldmath.pages.lettering import faces, shaping
from foldmath.pages.lettering.faces import glyph_font
from foldmath.pages.lettering.glyph_fonts import Glyphs, registered
from foldmath.pages.lettering.shaping import EM, runs_of
from foldmath.pages.lettering.signs import can_shape
from foldmath.pages.lettering.visual_order import in_visual_order, isolated
from foldmath.pages.pdf import fonts
from foldmath.pages.pdf.binding import written
from foldmath.pages.pdf.glyphs import lack_of
from foldmath.pages.pdf.press import Page, PressCanvas
from foldmath.pages.pdf.writing import write, write_middle, write_right

SHAPED = pytest.mark.skipif(not can_shape(), reason="the extra scripts is not installed")


@pytest.fixture(autouse=True)
def faces_of_pages():
    """Register the pages' own fonts, whichever test comes first."""
    fonts.register_fonts()


class NamePage(Page):
    """A page with a name in each weight."""

    def __init__(self, name: str) -> None:
        self.name = name

    def put(self, press, number, pages) -> None:  # noqa: ARG002 (its number does not show)
        write(press.canvas, 50, 700, self.name, fonts.REGULAR, 20)
        write(press.canvas, 50, 600, self.name, fonts.BOLD, 20)


@pytest.fixture(scope="module")
def read() -> dict[str, str]:
    """Give what a reader of PDF finds on each name's page."""
    names = [name for name in NAMES.values() if not lack_of(name)]
    document = pypdfium2.PdfDocument(written([[NamePage(name) for name in names]], "Names", "en-US"))
    return {name: page.get_textpage().get_text_bounded() for name, page in zip(names, document, strict=True)}


@pytest.mark.parametrize("script", NAMES)
def test_a_name_in_any_script_is_read_back_as_it_was_typed_in_both_weights(script, read):
    name = printable(script)
    assert read[name].split() == name.split() * 2


@SHAPED
def test_the_same_names_give_the_same_bytes_whatever_was_set_before():
    def pdf(name: str) -> bytes:
        return written([[NamePage(name)]], "Names", "en-US")

    before = pdf("ليلى")
    pdf("محمد")
    assert pdf("ليلى") == before


@pytest.mark.parametrize(
    ("text", "seen"),
    [
        pytest.param("Name: שרה", ["Name: ", "שרה"], id="a label before a name"),
        pytest.param("שרה כהן", ["כהן", " ", "שרה"], id="two words"),
        pytest.param("שרה (2)", ["(2) ", "שרה"], id="brackets open towards what is read first"),
        pytest.param("(שרה)", ["(", "שרה", ")"], id="brackets round a name"),
        pytest.param("שרה 12", ["12 ", "שרה"], id="figures keep their order"),
        pytest.param("Ann, Bo", ["Ann, Bo"], id="nothing to be turned"),
        pytest.param("לֵאָה Oak", ["לֵאָה", " Oak"], id="marks stay with their letters"),
    ],
)
@SHAPED
def test_a_line_is_seen_in_this_order(text, seen):
    """By hand, after the rules of the Unicode Standard, Annex 9."""
    assert [stretch for stretch, _ in in_visual_order(text)] == seen


@SHAPED
def test_names_of_a_list_keep_their_order_and_their_numbers():
    listed = ", ".join(map(isolated, ("שרה", "לאה"))) + ": 3"
    assert [stretch for stretch, _ in in_visual_order(listed)] == ["שרה", ", ", "לאה", ": 3"]
    assert [stretch for stretch, _ in in_visual_order("שרה, לאה: 3")] == ["3 :", "לאה", " ,", "שרה"]


@SHAPED
def test_arabic_letters_take_the_shape_of_their_place():
    alone, twice = (runs_of(letters, fonts.REGULAR)[0] for letters in ("ب", "بب"))
    assert len(set(twice.signs) | {alone.signs}) == 3


@SHAPED
def test_a_mark_takes_no_room_of_its_own():
    with_mark, without = (fonts.width_of(word, fonts.REGULAR, 12.0) for word in ("Ọ́", "Ọ"))
    assert with_mark == pytest.approx(without)


def own_signs() -> list[str]:
    """Give the signs of the pages' own font."""
    fonts.register_fonts()
    return sorted(map(chr, glyph_font(fonts.REGULAR).face.charToGlyph))


BRACKETS = str.maketrans(")]}»›", "([{«‹")


@given(st.text(st.deferred(lambda: st.sampled_from(own_signs())), min_size=1, max_size=6))
@SHAPED
def test_no_sign_is_lost_and_each_has_a_glyph(text):
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(shaping, "face_with", lambda *_: None)
        assume(lack_of(text) is None)
    told = ""
    for run in runs_of(text, fonts.REGULAR):
        glyphs = glyph_font(run.font).face.charToGlyph
        assert all(glyphs[ord(sign)] for sign in run.signs)
        told += "".join(run.signs.told) if isinstance(run.signs, Glyphs) else run.signs
    assert sorted(told.replace("\u200b", "").translate(BRACKETS)) == sorted(text.translate(BRACKETS))
    width = sum(run.width for run in runs_of(text, fonts.REGULAR))
    assert fonts.width_of(text, fonts.REGULAR, EM) == pytest.approx(width)


def test_words_in_the_middle_and_at_the_right_end_where_they_should():
    canvas, width = PressCanvas("en-US"), fonts.width_of("panel", fonts.REGULAR, 10.0)

    def begins_at(writing):
        (operators,) = canvas.imprint(lambda: writing(canvas, 100, 0, "panel", fonts.REGULAR, 10.0)).operators
        return float(operators.split()[1])

    assert begins_at(write_middle) == pytest.approx(100 - width / 2, abs=1e-4)
    assert begins_at(write_right) == pytest.approx(100 - width, abs=1e-4)


# Fonts by what they draw.


@pytest.fixture
def folder(tmp_path, monkeypatch):
    """Give a folder that holds all the fonts there are; what was found before is forgotten."""
    monkeypatch.setattr(faces, "_always_there", lambda: iter(()))
    monkeypatch.setattr(faces, "_of_packages", lambda: iter(()))
    monkeypatch.setattr(faces, "_of_system", lambda: iter([tmp_path]))
    found = (faces.face_with, faces._files)
    for kept in found:
        kept.cache_clear()
    yield tmp_path
    for kept in found:
        kept.cache_clear()


def lay(folder, name: str, more: bytes = b"") -> None:
    (folder / name).write_bytes(font_file("DejaVuSans").read_bytes() + more)


def chosen(script: str, bold: bool = False, signs: str = "ب") -> str | None:
    faces.face_with.cache_clear()
    faces._files.cache_clear()
    face = faces.face_with(frozenset(signs), script, bold)
    return face and face.name


def test_a_font_named_for_the_script_comes_first_then_plain_letters_then_the_largest(folder):
    lay(folder, "Brush.ttf", b"\0" * 4)
    lay(folder, "Quill.ttf")
    assert chosen("ARABIC") == "Brush.ttf"
    lay(folder, "SomeSans.ttf")
    assert chosen("ARABIC") == "SomeSans.ttf"
    lay(folder, "OldArabic.ttf")
    assert chosen("ARABIC") == "OldArabic.ttf"
    lay(folder, "NotoSansArabic-Regular.ttf")
    assert chosen("ARABIC") == "NotoSansArabic-Regular.ttf"
    assert chosen("HEBREW", signs="ש") == "NotoSansArabic-Regular.ttf"


def test_the_bold_cut_is_taken_where_there_is_one_and_never_for_running_text(folder):
    lay(folder, "NotoSansArabic-Bold.ttf")
    assert chosen("ARABIC") is None
    lay(folder, "NotoSansArabic-Regular.ttf")
    assert [chosen("ARABIC"), chosen("ARABIC", bold=True)] == [
        "NotoSansArabic-Regular.ttf",
        "NotoSansArabic-Bold.ttf",
    ]


def test_a_font_that_lacks_one_of_the_signs_or_cannot_be_read_is_passed_over(folder):
    lay(folder, "NotoSansArabic-Regular.ttf")
    (folder / "BrokenArabic.ttf").write_bytes(b"\0\1\0\0 no font")
    assert chosen("ARABIC", signs="ب李") is None
    assert chosen("ARABIC") == "NotoSansArabic-Regular.ttf"


def test_a_sign_beyond_the_first_plane_is_told_as_utf_16():
    """ISO 32000-1:2008, 9.10.3: ToUnicode tells signs in UTF-16BE."""
    font = glyph_font(registered(font_file("DejaVuSans")))
    astral = next(code for code in sorted(font.face.charToGlyph) if 0x10000 <= code < 0xF0000)
    with pdfplumber.open(BytesIO(written([[NamePage(chr(astral))]], "Names", "en-US"))) as pdf:
        assert {sign["text"] for sign in pdf.pages[0].chars} == {chr(astral)}


def test_a_sign_that_the_pages_own_font_lacks_comes_from_another_though_its_script_is_plain(monkeypatch):
    monkeypatch.setattr(shaping, "signs_of", lambda _: frozenset("Ann "))
    shaping.stands_as_it_is.cache_clear()
    runs_of.cache_clear()
    asked = []
    monkeypatch.setattr(
        shaping, "face_with", lambda signs, *_: asked.append(signs) or font_file("DejaVuSans")
    )
    assert [run.signs for run in runs_of("Ann □", fonts.REGULAR)] == ["Ann", " ", "□"]
    assert asked == [frozenset("□")]
    assert not shaping.stands_as_it_is("Ann □", fonts.REGULAR)
    shaping.stands_as_it_is.cache_clear()
    runs_of.cache_clear()


def test_figures_beside_a_sign_that_the_pages_own_font_lacks_stay_in_it():
    assert [(run.font, run.signs) for run in runs_of("✗ 2 + 2 = 8.", "Lexend")] == [
        ("DejaVuSans", "✗"),
        ("Lexend", " 2 + 2 = 8."),
    ]


def test_a_mark_stays_with_its_sign_though_the_pages_own_font_has_the_sign_alone():
    assert [run.signs for run in runs_of("2\u20e3", "Lexend")] == ["2\u20e3"]
