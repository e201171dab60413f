"""The grid of a class as a page: typed with Tab and Enter, marked cell by cell, and then as a whole."""

from datetime import date

from flask import Blueprint, jsonify, redirect, request
from flask.typing import ResponseReturnValue

from foldmath.desk.classes.asked import class_name
from foldmath.desk.classes.class_lists import kept_answers, kept_classes
from foldmath.desk.marking.classes import (
    asked_grid,
    filled_grid,
    has_class_sets,
    keep_answers,
    level_named,
)
from foldmath.desk.marking.following import take_next
from foldmath.desk.marking.grids import marked_cell
from foldmath.desk.printing.made_files import to_open
from foldmath.desk.shelf.open_lesson import OpenLesson, open_lesson
from foldmath.desk.visits.desk import Desk
from foldmath.desk.visits.fields import LONGEST_ANSWER
from foldmath.desk.visits.refusals import refusals_of, status_of
from foldmath.desk.visits.showing import desk_language, lesson_page, show
from foldmath.errors import FoldmathError, Unreadable
from foldmath.lesson.proving import prove
from foldmath.making.marks import MarkOrder, mark
from foldmath.marking.asking.lesson_pages import LessonPages
from foldmath.phrases import phrase

LONGEST_SEED = 12
"""Figures; that of a pupil's numbers has ten."""


def marking(desk: Desk) -> Blueprint:
    """Give the pages on which answers are marked."""
    pages = Blueprint("marking", __name__)

    @pages.get("/lesson/<name>/mark")
    def begin(name: str) -> str:
        return _shown(desk, open_lesson(desk.shelf, name))

    @pages.post("/lesson/<name>/mark")
    def grid(name: str) -> ResponseReturnValue:
        opened = open_lesson(desk.shelf, name)
        try:
            called, asked = asked_grid(desk.folder, opened)
        except FoldmathError as error:
            return _shown(desk, opened, slips=refusals_of(error)), status_of(error)
        return _shown(desk, opened, grid=asked, class_name=called)

    @pages.post("/lesson/<name>/mark/cell")
    def cell(name: str) -> ResponseReturnValue:
        level, seed, column, answer = _asked_cell()
        lesson = LessonPages(prove(open_lesson(desk.shelf, name).read()))
        told = marked_cell(lesson, level_named(level), seed, column, answer, desk_language(desk))
        return jsonify(verdict=told.verdict.name, says=told.says)

    @pages.post("/lesson/<name>/mark/done")
    def done(name: str) -> ResponseReturnValue:
        return _marked(desk, open_lesson(desk.shelf, name))

    @pages.post("/lesson/<name>/mark/next")
    def following(name: str) -> ResponseReturnValue:
        return redirect(lesson_page(take_next(desk, open_lesson(desk.shelf, name)), "practice"), 303)

    @pages.get("/lesson/<name>/mark/next")
    @pages.get("/lesson/<name>/mark/done")
    def before(name: str) -> ResponseReturnValue:
        return redirect(lesson_page(name, "mark"))

    return pages


def _marked(desk: Desk, opened: OpenLesson) -> ResponseReturnValue:
    """Mark the grid that was filled; what is refused leaves it as it was typed."""
    found = filled_grid(opened)
    known = {"grid": found, "class_name": class_name()}
    try:
        answers = keep_answers(desk.folder, opened, found)
        order = MarkOrder(answers=answers, out=desk.folder, day=date.today(), class_name=class_name())
        made = mark(opened.path, order, lambda: found.pupils, desk.pictures, lambda _: None)
    except FoldmathError as error:
        return _shown(desk, opened, slips=refusals_of(error), **known), status_of(error)
    return _shown(desk, opened, marked=made, to_open=to_open(made.files, desk.folder / opened.name), **known)


def _asked_cell() -> tuple[str, int | None, str, str]:
    """Read what a cell is marked by: level, seed of own numbers, column, answer; it tells no name."""
    asked = request.get_json()
    match asked:
        case {"level": str(level), "seed": str(seed), "column": str(column), "answer": str(answer)}:
            return level, _seed(seed), column, answer[:LONGEST_ANSWER]
        case _:
            raise Unreadable(phrase("a cell needs its level, its column and its answer"))


def _seed(text: str) -> int | None:
    return int(text) if text.isascii() and text.isdecimal() and len(text) <= LONGEST_SEED else None


def _shown(desk: Desk, opened: OpenLesson, **values: object) -> str:
    nothing = {"grid": None, "marked": None, "class_name": ""}
    of_form = {"slips": [], "typed": request.form}
    known = {"opened": opened, "place": "mark", "classes": kept_classes(desk.folder)}
    known["answers"] = kept_answers(desk.folder, opened.name)
    known["own_likely"] = has_class_sets(desk.folder, opened)
    return show(desk, "mark.html", **known, **{**nothing, **of_form, **values})
