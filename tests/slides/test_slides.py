"""Slides as values, as one file, and in print."""

import re
from dataclasses import replace
from html import unescape
from io import BytesIO

import pypdfium2
import pytest
from conftest import LESSONS, NAMES
from lessons_in_words import EIGHTHS, core_sheet, proved

from foldmath.drawing.scenes import Meaning
from foldmath.making import proved_lesson
from foldmath.pages.markup.blocks import Paragraph
from foldmath.pages.markup.reading import blocks_of
from foldmath.pages.pdf.styles import SLIDE, style_sheet
from foldmath.pages.printing import printed
from foldmath.pages.templating import heading
from foldmath.slides.in_print.printed import slides_document
from foldmath.slides.page import slides_html
from foldmath.slides.slides import MaterialsSlide, ProductSlide, StepSlide, slide_show
from foldmath.words.languages import languages

MM = 72 / 25.4


SCISSORS_STROKES = 4
"""Two blades, two finger rings."""


def shown(*steps, **told):
    made = proved(*steps, **told)
    return slide_show(made, core_sheet(made)).slides


def test_a_lesson_begins_with_its_title_and_materials_and_has_one_slide_a_step():
    kinds = [slide.kind for slide in shown(*EIGHTHS, "open", practice=("2/3 × 4/5", "3 × 2/5"))]
    assert kinds == ["title", "materials", *["step"] * 4, *["product"] * 2, "slip", "closing"]


def test_a_lesson_that_leads_to_no_slip_asks_about_none():
    assert "slip" not in [slide.kind for slide in shown("fold at 1/3 moving left")]


@pytest.mark.parametrize(
    ("steps", "asked"),
    [
        (EIGHTHS, "so each panel is …"),
        (("fold at 1/3 moving left", "open", "fold at 2/3 moving left"), "Which panels did step 2 divide?"),
    ],
)
def test_the_class_is_asked_why_panels_are_smaller_only_where_all_are(steps, asked):
    made = proved(*steps)
    html = slides_html(slide_show(made, core_sheet(made)))
    questions = ("so each panel is …", "Which panels did step 2 divide?")
    assert [question for question in questions if question in html] == [asked]


def test_the_class_hears_which_panels_a_fold_cut_and_which_it_left():
    """As the key of the worksheet says it."""
    made = proved("fold at 1/3 moving left", "open", "fold at 2/3 moving left")
    html = slides_html(slide_show(made, core_sheet(made)))
    told = unescape(re.sub(r"<[^>]+>", "", html)).replace("\u00a0", " ")
    assert "Which panels did step 2 divide? Which stayed the same?" in told
    assert "Divided: the 23. The same: the 13." in told


@pytest.mark.parametrize(
    ("steps", "lines"),
    [
        (EIGHTHS[:1], ["valley fold: over the top"]),
        ((*EIGHTHS[:1], "open"), ["valley fold: over the top", "old crease"]),
        (EIGHTHS, ["valley fold: over the top", "mountain crease: in the opened sheet"]),
        (("fold left edge to right edge behind",), ["mountain fold: behind"]),
    ],
)
def test_the_legend_names_the_lines_of_the_pictures_and_no_fold_behind_where_none_is(steps, lines):
    made = proved(*steps)
    html = slides_html(slide_show(made, core_sheet(made)))
    legend = html[html.index('<ul class="legend">') :].split("</ul>")[0]
    assert re.findall(r"</svg> (.*?)</li>", legend)[4:] == lines


def test_a_shading_is_counted_in_panels_measured_by_the_sheet_and_lies_inside_the_one_before():
    made = proved(
        "pleat width into 3", "pleat height into 5", "open", "shade 4 of 5 up", "shade 2 of 3 across"
    )
    html = slides_html(slide_show(made, core_sheet(made)))
    assert "Shade 2 of the 3 columns, inside the shaded part." in html
    assert "Shade 2 of the 3 columns." not in html
    shaded = re.findall(r'<div class="answer" data-from="3"><p>(\d+ panels)</p>', html)
    assert shaded[-2:] == ["12 panels", "8 panels"]
    said = html[html.index("will be shaded twice?") :]
    assert re.search(r"<mn>8</mn><mn>15</mn></mfrac></math> of the sheet", said)


