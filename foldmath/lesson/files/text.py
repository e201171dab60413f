"""The text of a lesson file: takes a path, gives the text, or says why it is no text."""

from difflib import get_close_matches
from pathlib import Path

from foldmath.errors import LessonRefused, Problem
from foldmath.lesson.files.controls import printable
from foldmath.lesson.files.opening import Hindrance, Unread, file_bytes, files_in
from foldmath.phrases import Said, phrase

LARGEST_FILE = 256 * 1024
"""Bytes; a lesson of two hundred steps has about a tenth of this."""

TABLES = (".csv", ".tsv", ".ods", ".xlsx", ".xls")
"""How names of class lists and answers end: whoever gives one in a lesson's place is not told of TOML."""


def lesson_text(path: Path, file: str) -> str:
    """Read a lesson file, its lines ended by a single newline character.

    Args:
        path: where it is.
        file: the path as the user gave it.

    Raises:
        LessonRefused: it is missing, no file, too large, a table, empty, or not UTF-8.
    """
    content = _bytes(path, file)
    if path.suffix.lower() in TABLES:
        message = phrase("this is a table, such as a class list, and no lesson")
        raise _refused(file, message, phrase("name a lesson file that ends in .toml"))
    text = _decoded(content, file).replace("\r\n", "\n")
    if not text.strip():
        raise _refused(file, phrase("this file is empty"), phrase('title = "Seed trays"'))
    return text


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
            found.setdefault(lesson.name, lesson)
    wanted = path.name if path.suffix else f"{path.name}.toml"
    near = (found[name] for name in get_close_matches(wanted, found, cutoff=0.5))
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
