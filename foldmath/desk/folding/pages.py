"""Folding by pointing, as a page, and what its scripts ask."""

from functools import partial
from importlib.resources import files
from typing import Any

from flask import Blueprint, Response, jsonify, redirect, request
from flask.typing import ResponseReturnValue
from markupsafe import Markup

from foldmath.desk.folding.acts import NotDone, steps_after
from foldmath.desk.folding.details import step_details
from foldmath.desk.folding.hands import offers, sayable
from foldmath.desk.folding.history import History, history_of, keep_history
from foldmath.desk.folding.paper_now import PaperNow, paper_now
from foldmath.desk.folding.pictures import Lying, gathering, lying, lying_view, moving, opened_sheet
from foldmath.desk.folding.shown import shown
from foldmath.desk.shelf.open_lesson import OpenLesson, open_lesson, save
from foldmath.desk.visits.desk import Desk
from foldmath.desk.visits.showing import desk_language, lesson_page, show
from foldmath.errors import LessonRefused
from foldmath.lesson.editing import list_as_written, with_list, with_list_as_written
from foldmath.pages.templating import render
from foldmath.pointing.acts import choices, cuts
from foldmath.slides.motion import marks, paths
from foldmath.words.steps import step_sentence

DRAWN = {
    "points": paths.points,
    "path": paths.path,
    "stroke_path": paths.stroke_path,
    "loops": paths.loops,
    "peeping": marks.peeping,
    "peep_mm": marks.PEEP_MM,
    "star_points": marks.star_points,
    "mm": paths.mm,
    "corners_of_moments": marks.corners_of_moments,
}
"""What the templates of pictures write numbers with."""

STEPS = ("steps",)
"""The key of a lesson file that holds them."""

MOTION = ("motion.js", "gathering.js")
"""The scripts of the slides that know of paper only."""


def folding(desk: Desk) -> Blueprint:
    """Give the pages on which a lesson is folded."""
    pages = Blueprint("folding", __name__)

    @pages.get("/lesson/<name>/fold")
    def fold(name: str) -> ResponseReturnValue:
        opened = open_lesson(desk.shelf, name)
        try:
            now = paper_now(opened)
        except LessonRefused:
            return redirect(lesson_page(name, "text"), 303)
        history = _history(opened, now)
        parts = _parts(desk, now, history, lying(now))
        return show(desk, "fold.html", opened=opened, place="fold", **parts)

    @pages.get("/fold/motion.js")
    def motion() -> Response:
        scripts = files("foldmath.slides").joinpath("scripts")
        joined = "\n".join(scripts.joinpath(name).read_text(encoding="utf-8") for name in MOTION)
        return Response(joined, mimetype="text/javascript")

    @pages.get("/fold/lines.css")
    def lines() -> Response:
        return Response(marks.line_styles(marks.LINES | marks.TO_COME), mimetype="text/css")

    _answer_scripts(pages, desk)
    return pages


def _answer_scripts(pages: Blueprint, desk: Desk) -> None:
    """Have the page's scripts answered: what they show anew, what can be done, one act after the other."""

    @pages.get("/lesson/<name>/fold/paper")
    def paper(name: str) -> ResponseReturnValue:
        opened = open_lesson(desk.shelf, name)
        now = paper_now(opened)
        return jsonify(_redrawn(desk, opened, now, _history(opened, now), lying(now)))

    @pages.get("/lesson/<name>/fold/hands")
    def hands(name: str) -> ResponseReturnValue:
        return jsonify(_hands(desk, open_lesson(desk.shelf, name)))

    @pages.get("/lesson/<name>/fold/step/<int:number>")
    def step(name: str, number: int) -> ResponseReturnValue:
        now = paper_now(open_lesson(desk.shelf, name))
        told = step_details(now, number)
        return jsonify(told=_part(desk, "fold_details.html", told=told, unit=now.lesson.sheet.unit))

    @pages.get("/lesson/<name>/fold/cuts")
    def all_cuts(name: str) -> ResponseReturnValue:
        now = paper_now(open_lesson(desk.shelf, name))
        return jsonify(cuts=[step_sentence(cut, now.lesson.language) for cut in cuts(now.state)])

    @pages.get("/lesson/<name>/fold/digest")
    def digest(name: str) -> ResponseReturnValue:
        return jsonify(digest=open_lesson(desk.shelf, name).digest)

    @pages.post("/lesson/<name>/fold/act")
    def act(name: str) -> ResponseReturnValue:
        try:
            return jsonify(_acted(desk, open_lesson(desk.shelf, name), _wish()))
        except NotDone as refusal:
            told = _part(desk, "fold_refused.html", refusal=refusal)
            return jsonify(refused=[{"message": told, "hint": ""}], told=told), 422


