"""How soon a changed lesson's pages are seen at the desk: the visible one, and all worksheets and keys."""

from pathlib import Path

import pytest

from foldmath.drawing.rendering.picture_process import PictureProcess
from foldmath.lesson.files.built_in import built_in_lessons
from foldmath.making import proved_lesson
from foldmath.making.previews import Preview
from foldmath.pages.page_pictures import page_picture

LESSON: Path = built_in_lessons()["seed-trays"]
DOTS_PER_INCH = 110


@pytest.fixture(scope="module")
def pictures():
    with PictureProcess() as process:
        Preview(*proved_lesson(LESSON), "regular", process).pdf("worksheet.pdf")
        yield process


def test_the_visible_page_of_a_changed_lesson(benchmark, pictures):
    def seen():
        pdf = Preview(*proved_lesson(LESSON), "regular", pictures).pdf("worksheet.pdf")
        return page_picture(pdf, 1, DOTS_PER_INCH)

    benchmark(seen)


def test_all_worksheets_and_keys_of_a_changed_lesson(benchmark, pictures):
    def made():
        preview = Preview(*proved_lesson(LESSON), "regular", pictures)
        return [preview.pdf(name) for name in preview.papers.documents]

    benchmark(made)
