"""A set: the files of one command, by name as bytes, which belong together."""

from collections.abc import Mapping
from enum import Enum
from pathlib import Path

from foldmath.errors import FoldmathError
from foldmath.making.sets.manifest import Manifest, Origin
from foldmath.phrases import phrase
from foldmath.values import frozen


class Access(Enum):
    """Who may read a set: the rights of its files, before the user's mask, and of its folder."""

    AS_USUAL = (0o666, 0o777)
    """Whoever the user lets read new files."""

    OWNER = (0o600, 0o700)
    """The user alone: files with pupils' names."""

    def __init__(self, of_files: int, of_folder: int) -> None:
        self.of_files = of_files
        self.of_folder = of_folder


@frozen(kw_only=True)
class FileSet:
    """The files of one command.

    Args:
        lesson_folder: the folder of the lesson.
        name: of the set's own folder in it, such as ``class-4b``; empty for the lesson's pages, which lie
            in its folder itself.
        files: contents by name; folders in a name are divided by ``/``.
        origin: what they were made from.
        access: who may read them.
    """

    lesson_folder: Path
    name: str = ""
    files: Mapping[str, bytes]
    origin: Origin
    access: Access = Access.AS_USUAL

    @property
    def folder(self) -> Path:
        """The folder that holds these files, and what the teacher puts beside them."""
        return self.lesson_folder / self.name


class OtherSet(FoldmathError):
    """A part of a set that would not match the rest of it."""


def require_same_origin(folder: Path, manifest: Manifest | None, origin: Origin) -> None:
    """Make sure that some files of a set may be made anew and the others kept.

    Args:
        folder: the folder of the set.
        manifest: of the set there; None if there is none, which nothing can fail to match.
        origin: of the files to be made.

    Raises:
        OtherSet: the others were made from something else; says from what.
    """
    if manifest is None or manifest.origin == origin:
        return
    if manifest.origin.lesson != origin.lesson:
        reason = phrase("from the lesson as it was before it was changed")
    elif manifest.origin.options != origin.options:
        was, wanted = _differing(manifest.origin, origin), _differing(origin, manifest.origin)
        reason = phrase("with other options ({was}, not {wanted})", was=was, wanted=wanted)
    else:
        versions = {"was": manifest.origin.version, "now": origin.version}
        reason = phrase("by foldmath {was}, and this is {now}", **versions)
    raise OtherSet(
        phrase(
            "{folder}: the pages there were made {reason}, so a few new ones would not match the others",
            folder=str(folder),
            reason=reason,
        ),
        phrase("the same without --only, which makes all of them anew"),
    )


def _differing(one: Origin, other: Origin) -> str:
    differing = [value for name, value in one.options.items() if other.options.get(name) != value]
    return " and ".join(differing) or "none"
