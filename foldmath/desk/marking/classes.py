"""Whose answers they are, and the sheet that they are kept in: takes a form, gives pupils and their grid."""

from dataclasses import replace
from itertools import zip_longest
from pathlib import Path

from flask import request

from foldmath.desk.classes.asked import NoClass, asked_class, class_name
from foldmath.desk.classes.class_lists import ANSWERS, FOLDER, kept_answers, kept_classes, write_own
from foldmath.desk.marking.grids import Grid, Seat, grid_of, with_class_pages, with_own_pages
from foldmath.desk.shelf.open_lesson import OpenLesson
from foldmath.errors import Unreadable
from foldmath.lesson.list_words import language_called
from foldmath.lesson.proving import prove
from foldmath.lesson.roster import Pupil, read_roster, told_apart
from foldmath.making.classes import CLASS_SET
from foldmath.marking.asking.lesson_pages import LessonPages
from foldmath.marking.reading.sheet import read_sheet
from foldmath.phrases import phrase
from foldmath.statements.items import Level


def filled_grid(opened: OpenLesson) -> Grid:
    """Read a filled grid.

    Raises:
        NoClass: it has no row.
        Unreadable: a level that there is none of.
    """
    form = request.form
    rows = zip_longest(form.getlist("label"), form.getlist("level"), form.getlist("reads"), fillvalue="")
    pupils = told_apart(
        Pupil(label, level_named(level), language=language_called(reads) or "")
        for label, level, reads in rows
    )
    if not pupils:
        raise NoClass(phrase("a grid needs its students"), phrase("a class, some names, or how many"))
    seats = _seats(pupils, LessonPages(prove(opened.read())))
    grid = Grid(seats, empty_is_right=form.get("empty") != "not done")
    typed = {
        (number, column.name): form.get(f"{number}-{place}", "").strip()
        for number in range(len(pupils))
        for place, column in enumerate(grid.columns)
    }
    return replace(grid, typed=typed)


def keep_answers(folder: Path, opened: OpenLesson, filled: Grid) -> Path:
    """Keep a filled grid as an answers sheet among her own files, for her eyes alone.

    It speaks the lesson's language, whatever the desk's: what it asks is compared with the lesson.

    Raises:
        CannotWrite: as ``write_own``.
    """
    path = folder / FOLDER / f"{opened.name}-{class_name()}{ANSWERS}.csv"
    write_own(path, filled.sheet(opened.read().language))
    return path


def asked_grid(folder: Path, opened: OpenLesson) -> tuple[str, Grid]:
    """Give the grid that is asked for, with its class: one that was filled before, or an empty one.

    Raises:
        NoClass, RosterRefused: as ``asked_class``.
        AnswersRefused: what was kept cannot be used.
    """
    proved = prove(opened.read())
    pages = LessonPages(proved)
    asked = request.form.get("answers", "")
    answers = kept_answers(folder, opened.name).get(asked)
    if answers is not None:
        return asked, _with_languages(grid_of(read_sheet(answers), pages), kept_classes(folder).get(asked))
    called = asked_class(folder, proved.lesson.language)
    return called.name, Grid(_seats(called.pupils, pages))


def has_class_sets(folder: Path, opened: OpenLesson) -> bool:
    """Tell whether pages with pupils' own numbers were made of the lesson, for any class."""
    return any((folder / opened.name).glob(f"{CLASS_SET}*"))


def _seats(pupils: tuple[Pupil, ...], pages: LessonPages) -> tuple[Seat, ...]:
    """Give the pupils with the pages that the form says they had."""
    return (with_own_pages if request.form.get("own") else with_class_pages)(pupils, pages)


def _with_languages(grid: Grid, roster: Path | None) -> Grid:
    """Give a grid whose pupils read what the list of their class says; an answers sheet does not say it."""
    if roster is None:
        return grid
    listed = read_roster(roster)
    reads = {(pupil.label, pupil.namesake): pupil.language for pupil in listed}

    def seat_of(seat: Seat) -> Seat:
        language = reads.get((seat.pupil.label, seat.pupil.namesake), "")
        return replace(seat, pupil=replace(seat.pupil, language=language))

    return replace(grid, seats=tuple(map(seat_of, grid.seats)))


def level_named(text: object) -> Level:
    """Read the name of a level.

    Raises:
        Unreadable: there is none of this name.
    """
    try:
        return Level(text)
    except ValueError:
        raise Unreadable(phrase("levels are guided, core and stretch")) from None
