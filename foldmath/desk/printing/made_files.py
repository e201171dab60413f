"""What was made of a lesson, to be opened from the desk: takes its folder, gives its files by address.

An address that comes from the browser is looked up among those of files that are there, and never becomes
part of a path; so no address, however spelt, leads out of the folder.
"""

import os
from collections.abc import Iterable, Mapping
from mimetypes import guess_type
from pathlib import Path, PurePosixPath

from flask import Blueprint, Response, abort
from flask.typing import ResponseReturnValue

from foldmath.desk.shelf.open_lesson import open_lesson
from foldmath.desk.visits.desk import Desk
from foldmath.desk.visits.guards import OWN_POLICY
from foldmath.lesson.files.opening import files_in
from foldmath.values import frozen
from foldmath.words.languages import languages, spoken, tongue

SHOWN, SAVED = (".pdf",), (".docx", ".ods")
"""How files end that a browser shows, and those that it saves for another program."""


@frozen
class MadeFile:
    """A file that may be opened.

    Args:
        address: in the folder of its lesson: ``class-4b/exit-ticket-es.pdf``.
        document: what it is, as the file would be called in the teacher's language: ``exit-ticket.pdf``.
        language: that it is in; empty where no name says it.
    """

    address: str
    document: str
    language: str


def to_open(files: Iterable[Path], folder: Path) -> tuple[MadeFile, ...]:
    """Give those of the files that a teacher opens, in their order.

    Args:
        files: that were made.
        folder: of their lesson.
    """
    addresses = (PurePosixPath(path.relative_to(folder).as_posix()) for path in files)
    return tuple(_made_file(address) for address in addresses if address.suffix in (*SHOWN, *SAVED))


def made_files(desk: Desk) -> Blueprint:
    """Give the files that were made of a lesson."""
    pages = Blueprint("made_files", __name__)

    @pages.get("/lesson/<name>/made/<path:address>")
    def one(name: str, address: str) -> ResponseReturnValue:
        folder = desk.folder / open_lesson(desk.shelf, name).name
        path = _files_of(folder).get(address)
        if path is None:
            abort(404)
        answer = Response(path.read_bytes(), mimetype=guess_type(path.name)[0] or "application/octet-stream")
        how = "inline" if path.suffix in SHOWN else "attachment"
        answer.headers.set("Content-Disposition", how, filename=f"{name}-{path.name}")
        answer.headers["Content-Security-Policy"] = OWN_POLICY
        return answer

    return pages


def _files_of(folder: Path) -> Mapping[str, Path]:
    """Give the files of a lesson's folder, at any depth, by address; no link is followed."""
    if folder.is_symlink():
        return {}
    folders = [Path(inside) for inside, _, _ in os.walk(folder, followlinks=False)]
    found = (path for one in folders for ending in (*SHOWN, *SAVED) for path in files_in(one, ending))
    return {path.relative_to(folder).as_posix(): path for path in found if not path.is_symlink()}


def _made_file(address: PurePosixPath) -> MadeFile:
    stem, _, last = address.stem.rpartition("-")
    if stem and last in map(tongue, languages()):
        return MadeFile(str(address), f"{stem}{address.suffix}", spoken(last) or "")
    said = [part for part in address.parts[:-1] if part in languages()]
    return MadeFile(str(address), address.name, said[0] if said else "")
