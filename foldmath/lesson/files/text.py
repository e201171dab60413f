"""The text of a lesson file: takes a path, gives the text, or says why it is no text."""

import os
import shlex
from difflib import get_close_matches
from pathlib import Path

from foldmath.errors import LessonRefused, Problem
from foldmath.lesson.files.controls import printable
from foldmath.lesson.files.opening import Hindrance, Unread, file_bytes, files_in
from foldmath.phrases import Said, phrase

LARGEST_FILE = 256 * 1024
"""Bytes; a lesson of two hundred steps has about a tenth of this."""

TABLES = (".csv", ".tsv", ".ods", ".xlsx", ".xls")
PAGES = (".pdf", ".docx", ".doc", ".odt", ".html", ".htm", ".svg", ".png", ".jpg", ".jpeg")
PATTERNS = (".fold",)
"""How names of other files end: whoever gives one in a lesson's place is told what it is, and not of TOML."""


def lesson_text(path: Path, file: str) -> str:
    """Read a lesson file, its lines ended by a single newline character.

    Args:
        path: where it is.
        file: the path as the user gave it.

    Raises:
        LessonRefused: it is missing, no file, a table, a page, a pattern, too large, empty, or not UTF-8.
    """
    if os.path.isfile(path) and (other := _of_another_kind(path)):
        raise _refused(file, *other)
    text = _decoded(_bytes(path, file), file).replace("\r\n", "\n")
    if not text.strip():
        raise _refused(file, phrase("this file is empty"), phrase('title = "Seed trays"'))
    return text


def _of_another_kind(path: Path) -> tuple[Said, Said] | None:
    """Say what a file is by how its name ends, and what to give; None for what may be a lesson."""
    end = path.suffix.lower()
    if end in TABLES:
        message = phrase("this is a table, such as a class list, and no lesson")
        hint = phrase(
            "name a lesson file that ends in .toml; a list goes after --class, answers after --answers"
        )
        return message, hint
    if end in PAGES:
        message = phrase("this is a page or a picture, and no lesson")
        return message, phrase("name the lesson file that it was made from; it ends in .toml")
    if end in PATTERNS:
        return phrase("this is a crease pattern, and no lesson"), f"foldmath import {shlex.quote(str(path))}"
    return None


def _bytes(path: Path, file: str) -> bytes:
    try:
        return file_bytes(path, LARGEST_FILE)
    except Unread as unread:
        match unread.hindrance:
            case Hindrance.FOLDER:
                found = phrase("this is a folder, not a lesson file"), _a_lesson_in(path)
            case Hindrance.MISSING:
                found = unread.message, _nearest_file(path)
            case Hindrance.NO_FILE:
                found = unread.message, phrase("name a lesson file that ends in .toml")
            case Hindrance.TOO_LARGE:
                found = unread.message, phrase("a lesson file is a short text")
            case _:
                found = unread.message, unread.hint
        raise _refused(file, *found) from None


def _decoded(content: bytes, file: str) -> str:
    content = content.removeprefix(b"\xef\xbb\xbf")
    try:
        return content.decode("utf-8")
    except UnicodeDecodeError as error:
        start = content.rfind(b"\n", 0, error.start) + 1
        line = content.count(b"\n", 0, error.start) + 1
        before = content[start : error.start].decode("utf-8")
        byte = content[error.start]
        message = phrase(
            "this file is not UTF-8 text: byte {start} is 0x{byte}", start=error.start + 1, byte=f"{byte:02X}"
        )
        words = printable(before.strip()[-60:])
        hint = phrase("save the file as UTF-8 in your editor")
        raise LessonRefused(
            [Problem(file=file, line=line, column=len(before) + 1, message=message, words=words, hint=hint)]
        ) from None


def _nearest_file(path: Path) -> Said:
    """Name the lesson files whose names are nearest, in the same folder and in ``lessons``."""
    folders = dict.fromkeys([path.parent, path.parent / "lessons", Path("lessons")])
    found: dict[str, Path] = {}
    for folder in folders:
        for lesson in files_in(folder, ".toml"):
            found.setdefault(lesson.stem, lesson)
    # Without the ending, which makes every two names a little alike.
    near = (found[name] for name in get_close_matches(path.stem, found, cutoff=0.5))
    nearest = next(filter(_may_be_a_lesson, near), None)
    return str(nearest) if nearest else phrase("check the name of the file")


def _may_be_a_lesson(path: Path) -> bool:
    """Tell a file with steps from another program's settings."""
    try:
        return b"steps" in file_bytes(path, LARGEST_FILE)
    except Unread:
        return False


def _a_lesson_in(folder: Path) -> Said:
    lessons = (lesson for place in (folder / "lessons", folder) for lesson in files_in(place, ".toml"))
    found = next(filter(_may_be_a_lesson, lessons), None)
    return str(found) if found else phrase("name a lesson file in it")


def _refused(file: str, message: Said, hint: Said) -> LessonRefused:
    return LessonRefused([Problem(file=file, message=message, hint=hint)])
