"""Putting files in place: each is written under another name first, so that no page is ever half there."""

import os
import tempfile
from pathlib import Path

from foldmath.errors import CannotWrite


def put_in_place(files: dict[Path, bytes]) -> None:
    """Write files; an interrupted run leaves every old file whole.

    Raises:
        CannotWrite: a folder or a file cannot be written; says which, and why.
    """
    for path, content in files.items():
        try:
            path.parent.mkdir(parents=True, exist_ok=True)
            _replace(path, content)
        except OSError as error:
            raise CannotWrite(
                f"{path}: cannot be written: {(error.strerror or str(error)).lower()}", "another folder"
            ) from error


def _replace(path: Path, content: bytes) -> None:
    handle, name = tempfile.mkstemp(dir=path.parent, prefix=f".{path.name}.")
    try:
        with os.fdopen(handle, "wb") as stream:
            stream.write(content)
        os.chmod(name, 0o666 & ~_umask())
        os.replace(name, path)
    except BaseException:
        os.unlink(name)
        raise


def _umask() -> int:
    mask = os.umask(0)
    os.umask(mask)
    return mask
