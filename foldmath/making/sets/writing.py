"""Putting single files in place: each is written beside its place first, so that none is ever half there."""

import os
import stat
from collections.abc import Callable
from contextlib import suppress
from functools import partial
from pathlib import Path

from foldmath.errors import CannotWrite
from foldmath.making.sets.file_set import Access
from foldmath.making.sets.hindrances import what_would_do, why_not
from foldmath.making.sets.turns import beside, turn
from foldmath.phrases import phrase

AS_USUAL = 0o666
"""Whatever the user's mask leaves of it."""


def _as_it_is() -> None:
    """Ask nothing of the files that are written over."""


def put_in_place(files: dict[Path, bytes], require: Callable[[], None] = _as_it_is) -> None:
    """Write files that belong to no set; an interrupted run leaves every old file whole.

    Whoever may read an old file may read the new one, and nobody else; a link still leads where it led.

    Args:
        files: what is written, by where.
        require: is called before each is written, while no other run writes there; raises if it may not be.

    Raises:
        CannotWrite: a folder or a file cannot be written; says which, and why.
    """
    for path, content in files.items():
        try:
            path.parent.mkdir(parents=True, exist_ok=True)
            place = Path(os.path.realpath(path))
            with turn(place):
                require()
                _replace(place, content, _access(place))
        except OSError as error:
            raise CannotWrite(
                phrase("{path}: cannot be written: {lower}", path=path, lower=why_not(path.parent, error)),
                what_would_do(error),
            ) from error


def put_for_owner(path: Path, content: bytes) -> None:
    """Write a file that its owner alone may read, in the place of one, or of a link, that was there.

    Raises:
        OSError: it cannot be written; what was there is as it was.
    """
    with turn(path):
        _replace(path, content, Access.OWNER.of_files)


def _access(path: Path) -> int | None:
    """Give the mode of a file; None where there is none yet."""
    try:
        return stat.S_IMODE(path.stat().st_mode)
    except FileNotFoundError:
        return None


def _replace(path: Path, content: bytes, rights: int | None) -> None:
    """Replace a file by one of these rights; None for those that a new file has."""
    new = beside(path, "-new")
    try:
        # A killed run may have left one.
        new.unlink(missing_ok=True)
        # As narrow from its first byte on.
        with open(new, "xb", opener=partial(os.open, mode=AS_USUAL if rights is None else rights)) as stream:
            stream.write(content)
        if rights is not None:
            # What the user's mask takes from new files, an old one may have.
            new.chmod(rights)
        os.replace(new, path)
    except BaseException:
        with suppress(OSError):
            new.unlink(missing_ok=True)
        raise
