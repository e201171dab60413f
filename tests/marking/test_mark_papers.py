"""The report is one page and its evidence; six notes stand on a page, with no marks."""

import re
from dataclasses import replace

import pytest
from marking_a_class import PAGES, blank, filled, marked, roster
from page_reading import text_of

from foldmath.drawing.rendering.picture_process import PictureProcess
from foldmath.marking.evidence import evidence_of
from foldmath.marking.next_lesson import next_lesson
from foldmath.marking.reporting.notes import Task, notes_to_pupils
from foldmath.marking.reporting.papers import LOOK, NOTES, REPORT, mark_papers
from foldmath.pages.printing import printed
from foldmath.statements.items import Level

ANSWERS = {
    **{f"Pupil {number}": {} for number in range(1, 23)},
    "Ann": {"1": "22/15", "2": "5/4", "F3 of": "8"},
    "Bo": {"4": "3/4", "3": "15-Aug"},
    "Cem": {"F2 panels": "3", "F3 panels": "6"},
    "Dot": {"1": "absent"},
    "Eli": {"6": "7/11"},
    "Fay": {"1": "24/15", "2": "12/8"},
}


@pytest.fixture(scope="module", params=["letter", "A4"])
def papers(request, tmp_path_factory):
    folder = tmp_path_factory.mktemp("marks")
    evidence = evidence_of(marked(folder, filled(ANSWERS)))
    notes = notes_to_pupils(evidence, PAGES, next_lesson(evidence, PAGES, folder).products)
    made = mark_papers(evidence, PAGES, notes, request.param)
    with PictureProcess() as pictures:
        drawn = dict(
            zip(made.pictures, pictures.recordings(list(made.pictures.values())).result(), strict=True)
        )
    lesson = PAGES.proved.lesson
    for name, document in made.documents.items():
        pages = printed([document], drawn, lesson.title, lesson.language, LOOK)
        (folder / name).write_bytes(pages)
    return folder


def test_who_was_away_is_not_taken_for_who_had_all_right(papers):
    first = text_of(papers / REPORT)[0]
    asked = PAGES.of_class(Level.CORE).questions
    assert f"Dot {' '.join('–' for _ in asked)} Eli" in first
    assert "Pupil 1 Pupil 2 " in first


def test_the_report_has_all_for_the_teacher_on_its_first_page(papers):
    first, *evidence = text_of(papers / REPORT)
    for words in ("27 students were there", "Three piles for tomorrow", "Ask the whole class", "add", "Eli"):
        assert words in first
    assert len(evidence) <= 2
    assert "every wrong answer" in evidence[0]
    assert "Nothing explains these" in "".join(evidence)


def test_six_notes_stand_on_a_page_and_hold_no_marks(papers):
    pages = text_of(papers / NOTES)
    # 27 pupils were there.
    assert len(pages) == 5
    text = " ".join(pages)
    assert text.count("This is right:") == 27
    assert "wrong" not in text.casefold()
    assert "Dot" not in text


def test_each_note_has_something_to_try_with_a_picture(tmp_path):
    evidence = evidence_of(marked(tmp_path, filled(ANSWERS)))
    notes = notes_to_pupils(evidence, PAGES, next_lesson(evidence, PAGES, tmp_path).products)
    by_name = {note.label: note for note in notes.notes}
    assert all(note.task and note.task.picture in notes.pictures for note in notes.notes)
    assert (by_name["Ann"].task.task, by_name["Ann"].task.problem.text) == (Task.PRODUCT, "2/3 × 4/5")
    assert (by_name["Cem"].task.task, by_name["Cem"].task.problem) == (Task.FOLD, 3)
    assert by_name["Bo"].task.task is Task.CUT
    assert by_name["Pupil 1"].task.fresh
    assert not by_name["Eli"].task.fresh


def test_what_is_to_be_tried_is_on_the_pupils_own_numbers(tmp_path):
    rows = blank({"Ann": Level.CORE, "Bo": Level.CORE}, own=True)
    own = marked(tmp_path, rows, roster({"Ann": Level.CORE, "Bo": Level.CORE})).pupils
    # The lesson's own two products are everybody's; the others are a pupil's own.
    for row in (rows[3], rows[5]):
        row[3:8] = ["7/11"] * 5
    found = marked(tmp_path, rows, roster({"Ann": Level.CORE, "Bo": Level.CORE}))
    tried = [note.task for note in notes_to_pupils(evidence_of(found), PAGES, ()).notes]
    problems = [[question.problem for question in pupil.page.questions] for pupil in own]
    assert all(task.problem in asked for task, asked in zip(tried, problems, strict=True))
    assert tried[0].problem != tried[1].problem


def test_a_pupil_with_nothing_wrong_folds_again_where_nothing_is_multiplied(tmp_path):
    evidence = evidence_of(marked(tmp_path, filled({"Ann": {}})))
    (note,) = notes_to_pupils(evidence, PAGES, ()).notes
    assert (note.task.task, note.task.problem) == (Task.FOLD, 3)


def test_each_note_is_in_the_language_that_the_pupil_reads(tmp_path):
    found = marked(tmp_path, filled(ANSWERS))
    spanish = tuple(
        replace(one, pupil=replace(one.pupil, language="es")) if one.pupil.label == "Ann" else one
        for one in found.pupils
    )
    evidence = evidence_of(replace(found, pupils=spanish))
    notes = notes_to_pupils(evidence, PAGES, ())
    html = mark_papers(evidence, PAGES, notes, "letter").documents[NOTES].html
    strips = re.findall(r'<table role="presentation">.*?</table>', html, re.DOTALL)
    (ann,) = (strip for strip in strips if ">Ann<" in strip)
    others = [strip for strip in strips if strip != ann]
    assert len(others) == 26
    assert 'lang="es"' in ann
    assert "Esto está bien:" in ann
    assert "This is right:" not in ann
    assert all("This is right:" in strip and "lang=" not in strip for strip in others)
