"""The text of a lesson file: takes a path, gives the text, or says why it is no text."""

import re
from difflib import get_close_matches
from pathlib import Path

from foldmath.errors import LessonRefused, Problem

LARGEST_FILE = 256 * 1024
"""Bytes; a lesson of two hundred steps has about a tenth of this."""


def lesson_text(path: Path, file: str) -> str:
    """Read a lesson file, its lines ended by a single newline character.

    Args:
        path: where it is.
        file: the path as the user gave it.

    Raises:
        LessonRefused: it is missing, no file, too large, empty, or not UTF-8.
    """
    text = _decoded(_bytes(path, file), file).replace("\r\n", "\n")
    if not text.strip():
        raise _refused(file, "this file is empty", 'title = "Seed trays"')
    return text


_CONTROLS = re.compile(r"[\x00-\x08\x0b-\x1f\x7f-\x9f\u202a-\u202e\u2066-\u2069\ud800-\udfff]")
"""Unicode's control characters but for line ends and tabs, its embeddings, overrides and isolates of the
direction of writing (UAX 9), and surrogates, of which U+DC80 and on stand for bytes that are no UTF-8."""

FIRST_BYTE, LAST_BYTE = "\udc80", "\udcff"


def printable(text: str) -> str:
    r"""Write every character that a terminal would obey, not print, as its escape: ``\x1b``, ``\u202e``."""
    return _CONTROLS.sub(lambda found: _escape(found[0]), text)


def is_control(sign: str) -> bool:
    """Tell whether a character steers a terminal or the direction of writing, line ends and tabs aside."""
    return _CONTROLS.fullmatch(sign) is not None


def has_controls(text: str) -> bool:
    """Tell whether a text has a character that steers a terminal or the direction of writing."""
    return _CONTROLS.search(text) is not None


def _escape(sign: str) -> str:
    if FIRST_BYTE <= sign <= LAST_BYTE:
        return f"\\x{ord(sign) - ord(FIRST_BYTE) + 0x80:02x}"
    return sign.encode("unicode_escape").decode("ascii")


def _bytes(path: Path, file: str) -> bytes:
    try:
        if path.is_dir():
            raise _refused(file, "this is a folder, not a lesson file", _a_lesson_in(path))
        if not path.exists():
            raise _refused(file, "there is no such file", _nearest_file(path))
        if not path.is_file():
            raise _refused(file, "this is not a file", "name a lesson file that ends in .toml")
        with path.open("rb") as opened:
            content = opened.read(LARGEST_FILE + 1)
    except (OSError, ValueError) as error:
        reason = (
            error.strerror if isinstance(error, OSError) and error.strerror else "its name cannot be used"
        )
        raise _refused(
            file, f"this file cannot be read: {reason}", "check its name and permissions"
        ) from None
    if len(content) > LARGEST_FILE:
        raise _refused(
            file, f"this file is larger than {LARGEST_FILE // 1024} KB", "a lesson file is a short text"
        )
    return content


def _decoded(content: bytes, file: str) -> str:
    content = content.removeprefix(b"\xef\xbb\xbf")
    try:
        return content.decode("utf-8")
    except UnicodeDecodeError as error:
        start = content.rfind(b"\n", 0, error.start) + 1
        line = content.count(b"\n", 0, error.start) + 1
        before = content[start : error.start].decode("utf-8")
        byte = content[error.start]
        message = f"this file is not UTF-8 text: byte {error.start + 1} is 0x{byte:02X}"
        words = printable(before.strip()[-60:])
        hint = "save the file as UTF-8 in your editor"
        raise LessonRefused([Problem(file, line, len(before) + 1, message, words, hint)]) from None


def _nearest_file(path: Path) -> str:
    """Name the lesson files whose names are nearest, in the same folder and in ``lessons``."""
    folders = dict.fromkeys([path.parent, path.parent / "lessons", Path("lessons")])
    found: dict[str, Path] = {}
    for folder in folders:
        for lesson in sorted(folder.glob("*.toml")) if folder.is_dir() else ():
            found.setdefault(lesson.name, lesson)
    wanted = path.name if path.suffix else f"{path.name}.toml"
    near = get_close_matches(wanted, found, n=1, cutoff=0.5)
    return str(found[near[0]]) if near else "check the name of the file"


def _a_lesson_in(folder: Path) -> str:
    lessons = (lesson for place in (folder / "lessons", folder) for lesson in sorted(place.glob("*.toml")))
    return str(next(lessons, "name a lesson file in it"))


def _refused(file: str, message: str, hint: str) -> LessonRefused:
    return LessonRefused([Problem(file, 0, 0, message, "", hint)])
