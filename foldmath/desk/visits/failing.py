"""What goes wrong: takes an error, gives the page or the JSON that says it, with its status."""

from http import HTTPStatus

from flask import Flask, jsonify, request
from flask.typing import ResponseReturnValue
from werkzeug.exceptions import HTTPException

from foldmath.desk.shelf.open_lesson import ChangedOutside, NothingFolded
from foldmath.desk.shelf.shelf import NoSuchLesson
from foldmath.desk.visits.desk import Desk
from foldmath.desk.visits.showing import desk_language, lesson_page, show
from foldmath.errors import FileRefused, FoldmathError, LessonRefused, Problem, SurroundingsFailed
from foldmath.lesson.editing import CannotEdit
from foldmath.phrases import Said, phrase
from foldmath.words.saying import say


def tell_failures(app: Flask, desk: Desk) -> None:
    """Have every error shown in one place, to a page as a page and to a script as JSON."""

    @app.errorhandler(FoldmathError)
    def refused(error: FoldmathError) -> ResponseReturnValue:
        return _told(desk, _slips(error), _status(error), **_ways_on(error))

    @app.errorhandler(OSError)
    def failed(error: OSError) -> ResponseReturnValue:
        return _told(desk, _slips(SurroundingsFailed.by(error)), HTTPStatus.INTERNAL_SERVER_ERROR)

    @app.errorhandler(HTTPException)
    def http(error: HTTPException) -> ResponseReturnValue:
        status = HTTPStatus(error.code or HTTPStatus.INTERNAL_SERVER_ERROR)
        if status == HTTPStatus.FORBIDDEN:
            # Whoever is not let in learns no more than this, and nothing of the desk's own is rendered.
            return _not_let_in(desk)
        return _told(desk, [(_why(status), phrase("go back to your lessons"))], status)


def _not_let_in(desk: Desk) -> ResponseReturnValue:
    said = say(
        phrase("This page is shut. Open the desk again with the address that it gave."), desk_language(desk)
    )
    return said, HTTPStatus.FORBIDDEN, {"Content-Type": "text/plain; charset=utf-8"}


def _status(error: FoldmathError) -> HTTPStatus:
    if isinstance(error, NoSuchLesson):
        return HTTPStatus.NOT_FOUND
    if isinstance(error, ChangedOutside):
        return HTTPStatus.CONFLICT
    return HTTPStatus.UNPROCESSABLE_ENTITY


def _ways_on(error: FoldmathError) -> dict[str, str]:
    """Give where the lesson that is open can be put right; a change that is refused leaves it as it was."""
    name = (request.view_args or {}).get("name", "")
    if not name or request.method != "GET":
        return {}
    if isinstance(error, LessonRefused | CannotEdit):
        return {"mend": lesson_page(name, "text")}
    return {"fold": lesson_page(name, "fold")} if isinstance(error, NothingFolded) else {}


def _why(status: HTTPStatus) -> Said:
    if status == HTTPStatus.REQUEST_ENTITY_TOO_LARGE:
        return phrase("this is too large: at most 1 MB can be sent at once")
    if status == HTTPStatus.NOT_FOUND:
        return phrase("there is no such page")
    return phrase("the desk cannot do this ({number})", number=status.value)


def _slips(error: FoldmathError) -> list[tuple[Said, Said]]:
    if isinstance(error, FileRefused):
        return [(_heading(problem), problem.hint) for problem in error.shown]
    return [(error.heading, error.hint)]


def _heading(problem: Problem) -> Said:
    """Say where in the one lesson or list that is open, without the file that she never named."""
    if problem.cell or not problem.line:
        return problem.message
    return phrase("line {line}: {message}", line=problem.line, message=problem.message)


def _told(
    desk: Desk, slips: list[tuple[Said, Said]], status: HTTPStatus, mend: str = "", fold: str = ""
) -> ResponseReturnValue:
    if request.accept_mimetypes.best == "application/json":
        language = desk_language(desk)
        told = [{"message": say(what, language), "hint": say(hint, language)} for what, hint in slips]
        return jsonify(refused=told), status
    return show(desk, "refused.html", slips=slips, mend=mend, fold=fold), status
