"""Whose answers they are, and the sheet that they are kept in: takes a form, gives pupils and their grid."""

from dataclasses import replace
from pathlib import Path

from flask import request

from foldmath.desk.classes.asked import NoClass, asked_class, class_name
from foldmath.desk.classes.class_lists import ANSWERS, FOLDER, kept_answers, write_own
from foldmath.desk.marking.grids import Grid, grid_of
from foldmath.desk.shelf.open_lesson import OpenLesson
from foldmath.errors import Unreadable
from foldmath.lesson.proving import prove
from foldmath.lesson.roster import Pupil, told_apart
from foldmath.marking.asking.lesson_pages import LessonPages
from foldmath.marking.reading.sheet import read_sheet
from foldmath.phrases import phrase
from foldmath.statements.items import Level


def filled_grid(folder: Path, opened: OpenLesson, language: str) -> tuple[Grid, Path]:
    """Read a filled grid, and keep it as an answers sheet among her own files, for her eyes alone.

    Raises:
        NoClass: it has no row.
        Unreadable: a level that there is none of.
    """
    form = request.form
    rows = zip(form.getlist("label"), form.getlist("level"), strict=False)
    pupils = told_apart(Pupil(label, level_named(level)) for label, level in rows)
    if not pupils:
        raise NoClass(phrase("a grid needs its students"), phrase("a class, some names, or how many"))
    grid = Grid(pupils, LessonPages(prove(opened.read())), empty_is_right=form.get("empty") != "not done")
    typed = {
        (number, column.name): form.get(f"{number}-{place}", "").strip()
        for number in range(len(pupils))
        for place, column in enumerate(grid.columns)
    }
    filled = replace(grid, typed=typed)
    path = folder / FOLDER / f"{opened.name}-{class_name()}{ANSWERS}.csv"
    write_own(path, filled.sheet(language))
    return filled, path


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
        return asked, grid_of(read_sheet(answers), pages)
    called = asked_class(folder, proved.lesson.language)
    return called.name, Grid(called.pupils, pages)


def level_named(text: object) -> Level:
    """Read the name of a level.

    Raises:
        Unreadable: there is none of this name.
    """
    try:
        return Level(text)
    except ValueError:
        raise Unreadable(phrase("levels are guided, core and stretch")) from None
