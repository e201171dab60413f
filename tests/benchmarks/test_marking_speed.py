"""How fast a school is marked, and how many notes to pupils are laid out a second."""

import random

from conftest import LESSONS

from foldmath.drawing.rendering.picture_process import PictureProcess
from foldmath.lesson.numbered_pupils import pupils_without_roster
from foldmath.making import proved_lesson
from foldmath.marking.asking.lesson_pages import LessonPages
from foldmath.marking.evidence import evidence_of
from foldmath.marking.marked_class import mark_class
from foldmath.marking.reading.sheet import blank_rows, read_sheet, written_csv
from foldmath.marking.reporting.marks_file import mark_rows
from foldmath.marking.reporting.notes import notes_to_pupils
from foldmath.marking.reporting.papers import LOOK, NOTES, mark_papers
from foldmath.pages.printing import printed
from foldmath.practice.own_numbers import pupil_seed

PUPILS = 10_000


def filled(path, count):
    """Write the sheet of a school, half of its cells filled with fractions; give lesson, pages, pupils."""
    proved, _ = proved_lesson(LESSONS / "seed-trays.toml")
    pages, pupils, chance = LessonPages(proved), pupils_without_roster(count), random.Random(7)
    rows = blank_rows([(pupil.label, pages.of_class(pupil.level)) for pupil in pupils], "en-US")
    for row in rows[3:]:
        for place in range(1, len(row) - 1):
            if chance.random() < 0.5:
                row[place] = f"{chance.randint(1, 30)}/{chance.randint(2, 30)}"
    path.write_bytes(written_csv(rows))
    return proved, pages, pupils


def marked(path, proved, pages, pupils):
    return mark_class(
        read_sheet(path), pupils, pages, lambda pupil: pupil_seed(proved.lesson, pupil), own=False
    )


def test_ten_thousand_pupils_into_marks(benchmark, tmp_path):
    sheet = tmp_path / "answers.csv"
    school = filled(sheet, PUPILS)
    made = benchmark.pedantic(lambda: written_csv(list(mark_rows(marked(sheet, *school), "en-US"))), rounds=3)
    assert made.count(b"\n") > PUPILS


def test_notes_to_pupils(benchmark, tmp_path):
    sheet = tmp_path / "answers.csv"
    proved, pages, pupils = filled(sheet, 300)
    evidence = evidence_of(marked(sheet, proved, pages, pupils))
    papers = mark_papers(evidence, pages, notes_to_pupils(evidence, pages, ()), "letter")
    with PictureProcess() as pictures:
        drawn = dict(
            zip(papers.pictures, pictures.recordings(list(papers.pictures.values())).result(), strict=True)
        )
    notes = papers.documents[NOTES]
    benchmark.pedantic(lambda: printed([notes], drawn, "Notes", "en-US", LOOK), rounds=3)
    benchmark.extra_info["pages a second"] = round(50 / benchmark.stats.stats.median)
