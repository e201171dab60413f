"""Files that a command writes only if there are none of their names yet."""

from pathlib import Path

from foldmath.errors import CannotWrite


def require_new(*names: str | None) -> None:
    """Make sure that files can be written without writing over any, or one over another.

    Args:
        names: of the files; None where none was asked for.

    Raises:
        CannotWrite: one of them is there already, has no name, or is named twice.
    """
    known: set[Path] = set()
    for name in names:
        if name is None:
            continue
        if not name.strip():
            raise CannotWrite("a file to write needs a name", "my-lesson.toml")
        if Path(name).exists():
            raise CannotWrite(f"{name}: this file is there already", "another name, or remove it first")
        if Path(name).resolve() in known:
            raise CannotWrite(f"{name}: two files cannot have one name", "another name for one of them")
        known.add(Path(name).resolve())
