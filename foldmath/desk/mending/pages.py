"""The text of a lesson file as it lies there, with every slip at its line, to be corrected and saved."""

from flask import Blueprint, redirect, request
from flask.typing import ResponseReturnValue

from foldmath.desk.shelf.open_lesson import NothingFolded, OpenLesson, open_lesson, save
from foldmath.desk.visits.desk import Desk
from foldmath.desk.visits.showing import lesson_page, show
from foldmath.errors import LessonRefused, Problem, Unreadable
from foldmath.lesson.files.text import LARGEST_FILE
from foldmath.lesson.proving import prove
from foldmath.phrases import phrase


def mending(desk: Desk) -> Blueprint:
    """Give the page on which the text of a lesson is mended."""
    pages = Blueprint("mending", __name__)

    @pages.get("/lesson/<name>/text")
    def text(name: str) -> str:
        opened = open_lesson(desk.shelf, name)
        return _shown(desk, opened, _slips(opened))

    @pages.post("/lesson/<name>/text")
    def save_text(name: str) -> ResponseReturnValue:
        opened = open_lesson(desk.shelf, name).require(request.form.get("digest", ""))
        saved = save(opened, _typed())
        slips = _slips(saved)
        # What still has slips is saved too, since it is hers; it is shown again with them.
        return _shown(desk, saved, slips) if slips else redirect(lesson_page(name, "fold"), 303)

    return pages


def _typed() -> str:
    """Read the text that was typed; a browser ends its lines as letters do (RFC 9110, 8.3.3).

    Raises:
        Unreadable: it is no lesson file that could be opened again.
    """
    text = request.form.get("text", "").replace("\r\n", "\n")
    if not text.strip():
        raise Unreadable(phrase("this file is empty"), phrase('title = "Seed trays"'))
    if len(text.encode()) > LARGEST_FILE:
        raise Unreadable(phrase("this text is too long"), phrase("a lesson file is a short text"))
    return text


def _slips(opened: OpenLesson) -> list[Problem]:
    try:
        prove(opened.read())
    except LessonRefused as refused:
        return list(refused.shown)
    except NothingFolded:
        pass
    return []


def _shown(desk: Desk, opened: OpenLesson, slips: list[Problem]) -> str:
    return show(desk, "text.html", opened=opened, place="text", slips=slips)
