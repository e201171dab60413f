"""Cards of the shelf: takes lesson files, gives what each card says of its lesson."""

from collections.abc import Mapping
from functools import lru_cache
from pathlib import Path

from markupsafe import Markup

from foldmath.desk.shelf.open_lesson import OpenLesson
from foldmath.drawing.rendering.svg import svg
from foldmath.drawing.sheets.crease_patterns import crease_pattern
from foldmath.errors import LessonRefused
from foldmath.lesson.files.built_in import built_in_lessons
from foldmath.lesson.files.text import lesson_text
from foldmath.lesson.proving import ProvedLesson, prove
from foldmath.lesson.reading import lesson_in
from foldmath.lesson.retold import retold
from foldmath.paper.state import open_sheet
from foldmath.values import frozen
from foldmath.words.languages import DEFAULT

PICTURE_MM = (60.0, 46.0)
"""A card's picture is at most so wide and so high."""

MOST_KEPT = 200
"""Cards of a folder that are kept by their text; more lessons are read anew each time."""


@frozen(kw_only=True)
class Card:
    """What is shown of one lesson before it is opened.

    Args:
        name: of the lesson on its shelf.
        title: its own; its name where it cannot be read.
        proved: the lesson; None where it has slips, or no step yet.
        picture: its opened sheet; empty where it has slips.
        begun: whether anything is folded yet.
    """

    name: str
    title: str
    proved: ProvedLesson | None
    picture: Markup
    begun: bool = True


def cards(lessons: Mapping[str, Path], language: str) -> list[Card]:
    """Give the cards of lessons, in their order, for who reads a language."""
    return [_card(name, path, language) for name, path in lessons.items()]


def _card(name: str, path: Path, language: str) -> Card:
    try:
        text = lesson_text(path, path.name)
        if path == built_in_lessons().get(name):
            # As it will be when it is taken.
            text = retold(text, language, DEFAULT)
        opened = OpenLesson(name, path, text)
        if not opened.begun:
            return _not_begun(opened, language)
        return _of_text(opened.name, opened.text, language)
    except LessonRefused:
        return Card(name=name, title=name, proved=None, picture=Markup())


@lru_cache(maxsize=MOST_KEPT)
def _of_text(name: str, text: str, language: str) -> Card:
    proved = prove(lesson_in(text, f"{name}.toml"))
    picture = svg(crease_pattern(proved.states[-1], *PICTURE_MM), language)
    return Card(name=name, title=proved.lesson.title, proved=proved, picture=picture)


def _not_begun(opened: OpenLesson, language: str) -> Card:
    lesson = opened.without_steps()
    picture = svg(crease_pattern(open_sheet(lesson.sheet), *PICTURE_MM), language)
    return Card(name=opened.name, title=lesson.title, proved=None, picture=picture, begun=False)
