"""Putting single files in place: each is written beside its place first, so that none is ever half there."""

import os
from collections.abc import Callable
from contextlib import suppress
from pathlib import Path

from foldmath.errors import CannotWrite
from foldmath.making.sets.turns import beside, turn
from foldmath.phrases import phrase


def _as_it_is() -> None:
    """Ask nothing of the files that are written over."""


def put_in_place(files: dict[Path, bytes], require: Callable[[], None] = _as_it_is) -> None:
    """Write files that belong to no set; an interrupted run leaves every old file whole.

    Args:
        files: what is written, by where.
        require: is called before each is written, while no other run writes there; raises if it may not be.

    Raises:
        CannotWrite: a folder or a file cannot be written; says which, and why.
    """
    for path, content in files.items():
        try:
            path.parent.mkdir(parents=True, exist_ok=True)
            with turn(path):
                require()
                _replace(path, content)
        except OSError as error:
            raise CannotWrite(
                phrase(
                    "{path}: cannot be written: {lower}",
                    path=path,
                    lower=(error.strerror or str(error)).lower(),
                ),
                phrase("another folder"),
            ) from error


def _replace(path: Path, content: bytes) -> None:
    new = beside(path, "-new")
    try:
        # A killed run may have left one.
        new.unlink(missing_ok=True)
        with new.open("xb") as stream:
            stream.write(content)
        os.replace(new, path)
    except BaseException:
        with suppress(OSError):
            new.unlink(missing_ok=True)
        raise
