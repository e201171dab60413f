"""Whose answers they are, and the sheet that they are kept in: takes a form, gives pupils and their grid."""

from dataclasses import replace
from pathlib import Path

from flask import request

from foldmath.desk.marking.grids import Grid, NoPupils, grid_of
from foldmath.desk.printing.class_lists import (
    ANSWERS,
    FOLDER,
    keep_class,
    kept_answers,
    kept_classes,
    pupils_of,
    typed_list,
    write_own,
)
from foldmath.desk.shelf.open_lesson import OpenLesson
from foldmath.desk.shelf.shelf import file_name
from foldmath.errors import Unreadable
from foldmath.lesson.numbered_pupils import called_in, pupils_without_roster
from foldmath.lesson.proving import prove
from foldmath.lesson.roster import Pupil, told_apart
from foldmath.marking.asking.lesson_pages import LessonPages
from foldmath.marking.reading.sheet import read_sheet
from foldmath.phrases import phrase
from foldmath.statements.items import Level

NAMELESS = "class"


def asked_class(folder: Path, language: str) -> tuple[str, tuple[Pupil, ...]]:
    """Read whose answers are marked: a kept class, a typed one, or so many pupils without names.

    Args:
        folder: of her own files.
        language: in which pupils without names are called by their numbers.

    Raises:
        NoPupils: none of these.
        RosterRefused: the list cannot be used.
    """
    kept = kept_classes(folder).get(request.form.get("kept", ""))
    if kept is not None:
        return kept.stem, pupils_of(kept.read_bytes(), kept.stem)
    called = class_name()
    typed = request.form.get("pupils", "")
    if typed.strip():
        content = typed_list(typed)
        pupils = pupils_of(content, called)
        if request.form.get("keep"):
            keep_class(folder, called, content)
        return called, pupils
    count = request.form.get("count", 0, int)
    if not count:
        raise _no_pupils()
    return called, called_in(pupils_without_roster(count), language)


def filled_grid(folder: Path, opened: OpenLesson, language: str) -> tuple[Grid, Path]:
    """Read a filled grid, and keep it as an answers sheet among her own files, for her eyes alone.

    Raises:
        NoPupils: it has no row.
        Unreadable: a level that there is none of.
    """
    form = request.form
    rows = zip(form.getlist("label"), form.getlist("level"), strict=False)
    pupils = told_apart(Pupil(label, level_named(level)) for label, level in rows)
    if not pupils:
        raise _no_pupils()
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
        NoPupils, RosterRefused: as ``asked_class``.
        AnswersRefused: what was kept cannot be used.
    """
    proved = prove(opened.read())
    pages = LessonPages(proved)
    asked = request.form.get("answers", "")
    answers = kept_answers(folder, opened.name).get(asked)
    if answers is not None:
        return asked, grid_of(read_sheet(answers), pages)
    called, pupils = asked_class(folder, proved.lesson.language)
    return called, Grid(pupils, pages)


def level_named(text: object) -> Level:
    """Read the name of a level.

    Raises:
        Unreadable: there is none of this name.
    """
    try:
        return Level(text)
    except ValueError:
        raise Unreadable(phrase("levels are guided, core and stretch")) from None


def class_name() -> str:
    """Read what the class is called, fit to be part of the name of a file."""
    name = request.form.get("class", "").strip()
    return file_name(name) if name else NAMELESS


def _no_pupils() -> NoPupils:
    return NoPupils(phrase("a grid needs its students"), phrase("a class, some names, or how many"))
