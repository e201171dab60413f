"""After the lesson: a lesson, a roster and answers in; marks, report, notes and the next lesson out."""

from collections.abc import Callable, Mapping
from dataclasses import replace
from datetime import date
from pathlib import Path

from foldmath.drawing.rendering.picture_process import PictureProcess
from foldmath.lesson.lesson import Lesson
from foldmath.lesson.numbered_pupils import called, called_in
from foldmath.lesson.proving import ProvedLesson
from foldmath.lesson.roster import Pupil
from foldmath.making.order import laying_out, page_paper, proved_lesson
from foldmath.making.sets.file_set import Access, FileSet
from foldmath.making.sets.manifest import Origin, digest, origin_of
from foldmath.making.sets.placing import place
from foldmath.marking.asking.lesson_pages import LessonPages
from foldmath.marking.evidence import ClassEvidence, evidence_of
from foldmath.marking.marked_class import MarkedClass, mark_class, pupils_of
from foldmath.marking.next_lesson import NextLesson, next_lesson, next_roster
from foldmath.marking.reading.ods import ods
from foldmath.marking.reading.sheet import blank_rows, read_sheet, written_csv, written_ods
from foldmath.marking.reporting.history import ClassHistory, history_rows, read_history
from foldmath.marking.reporting.history_page import CAME_AND_WENT, HISTORY, history_papers
from foldmath.marking.reporting.marks_file import WIDTHS_MM, mark_rows
from foldmath.marking.reporting.notes import notes_to_pupils
from foldmath.marking.reporting.papers import LOOK, NOTES, REPORT, mark_papers
from foldmath.pages.names import told_of_names, with_numbers_for_unprintable
from foldmath.phrases import Said, phrase
from foldmath.practice.own_numbers import pupil_seed
from foldmath.values import frozen
from foldmath.words.saying import say

Roster = Callable[[], tuple[Pupil, ...]]
"""Gives the pupils; called once the lesson is known to be right."""


TITLES = {REPORT: phrase("class report"), NOTES: phrase("notes to students")}
"""What the titles of files say of them."""


@frozen(kw_only=True)
class MarkOrder:
    """What is to be marked, and how.

    Args:
        answers: the filled sheet.
        out: the folder in which a folder of the lesson's name is made.
        day: in the name of the set.
        class_name: in the name of the set too, so that two classes stay apart; empty without a roster.
        paper: to print on, ``letter`` or ``A4``; None for the lesson's own.
        own_numbers: whether pupils had numbers of their own where no code says so.
        labels: whether numbers are written instead of names.
    """

    answers: Path
    out: Path
    day: date
    class_name: str = ""
    paper: str | None = None
    own_numbers: bool = False
    labels: bool = False


@frozen
class Marked:
    """What was made of a class's answers.

    Args:
        evidence: what the marks show.
        files: in the order in which they are told.
        notes: what the teacher should know of them.
    """

    evidence: ClassEvidence
    files: tuple[Path, ...]
    notes: tuple[Said, ...]


def blank_sheet(
    path: Path, pupils: Roster, *, own_numbers: bool, paper: str | None = None
) -> Callable[[str], bytes]:
    """Write an answers sheet to fill in.

    Args:
        path: of the lesson.
        pupils: of the class.
        own_numbers: whether they have numbers of their own.
        paper: that the pages were printed on, ``letter`` or ``A4``, since the codes at their feet differ;
            None for the lesson's own.

    Returns:
        What writes it in the format of a file's name, ``.csv`` or ``.ods``.

    Raises:
        LessonRefused: the lesson cannot be used.
        RosterRefused: the roster cannot be used.
    """
    proved, _ = proved_lesson(path, paper)
    pages = LessonPages(proved)
    rows = blank_rows(
        [
            (
                pupil.label,
                pages.own(pupil.level, pupil_seed(proved.lesson, pupil))
                if own_numbers
                else pages.of_class(pupil.level),
            )
            for pupil in called_in(pupils(), proved.lesson.language)
        ],
        proved.lesson.language,
    )
    return lambda suffix: written_ods(rows) if suffix == ".ods" else written_csv(rows)


def mark(
    path: Path,
    order: MarkOrder,
    pupils: Roster | None,
    pictures: PictureProcess,
    report_progress: Callable[[Said], None],
) -> Marked:
    """Mark a class's answers, and make all that follows from them, as one whole set.

    Args:
        path: of the lesson.
        order: what is to be marked.
        pupils: of the class; None for those of the sheet.
        pictures: draws them.
        report_progress: is told what is being done.

    Raises:
        LessonRefused: the lesson, or an earlier one, cannot be used; nothing is written.
        RosterRefused: the roster cannot be used; nothing is written.
        AnswersRefused: the sheet cannot be used, or does not fit; nothing is written.
        CannotWrite: the set could not be put in place; nothing is changed.
    """
    report_progress(phrase("folding"))
    proved, paper = proved_lesson(path, order.paper)
    pages = LessonPages(proved)
    roster = called_in(pupils(), proved.lesson.language) if pupils else None
    report_progress(phrase("marking"))
    marked = marked_class(proved, pages, order, roster)
    evidence = evidence_of(marked)
    folder = order.out / path.stem
    name = "-".join(part for part in ("marks", f"{order.day:%Y-%m-%d}", order.class_name) if part)
    with laying_out(proved.lesson):
        files = _files(evidence, pages, folder / name, paper, pictures, report_progress)
    origin = origin_of(proved.lesson, paper=paper, answers=digest(order.answers.read_bytes()))
    placed = place(FileSet(lesson_folder=folder, name=name, files=files, origin=origin, access=Access.OWNER))
    notes = (*marked.notes, *placed.notes, *told_of_names(one.pupil for one in marked.pupils))
    return Marked(evidence, placed.files, notes)


