"""``make`` and ``draw``: several lessons at once; one that fails does not stop the others."""

import sys
import time
from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING

from foldmath.cli.speaking import tell
from foldmath.drawing.picture_process import PictureProcess
from foldmath.errors import FoldmathError
from foldmath.phrases import phrase

if TYPE_CHECKING:
    from foldmath.lesson.roster import Pupil
    from foldmath.making import Made, Order

PATIENCE_SECONDS = 1.0
"""Work that takes longer says what it is doing."""


class Progress:
    """Says on standard error what is being done, once it has taken a while."""

    def __init__(self, name: str, number: int, total: int, began: float) -> None:
        self.heading = f"{name} ({number} of {total})" if total > 1 else name
        self.began = began

    def __call__(self, doing: str) -> None:
        """Say it, if it is time."""
        if time.monotonic() - self.began > PATIENCE_SECONDS:
            print(f"{self.heading}: {doing} …", file=sys.stderr)


def make_pages(lessons: list[str], out: str, paper: str | None, *, large_print: bool) -> int:
    """Make the pages of lessons; give the exit code."""

    def make(path: Path, picture_process: PictureProcess, told: Callable[[str], None]) -> "Made":
        from foldmath import making

        return making.make(path, _order(out, paper, large_print), picture_process, told)

    return _each(lessons, make)


def make_class_sets(
    lessons: list[str], out: str, paper: str | None, *, large_print: bool, roster: str | None, pupils: int
) -> int:
    """Make class sets of lessons, for the pupils of a roster or for a number of them; give the exit code."""

    def make(path: Path, picture_process: PictureProcess, told: Callable[[str], None]) -> "Made":
        from foldmath import making

        return making.make_class(
            path, _order(out, paper, large_print), lambda: _pupils(roster, pupils), picture_process, told
        )

    return _each(lessons, make)


def _order(out: str, paper: str | None, large_print: bool) -> "Order":
    from foldmath.making import Order
    from foldmath.pages.looks import LARGE, REGULAR

    return Order(Path(out), paper, LARGE if large_print else REGULAR)


def _pupils(roster: str | None, number: int) -> "tuple[Pupil, ...]":
    from foldmath.lesson.roster import pupils_without_roster, read_roster
    from foldmath.pages.pdf.glyphs import prints_right

    return pupils_without_roster(number) if roster is None else read_roster(Path(roster), prints_right)


def make_booklets(lessons: list[str], out: str, paper: str | None, *, large_print: bool) -> int:
    """Make the booklets of lessons and nothing else; give the exit code."""

    def make(path: Path, picture_process: PictureProcess, told: Callable[[str], None]) -> "Made":
        from foldmath import making

        told("laying out the booklet")
        return making.booklet(path, _order(out, paper, large_print), picture_process)

    return _each(lessons, make)


def draw_diagrams(lessons: list[str], out: str, kinds: tuple[str, ...] = ("svg", "png")) -> int:
    """Save the diagrams of lessons, in one kind of file or both; give the exit code."""

    def draw(path: Path, picture_process: PictureProcess, told: Callable[[str], None]) -> "Made":
        from foldmath import making

        told("drawing")
        return making.draw(path, Path(out), picture_process, kinds)

    return _each(lessons, draw)


def _each(lessons: list[str], work: Callable[[Path, PictureProcess, Callable[[str], None]], "Made"]) -> int:
    # The picture_process comes first: he fetches his tools while the folding begins.
    code, began = 0, time.monotonic()
    with PictureProcess() as picture_process:
        for number, name in enumerate(lessons, start=1):
            progress = Progress(name, number, len(lessons), began)
            try:
                _report(work(Path(name), picture_process, progress))
            except FoldmathError as error:
                print(error, file=sys.stderr)
                code = max(code, error.exit_code)
    return code


def _report(made: "Made") -> None:
    from foldmath.lesson.echo import did_you_mean, said

    lesson = made.proved.lesson
    print(lesson.title)
    for index, (step, moment) in enumerate(zip(lesson.steps, made.proved.moments, strict=True)):
        echo = said(moment)
        print(f"{index + 1:3}.  {step.text}" + (f":  {echo}" if echo else ""))
        question = did_you_mean(lesson.steps, made.proved.moments, index)
        if question:
            print(f"      {question}")
    for note in made.notes:
        tell(phrase("note: {note}", note=note))
    diagrams = [path for path in made.files if path.suffix in (".svg", ".png")]
    pages = [path for path in made.files if path not in diagrams]
    for path in pages:
        print(f"wrote {path}")
    if diagrams:
        kinds = " and ".join(sorted({path.suffix[1:].upper() for path in diagrams}))
        print(f"wrote {len(diagrams)} diagrams ({kinds}) in {diagrams[0].parent}")
