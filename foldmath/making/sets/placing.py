"""Placing a set whole: written beside the old one, then exchanged with it in one step.

What one command makes belongs together: a key from another run than its worksheet has other answers. So a
folder holds the files of one run or of the run before, even if a run is stopped, killed or out of room.
"""

import errno
import os
import shutil
from collections.abc import Callable, Iterator, Mapping
from contextlib import suppress
from pathlib import Path, PurePosixPath
from typing import TypeAlias

from foldmath.errors import CannotWrite
from foldmath.making.sets.carrying import carry_over
from foldmath.making.sets.exchanging import put_in_place_of
from foldmath.making.sets.file_set import Access, FileSet, require_same_origin
from foldmath.making.sets.hindrances import what_would_do, why_not
from foldmath.making.sets.leftovers import aside, begun, mend, mend_all
from foldmath.making.sets.manifest import MANIFEST, Manifest, digest, read_manifest
from foldmath.making.sets.turns import turn
from foldmath.phrases import Said, counted, listed, phrase
from foldmath.values import frozen

Digests: TypeAlias = Mapping[str, str]
"""The SHA-256 of files by name."""

MOST_NAMED = 3
"""A note names so many things; of more it gives the number, as of all the pages of a lesson."""


@frozen
class _Exchanged:
    """What became of files in the folder of a set.

    Args:
        renamed: the new names of those that she had changed, by their own.
        gone: files and folders that the old set had and the new one has not.
    """

    renamed: Digests
    gone: tuple[str, ...]


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
            exchanged = _exchange(files, folder, others)
    except OSError as error:
        raise _cannot_write(files.folder, error) from error
    notes = tuple(_notes(files.folder, exchanged))
    return Placed(tuple(files.folder / name for name in files.files), notes)


def _notes(folder: Path, exchanged: _Exchanged) -> Iterator[Said]:
    """Say what became of files that a teacher may look for."""
    for name, new_name in exchanged.renamed.items():
        yield phrase(
            "{file} was changed after it was made; as you left it, it is now {new_name}",
            file=str(folder / name),
            new_name=new_name,
        )
    if len(exchanged.gone) > MOST_NAMED:
        yield counted(
            "no longer in {folder}, since not made this time: {count} file",
            "no longer in {folder}, since not made this time: {count} files",
            len(exchanged.gone),
            folder=str(folder),
        )
    elif exchanged.gone:
        yield phrase(
            "no longer in {folder}, since not made this time: {names}",
            folder=str(folder),
            names=listed(exchanged.gone),
        )


def _cannot_write(folder: Path, error: OSError) -> CannotWrite:
    return CannotWrite(
        phrase(
            "{folder}: the pages cannot be written: {why}; nothing there was changed",
            folder=str(folder),
            why=why_not(folder, error),
        ),
        what_would_do(error),
    )


def _exchange(files: FileSet, folder: Path, others: Callable[[Manifest | None], Digests]) -> _Exchanged:
    """Write a set, put it in place and clear away; say what became of the old one's files."""
    if os.path.lexists(folder) and not folder.is_dir():
        raise NotADirectoryError(errno.ENOTDIR, os.strerror(errno.ENOTDIR))
    manifest = read_manifest(folder)
    kept = {name: digest for name, digest in others(manifest).items() if (folder / name).is_file()}
    made = {} if manifest is None else manifest.files
    there = {name for name in made if (folder / name).is_file()}
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
    left = {_outermost(name) for name in (*files.files, *kept)}
    gone = {_outermost(name) for name in there if not os.path.lexists(folder / name)} - left
    return _Exchanged(renamed, tuple(sorted(gone)))


def _outermost(name: str) -> str:
    """Give a file's name, or that of the folder it lies in: pages of a language go and stay together."""
    return PurePosixPath(name).parts[0]


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
