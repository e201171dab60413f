"""What keeps files from being written: takes where they go and what went wrong, gives what to say of it."""

import errno
import os
from pathlib import Path

from foldmath.phrases import Said, phrase

NO_ROOM = (errno.ENOSPC, errno.EDQUOT, errno.EFBIG)


def why_not(folder: Path, error: OSError) -> Said:
    """Say why nothing can be written in a folder; of a file that stands in its way, which that is."""
    there = _there(folder)
    if not there.is_dir():
        return phrase("{file} is a file, not a folder", file=str(there))
    return (error.strerror or str(error)).lower()


def what_would_do(error: OSError) -> Said:
    """Say how to have files written that could not be."""
    if error.errno in NO_ROOM:
        return phrase("make room on this disk, or --out with a folder on another one")
    if error.errno == errno.ENAMETOOLONG:
        return phrase("a shorter name for the lesson file or the class list")
    return phrase("another folder")


def foreseen(folder: Path) -> OSError | None:
    """Give what would keep anything from being written in a folder, so far as looking at it tells."""
    there = _there(folder)
    if not there.is_dir():
        number = errno.ENOTDIR
    elif not os.access(there, os.W_OK | os.X_OK):
        number = errno.EACCES
    else:
        return None
    return OSError(number, os.strerror(number))


def _there(folder: Path) -> Path:
    """Give what is there of the way to a folder: itself, or the nearest above it."""
    wanted = Path(os.path.realpath(folder))
    return next(path for path in (wanted, *wanted.parents) if os.path.lexists(path))
