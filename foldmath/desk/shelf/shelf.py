"""The shelf: takes a folder, gives the lessons in it by name, and lays new ones there.

A name that comes from the browser is looked up among the names that the folder has, and never becomes part
of a path; so no name, however spelt, leads out of the folder.
"""

import os
import stat
from collections.abc import Mapping
from pathlib import Path

from foldmath.errors import CannotWrite, FoldmathError
from foldmath.lesson.files.built_in import built_in_lessons
from foldmath.lesson.files.opening import files_in
from foldmath.lesson.retold import retold
from foldmath.phrases import phrase
from foldmath.values import frozen
from foldmath.words.languages import DEFAULT

MOST_NAMES = 999
"""Lessons of one title are numbered up to here."""

LONGEST_NAME = 60
"""Characters of a file's name, well below what any system takes."""


class NoSuchLesson(FoldmathError):
    """No lesson of this name is in the folder."""


@frozen
class Shelf:
    """The folder that a teacher keeps her lessons in.

    Args:
        folder: without links in its path.
    """

    folder: Path

    def lessons(self) -> Mapping[str, Path]:
        """Give the teacher's own lesson files by name: real files of this very folder."""
        found = files_in(self.folder, ".toml")
        return {path.stem: path for path in sorted(found) if _is_here(path, self.folder)}

    def path(self, name: str) -> Path:
        """Find the file of a lesson.

        Raises:
            NoSuchLesson: there is none of this name.
        """
        return _of_name(name, self.lessons())

    def take(self, name: str, language: str) -> str:
        """Lay a copy of a built-in lesson into the folder, if none of its name is there; give its name.

        It takes the words that it has in the language of the desk.

        Raises:
            NoSuchLesson: there is no built-in lesson of this name.
            CannotWrite: the folder cannot be written.
        """
        path = _of_name(name, built_in_lessons())
        text = retold(path.read_text("utf-8"), language, DEFAULT)
        # Written before it is looked for: two presses of the button may come at once.
        if self._is_laid(path.stem, text) or path.stem in self.lessons():
            return path.stem
        return self.lay(path.stem, text)

    def lay(self, title: str, text: str) -> str:
        """Write a new lesson under a name made of its title; give that name.

        Raises:
            CannotWrite: the folder cannot be written.
        """
        stem = file_name(title)
        for number in range(1, MOST_NAMES + 1):
            name = stem if number == 1 else f"{stem}-{number}"
            if self._is_laid(name, text):
                return name
        raise CannotWrite(phrase("there are too many lessons of this name"), phrase("another name"))

    def _is_laid(self, name: str, text: str) -> bool:
        """Write a new lesson, and tell whether its name was free."""
        try:
            _write_new(self.folder / f"{name}.toml", text)
        except FileExistsError:
            return False
        except OSError as error:
            raise CannotWrite.by(f"{name}.toml", error) from error
        return True


def file_name(title: str) -> str:
    """Make the name of a file of a title: letters and figures in small, all else a hyphen."""
    plain = "".join(sign if sign.isalnum() else " " for sign in title.casefold())
    return "-".join(plain.split())[:LONGEST_NAME].strip("-") or "lesson"


def _of_name(name: str, lessons: Mapping[str, Path]) -> Path:
    path = lessons.get(name)
    if path is None:
        raise NoSuchLesson(
            phrase("there is no lesson of this name here"), phrase("choose one from your lessons")
        )
    return path


def _is_here(path: Path, folder: Path) -> bool:
    """Tell whether a path is a file and no link out of the folder, no pipe and no device."""
    try:
        return stat.S_ISREG(path.stat().st_mode) and path.resolve().parent == folder
    except OSError:
        return False


def _write_new(path: Path, text: str) -> None:
    descriptor = os.open(path, os.O_WRONLY | os.O_CREAT | os.O_EXCL | getattr(os, "O_BINARY", 0), 0o666)
    try:
        with os.fdopen(descriptor, "wb") as stream:
            stream.write(text.encode())
    except BaseException:
        # A part of a lesson would lie there as one with slips.
        path.unlink(missing_ok=True)
        raise
