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
    lock = _Lock(beside(path, "-lock"))
    try:
        try:
            lock.take()
            yield
        finally:
            lock.give_back()
    finally:
        # Once more, in case a signal came meanwhile.
        lock.give_back()


class _Lock:
    """A file that is locked by whoever has the turn, and removed at its end."""

    def __init__(self, path: Path) -> None:
        self._path = path
        self._descriptor: int | None = None

    def take(self) -> None:
        """Open the file and wait for it; once more if it was removed meanwhile by the run that had it."""
        while True:
            self._descriptor = _open(self._path)
            _wait(self._descriptor)
            if _lies_at(self._path, self._descriptor):
                return
            self._close()

    def give_back(self) -> None:
        """Remove the file unless another run has it: a signal may have come before it was taken."""
        if sys.platform == "win32":
            # Open files cannot be removed there; a lock that somebody waits for is open.
            self._close()
            with suppress(OSError):
                os.unlink(self._path)
            return
        with suppress(OSError):
            if self._descriptor is None:
                self._descriptor = os.open(self._path, os.O_RDONLY)
            _lock(self._descriptor, fcntl.LOCK_EX | fcntl.LOCK_NB)
            # While it is held, so that nobody can have taken it in between.
            if _lies_at(self._path, self._descriptor):
                os.unlink(self._path)
        self._close()

    def _close(self) -> None:
        if self._descriptor is not None:
            descriptor, self._descriptor = self._descriptor, None
            os.close(descriptor)


def _lies_at(path: Path, descriptor: int) -> bool:
    try:
        return os.path.samestat(os.stat(path), os.fstat(descriptor))
    except FileNotFoundError:
        return False


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

    def _lock(descriptor: int, how: int) -> None:
        try:
            fcntl.flock(descriptor, how)
        except OSError as error:
            if error.errno not in NO_LOCKS_HERE:
                raise

    def _wait(descriptor: int) -> None:
        _lock(descriptor, fcntl.LOCK_EX)
