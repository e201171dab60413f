"""Showing a page: takes a template and its values, gives the page in the teacher's language."""

from typing import Any
from urllib.parse import quote, urlsplit

from flask import current_app, request
from werkzeug.exceptions import HTTPException

from foldmath.desk.visits.desk import Desk
from foldmath.desk.visits.fields import LONGEST
from foldmath.pages.templating import render
from foldmath.words.languages import languages, spoken

LANGUAGE_COOKIE = "foldmath-language"

PLACES = ("fold", "practice", "print", "project", "mark")
"""In the order of the job."""


def desk_language(desk: Desk) -> str:
    """Give the language of the desk's words: the chosen one, the browser's, or that of the terminal."""
    chosen = request.cookies.get(LANGUAGE_COOKIE)
    if chosen in languages():
        return chosen
    asked = (spoken(name) for name in request.accept_languages.values())
    return next(filter(None, asked), desk.language)


def lesson_page(name: str, place: str) -> str:
    """Give the address of a page of a lesson."""
    return f"/lesson/{quote(name, safe='')}/{place}"


def page_before() -> str:
    """Give the address of the page that asked for this one, if the desk shows it again; else nothing."""
    origin = f"http://{request.host}"
    before = request.referrer or ""
    itself = request.method == "GET" and before == request.url
    if itself or not before.startswith(f"{origin}/"):
        return ""
    # One stroke at its beginning: two would lead to another site.
    address = "/" + before.removeprefix(origin).lstrip("/")
    return address if _is_shown(address) else ""


def _is_shown(address: str) -> bool:
    """Tell whether an address can be looked at, and is not only sent to by a form."""
    desk = current_app.create_url_adapter(request)
    try:
        return desk is not None and bool(desk.match(urlsplit(address).path, method="GET"))
    except HTTPException:
        return False


def show(desk: Desk, template: str, **values: Any) -> str:
    """Fill a template of the desk."""
    language = desk_language(desk)
    return render(
        f"desk/{template}",
        language,
        desk=desk,
        language=language,
        languages=languages(),
        longest=LONGEST,
        places=PLACES,
        path=request.full_path,
        **values,
    )
