"""What a set is made from is told by texts alone: alike in every process, other where a text is another."""

import os
import subprocess
import sys

from conftest import LESSONS

from foldmath.lesson.reading import read_lesson
from foldmath.making.sets.manifest import origin_of

TOLD = "import sys; from foldmath.lesson.reading import read_lesson as read; from pathlib import Path; \
from foldmath.making.sets.manifest import origin_of; print(origin_of(read(Path(sys.argv[1]))).lesson)"
LESSON = """title = "{title}"
grade = 5
paper = "letter"
steps = ["fold left edge to right edge"]
[booklet]
form = "eight-page"
{pages}
"""


def test_a_booklet_with_stories_has_one_origin_in_every_process():
    path = LESSONS / "part-of-a-part.toml"
    environment = {**os.environ, "PYTHONPATH": str(LESSONS.parent), "PYTHONHASHSEED": "7"}
    told = subprocess.run(
        [sys.executable, "-c", TOLD, path], env=environment, capture_output=True, text=True, check=True
    )
    assert told.stdout.strip() == origin_of(read_lesson(path)).lesson


def test_borrowed_pages_belong_to_the_origin_and_nothing_else_of_the_lender(tmp_path):
    lesson, lender = tmp_path / "trays.toml", tmp_path / "lender.toml"
    lesson.write_text(LESSON.format(title="Trays", pages='pages = "lender"'), encoding="utf-8")

    def origin(title, pages):
        lender.write_text(LESSON.format(title=title, pages=pages), encoding="utf-8")
        return origin_of(read_lesson(lesson)).lesson

    beds = '[[booklet.pages]]\nheading = "Beds"\n'
    assert origin("A", beds) == origin("B", beds)
    assert origin("A", beds) != origin("A", beds.replace("Beds", "Rows"))
