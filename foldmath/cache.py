"""What is kept between runs, bytes by name, in a cache folder that is this user's alone.

What lies there is run or unpickled, so it must come from nobody else. The folder is opened first, and what
was opened is looked at: that it is a folder and no link to one, is this user's, and lets nobody else in.
Files are opened in that folder, not by their path, and looked at likewise; so nothing can be exchanged in
between. Where no such folder can be had (a home that cannot be written, a disk that knows no owners,
Windows), nothing is kept.

Source:
    Where the folder is: the XDG Base Directory Specification 0.8, by which relative paths are ignored.
"""

import os
import secrets
import stat
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from pathlib import Path

OWNER_ONLY = stat.S_IRWXU
OTHERS_WRITE = stat.S_IWGRP | stat.S_IWOTH

# Windows has neither these flags nor folders that files can be opened in.
_NO_LINK = getattr(os, "O_NOFOLLOW", 0)
_FOLDER = os.O_RDONLY | getattr(os, "O_DIRECTORY", 0) | _NO_LINK
# A pipe that someone laid there is opened at once and refused, where waiting for its writer would hang.
_FILE = os.O_RDONLY | _NO_LINK | getattr(os, "O_NONBLOCK", 0)
_NEW_FILE = os.O_WRONLY | os.O_CREAT | os.O_EXCL | _NO_LINK


def read_kept(name: str) -> bytes | None:
    """Give what was kept under a name; None if nothing is, or nothing that is surely this user's own."""
    with _own_folder() as folder, suppress(OSError):
        if folder is None:
            return None
        handle = os.open(name, _FILE, dir_fd=folder)
        with os.fdopen(handle, "rb") as stream:
            found = os.fstat(handle)
            own = found.st_uid == os.getuid() and not found.st_mode & OTHERS_WRITE
            # A second name may lead to a file that was never kept here.
            if stat.S_ISREG(found.st_mode) and own and found.st_nlink == 1:
                return stream.read()
    return None


def keep(name: str, content: bytes) -> None:
    """Keep bytes under a name, in the place of what was kept before; where that cannot be, do nothing."""
    with _own_folder() as folder:
        if folder is None:
            return
        passing = f".{name}.{secrets.token_hex(8)}"
        try:
            with os.fdopen(os.open(passing, _NEW_FILE, 0o600, dir_fd=folder), "wb") as stream:
                stream.write(content)
            os.replace(passing, name, src_dir_fd=folder, dst_dir_fd=folder)
        except OSError:
            with suppress(OSError):
                os.unlink(passing, dir_fd=folder)


def cache_folder() -> Path | None:
    """Give the path of the cache folder, there already or not; None where this system has no safe one."""
    if os.open not in os.supports_dir_fd:
        return None
    # Imported here, since most commands print their help without it.
    from platformdirs import user_cache_path

    path = user_cache_path("foldmath", appauthor=False)
    return path if path.is_absolute() else None


@contextmanager
def _own_folder() -> Iterator[int | None]:
    """Open the cache folder, made if it is not there; gives None where it is not this user's alone."""
    handle = None
    path = cache_folder()
    if path is not None:
        with suppress(OSError):
            for missing in (path.parent, path):
                with suppress(FileExistsError):
                    missing.mkdir(mode=OWNER_ONLY)
            handle = os.open(path, _FOLDER)
    try:
        yield handle if handle is not None and _is_own(os.fstat(handle)) else None
    finally:
        if handle is not None:
            os.close(handle)


def _is_own(found: os.stat_result) -> bool:
    alone = stat.S_IMODE(found.st_mode) == OWNER_ONLY and found.st_uid == os.getuid()
    return alone and stat.S_ISDIR(found.st_mode)
