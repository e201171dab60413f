"""Exchanging folders: whoever looks sees the old one or the new one, whole."""

import ctypes
import os
import sys
from functools import cache
from pathlib import Path

HERE, EXCHANGE = -100, 2
"""``AT_FDCWD`` and ``RENAME_EXCHANGE`` of renameat2(2), from linux/fcntl.h and linux/fs.h."""


def put_in_place_of(folder: Path, new: Path, aside: Path) -> None:
    """Give a new folder the name of another; the other one then has the new one's name, or is moved aside.

    On Linux this is one step. Where it cannot be, it is two renames; after the first one nothing bears the
    name, and whoever comes next must give ``aside`` its name back.

    Args:
        folder: the name; where nothing bears it, the new folder is moved there.
        new: a folder on the same disk.
        aside: a name on the same disk that nothing bears.

    Raises:
        OSError: nothing was changed.
    """
    if not os.path.lexists(folder):
        os.rename(new, folder)
        return
    if _exchanged(new, folder):
        return
    os.rename(folder, aside)
    try:
        os.rename(new, folder)
    except OSError:
        os.rename(aside, folder)
        raise


def _exchanged(one: Path, other: Path) -> bool:
    """Exchange two folders in one step; tell whether this system and this disk can."""
    call = _renameat2()
    return call is not None and call(HERE, os.fsencode(one), HERE, os.fsencode(other), EXCHANGE) == 0


@cache
def _renameat2() -> "ctypes._NamedFuncPointer | None":
    """Find the call, which Python does not offer (glibc has it since 2.28, musl since 1.2.5)."""
    if sys.platform != "linux":
        return None
    call = getattr(ctypes.CDLL(None), "renameat2", None)
    if call is not None:
        call.argtypes = (ctypes.c_int, ctypes.c_char_p, ctypes.c_int, ctypes.c_char_p, ctypes.c_uint)
    return call