def test_a_product_that_is_practised_twice_is_shown_once():
    told = shown("pleat width into 3", practice=("1/2 × 1/3", "1/2 × 1/3"))
    assert sum(isinstance(slide, ProductSlide) for slide in told) == 1


def test_numbers_that_a_class_cannot_say_are_not_asked_for():
    halvings = ["fold left edge to right edge", "fold top edge to bottom edge"] * 3
    told = [slide for slide in shown(*halvings) if isinstance(slide, StepSlide)]
    assert [slide.last for slide in told] == [5, 5, 5, 5, 3, 3]
    assert [len(slide.picture.opened.figures) for slide in told] == [2, 4, 8, 16, 0, 0]
    assert [len(slide.picture.opened.beside) for slide in told] == [0] * 6


def test_where_paper_is_cut_the_slides_say_how_to_do_it_safely():
    halves = ("fold left edge to right edge", "fold left edge to right edge", "fold top edge to bottom edge")
    cut = proved(*halves, "open", "fold left edge to right edge", "slit at height 1/2 from left edge to 1/2")
    whole = proved(*halves)
    for made, said in ((cut, True), (whole, False)):
        assert ("Blunt scissors." in slides_html(slide_show(made, core_sheet(made)))) is said
    slit = slide_show(cut, core_sheet(cut)).slides[7]
    assert slit.does == "slit"
    assert slit.picture.before.marks[0].meaning is Meaning.CUT
    assert len(slit.picture.before.marks) == 1 + SCISSORS_STROKES
    assert slit.picture.opened.creases.cut


@pytest.mark.parametrize(("then", "needed"), [((), True), (("open", "gather into booklet"), False)])
def test_scissors_are_on_the_list_only_where_a_fold_of_today_is_cut(then, needed):
    """The caution stands with every cut; a booklet is cut in the next lesson."""
    fourths = ("fold left edge to right edge", "fold left edge to right edge", "fold top edge to bottom edge")
    cut = ("open", "fold left edge to right edge", "slit at height 1/2 from left edge to 1/2")
    made = proved(*fourths, *cut, *then)
    show = slide_show(made, core_sheet(made))
    materials = next(slide for slide in show.slides if isinstance(slide, MaterialsSlide))
    assert materials.cuts is needed
    assert slides_html(show).count("Blunt scissors.") == 1 + needed


@pytest.mark.parametrize("language", languages())
def test_a_key_is_the_first_letter_of_its_button_and_no_two_buttons_share_one(language):
    made = proved(*EIGHTHS)
    made = replace(made, lesson=replace(made.lesson, language=language))
    buttons = re.findall(
        r'data-key="(.)".*?<span>(.+?)</span></button>', slides_html(slide_show(made, core_sheet(made)))
    )
    assert [key for key, name in buttons if name[0].lower() != key] == []
    assert len({key for key, _ in buttons}) == len(buttons) == 8


def test_words_of_a_home_language_stand_beside_the_lessons_own_and_say_which_language_they_are():
    made = proved(*EIGHTHS)
    own = {
        "vocabulary": ("panel", "crease"),
        "words": {"crease": "згин", "whole": "ціле"},
        "home_language": "uk",
    }
    made = replace(made, lesson=replace(made.lesson, **own))
    crease, whole = (f'<span lang="uk" dir="auto">{word}</span>' for word in ("згин", "ціле"))
    told = f"Words: panel, crease ({crease}), whole ({whole})"
    assert told in slides_html(slide_show(made, core_sheet(made)))
    html = slides_document(slide_show(made, core_sheet(made))).document.html
    assert told in html
    assert any("згин" in str(block) for block in blocks_of(html))


def test_the_same_lesson_gives_the_same_file():
    made = proved(*EIGHTHS, "open")
    assert slides_html(slide_show(made, core_sheet(made))) == slides_html(slide_show(made, core_sheet(made)))


@pytest.mark.parametrize("grade", [4, 5])
def test_only_a_grade_that_multiplies_fractions_reads_of(grade):
    """Fractions times fractions: Common Core State Standards for Mathematics (2010), 5.NF.B.4, grade 5."""
    made = proved(*EIGHTHS, grade=grade)
    document = slides_html(slide_show(made, core_sheet(made)))
    assert ("one panel is <math>" in document) is (grade == 4)


