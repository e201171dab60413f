"""Pages of another lesson: takes its name, gives the pages of its booklet and where they stand."""

import re
from contextlib import suppress
from difflib import get_close_matches
from hashlib import sha256
from pathlib import Path as FilePath
from typing import Any

from foldmath.lesson.files.built_in import built_in_lessons
from foldmath.lesson.files.controls import has_controls
from foldmath.lesson.files.opening import Unread, file_bytes, files_in
from foldmath.lesson.files.positions import Path, Positions, find_positions
from foldmath.lesson.files.slips import Slip
from foldmath.lesson.files.text import LARGEST_FILE, lesson_text
from foldmath.lesson.files.toml_reading import toml_table
from foldmath.phrases import Phrase, Said, phrase
from foldmath.values import frozen

PAGES: Path = ("booklet", "pages")

_NAME = re.compile(r"[^\s/\\:.][^/\\:]{0,59}")


@frozen
class PageSource:
    """A lesson file whose booklet lends its pages.

    Args:
        file: its path.
        pages: as TOML gives them.
        positions: in that file.
    """

    file: str
    pages: list[Any]
    positions: Positions

    @property
    def digest(self) -> str:
        """The SHA-256 of the pages as they are written."""
        return sha256(repr(self.pages).encode()).hexdigest()


def borrowed(name: str, file: str) -> PageSource | Slip:
    """Find the pages that a lesson takes from another, which may take them from a third.

    The other stands beside it; else it is one of the lessons that come with the program.

    Args:
        name: of the other file, with or without ``.toml``.
        file: the lesson file, as the user gave it.

    Raises:
        LessonRefused: a file on the way cannot be read, or is no TOML.
    """
    folder = FilePath(file).parent
    seen = [FilePath(file).stem]
    while True:
        stem = name.strip().removesuffix(".toml")
        if not _NAME.fullmatch(stem) or has_controls(stem):
            message = phrase("pages are tables, or the name of a lesson file beside this one")
            return Slip(PAGES, message, _example(folder))
        if stem in seen:
            hint = phrase("give the pages themselves in one of these files")
            return Slip(PAGES, _circle([*seen, stem]), hint)
        path = folder / f"{stem}.toml"
        if not path.is_file():
            path = built_in_lessons().get(stem, path)
        if not path.is_file():
            message = phrase("there is no lesson file {name} beside this one", name=path.name)
            return Slip(PAGES, message, _nearest(stem, folder, file))
        text = lesson_text(path, str(path))
        booklet = toml_table(text, str(path)).get("booklet")
        pages = booklet.get("pages") if isinstance(booklet, dict) else None
        if isinstance(pages, list):
            return PageSource(str(path), pages, find_positions(text))
        if not isinstance(pages, str):
            message = phrase("{name} has no pages of a booklet to take", name=path.name)
            return Slip(PAGES, message, _example(folder))
        seen.append(stem)
        name = pages


def _circle(stems: list[str]) -> Phrase:
    return phrase(
        "these files take their pages from one another in a circle: {stems}", stems=", ".join(stems)
    )


def _lenders(folder: FilePath) -> list[str]:
    """Name the files of a folder that write pages of their own, by a look at their text."""
    lenders = []
    for path in files_in(folder, ".toml"):
        with suppress(Unread):
            if b"[[booklet.pages]]" in file_bytes(path, LARGEST_FILE):
                lenders.append(path.stem)
    return lenders


def _nearest(stem: str, folder: FilePath, file: str) -> Said:
    lenders = [name for name in _lenders(folder) if name != FilePath(file).stem]
    near = get_close_matches(stem, lenders, n=1, cutoff=0.5)
    return f'pages = "{near[0]}"' if near else _example(folder)


def _example(folder: FilePath) -> Said:
    return (
        "[[booklet.pages]]"
        if not (found := _lenders(folder))
        else phrase('[[booklet.pages]], or pages = "{name}"', name=found[0])
    )
