"""Folding by pointing, as a page."""

from flask import Blueprint

from foldmath.desk.shelf.open_lesson import open_lesson
from foldmath.desk.visits.desk import Desk
from foldmath.desk.visits.showing import show


def folding(desk: Desk) -> Blueprint:
    """Give the pages on which a lesson is folded."""
    pages = Blueprint("folding", __name__)

    @pages.get("/lesson/<name>/fold")
    def fold(name: str) -> str:
        opened = open_lesson(desk.shelf, name)
        return show(desk, "fold.html", opened=opened, place="fold")

    return pages
