"""Class lists among her own files: takes a list, keeps it; gives those that were kept.

Names are in memory and in her own files alone: never in an address, a log or a cache.
"""

import csv
import io
from collections.abc import Iterable, Mapping
from pathlib import Path

from foldmath.desk.shelf.shelf import file_name
from foldmath.errors import CannotWrite
from foldmath.lesson.files.opening import files_in
from foldmath.lesson.roster import Pupil
from foldmath.lesson.roster_rows import roster_rows
from foldmath.making.sets.file_set import Access
from foldmath.making.sets.writing import put_for_owner
from foldmath.phrases import phrase

FOLDER, ANSWERS = "classes", "-answers"
"""Where the lists lie, and how the sheets of answers that lie there too end their names."""


def kept_classes(folder: Path) -> Mapping[str, Path]:
    """Give the class lists that were kept in the teacher's folder, by the names of the classes."""
    place = folder / FOLDER
    found = [] if place.is_symlink() else files_in(place, ".csv")
    return {path.stem: path for path in found if not path.is_symlink() and not path.stem.endswith(ANSWERS)}


def kept_answers(folder: Path, lesson: str) -> Mapping[str, Path]:
    """Give the answers of classes to a lesson that were kept in the teacher's folder, by their classes."""
    place, begins = folder / FOLDER, f"{lesson}-"
    found = [] if place.is_symlink() else files_in(place, ".csv")
    answers = [path for path in found if path.stem.endswith(ANSWERS) and path.name.startswith(begins)]
    return {
        path.stem.removeprefix(begins).removesuffix(ANSWERS): path
        for path in answers
        if not path.is_symlink()
    }


def as_list(pupils: Iterable[Pupil]) -> bytes:
    """Write a class as a spreadsheet saves it."""
    written = io.StringIO()
    csv.writer(written, lineterminator="\n").writerows(roster_rows(pupils))
    return written.getvalue().encode()


def keep_class(folder: Path, class_name: str, content: bytes) -> None:
    """Keep a class list among the teacher's own files."""
    write_own(folder / FOLDER / f"{file_name(class_name)}.csv", content)


def write_own(path: Path, content: bytes) -> None:
    """Write a file with names in it, for the teacher's eyes alone.

    Raises:
        CannotWrite: its folder is a link, which may lead anywhere, or cannot be written.
    """
    if path.parent.is_symlink():
        raise CannotWrite(
            phrase("{file}: cannot be written: its folder is a link", file=path.name),
            phrase("take the link out, or name it otherwise"),
        )
    try:
        path.parent.mkdir(mode=Access.OWNER.of_folder, exist_ok=True)
        put_for_owner(path, content)
    except OSError as error:
        raise CannotWrite.by(path.name, error, phrase("make room, or check permissions")) from error
