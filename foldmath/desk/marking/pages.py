"""The grid of a class as a page: typed with Tab and Enter, marked cell by cell, and then as a whole."""

from datetime import date

from flask import Blueprint, jsonify, request
from flask.typing import ResponseReturnValue

from foldmath.desk.marking.classes import asked_grid, class_name, filled_grid, level_named
from foldmath.desk.marking.grids import marked_cell
from foldmath.desk.printing.class_lists import kept_answers, kept_classes
from foldmath.desk.shelf.open_lesson import OpenLesson, open_lesson
from foldmath.desk.visits.desk import Desk
from foldmath.desk.visits.fields import LONGEST_ANSWER
from foldmath.desk.visits.showing import desk_language, show
from foldmath.errors import Unreadable
from foldmath.lesson.proving import prove
from foldmath.making.marks import MarkOrder, mark
from foldmath.marking.asking.lesson_pages import LessonPages
from foldmath.phrases import phrase


def marking(desk: Desk) -> Blueprint:
    """Give the pages on which answers are marked."""
    pages = Blueprint("marking", __name__)

    @pages.get("/lesson/<name>/mark")
    def begin(name: str) -> str:
        return _shown(desk, open_lesson(desk.shelf, name))

    @pages.post("/lesson/<name>/mark")
    def grid(name: str) -> str:
        opened = open_lesson(desk.shelf, name)
        called, asked = asked_grid(desk.folder, opened)
        return _shown(desk, opened, grid=asked, class_name=called)

    @pages.post("/lesson/<name>/mark/cell")
    def cell(name: str) -> ResponseReturnValue:
        level, column, answer = _asked_cell()
        lesson = LessonPages(prove(open_lesson(desk.shelf, name).read()))
        told = marked_cell(lesson, level_named(level), column, answer, desk_language(desk))
        return jsonify(verdict=told.verdict.name, says=told.says)

    @pages.post("/lesson/<name>/mark/done")
    def done(name: str) -> str:
        opened = open_lesson(desk.shelf, name)
        found, answers = filled_grid(desk.folder, opened, desk_language(desk))
        order = MarkOrder(answers=answers, out=desk.folder, day=date.today(), class_name=class_name())
        made = mark(opened.path, order, lambda: found.pupils, desk.pictures, lambda _: None)
        return _shown(desk, opened, marked=made, grid=found, class_name=class_name())

    return pages


def _asked_cell() -> tuple[str, str, str]:
    asked = request.get_json()
    match asked:
        case {"level": str(level), "column": str(column), "answer": str(answer)}:
            return level, column, answer[:LONGEST_ANSWER]
        case _:
            raise Unreadable(phrase("a cell needs its level, its column and its answer"))


def _shown(desk: Desk, opened: OpenLesson, **values: object) -> str:
    nothing = {"grid": None, "marked": None, "class_name": ""}
    known = {"opened": opened, "place": "mark", "classes": kept_classes(desk.folder)}
    known["answers"] = kept_answers(desk.folder, opened.name)
    return show(desk, "mark.html", **known, **{**nothing, **values})