@pytest.mark.parametrize("grade", [3, 4])
def test_only_a_grade_that_multiplies_fractions_by_whole_numbers_closes_a_fold_with_a_product(grade):
    made = proved(*EIGHTHS, grade=grade)
    html = slides_html(slide_show(made, core_sheet(made)))
    assert ("8 eighths make 1 whole sheet" in html) == (grade == 3)
    assert ("×\xa0<math><mfrac>" in html) == (grade == 4)


def test_no_sentence_for_pupils_is_longer_than_twelve_words():
    """At most 12 words a sentence [common practice, no source]."""
    made = proved(*EIGHTHS, "open", practice=("2/3 × 4/5", "3 × 2/5"))
    document = re.sub(
        r"<(aside|nav|dialog|svg|style|script).*?</\1>",
        "",
        slides_html(slide_show(made, core_sheet(made))),
        flags=re.S,
    )
    document = re.sub(r"<math>.*?</math>", "number", document)
    for paragraph in re.findall(r"<(?:p|li|h2)\b[^>]*>(.*?)</(?:p|li|h2)>", document, flags=re.S):
        for said in re.split(r"[.?!:;…](?:\s|$)", re.sub(r"<[^>]+>", "", paragraph)):
            words = [word for word in said.split() if word.strip("×=+−,;()✓")]
            assert len(words) <= 12, said


def in_print(made, picture_process):
    told = slides_document(slide_show(made, core_sheet(made)))
    drawn = picture_process.recordings(list(told.pictures.values())).result()
    pictures = dict(zip(told.pictures, drawn, strict=True))
    lesson = made.lesson
    return pypdfium2.PdfDocument(
        BytesIO(printed([told.document.document()], pictures, lesson.title, lesson.language, "slides"))
    )


@pytest.mark.parametrize("name", NAMES)
def test_in_print_every_slide_is_one_page_of_sixteen_by_nine(name, picture_process):
    made, _ = proved_lesson(LESSONS / f"{name}.toml")
    document = in_print(made, picture_process)
    told = slide_show(made, core_sheet(made)).slides
    assert len(document) == len(told)
    for page, slide in zip(document, told, strict=True):
        assert page.get_width() / page.get_height() == pytest.approx(16 / 9)
        text = " ".join(page.get_textpage().get_text_range().split())
        if isinstance(slide, StepSlide):
            number = f"{slide.row.fold.number}. " if slide.row and slide.row.fold else ""
            assert text.startswith(number + heading(slide.step, "en-US").split()[0])
            assert slide.row is None or slide.row.fold is None or str(slide.row.fold.count or "") in text


def test_in_print_every_reveal_shows(picture_process):
    page = in_print(proved(*EIGHTHS), picture_process)[4]
    text = " ".join(page.get_textpage().get_text_range().split())
    assert "Predict: how many panels will there be?" in text
    for said in ("4 × 2 = 8 panels", "1/2 of 1/4 = 1/8 of the sheet", "8 × 1/8 = 1"):
        assert said in text


def test_where_no_panel_is_new_there_are_still_as_many():
    made = proved(*EIGHTHS, "open")
    html = slides_html(slide_show(made, core_sheet(made)))
    assert html[: html.index("What we found")].count("still 8 panels") == 1


def test_in_print_letters_are_a_twentieth_of_the_page_high():
    made = proved(*EIGHTHS, practice=("2/3 × 4/5",))
    sheet = style_sheet("slides")
    blocks = blocks_of(slides_document(slide_show(made, core_sheet(made))).document.html)
    used = {block.style for block in blocks if isinstance(block, Paragraph)}
    assert used
    for style in used:
        assert sheet.text[style].size / MM >= SLIDE.height_mm / 20


@pytest.mark.parametrize(
    ("fold", "broken"), [("fold left edge to right edge", 0), ("fold left edge to right edge, behind", 1)]
)
def test_the_arrow_of_paper_that_goes_behind_is_broken_as_in_print(fold, broken):
    made = proved(fold, "open")
    html = slides_html(slide_show(made, core_sheet(made)))
    assert re.search(r"\.arrow\.behind \{[^}]*stroke-dasharray: [\d.]+px [\d.]+px", html)
    assert html.count('class="arrow behind"') == broken
