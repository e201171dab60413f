"""The folder of work beside a set: where the next set is written, and what a killed run left there.

A set that is being written bears its number on the disk (its inode) as its name there. So a folder that still
bears its own number was never put in place, and one that bears another is the old set, just exchanged.
"""

import os
import shutil
import stat
from pathlib import Path

from foldmath.making.sets.carrying import carry_over
from foldmath.making.sets.manifest import read_manifest
from foldmath.making.sets.turns import beside

UNFINISHED, ASIDE = "new", "old"
"""What a set is called before it has its number, and an old set that was moved out of the way."""


def begun(folder: Path, rights: int) -> Path:
    """Begin the folder of a set that is to take the place of another.

    Args:
        folder: the other, which need not be there.
        rights: of the new folder, before the user's mask.
    """
    work = beside(folder)
    work.mkdir(mode=stat.S_IRWXU)
    unfinished = work / UNFINISHED
    unfinished.mkdir(mode=rights)
    return unfinished.rename(work / str(unfinished.stat().st_ino))


def aside(folder: Path) -> Path:
    """Name where an old set is moved out of the way, if it cannot be exchanged."""
    return beside(folder) / ASIDE


def mend(folder: Path) -> None:
    """Give a set's folder back what was moved out of its way, or saved while it was exchanged; clear away.

    Raises:
        OSError: something that is not ours to remove could not be given back.
    """
    work = beside(folder)
    if not work.is_dir():
        return
    for left in sorted(work.iterdir()):
        if not left.is_dir() or left.name in (UNFINISHED, str(left.stat().st_ino)):
            continue
        if not os.path.lexists(folder):
            left.rename(folder)
            continue
        manifest = read_manifest(left)
        carry_over(left, folder, {} if manifest is None else manifest.files)
    _remove(work)


def mend_all(lesson_folder: Path) -> None:
    """Mend the folder of a lesson and those of all sets in it.

    Raises:
        OSError: as ``mend``.
    """
    mend(lesson_folder)
    pattern = beside(lesson_folder / "*").name
    before, after = pattern.split("*")
    for work in sorted(lesson_folder.glob(pattern)):
        mend(work.with_name(work.name.removeprefix(before).removesuffix(after)))


def _remove(work: Path) -> None:
    """Remove a folder, and what is in it that may be written in; a file's own rights are left alone."""
    for path, folders, _ in os.walk(work):
        for name in folders:
            if not os.path.islink(os.path.join(path, name)):
                os.chmod(os.path.join(path, name), stat.S_IRWXU)
    shutil.rmtree(work)
