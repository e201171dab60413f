"""Carrying over: what a teacher put into a set's folder, or changed there, goes on into the next one.

Files are linked, not copied, where the disk can do that: what she is writing in them meanwhile is not lost.
"""

import os
import shutil
import stat
from collections.abc import Iterator, Mapping
from itertools import count
from pathlib import Path

from foldmath.making.sets.manifest import MANIFEST, digest

KEPT = "kept"
"""Stands in the name of a file of hers whose own name the new set needs."""


def carry_over(old: Path, new: Path, made: Mapping[str, str]) -> dict[str, str]:
    """Carry all from one folder over to another, but the files that were made and are as they were.

    Nothing in ``new`` is written over. Done twice, it does no more than done once.

    Args:
        old: the folder of the old set.
        new: the folder of the new set.
        made: the SHA-256 of each file that was made, by its name in ``old``.

    Returns:
        The new names of those that could not keep their own, by their own.

    Raises:
        OSError: a file could be neither linked nor copied.
    """
    as_made = {MANIFEST} | {name for name, expected in made.items() if _is_as_made(old / name, expected)}
    return dict(_carry_folder(old, new, "", as_made))


def _is_as_made(path: Path, expected: str) -> bool:
    return path.is_file() and not path.is_symlink() and digest(path.read_bytes()) == expected


def _carry_folder(source: Path, target: Path, inside: str, as_made: set[str]) -> Iterator[tuple[str, str]]:
    """Carry what is in a folder over; a folder with nothing in it but what was made stays behind."""
    is_new = not target.is_dir()
    if is_new:
        target.mkdir(mode=stat.S_IRWXU)
    names = sorted(os.listdir(source))
    for name in names:
        own = f"{inside}{name}"
        if own in as_made:
            continue
        place = _place(source / name, target / name)
        if _is_folder(source / name):
            yield from _carry_folder(source / name, place, f"{own}/", as_made)
        elif not os.path.lexists(place):
            _link(source / name, place)
        if place.name != name:
            yield own, f"{inside}{place.name}"
    if is_new and names and not os.listdir(target):
        target.rmdir()
    elif is_new:
        shutil.copystat(source, target)


def _place(source: Path, target: Path) -> Path:
    """Find where to carry something: the first of its names that is free, or where it lies already."""
    places = map(target.with_name, _names(target.name))
    return next(place for place in places if not os.path.lexists(place) or _are_one(source, place))


def _names(name: str) -> Iterator[str]:
    """Give the names under which a file may be carried over, its own one first."""
    stem, suffix = os.path.splitext(name)
    yield name
    yield f"{stem} ({KEPT}){suffix}"
    for number in count(2):
        yield f"{stem} ({KEPT} {number}){suffix}"


def _is_folder(path: Path) -> bool:
    return path.is_dir() and not path.is_symlink()


def _are_one(one: Path, other: Path) -> bool:
    """Tell whether two things of one name are the same, or say the same."""
    if _is_folder(one) or _is_folder(other):
        return _is_folder(one) and _is_folder(other)
    if os.path.samestat(one.lstat(), other.lstat()):
        return True
    if one.is_symlink() or other.is_symlink():
        return one.is_symlink() and other.is_symlink() and one.readlink() == other.readlink()
    alike = one.is_file() and other.is_file() and one.stat().st_size == other.stat().st_size
    return alike and one.read_bytes() == other.read_bytes()


def _link(source: Path, target: Path) -> None:
    """Give a file a second name, or copy it where the disk knows no second names; links stay links."""
    try:
        os.link(source, target, follow_symlinks=False)
    except (OSError, NotImplementedError):
        if not source.is_symlink() and not source.is_file():
            raise
        shutil.copy2(source, target, follow_symlinks=False)
