"""``project``: the slides of a lesson, written as one page and opened in the browser."""

import webbrowser
from pathlib import Path

from foldmath.cli.terminal.speaking import tell, tell_written
from foldmath.phrases import phrase


def project(lesson: str, out: str, *, opened: bool) -> int:
    """Write the slides, and open them if that is wanted; give the exit code."""
    from foldmath import making

    made = making.project(Path(lesson), Path(out))
    for note in made.notes:
        tell(phrase("note: {note}", note=note))
    (page,) = made.files
    tell_written(page)
    if opened and not webbrowser.open(page.resolve().as_uri()):
        tell(phrase("no browser opened; open the page from your folder of files"))
    return 0
