"""One lesson as it lies on the disk: takes its name, gives its text; a change is saved at once or not at all.

What was changed outside, or in a second window, is noticed by its digest and never written over.
"""

from collections.abc import Mapping
from dataclasses import replace
from functools import lru_cache
from hashlib import sha256
from pathlib import Path
from typing import Any

from foldmath.desk.shelf.shelf import Shelf
from foldmath.errors import FoldmathError, LessonRefused
from foldmath.lesson.editing import with_list
from foldmath.lesson.files.text import lesson_text
from foldmath.lesson.files.toml_reading import toml_table
from foldmath.lesson.lesson import Lesson
from foldmath.lesson.reading import lesson_in
from foldmath.making.sets.writing import put_in_place
from foldmath.paper.steps import TurnOver
from foldmath.phrases import phrase
from foldmath.values import frozen
from foldmath.words.steps import step_sentence

TEXTS_KEPT = 8
"""Each act at the desk reads the text that the act before it wrote."""

_lesson_in = lru_cache(maxsize=TEXTS_KEPT)(lesson_in)


class ChangedOutside(FoldmathError):
    """The file is not what the page showed: an editor or a second window has changed it.

    Args:
        now: the lesson as it is.
    """

    def __init__(self, now: "OpenLesson") -> None:
        super().__init__(
            phrase("this lesson was changed in another window or program"),
            phrase("look at it as it is now, then do this again"),
        )
        self.now = now


class NothingFolded(FoldmathError):
    """A lesson has no step yet, so there is nothing to print, to project or to mark."""


@frozen
class OpenLesson:
    """A lesson file that was read.

    Args:
        name: of the lesson on its shelf.
        path: of its file.
        text: as it is in the file, with single newline characters.
    """

    name: str
    path: Path
    text: str

    @property
    def digest(self) -> str:
        """What tells this text from any other: SHA-256 in hexadecimal figures."""
        return sha256(self.text.encode()).hexdigest()

    @property
    def table(self) -> Mapping[str, Any]:
        """The keys of the file and what they hold, unchecked; empty where it is no TOML."""
        try:
            return toml_table(self.text, self.path.name)
        except LessonRefused:
            return {}

    @property
    def title(self) -> str:
        """What the lesson calls itself; its name where it says nothing that could be a title."""
        title = self.table.get("title")
        return title.strip() if isinstance(title, str) and title.strip() else self.name

    @property
    def begun(self) -> bool:
        """Whether the lesson has any step, or something else in their place."""
        return self.table.get("steps") != []

    def read(self) -> Lesson:
        """Read the lesson.

        Raises:
            LessonRefused: it has slips; nothing is folded.
            NothingFolded: it has no step yet.
        """
        if not self.begun:
            raise NothingFolded(
                phrase("nothing is folded in this lesson yet"), phrase("fold the sheet first")
            )
        # A booklet may take its pages from another file, which may be another one by now.
        read = lesson_in if "booklet" in self.table else _lesson_in
        return replace(read(self.text, str(self.path)), digest=self.digest)

    def without_steps(self) -> Lesson:
        """Read all of the lesson but its steps, which may have slips, or not be there yet.

        Raises:
            LessonRefused: it has slips elsewhere.
        """
        # One harmless step in place of its own: a lesson on paper has at least one.
        text = with_list(self.text, ("steps",), [step_sentence(TurnOver())])
        return lesson_in(text, self.path.name)

    def require(self, digest: str) -> "OpenLesson":
        """Make sure that a page showed this very text.

        Raises:
            ChangedOutside: it showed another.
        """
        if digest != self.digest:
            raise ChangedOutside(self)
        return self


def open_lesson(shelf: Shelf, name: str) -> OpenLesson:
    """Read the text of a lesson.

    Raises:
        NoSuchLesson: there is none of this name.
        LessonRefused: it is no text, empty or too large.
    """
    path = shelf.path(name)
    return OpenLesson(name, path, lesson_text(path, path.name))


def save(opened: OpenLesson, text: str) -> OpenLesson:
    """Write a text in the place of the one that was opened.

    Raises:
        ChangedOutside: the file is no longer as it was opened; it is left as it is.
        CannotWrite: it cannot be written; it is left as it was.
    """

    def require_unchanged() -> None:
        now = replace(opened, text=lesson_text(opened.path, opened.path.name))
        now.require(opened.digest)

    if text != opened.text:
        put_in_place({opened.path: text.encode()}, require_unchanged)
    return replace(opened, text=text)
