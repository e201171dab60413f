"""What is wanted of a lesson, and the lesson proved on the paper that is wanted."""

from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import KW_ONLY, replace
from difflib import get_close_matches
from enum import Enum
from pathlib import Path
from typing import TYPE_CHECKING

from foldmath.errors import LONGEST_SHOWN, BlockTooHigh, LessonRefused, Problem, Unreadable
from foldmath.lesson.lesson import Lesson
from foldmath.lesson.proving import ProvedLesson, prove
from foldmath.lesson.reading import read_lesson
from foldmath.making.languages import said_in
from foldmath.pages.looks import REGULAR
from foldmath.paper.refusals import StepRefused
from foldmath.paper.state import Sheet
from foldmath.phrases import Said, phrase
from foldmath.statements.items import Level
from foldmath.values import frozen

if TYPE_CHECKING:
    from foldmath.lesson.booklet.plan import BookletPlan

PAGES = {"letter": "letter", "a4": "A4"}
"""The paper that pages are printed on, by its name in small letters."""

NEAR = ({"letter": "letter", "A4": "A4"}, {"letter": "tabloid", "A4": "A3"})
"""Sheets of about one size, by the paper that schools which have them print on."""


class Part(Enum):
    """A part of a lesson's pages that can be made without the others."""

    WORKSHEET = "worksheet"
    KEY = "key"
    TICKET = "exit-ticket"
    PLAN = "teacher-plan"
    SLIDES = "slides"
    TEMPLATES = "templates"
    BOOKLET = "booklet"
    DIAGRAMS = "diagrams"


EVERY_PART = frozenset(Part)

LEVELS = {Level.GUIDED: phrase("guided"), Level.CORE: phrase("core"), Level.STRETCH: phrase("stretch")}
"""What titles of files and notes call the levels."""


@frozen(kw_only=True)
class Order:
    """What is wanted of a lesson.

    Args:
        out: the folder in which a folder of the lesson's name is made.
        paper: to print on, ``letter`` or ``A4``; None for the lesson's own.
        look: the name of the style sheet.
        parts: of the lesson's pages.
        languages: that the pages speak; none for the lesson's own.
    """

    out: Path
    paper: str | None = None
    look: str = REGULAR
    parts: frozenset[Part] = EVERY_PART
    languages: tuple[str, ...] = ()


@frozen
class ClassOrder:
    """What is wanted of a class set.

    Args:
        page_paper: ``letter`` or ``A4``.
        look: the name of the style sheet.
    """

    page_paper: str
    look: str


@frozen
class Made:
    """What was made of one lesson.

    Args:
        proved: the lesson.
        files: in the order in which they are told.
        notes: what the teacher should know of them.
        lacking: what this machine lacks, which is the same for every lesson of a command.
        made_before: whether it was there already, whole, so that nothing was done.
    """

    proved: ProvedLesson
    files: tuple[Path, ...]
    notes: tuple[Said, ...] = ()
    lacking: tuple[Said, ...] = ()
    _: KW_ONLY
    made_before: bool = False


def parts_named(words: str) -> frozenset[Part]:
    """Read the names of parts, divided by commas.

    Raises:
        Unreadable: there is no such part; offers the nearest one.
    """
    known = {part.value: part for part in Part}
    names = [name.strip().lower() for name in words.split(",") if name.strip()]
    for name in names:
        if name not in known:
            near = get_close_matches(name, known, n=1) or [Part.WORKSHEET.value]
            message = phrase(
                "--only {name}: there is no such part; there are {parts}",
                name=name[:LONGEST_SHOWN],
                parts=", ".join(known),
            )
            raise Unreadable(message, f"--only {near[0]}")
    if not names:
        message = phrase("--only takes one or more of {parts}", parts=", ".join(known))
        raise Unreadable(message, "--only worksheet,key")
    return frozenset(known[name] for name in names)


def page_paper(name: str) -> str:
    """Read the name of a paper to print on.

    Raises:
        Unreadable: pages are not laid out for it.
    """
    paper = PAGES.get(name.strip().lower())
    if paper is None:
        raise Unreadable(
            phrase("--paper {name}: pages are laid out for letter and A4", name=name),
            phrase("--paper letter, or --paper A4"),
        )
    return paper


def lesson_on(paper: str | None, lesson: Lesson) -> tuple[Lesson, str]:
    """Choose the paper to print on, and fold what goes with it: A4 for letter, A3 for tabloid, or back.

    Without a choice, a lesson in millimetres is printed on A4 and one in inches on letter. The usual stock of
    one paper becomes that of the other; any other stock stays, and so does any other sheet.
    """
    from foldmath.pages.page_fit import usual_page
    from foldmath.paper.sizes import paper_named, sheet
    from foldmath.tolerance.assumed.stock import usual_stock

    if paper is None:
        return lesson, usual_page(lesson.sheet)
    near = next((sheets[paper] for sheets in NEAR if lesson.paper in sheets.values()), lesson.paper)
    if near != lesson.paper:
        other = sheet(paper_named(near), lesson.orientation)
        usual = lesson.stock == usual_stock(lesson.paper, lesson.sheet.unit)
        stock = usual_stock(near, other.unit) if usual else lesson.stock
        lesson = replace(lesson, paper=near, sheet=other, stock=stock, booklet=_booklet_on(other, lesson))
    return lesson, paper


def _booklet_on(other: Sheet, lesson: Lesson) -> "BookletPlan | None":
    if lesson.booklet is None:
        return None
    from foldmath.lesson.booklet.reading import on_sheet

    try:
        return on_sheet(lesson.booklet, other)
    except StepRefused:
        # The lesson's own steps fail on this paper; proving them says which, and where.
        return None


def proved_lesson(path: Path, paper: str | None = None) -> tuple[ProvedLesson, str]:
    """Read and prove a lesson file; give it in the words of its language, with the paper to print on.

    Raises:
        LessonRefused: the file cannot be read, or a step cannot be done.
    """
    chosen = None if paper is None else page_paper(paper)
    lesson, pages = lesson_on(chosen, read_lesson(path))
    return said_in(prove(lesson), None), pages


@contextmanager
def laying_out(lesson: Lesson) -> Iterator[None]:
    """Name the lesson's file where one of its pages has no room for what it says.

    Raises:
        LessonRefused: in the place of ``BlockTooHigh``.
    """
    try:
        yield
    except BlockTooHigh as refusal:
        raise LessonRefused([Problem(file=lesson.file, message=refusal.message, hint=refusal.hint)]) from None
