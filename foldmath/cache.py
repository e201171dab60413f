"""What is kept between runs: compiled grammars, in a folder for passing files that is this user's alone."""

import os
import stat
import sys
import tempfile
from functools import cache
from pathlib import Path

OWNER_ONLY = stat.S_IRWXU


@cache
def cache_folder() -> Path | None:
    """Give the folder, made if it is not there; None where none can be, or none is safe from others.

    What lies in it is unpickled, so a folder that someone else could write in is not used.
    """
    name = f"foldmath-{getattr(os, 'getuid', lambda: 'kept')()}"
    folder = Path(tempfile.gettempdir()) / name
    try:
        folder.mkdir(mode=OWNER_ONLY, exist_ok=True)
        found = folder.lstat()
    except OSError:
        return None
    if sys.platform == "win32":
        # The folder for passing files is each user's own there.
        return folder
    own = stat.S_ISDIR(found.st_mode) and found.st_uid == os.getuid()
    return folder if own and stat.S_IMODE(found.st_mode) == OWNER_ONLY else None


def cache_file(name: str) -> str | None:
    """Give the path of a kept file, there already or not; None where nothing can be kept."""
    folder = cache_folder()
    return None if folder is None else str(folder / name)
