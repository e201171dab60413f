"""What goes wrong: takes an error, gives the page or the JSON that says it, with its status."""

from collections.abc import Sequence
from concurrent.futures.process import BrokenProcessPool
from http import HTTPStatus

from flask import Flask, jsonify, request
from flask.typing import ResponseReturnValue
from werkzeug.exceptions import HTTPException

from foldmath.desk.shelf.open_lesson import NothingFolded
from foldmath.desk.shelf.shelf import NoSuchLesson
from foldmath.desk.visits.desk import Desk
from foldmath.desk.visits.refusals import Refusal, refusals_of, status_of
from foldmath.desk.visits.showing import desk_language, lesson_page, page_before, show
from foldmath.errors import FoldmathError, LessonRefused, SurroundingsFailed
from foldmath.lesson.editing import CannotEdit
from foldmath.phrases import Said, phrase
from foldmath.words.saying import say
from foldmath.workers import ended_from_outside

IN_HER_WORDS = ("title", "wish", "text", "product", "sum", "unit", "words", "names", "notes", "pupils")
"""Fields that hold more than a choice, by the names that forms give them."""

NO_WAY_ON = {"mend": "", "fold": "", "back": ""}
"""What a page of refusal may lead to besides the shelf."""


def tell_failures(app: Flask, desk: Desk) -> None:
    """Have every error shown in one place, to a page as a page and to a script as JSON."""

    @app.errorhandler(FoldmathError)
    def refused(error: FoldmathError) -> ResponseReturnValue:
        return _told(desk, refusals_of(error), status_of(error), typed=_typed(), **_ways_on(error))

    @app.errorhandler(OSError)
    @app.errorhandler(BrokenProcessPool)
    def failed(error: OSError | BrokenProcessPool) -> ResponseReturnValue:
        why = SurroundingsFailed.by(error) if isinstance(error, OSError) else ended_from_outside()
        slips = refusals_of(why)
        return _told(desk, slips, HTTPStatus.INTERNAL_SERVER_ERROR, typed=_typed(), back=page_before())

    @app.errorhandler(HTTPException)
    def http(error: HTTPException) -> ResponseReturnValue:
        status = HTTPStatus(error.code or HTTPStatus.INTERNAL_SERVER_ERROR)
        if status == HTTPStatus.FORBIDDEN:
            # Whoever is not let in learns no more than this, and nothing of the desk's own is rendered.
            return _not_let_in(desk)
        return _told(
            desk, [Refusal(_why(status), phrase("go back to your lessons"))], status, back=page_before()
        )


def _not_let_in(desk: Desk) -> ResponseReturnValue:
    said = say(
        phrase("This page is shut. Open the desk again with the address that it gave."), desk_language(desk)
    )
    return said, HTTPStatus.FORBIDDEN, {"Content-Type": "text/plain; charset=utf-8"}


def _ways_on(error: FoldmathError) -> dict[str, str]:
    """Give where to go on: to what can be put right in the lesson that is open, else to the page before.

    A change that is refused leaves the lesson as it was, and asks nobody to mend it.
    """
    name = (request.view_args or {}).get("name", "")
    if name and request.method == "GET":
        if isinstance(error, LessonRefused | CannotEdit):
            return {"mend": lesson_page(name, "text")}
        if isinstance(error, NothingFolded):
            return {"fold": lesson_page(name, "fold")}
    return {} if isinstance(error, NoSuchLesson) else {"back": page_before()}


def _why(status: HTTPStatus) -> Said:
    if status == HTTPStatus.REQUEST_ENTITY_TOO_LARGE:
        return phrase("this is too large: at most 1 MB can be sent at once")
    if status == HTTPStatus.NOT_FOUND:
        return phrase("there is no such page")
    return phrase("the desk cannot do this ({number})", number=status.value)


def _told(
    desk: Desk, slips: list[Refusal], status: HTTPStatus, *, typed: Sequence[str] = (), **ways_on: str
) -> ResponseReturnValue:
    if request.accept_mimetypes.best == "application/json":
        language = desk_language(desk)
        told = [{"message": say(slip.message, language), "hint": say(slip.hint, language)} for slip in slips]
        return jsonify(refused=told), status
    return show(desk, "refused.html", slips=slips, typed=typed, **{**NO_WAY_ON, **ways_on}), status


def _typed() -> list[str]:
    """Give what was typed in words of her own, so that it is not lost where no form holds it any more."""
    return [words for name in IN_HER_WORDS if (words := request.form.get(name, "").strip())]
