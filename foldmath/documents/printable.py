"""Words that pages cannot print: takes a lesson, and refuses it where the fonts have no right letters."""

from collections.abc import Iterator
from pathlib import Path

from foldmath.documents.print.glyphs import prints_right
from foldmath.errors import LessonRefused, Problem
from foldmath.lesson import places
from foldmath.lesson.lesson import Lesson
from foldmath.lesson.text import lesson_text

HINT = "write it in Latin, Greek or Cyrillic letters; pages have no others"


def refuse_unprintable(lesson: Lesson) -> None:
    """Check that every word of a lesson prints right.

    Raises:
        LessonRefused: some do not; says where each stands.
    """
    wrong = [(path, words) for path, words in _words(lesson) if not prints_right(words)]
    if wrong:
        found = places.find_places(lesson_text(Path(lesson.file), lesson.file))
        raise LessonRefused([_problem(lesson.file, found, path, words) for path, words in wrong])


def _words(lesson: Lesson) -> Iterator[tuple[places.Path, str]]:
    yield ("title",), lesson.title
    yield from ((("vocabulary", number), word) for number, word in enumerate(lesson.vocabulary))
    yield from ((("notes", number), note) for number, note in enumerate(lesson.notes))
    yield from ((("words", word), f"{word} {home}") for word, home in lesson.words.items())


def _problem(file: str, found: places.Places, path: places.Path, words: str) -> Problem:
    place = found.nearest(path)
    line, column = (place.line, place.column) if place else (0, 0)
    return Problem(file, line, column, "the pages cannot print these words", words, HINT)
