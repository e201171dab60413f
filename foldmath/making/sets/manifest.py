"""The manifest of a set: what it was made from, and which files belong to it."""

import json
from collections.abc import Mapping
from dataclasses import field
from hashlib import sha256
from pathlib import Path
from typing import TYPE_CHECKING

from foldmath import __version__
from foldmath.values import frozen

if TYPE_CHECKING:
    # Sets are placed without knowing lessons, and lessons bring all the arithmetic with them.
    from foldmath.lesson.lesson import Lesson

MANIFEST = ".foldmath.json"
"""Hidden, so that a teacher's folder shows pages alone."""

MOST_BYTES = 16 * 1024 * 1024
"""A manifest has about a hundred bytes a file; what is larger is none."""


@frozen
class Origin:
    """What a set was made from; what one origin gives is alike to the byte.

    Args:
        lesson: SHA-256 of the lesson, with whatever it takes from other files.
        options: what was asked for, by name.
        version: of this program.
    """

    lesson: str
    options: Mapping[str, str] = field(default_factory=dict)
    version: str = __version__


@frozen
class Manifest:
    """What a set was made from, and the SHA-256 of each of its files by name, folders divided by ``/``."""

    origin: Origin
    files: Mapping[str, str]

    def written(self) -> bytes:
        """Give the manifest as JSON."""
        origin = {"lesson": self.origin.lesson, "options": dict(self.origin.options)}
        record = {"version": self.origin.version, **origin, "files": dict(self.files)}
        return (json.dumps(record, ensure_ascii=False, indent=1) + "\n").encode()


def origin_of(lesson: "Lesson", **options: str) -> Origin:
    """Say what a set of a lesson is made from, under options that change its pages.

    Pages of a booklet may be borrowed from another file, so they count beside the lesson's own text.
    """
    lent = "" if lesson.booklet is None else lesson.booklet.lent
    return Origin(sha256(f"{lesson.digest}\n{lent}".encode()).hexdigest(), options)


def digest(content: bytes) -> str:
    """Give the SHA-256 of a file's content."""
    return sha256(content).hexdigest()


def read_manifest(folder: Path) -> Manifest | None:
    """Read the manifest of a set's folder; None where there is none that can be used."""
    try:
        with (folder / MANIFEST).open("rb") as stream:
            record = json.loads(stream.read(MOST_BYTES))
        lesson, version, options, files = (record[key] for key in ("lesson", "version", "options", "files"))
        texts = [lesson, version, *options, *options.values(), *files, *files.values()]
    except (OSError, ValueError, LookupError, TypeError, AttributeError, RecursionError):
        return None
    if not all(isinstance(text, str) for text in texts):
        return None
    return Manifest(Origin(lesson, options, version), files)


def files_if_whole(folder: Path, origin: Origin) -> tuple[Path, ...]:
    """Give the files of a set of an origin that lies in its folder as it was made; none of any other."""
    manifest = read_manifest(folder)
    if manifest is None or manifest.origin != origin:
        return ()
    files = {folder / name: made for name, made in manifest.files.items()}
    return tuple(files) if all(_is(path, made) for path, made in files.items()) else ()


def _is(path: Path, made: str) -> bool:
    try:
        return digest(path.read_bytes()) == made
    except OSError:
        return False
