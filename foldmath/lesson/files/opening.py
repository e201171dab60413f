"""Files that a teacher named: takes a path, gives its bytes, or what keeps it from being read.

Only files are opened: a pipe or a device in the place of a file would wait for a writer, or never end.
"""

import os
import stat
from enum import Enum
from itertools import islice
from pathlib import Path

from foldmath.phrases import Phrase, phrase

MOST_NEIGHBOURS = 500
"""So many files of a folder are looked at for what might be meant; a folder of lessons has some dozens."""

# Windows knows no pipes among its files, and changes line ends unless it is told not to.
_AT_ONCE = getattr(os, "O_NONBLOCK", 0) | getattr(os, "O_BINARY", 0)


class Hindrance(Enum):
    """What keeps a file from being read."""

    MISSING = "missing"
    BROKEN_LINK = "broken link"
    FOLDER = "folder"
    NO_FILE = "no file"
    TOO_LARGE = "too large"
    REFUSED = "refused"


class Unread(Exception):
    """A file that cannot be read.

    Args:
        hindrance: what keeps it from being read.
        message: the same in words that suit any kind of file.
        hint: the remedy, where it does not hang on what the file was to be; empty otherwise.
    """

    def __init__(self, hindrance: Hindrance, message: Phrase, hint: Phrase | str = "") -> None:
        super().__init__(message)
        self.hindrance = hindrance
        self.message = message
        self.hint = hint


def file_bytes(path: Path, largest: int) -> bytes:
    """Read a file whole.

    Args:
        path: where it is.
        largest: no file with more bytes is read.

    Raises:
        Unread: it is missing, no file, too large, or the system refuses it.
    """
    try:
        _require_file(path.stat().st_mode)
        with os.fdopen(os.open(path, os.O_RDONLY | _AT_ONCE), "rb") as opened:
            # Something else may have taken its place since.
            _require_file(os.fstat(opened.fileno()).st_mode)
            content = opened.read(largest + 1)
    except (FileNotFoundError, NotADirectoryError):
        raise _missing(path) from None
    except (OSError, ValueError) as error:
        reason = error.strerror if isinstance(error, OSError) else None
        told = reason.lower() if reason else phrase("its name cannot be used")
        message = phrase("this file cannot be read: {reason}", reason=told)
        raise Unread(Hindrance.REFUSED, message, phrase("check its name and permissions")) from None
    if len(content) > largest:
        message = phrase("this file is larger than {size}", size=_size(largest))
        raise Unread(Hindrance.TOO_LARGE, message)
    return content


def _require_file(mode: int) -> None:
    if stat.S_ISDIR(mode):
        raise Unread(Hindrance.FOLDER, phrase("this is a folder, not a file"))
    if not stat.S_ISREG(mode):
        raise Unread(Hindrance.NO_FILE, phrase("this is not a file"))


def _missing(path: Path) -> Unread:
    if path.is_symlink():
        target = os.readlink(path)
        message = phrase("this link leads to a file that is not there: {target}", target=target)
        hint = phrase("put the file there, or name the file itself")
        return Unread(Hindrance.BROKEN_LINK, message, hint)
    return Unread(Hindrance.MISSING, phrase("there is no such file"))


def _size(count: int) -> str:
    megabytes, left = divmod(count, 1024 * 1024)
    return f"{megabytes} MB" if megabytes and not left else f"{count // 1024} KB"


def files_in(folder: Path, ending: str) -> list[Path]:
    """Give the files of a folder that end so, in order: those alone that can be read, and not too many."""
    if not folder.is_dir():
        return []
    found = islice((path for path in folder.glob(f"*{ending}") if path.is_file()), MOST_NEIGHBOURS)
    return sorted(found)
