"""The slides in print for a projector: one page for each reveal, and nothing told before its time."""

from io import BytesIO

import pypdfium2
import pytest
from conftest import LESSONS
from lessons_in_words import core_sheet, proved

from foldmath.making import proved_lesson
from foldmath.pages.printing import printed
from foldmath.slides.in_print.revealed import reveals_document
from foldmath.slides.slides import slide_show

MANY_WORDS = {
    "gate": ("fold left edge to middle", "fold right edge to middle"),
    "slanted": (
        "fold along (1/12, 1/24) (11/12, 5/24) moving (1, 1), behind",
        "fold at 1/24 moving bottom",
        "open",
    ),
    "thirds": ("fold at 1/3 moving left", "fold at 1/4 moving bottom", "fold at 1/5 moving right", "open"),
}


@pytest.mark.parametrize("steps", MANY_WORDS.values(), ids=MANY_WORDS)
def test_no_page_is_too_full_where_panels_differ_and_numbers_are_awkward(steps, picture_process):
    made = proved(
        *steps, practice=("2 × 5/6", "11/12 × 7/12", "5/3 × 3/2"), title="Tarpaulins of the lower yard"
    )
    told = slide_show(made, core_sheet(made)).slides
    assert len(pages_of(made, picture_process)) == sum(slide.last + 1 for slide in told)


def pages_of(made, picture_process):
    told = reveals_document(slide_show(made, core_sheet(made)))
    drawn = picture_process.recordings(list(told.pictures.values())).result()
    pictures = dict(zip(told.pictures, drawn, strict=True))
    lesson = made.lesson
    document = pypdfium2.PdfDocument(
        BytesIO(printed([told.document.document()], pictures, lesson.title, lesson.language, "slides"))
    )
    return [" ".join(page.get_textpage().get_text_range().split()) for page in document]


@pytest.mark.parametrize("name", ["seed-trays", "fraction-diary", "sail-cloth"])
def test_every_reveal_of_every_slide_is_one_page(name, picture_process):
    made, _ = proved_lesson(LESSONS / f"{name}.toml")
    told = slide_show(made, core_sheet(made)).slides
    assert len(pages_of(made, picture_process)) == sum(slide.last + 1 for slide in told)


def test_an_answer_is_on_no_page_before_its_reveal(picture_process):
    made, _ = proved_lesson(LESSONS / "seed-trays.toml")
    told = slide_show(made, core_sheet(made)).slides
    pages = pages_of(made, picture_process)
    start = sum(slide.last + 1 for slide in told[:4])
    said = ["Predict: how many panels", "4 × 2 = 8 panels", "1/2 of 1/4 = 1/8", "8 × 1/8 = 1"]
    seen = [[words in page for words in said] for page in pages[start : start + 6]]
    assert seen == [
        [False, False, False, False],
        [True, False, False, False],
        [True, False, False, False],
        [True, True, False, False],
        [False, True, True, False],
        [False, True, True, True],
    ]