def _wish() -> dict[str, Any]:
    """Give what a page asks for; nothing where it asks for nothing that can be read."""
    try:
        asked = request.get_json()
    except RecursionError:
        return {}
    return asked if isinstance(asked, dict) else {}


def _acted(desk: Desk, opened: OpenLesson, wish: dict[str, Any]) -> dict[str, Any]:
    """Do an act, save the lesson at once, and tell how the paper lies after it.

    Raises:
        ChangedOutside: the page that asks shows another text than the file has.
        NotDone: as ``steps_after`` does.
    """
    opened.require(str(wish.get("digest")))
    now = paper_now(opened)
    history = _history(opened, now)
    steps = steps_after(wish, now, history)
    saved = save(opened, _text_after(wish, opened, history, steps))
    after = _history_after(wish, history, steps, saved)
    keep_history(opened.path, after)
    now = paper_now(saved)
    # Only what a hand did just now moves; what is undone or changed in the list lies at once.
    lies = lying(now)
    moves = _moves(desk, now, lies) if wish["do"] == "add" else ""
    return _redrawn(desk, saved, now, after, lies) | {"moving": moves}


def _moves(desk: Desk, now: PaperNow, lies: Lying) -> str:
    """Draw how the last step moved the paper; nothing if it lay still."""
    gathered = gathering(now)
    if gathered:
        return _part(desk, "fold_gathering.html", gathered=gathered)
    moved = moving(now, lies)
    return _part(desk, "fold_moving.html", moved=moved) if moved else ""


def _text_after(wish: dict[str, Any], opened: OpenLesson, history: History, steps: list[str]) -> str:
    """Write the steps into the text; what is undone comes back with its comments, as it was written."""
    back = {"undo": history.before, "redo": history.after}.get(wish["do"])
    if back and back.written:
        return with_list_as_written(opened.text, STEPS, back.written)
    return with_list(opened.text, STEPS, steps)


def _history(opened: OpenLesson, now: PaperNow) -> History:
    return history_of(opened.path, now.texts, list_as_written(opened.text, STEPS))


def _history_after(wish: dict[str, Any], history: History, steps: list[str], saved: OpenLesson) -> History:
    if wish["do"] == "undo":
        return history.undone()
    if wish["do"] == "redo":
        return history.redone()
    return history.with_act(steps, list_as_written(saved.text, STEPS))


def _part(desk: Desk, template: str, **values: Any) -> Markup:
    """Fill the template of a part of the page."""
    return Markup(render(f"desk/{template}", desk_language(desk), **values, **DRAWN))


def _parts(desk: Desk, now: PaperNow, history: History, lies: Lying) -> dict[str, Any]:
    """Give the parts of the page that an act may change."""
    seen = shown(now)
    return {
        "lying": _part(desk, "fold_lying.html", lying=lies, shown=seen),
        "steps": _part(desk, "fold_steps.html", now=now),
        "shown": _part(desk, "fold_shown.html", sheet=opened_sheet(now), shown=seen),
        "spoken": _part(desk, "fold_spoken.html", now=now, shown=seen).unescape(),
        "undo": history.before is not None,
        "redo": history.after is not None,
    }


def _redrawn(desk: Desk, opened: OpenLesson, now: PaperNow, history: History, lies: Lying) -> dict[str, Any]:
    """Give the page anew."""
    return {"digest": opened.digest, **_parts(desk, now, history, lies)}


def _hands(desk: Desk, opened: OpenLesson) -> dict[str, Any]:
    """Give what can be done with the paper as it lies."""
    now = paper_now(opened)
    acts, language = choices(now.state), now.lesson.language
    offered = offers(now, lying_view(now), desk_language(desk))
    return {
        "digest": opened.digest,
        **offered,
        "acts": _part(desk, "fold_acts.html", acts=acts, said_so=partial(step_sentence, language=language)),
        "sayable": sayable(now, offered, acts, language),
    }
