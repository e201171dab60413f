"""The lessons that come with the program: takes nothing, gives their files by name."""

from collections.abc import Mapping
from pathlib import Path

import foldmath

PACKAGE = Path(foldmath.__file__).parent
FOLDERS = (PACKAGE / "lessons", PACKAGE.parent / "lessons")
"""Inside the package where it was installed from a wheel; beside it in a checkout."""


def built_in_lessons() -> Mapping[str, Path]:
    """Give the files of the built-in lessons, by the names of the lessons, in the order of the alphabet."""
    found = next((folder for folder in FOLDERS if folder.is_dir()), None)
    return {} if found is None else {path.stem: path for path in sorted(found.glob("*.toml"))}
