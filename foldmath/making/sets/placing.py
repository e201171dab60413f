"""Placing a set whole: written beside the old one, then exchanged with it in one step.

What one command makes belongs together: a key from another run than its worksheet has other answers. So a
folder holds the files of one run or of the run before, even if a run is stopped, killed or out of room.
"""

import errno
import os
import shutil
from collections.abc import Callable, Mapping
from contextlib import suppress
from pathlib import Path
from typing import TypeAlias

from foldmath.errors import CannotWrite
from foldmath.making.sets.carrying import carry_over
from foldmath.making.sets.exchanging import put_in_place_of
from foldmath.making.sets.file_set import Access, FileSet, require_same_origin
from foldmath.making.sets.hindrances import what_would_do, why_not
from foldmath.making.sets.leftovers import aside, begun, mend, mend_all
from foldmath.making.sets.manifest import MANIFEST, Manifest, digest, read_manifest
from foldmath.making.sets.turns import turn
from foldmath.phrases import Said, phrase
from foldmath.values import frozen

Digests: TypeAlias = Mapping[str, str]
"""The SHA-256 of files by name."""


@frozen
class Placed:
    """A set in its place.

    Args:
        files: those of the set, in its order.
        notes: what the teacher should know of files of her own.
    """

    files: tuple[Path, ...]
    notes: tuple[Said, ...] = ()


def place(files: FileSet) -> Placed:
    """Put a set in the place of the one before it; all else that lies in its folder stays there.

    A file of the old set that was changed since is kept under another name.

    Raises:
        CannotWrite: nothing was changed.
    """
    return _placed(files, lambda _: {})


def place_part(files: FileSet) -> Placed:
    """Put some files of a set in the place of those before them; its other files are kept as they are.

    Raises:
        OtherSet: the others were made from something else; nothing was changed.
        CannotWrite: nothing was changed.
    """

    def others(manifest: Manifest | None) -> Digests:
        require_same_origin(files.folder, manifest, files.origin)
        made = {} if manifest is None else manifest.files
        return {name: digest for name, digest in made.items() if name not in files.files}

    return _placed(files, others)


def _placed(files: FileSet, others: Callable[[Manifest | None], Digests]) -> Placed:
    """Place a set, with those files of the old one that are to be kept."""
    lesson, folder = (Path(os.path.realpath(path)) for path in (files.lesson_folder, files.folder))
    try:
        lesson.parent.mkdir(parents=True, exist_ok=True)
        with turn(lesson):
            mend_all(lesson)
            folder.parent.mkdir(parents=True, exist_ok=True)
            renamed = _exchange(files, folder, others)
    except OSError as error:
        raise _cannot_write(files.folder, error) from error
    notes = (
        phrase(
            "{file} was changed after it was made; as you left it, it is now {new_name}",
            file=str(files.folder / name),
            new_name=new_name,
        )
        for name, new_name in renamed.items()
    )
    return Placed(tuple(files.folder / name for name in files.files), tuple(notes))


def _cannot_write(folder: Path, error: OSError) -> CannotWrite:
    return CannotWrite(
        phrase(
            "{folder}: the pages cannot be written: {why}; nothing there was changed",
            folder=str(folder),
            why=why_not(folder, error),
        ),
        what_would_do(error),
    )


def _exchange(files: FileSet, folder: Path, others: Callable[[Manifest | None], Digests]) -> Digests:
    """Write a set, put it in place and clear away; give the new names of files that were changed."""
    if os.path.lexists(folder) and not folder.is_dir():
        raise NotADirectoryError(errno.ENOTDIR, os.strerror(errno.ENOTDIR))
    manifest = read_manifest(folder)
    kept = {name: digest for name, digest in others(manifest).items() if (folder / name).is_file()}
    made = {} if manifest is None else manifest.files
    try:
        try:
            new = begun(folder, files.access.of_folder)
            _write(new, files, kept)
            renamed = _carry(folder, new, files.access, {name: made[name] for name in made.keys() - kept})
            put_in_place_of(folder, new, aside(folder))
        finally:
            _clear_away(folder)
    finally:
        # Once more, in case a signal came meanwhile.
        _clear_away(folder)
    return renamed


def _write(new: Path, files: FileSet, kept: Digests) -> None:
    digests = {**kept, **{name: digest(content) for name, content in files.files.items()}}
    manifest = Manifest(files.origin, dict(sorted(digests.items())))
    for name, content in {**files.files, MANIFEST: manifest.written()}.items():
        path = new / name
        path.parent.mkdir(mode=files.access.of_folder, parents=True, exist_ok=True)
        with open(path, "xb", opener=lambda name, how: os.open(name, how, files.access.of_files)) as stream:
            stream.write(content)


def _carry(folder: Path, new: Path, access: Access, made: Digests) -> Digests:
    if not folder.is_dir():
        return {}
    if access is Access.AS_USUAL:
        shutil.copymode(folder, new)
    return carry_over(folder, new, made)


def _clear_away(folder: Path) -> None:
    """Clear away what placing left; what cannot be, the next run clears away."""
    with suppress(OSError):
        mend(folder)