def following(
    path: Path, order: MarkOrder, pupils: tuple[Pupil, ...]
) -> tuple[NextLesson, list[tuple[str, ...]]]:
    """Give the lesson that follows from a class's answers, to lie in the order's folder, and its class list.

    Raises:
        LessonRefused, AnswersRefused: as ``mark``.
    """
    proved, _ = proved_lesson(path, order.paper)
    pages = LessonPages(proved)
    roster = called_in(pupils, proved.lesson.language)
    evidence = evidence_of(marked_class(proved, pages, order, roster))
    return next_lesson(evidence, pages, order.out), next_roster(evidence)


def marked_class(
    proved: ProvedLesson, pages: LessonPages, order: MarkOrder, roster: tuple[Pupil, ...] | None
) -> MarkedClass:
    """Mark a class's answers; with labels, numbers stand for the names.

    Raises:
        AnswersRefused: the sheet cannot be used, or does not fit.
    """
    sheet = read_sheet(order.answers)
    pupils = with_numbers_for_unprintable(pupils_of(sheet) if roster is None else roster)
    marked = mark_class(
        sheet, pupils, pages, lambda pupil: pupil_seed(proved.lesson, pupil), own=order.own_numbers
    )
    return _labelled(marked, proved.lesson.language) if order.labels else marked


def _labelled(marked: MarkedClass, language: str) -> MarkedClass:
    """Put a number for each name, by the place in the list; notes that tell names are left out."""
    pupils = tuple(
        replace(one, pupil=replace(one.pupil, label=called(number, language), instead=""))
        for number, one in enumerate(marked.pupils, start=1)
    )
    return MarkedClass(pupils, ())


def _files(
    evidence: ClassEvidence,
    pages: LessonPages,
    folder: Path,
    paper: str,
    pictures: PictureProcess,
    report_progress: Callable[[Said], None],
) -> Mapping[str, bytes]:
    """Give the files of the set by their names."""
    from foldmath.pages.printing import printed

    lesson = pages.proved.lesson
    upcoming = next_lesson(evidence, pages, folder)
    papers = mark_papers(evidence, pages, notes_to_pupils(evidence, pages, upcoming.products), paper)
    drawn = pictures.recordings(list(papers.pictures.values()))
    report_progress(phrase("writing the marks"))
    rows = list(mark_rows(evidence.marked, lesson.language))
    tables = {"marks.csv": written_csv(rows), "marks.ods": ods(rows, "marks", WIDTHS_MM)}
    report_progress(phrase("laying out pages"))
    placed = dict(zip(papers.pictures, drawn.result(), strict=True))
    printed_papers = {
        name: printed([document], placed, _title(lesson, name), lesson.language, LOOK)
        for name, document in papers.documents.items()
    }
    following = {
        "next.toml": upcoming.text.encode(),
        "next-roster.csv": written_csv(next_roster(evidence)),
    }
    return {**tables, **printed_papers, **following}


def _title(lesson: Lesson, name: str) -> str:
    return f"{lesson.title}: {say(TITLES[name], lesson.language)}"


@frozen
class HistoryMade:
    """What all the marks of a folder show, and the files that say it."""

    histories: tuple[ClassHistory, ...]
    files: tuple[Path, ...]


def history(folder: Path, paper: str, language: str, pictures: PictureProcess) -> HistoryMade:
    """Gather all marks of a folder, and write what came and went beside them, in ``history``.

    Args:
        folder: in which the marks lie, at any depth.
        paper: to print on.
        language: of the page.
        pictures: draws the plots.

    Raises:
        NoMarks: there are none.
        TableRefused: some of them cannot be read.
        CannotWrite: the set could not be put in place; nothing is changed.
    """
    from foldmath.pages.printing import printed

    found = read_history(folder)
    papers = history_papers(found, page_paper(paper), language)
    drawn = pictures.recordings(list(papers.pictures.values())).result()
    placed = dict(zip(papers.pictures, drawn, strict=True))
    rows = history_rows(found)
    pages = printed([papers.documents[HISTORY]], placed, say(CAME_AND_WENT, language), language, LOOK)
    files = {"history.csv": written_csv(rows), HISTORY: pages}
    origin = Origin(digest(repr(rows).encode()))
    made = FileSet(lesson_folder=folder, name="history", files=files, origin=origin, access=Access.OWNER)
    return HistoryMade(found, place(made).files)
