"""``desk`` and ``new``: the page in the browser, and a lesson to begin with."""

import os
from pathlib import Path

from foldmath.cli.terminal.speaking import spoken
from foldmath.errors import Unreadable
from foldmath.phrases import phrase
from foldmath.words.languages import terminal_language


def open_desk(folder: str | None, port: int, *, open_browser: bool) -> int:
    """Serve the desk until it is ended; give the exit code."""
    from foldmath.desk.serving import serve

    place = Path(folder) if folder else usual_folder()
    if place.exists() and not place.is_dir():
        raise Unreadable(
            phrase("--folder {folder}: this is no folder", folder=folder), phrase("a folder for your lessons")
        )
    place.mkdir(parents=True, exist_ok=True)
    serve(place, port, terminal_language(os.environ), _address, open_browser=open_browser)
    return 0


def _address(address: str) -> None:
    # At once: whoever reads it through a pipe waits for this line.
    print(spoken(phrase("the desk is open at {address} (Ctrl-C ends it)", address=address)), flush=True)


def usual_folder() -> Path:
    """Give the folder of lessons where none is named: one among the teacher's documents."""
    from platformdirs import user_documents_path

    return user_documents_path() / "foldmath"
