"""``desk`` and ``new``: the page in the browser, and a lesson to begin with."""

import os
import shlex
from pathlib import Path

from foldmath.cli.terminal.new_files import require_new
from foldmath.cli.terminal.speaking import spoken, tell
from foldmath.errors import Unreadable
from foldmath.phrases import phrase
from foldmath.words.languages import terminal_language

SUFFIX = ".toml"

LAST_PORT = 65_535
"""A port has 16 bits (RFC 9293, 3.1)."""


def open_desk(folder: str | None, port: int, *, open_browser: bool) -> int:
    """Serve the desk until it is ended; give the exit code."""
    from foldmath.desk.serving import serve
    from foldmath.making.sets.hindrances import why_not

    place = Path(folder) if folder else usual_folder()
    if not 0 <= port <= LAST_PORT:
        message = phrase("--port {port}: ports go from 1 to {last}", port=port, last=LAST_PORT)
        raise Unreadable(message, phrase("another number after --port, or none"))
    try:
        place.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        raise Unreadable(
            phrase("--folder {folder}: {why}", folder=str(place), why=why_not(place, error)),
            phrase("a folder for your lessons"),
        ) from error
    serve(place, port, terminal_language(os.environ), _address, open_browser=open_browser)
    return 0


def _address(address: str) -> None:
    # At once: whoever reads it through a pipe waits for this line.
    print(spoken(phrase("the desk is open at {address} (Ctrl-C ends it)", address=address)), flush=True)


def write_starter(folder: str | None, place: str) -> int:
    """Write a file that opens the desk when it is double-clicked; give the exit code."""
    from foldmath.desk.starting import EXECUTABLE, starter
    from foldmath.making.sets.writing import put_in_place

    name, content = starter((Path(folder) if folder else usual_folder()).absolute())
    path = Path(place) / name
    put_in_place({path: content})
    path.chmod(EXECUTABLE)
    tell(phrase("wrote {file}; a double click opens the desk", file=str(path)))
    return 0


def usual_folder() -> Path:
    """Give the folder of lessons where none is named: one among the teacher's documents."""
    from platformdirs import user_documents_path

    return user_documents_path() / "foldmath"


def begin_lesson(name: str, source: str | None) -> int:
    """Write a new lesson file; give the exit code.

    Raises:
        Unreadable: its name has neither a letter nor a figure, and would be a hidden file's, or a folder's.
    """
    from foldmath.lesson.beginning import first_fold, like_another, text_of
    from foldmath.making.sets.writing import put_in_place

    path = Path(name if name.endswith(SUFFIX) else f"{name}{SUFFIX}")
    if not any(map(str.isalnum, path.name.removesuffix(SUFFIX))):
        raise Unreadable(
            phrase("a lesson's name needs a letter or a figure: {name}", name=repr(name)),
            "foldmath new seed-beds",
        )
    require_new(str(path))
    title = path.stem.replace("-", " ").replace("_", " ").strip().capitalize()
    language = terminal_language(os.environ)
    text = first_fold(title, language) if source is None else like_another(title, text_of(source))
    put_in_place({path: text.encode()})
    tell(phrase("wrote {file}; make its pages with:  foldmath make {file}", file=shlex.quote(str(path))))
    return 0
