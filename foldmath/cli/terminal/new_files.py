"""Names of what a command writes: each is there once, and some must be new."""

import shlex
from collections.abc import Sequence
from pathlib import Path
from unicodedata import normalize

from foldmath.errors import CannotWrite, Unreadable
from foldmath.phrases import phrase


def require_new(*names: str | None) -> None:
    """Make sure that files can be written without writing over any, or one over another.

    Args:
        names: of the files; None where none was asked for.

    Raises:
        CannotWrite: one of them is there already, has no name, or is named twice.
    """
    known: set[Path] = set()
    for name in names:
        if name is None:
            continue
        if not name.strip():
            raise CannotWrite(phrase("a file to write needs a name"), "my-lesson.toml")
        if _is_there(Path(name)):
            raise CannotWrite(
                phrase("{name}: this file is there already", name=name),
                phrase("another name, or remove it first"),
            )
        if Path(name).resolve() in known:
            raise CannotWrite(
                phrase("{name}: two files cannot have one name", name=name),
                phrase("another name for one of them"),
            )
        known.add(Path(name).resolve())


def require_ending(option: str, name: str | None, ending: str) -> None:
    """Make sure that the name of a file to write tells what it will be, since others go by its ending.

    Args:
        option: that named it.
        name: of the file, which is not empty; None where none was asked for.
        ending: such as ``.toml``.

    Raises:
        Unreadable: it ends otherwise; offers the same name with this ending.
    """
    if name is None or Path(name).suffix.lower() == ending:
        return
    told = {"option": option, "file": name, "ending": ending}
    wrong = phrase("{option} {file}: the name of this file ends in {ending}", **told)
    raise Unreadable(wrong, f"{option} {shlex.quote(str(Path(name).with_suffix(ending)))}")


def _is_there(path: Path) -> bool:
    """Tell whether something bears a name.

    Raises:
        CannotWrite: nothing can, since it is too long.
    """
    try:
        return path.exists()
    except OSError as error:
        # Imported here, since not all that is written are sets, and theirs is a large room.
        from foldmath.making.sets.hindrances import what_would_do

        raise CannotWrite.by(path, error, what_would_do(error)) from None


def require_folder(folder: Path) -> None:
    """Make sure that a folder is there and takes files, or can be made.

    Raises:
        CannotWrite: a file stands in its way, or this user may not write there.
    """
    # Imported here, since not all that is written are sets, and theirs is a large room.
    from foldmath.making.sets.hindrances import foreseen, why_not

    error = foreseen(folder)
    if error is not None:
        why = why_not(folder, error)
        wrong = phrase("{folder}: nothing can be written there: {why}", folder=str(folder), why=why)
        raise CannotWrite(wrong, phrase("another folder"))


def require_own_folders(lessons: Sequence[Path]) -> None:
    """Make sure that no two lessons are written in one folder, on this computer or on another.

    Args:
        lessons: each is written in a folder that bears its name; some disks take small and capital letters
            for one.

    Raises:
        Unreadable: two lesson files have one name.
    """
    known: dict[str, Path] = {}
    for lesson in lessons:
        name = normalize("NFC", lesson.stem).casefold()
        if lesson == known.get(name):
            message = phrase("{lesson} is named twice", lesson=str(lesson))
            raise Unreadable(message, phrase("each file once"))
        if name in known:
            message = phrase(
                "{one} and {other} have one name, so both would be written in one folder",
                one=str(known[name]),
                other=str(lesson),
            )
            raise Unreadable(message, phrase("one of them at a time, each with its own --out"))
        known[name] = lesson
