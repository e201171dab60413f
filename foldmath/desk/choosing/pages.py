"""The shelf of lessons as a page, and the door to each of them."""

from flask import Blueprint, jsonify, redirect, request
from flask.typing import ResponseReturnValue

from foldmath.desk.choosing.cards import cards
from foldmath.desk.shelf.open_lesson import open_lesson
from foldmath.desk.visits.desk import Desk
from foldmath.desk.visits.showing import LANGUAGE_COOKIE, desk_language, lesson_page, page_before, show
from foldmath.lesson.files.built_in import built_in_lessons
from foldmath.words.languages import languages

A_YEAR_SECONDS = 365 * 24 * 60 * 60


def choosing(desk: Desk) -> Blueprint:
    """Give the pages on which a lesson is chosen."""
    pages = Blueprint("choosing", __name__)

    @pages.get("/")
    def shelf() -> str:
        own, language = desk.shelf.lessons(), desk_language(desk)
        others = {name: path for name, path in built_in_lessons().items() if name not in own}
        return show(desk, "shelf.html", own=cards(own, language), built_in=cards(others, language))

    @pages.post("/take/<name>")
    def take(name: str) -> ResponseReturnValue:
        return redirect(lesson_page(desk.shelf.take(name, desk_language(desk)), "fold"), 303)

    @pages.get("/lesson/<name>/")
    def opened(name: str) -> ResponseReturnValue:
        return redirect(lesson_page(open_lesson(desk.shelf, name).name, "fold"), 303)

    @pages.get("/lesson/<name>/digest")
    def digest(name: str) -> ResponseReturnValue:
        return jsonify(digest=open_lesson(desk.shelf, name).digest)

    @pages.post("/language")
    def language() -> ResponseReturnValue:
        chosen = request.form.get("language")
        answer = redirect(page_before() or "/", 303)
        if chosen in languages():
            answer.set_cookie(
                LANGUAGE_COOKIE, chosen, max_age=A_YEAR_SECONDS, httponly=True, samesite="Strict"
            )
        return answer

    return pages
