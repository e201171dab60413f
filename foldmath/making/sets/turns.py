"""Turns: runs that write in one place wait for one another, however they end.

The system's own file lock is used, which a killed process gives back. (The library filelock would do the
same; importing it takes longer than placing a set.)
"""

import errno
import os
import sys
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from pathlib import Path

NO_LOCKS_HERE = (errno.ENOLCK, errno.ENOSYS, errno.EOPNOTSUPP)
"""What systems of files without locks say; there, runs cannot wait for one another."""


def beside(path: Path, ending: str = "") -> Path:
    """Name a hidden neighbour of a file or folder, under a name that nobody else gives."""
    return path.with_name(f".{path.name}.foldmath{ending}")


@contextmanager
def turn(path: Path) -> Iterator[None]:
    """Have the turn to write a file or folder; wait for it as long as another run has it.

    Args:
        path: the file or folder, which need not be there; the folder that it lies in must be.

    Raises:
        OSError: nothing can be written beside it.
    """
    lock = beside(path, "-lock")
    descriptor = _taken(lock)
    try:
        yield
    finally:
        # While the lock is still held, so that nobody can have taken it in between.
        with suppress(OSError):
            os.unlink(lock)
        os.close(descriptor)
        if sys.platform == "win32":
            # Open files cannot be removed there; a lock that somebody waits for is open.
            with suppress(OSError):
                os.unlink(lock)


def _taken(lock: Path) -> int:
    """Open the lock and wait for it; once more if it was removed meanwhile by the run that had it."""
    while True:
        descriptor = _open(lock)
        try:
            _wait(descriptor)
            with suppress(FileNotFoundError):
                if os.path.samestat(os.stat(lock), os.fstat(descriptor)):
                    return descriptor
        except BaseException:
            os.close(descriptor)
            raise
        os.close(descriptor)


def _open(lock: Path) -> int:
    try:
        return os.open(lock, os.O_RDWR | os.O_CREAT, 0o666)
    except PermissionError:
        # A killed run of another user left it; to wait for it, reading is enough.
        with suppress(FileNotFoundError):
            return os.open(lock, os.O_RDONLY)
        raise


if sys.platform == "win32":
    import msvcrt

    def _wait(descriptor: int) -> None:
        while True:
            # Each call tries for ten seconds.
            with suppress(OSError):
                return msvcrt.locking(descriptor, msvcrt.LK_LOCK, 1)

else:
    import fcntl

    def _wait(descriptor: int) -> None:
        try:
            fcntl.flock(descriptor, fcntl.LOCK_EX)
        except OSError as error:
            if error.errno not in NO_LOCKS_HERE:
                raise
