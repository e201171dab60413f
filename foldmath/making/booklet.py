"""The booklet's parts: its sheet to fill, the key, and the page that shows how it is folded."""

from dataclasses import replace
from functools import partial
from pathlib import Path

from foldmath.drawing.rendering.picture_process import PictureProcess
from foldmath.errors import LessonRefused, Problem
from foldmath.lesson.proving import ProvedLesson
from foldmath.making.hands import hard_for_hands
from foldmath.making.order import Made, Order, laying_out, proved_lesson
from foldmath.making.parts import Files, finished
from foldmath.making.sets.file_set import FileSet
from foldmath.making.sets.manifest import origin_of
from foldmath.making.sets.placing import place
from foldmath.pages.looks import LARGE
from foldmath.paper.steps import Gather
from foldmath.phrases import Said, phrase
from foldmath.words.saying import say
from foldmath.words.steps import WrittenStep

BOOKLET_FOLDING = "booklet-folding.pdf"

FOLDING = phrase("folding the booklet")
"""What the title of the folding page says of it."""


def folding_steps(proved: ProvedLesson) -> tuple[WrittenStep, ...]:
    """Give the steps by which the lesson's sheet becomes a booklet; none if it becomes none."""
    lesson = proved.lesson
    if lesson.booklet is not None:
        return lesson.booklet.steps
    return lesson.steps if lesson.has(Gather) else ()


def folding_page(proved: ProvedLesson, pages: str, look: str, picture_process: PictureProcess) -> Files:
    """Begin the page of pictures by which pupils fold the booklet; nothing for a lesson without one."""
    steps = folding_steps(proved)
    if not steps:
        return {}
    from foldmath.booklets.folding_page import booklet_folding

    lesson = proved.lesson
    page = booklet_folding(lesson.title, lesson.language, lesson.sheet, steps, pages, look)
    recordings = picture_process.recordings(list(page.pictures.values()))

    def in_print() -> bytes:
        from foldmath.pages.printing import printed

        drawn = dict(zip(page.pictures, recordings.result(), strict=True))
        title = f"{lesson.title}: {say(FOLDING, lesson.language)}"
        return printed([page.document], drawn, title, lesson.language, look)

    return {BOOKLET_FOLDING: in_print}


def sheet_of_pages(
    proved: ProvedLesson, pages: str, look: str, picture_process: PictureProcess
) -> tuple[Files, tuple[Said, ...]]:
    """Begin the booklet's own sheet and its key, with what the teacher should know of them."""
    plan = proved.lesson.booklet
    if plan is None:
        return {}, ()
    from foldmath.booklets.papers import BOOKLET, BOOKLET_KEY, booklet_papers, printed_booklet

    papers = booklet_papers(proved, plan, pages, look)
    recordings = picture_process.recordings(list(papers.pictures.values()))

    def in_print(*, answers: bool) -> bytes:
        drawn = dict(zip(papers.pictures, recordings.result(), strict=True))
        return printed_booklet(papers, drawn, answers=answers)

    files = {BOOKLET: partial(in_print, answers=False), BOOKLET_KEY: partial(in_print, answers=True)}
    return files, papers.notes


def with_fitting_booklet(
    proved: ProvedLesson, pages: str, look: str
) -> tuple[ProvedLesson, tuple[Said, ...]]:
    """Give the lesson without its booklet's pages where large print does not fit on them, and what would do.

    Whoever needs large print has no use for smaller, so no page of the set tells of them; a lesson whose own
    sheet is gathered makes a blank booklet of it, and its plan says which paper would have room.
    """
    lesson = proved.lesson
    if lesson.booklet is None or look != LARGE:
        return proved, ()
    from foldmath.booklets.notes import TooSmallForLargePrint, said
    from foldmath.booklets.papers import booklet_papers

    try:
        booklet_papers(proved, lesson.booklet, pages, look)
    except TooSmallForLargePrint as refused:
        first = refused.problems[0]
        bare = replace(proved, lesson=replace(lesson, booklet=None, booklet_left_out=refused.paper))
        note = "left_blank" if folding_steps(bare) else "left_out"
        return bare, (said(note, why=first.message, remedy=first.hint),)
    return proved, ()


def require_booklet(proved: ProvedLesson) -> None:
    """Make sure that the lesson's sheet becomes a booklet.

    Raises:
        LessonRefused: it does not.
    """
    if not folding_steps(proved):
        hint = phrase('at its end, [booklet], then form = "eight-page" and pages = "fraction-diary"')
        raise LessonRefused(
            [Problem(file=proved.lesson.file, message=phrase("this lesson has no [booklet]"), hint=hint)]
        )


def booklet(path: Path, order: Order, picture_process: PictureProcess) -> Made:
    """Make a lesson's booklet alone: its sheet, the key, and the page that shows how it is folded.

    Raises:
        LessonRefused: the lesson cannot be used, or has no booklet; nothing is written.
        CannotWrite: the set could not be put in place; nothing is changed.
    """
    proved, pages = proved_lesson(path, order.paper)
    require_booklet(proved)
    hard = hard_for_hands(proved)
    begun, notes = sheet_of_pages(proved, pages, order.look, picture_process)
    folding = folding_page(proved, pages, order.look, picture_process)
    with laying_out(proved.lesson):
        files = finished((begun, folding))
    placed = place(
        FileSet(
            lesson_folder=order.out / path.stem,
            name="booklet",
            files=files,
            origin=origin_of(proved.lesson, paper=pages, look=order.look),
        )
    )
    return Made(proved, placed.files, (*hard, *notes, *placed.notes))
