"""The slides of a lesson, in a window of their own."""

from flask import Blueprint, Response
from flask.typing import ResponseReturnValue

from foldmath.desk.shelf.open_lesson import OpenLesson, open_lesson
from foldmath.desk.visits.desk import Desk
from foldmath.desk.visits.guards import OWN_POLICY
from foldmath.desk.visits.showing import show
from foldmath.lesson.proving import prove
from foldmath.making.languages import said_in
from foldmath.making.parts import core_worksheet
from foldmath.pages.printable import refuse_unprintable
from foldmath.phrases import phrase
from foldmath.slides.page import slides_html
from foldmath.slides.slides import slide_show
from foldmath.words.saying import say


def projecting(desk: Desk) -> Blueprint:
    """Give the pages from which a lesson is projected."""
    pages = Blueprint("projecting", __name__)

    @pages.get("/lesson/<name>/project")
    def project(name: str) -> str:
        opened = open_lesson(desk.shelf, name)
        proved = prove(opened.read())
        # The button of the slides, in their own language.
        notes_word = say(phrase("Notes"), proved.lesson.language)
        known = {"opened": opened, "place": "project", "proved": proved, "notes_word": notes_word}
        return show(desk, "project.html", **known)

    @pages.get("/lesson/<name>/slides")
    def slides(name: str) -> ResponseReturnValue:
        answer = Response(_slides(open_lesson(desk.shelf, name)), mimetype="text/html")
        answer.headers["Content-Security-Policy"] = OWN_POLICY
        return answer

    return pages


def _slides(opened: OpenLesson) -> str:
    proved = said_in(prove(opened.read()), None)
    refuse_unprintable(proved.lesson)
    return slides_html(slide_show(proved, core_worksheet(proved)))
