"""A new lesson: from an empty sheet, from a wish, or from another lesson."""

from collections.abc import Callable, Sequence

from flask import Blueprint, abort, redirect, request
from flask.typing import ResponseReturnValue

from foldmath.desk.choosing.cards import cards
from foldmath.desk.choosing.wishes import Answers, answers
from foldmath.desk.shelf.open_lesson import open_lesson
from foldmath.desk.visits.desk import Desk
from foldmath.desk.visits.refusals import Refusal, refusals_of, status_of
from foldmath.desk.visits.showing import desk_language, lesson_page, show
from foldmath.errors import FoldmathError, Unreadable
from foldmath.lesson.beginning import USUAL_GRADE, USUAL_ORIENTATION, USUAL_PAPER, empty_sheet, like_another
from foldmath.lesson.files.built_in import built_in_lessons
from foldmath.lesson.files.text import lesson_text
from foldmath.lesson.retold import retold
from foldmath.paper.sizes import ORIENTATIONS, paper_named, papers_to_choose_from
from foldmath.phrases import phrase
from foldmath.planning.plan_lesson import GRADES, LONGEST_TITLE
from foldmath.words.languages import DEFAULT

NOTHING_YET = {
    "title": "",
    "wish": "",
    "like": "",
    "grade": f"{USUAL_GRADE}",
    "paper": USUAL_PAPER,
    "orientation": USUAL_ORIENTATION,
}
"""What stands in the fields of a new lesson before anything is typed."""


def beginning(desk: Desk) -> Blueprint:
    """Give the pages on which a lesson is begun."""
    pages = Blueprint("beginning", __name__)

    def kept(form: Callable[[Desk], ResponseReturnValue], wrong: str) -> ResponseReturnValue:
        """Show what a form gives; where that is refused, the form again, at the field that may be wrong."""
        try:
            return form(desk)
        except FoldmathError as error:
            return _new(desk, refusals_of(error), wrong), status_of(error)

    @pages.get("/new")
    def new() -> ResponseReturnValue:
        return kept(_new, "wish")

    @pages.post("/new/empty")
    def empty() -> ResponseReturnValue:
        return kept(_empty, "title")

    @pages.post("/new/wish")
    def from_wish() -> ResponseReturnValue:
        return kept(_from_wish, "wish")

    @pages.post("/new/like")
    def like() -> ResponseReturnValue:
        return kept(_like, "title")

    return pages


def _empty(desk: Desk) -> ResponseReturnValue:
    title = _title()
    paper, language = paper_named(_asked("paper")).name, desk_language(desk)
    text = empty_sheet(title, _grade(), paper, _orientation(), language=language)
    return redirect(lesson_page(desk.shelf.lay(title, text), "fold"), 303)


def _from_wish(desk: Desk) -> ResponseReturnValue:
    try:
        text = _answers().lesson(request.form.get("number", 0, int), desk_language(desk))
    except IndexError:
        abort(404)
    title = request.values.get("title", "").strip()
    text = like_another(title[:LONGEST_TITLE], text) if title else text
    return redirect(lesson_page(desk.shelf.lay(title or _asked("wish"), text), "fold"), 303)


def _like(desk: Desk) -> ResponseReturnValue:
    title = _title()
    text = like_another(title, _other(desk))
    return redirect(lesson_page(desk.shelf.lay(title, text), "fold"), 303)


def _new(desk: Desk, slips: Sequence[Refusal] = (), wrong: str = "") -> str:
    """Show the ways to begin, and the answers to a wish if one was made, or what is wrong with it."""
    found = _answers() if _asked("wish") and not slips else None
    return show(
        desk,
        "new.html",
        asked={**NOTHING_YET, **request.values},
        slips=slips,
        wrong=wrong,
        answers=found.shown(desk_language(desk)) if found else (),
        others=cards({**built_in_lessons(), **desk.shelf.lessons()}, desk_language(desk)),
        grades=GRADES,
        papers=[paper.name for paper in papers_to_choose_from()],
    )


def _other(desk: Desk) -> str:
    """Give the text of the lesson that the new one is to be like: hers before a built-in one of its name."""
    name = _asked("like")
    built_in = built_in_lessons().get(name)
    if name in desk.shelf.lessons() or built_in is None:
        return open_lesson(desk.shelf, name).text
    return retold(lesson_text(built_in, built_in.name), desk_language(desk), DEFAULT)


def _answers() -> Answers:
    return answers(_asked("wish"), _grade(), _asked("paper"), _orientation())


def _asked(name: str) -> str:
    return request.values.get(name, "").strip()


def _title() -> str:
    title = _asked("title")
    if not title:
        raise Unreadable(phrase("a lesson needs a title"), phrase("a few words, such as Seed trays"))
    return title[:LONGEST_TITLE]


def _grade() -> int:
    grade = request.values.get("grade", USUAL_GRADE, int)
    if grade not in GRADES:
        raise Unreadable(phrase("lessons are for grades {first} to {last}", first=GRADES[0], last=GRADES[-1]))
    return grade


def _orientation() -> str:
    orientation = _asked("orientation")
    return orientation if orientation in ORIENTATIONS else USUAL_ORIENTATION
