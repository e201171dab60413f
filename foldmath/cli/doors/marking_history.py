"""``mark --history``: all the marks of a folder, as a table and a plot for each class."""

import os
from pathlib import Path

from foldmath.cli.terminal.speaking import tell, tell_written
from foldmath.phrases import counted
from foldmath.words.languages import terminal_language, usual_paper


def tell_history(folder: str, paper: str | None) -> int:
    """Print how many pupils showed each rule by day, and write table and plots; give the exit code."""
    from foldmath.drawing.rendering.picture_process import PictureProcess
    from foldmath.making.marks import history

    language = terminal_language(os.environ)
    with PictureProcess() as pictures:
        made = history(Path(folder), paper or usual_paper(language), language, pictures)
    for one in made.histories:
        tell(counted("{name}: {count} day", "{name}: {count} days", len(one.days), name=one.name or folder))
        for rule in one.rules:
            print("  ".join([f"{rule:28}", *(f"{count:3}" for count in one.pupils_with(rule))]))
    for path in made.files:
        tell_written(path)
    return 0
