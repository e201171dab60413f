"""``make``, ``booklet`` and ``draw``: several lessons at once; one that fails does not stop the others."""

import os
import sys
import time
from collections.abc import Callable, Iterable
from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING, TypeAlias

from foldmath.cli.terminal.new_files import require_folder, require_own_folders
from foldmath.cli.terminal.speaking import spoken, tell, tell_error, tell_written
from foldmath.drawing.rendering.picture_process import PictureProcess
from foldmath.errors import FoldmathError
from foldmath.pages.printing_process import PrintingProcess
from foldmath.phrases import Said, counted, listed, phrase
from foldmath.words.languages import terminal_language

if TYPE_CHECKING:
    from foldmath.lesson.proving import ProvedLesson
    from foldmath.making import Made, Order

PATIENCE_SECONDS = 1.0
"""Work that takes longer says what it is doing."""


class Progress:
    """Says on standard error what is being done, once it has taken a while."""

    def __init__(self, name: str, number: int, total: int, began: float) -> None:
        self.heading: Said = name
        if total > 1:
            self.heading = phrase("{name} ({number} of {total})", name=name, number=number, total=total)
        self.began = began

    def __call__(self, doing: Said) -> None:
        """Say it, if it is time."""
        if time.monotonic() - self.began > PATIENCE_SECONDS:
            print(f"{spoken(self.heading)}: {spoken(doing)} …", file=sys.stderr)


Work: TypeAlias = "Callable[[Path, PictureProcess, Callable[[Said], None]], Made]"
"""Makes something of one lesson, and says what it is doing."""


def make_pages(
    lessons: list[str],
    out: str,
    paper: str | None,
    *,
    large_print: bool,
    only: str | None = None,
    language: str | None = None,
) -> int:
    """Make the pages of lessons, or those parts of them that are named; give the exit code."""

    def prepare() -> Work:
        from foldmath import making

        order = order_of(out, paper, large_print, language)
        if only is not None:
            order = replace(order, parts=making.parts_named(only))
        return lambda path, picture_process, report_progress: making.make(
            path, order, picture_process, report_progress
        )

    return _each(lessons, prepare)


def make_editable(
    lessons: list[str], out: str, paper: str | None, *, large_print: bool, language: str | None = None
) -> int:
    """Make the pages of lessons, with worksheets and keys once more as Word files; give the exit code."""

    def prepare() -> Work:
        from foldmath import making

        order = order_of(out, paper, large_print, language)
        return lambda path, picture_process, report_progress: making.make_with_copy(
            path, order, picture_process, report_progress
        )

    return _each(lessons, prepare)


def order_of(out: str, paper: str | None, large_print: bool, language: str | None = None) -> "Order":
    """Say what is wanted of the lessons of a command.

    Raises:
        Unreadable: a language or a paper is none.
        CannotWrite: nothing can be written where the pages are to go; said before an hour's work, not after.
    """
    from foldmath.making import Order, languages_named
    from foldmath.pages.looks import LARGE, REGULAR

    languages = () if language is None else languages_named(language)
    require_folder(Path(out))
    return Order(out=Path(out), paper=paper, look=LARGE if large_print else REGULAR, languages=languages)


def make_booklets(lessons: list[str], out: str, paper: str | None, *, large_print: bool) -> int:
    """Make the booklets of lessons and nothing else; give the exit code."""

    def prepare() -> Work:
        from foldmath import making

        order = order_of(out, paper, large_print)

        def make(
            path: Path, picture_process: PictureProcess, report_progress: Callable[[Said], None]
        ) -> "Made":
            report_progress(phrase("laying out the booklet"))
            return making.booklet(path, order, picture_process)

        return make

    return _each(lessons, prepare)


def draw_diagrams(
    lessons: list[str], out: str, kinds: tuple[str, ...] = ("svg", "png"), folder: str = "drawings"
) -> int:
    """Save the diagrams of lessons, each in a folder of its own; give the exit code."""

    def prepare() -> Work:
        from foldmath import making

        def draw(
            path: Path, picture_process: PictureProcess, report_progress: Callable[[Said], None]
        ) -> "Made":
            report_progress(phrase("drawing"))
            return making.draw(path, Path(out), picture_process, kinds, folder)

        return draw

    return _each(lessons, prepare, PictureProcess)


def _each(
    lessons: list[str],
    prepare: Callable[[], Work],
    process: Callable[[], PictureProcess] = PrintingProcess,
) -> int:
    require_own_folders([Path(name) for name in lessons])
    # The other process comes first: it fetches its tools while the folding begins.
    code, began = 0, time.monotonic()
    lacking: dict[Said, None] = {}
    with process() as picture_process:
        work = prepare()
        for number, name in enumerate(lessons, start=1):
            progress = Progress(name, number, len(lessons), began)
            try:
                made = work(Path(name), picture_process, progress)
                _report(made)
                lacking |= dict.fromkeys(made.lacking)
            except FoldmathError as error:
                code = max(code, tell_error(error))
    tell_notes(lacking)
    return code


def tell_notes(notes: Iterable[Said]) -> None:
    """Say what the teacher should know."""
    for note in notes:
        tell(phrase("note: {note}", note=note))


def _report(made: "Made") -> None:
    tell_lesson(made.proved)
    tell_notes(made.notes)
    diagrams = [path for path in made.files if path.suffix in (".svg", ".png")]
    pages = [path for path in made.files if path not in diagrams]
    for path in pages:
        tell_written(path)
    if diagrams:
        kinds = listed(sorted({path.suffix[1:].upper() for path in diagrams}))
        told = {"kinds": kinds, "folder": str(diagrams[0].parent)}
        tell(
            counted(
                "wrote {count} diagram ({kinds}) in {folder}",
                "wrote {count} diagrams ({kinds}) in {folder}",
                len(diagrams),
                **told,
            )
        )


def tell_lesson(proved: "ProvedLesson") -> None:
    """Print the title of a lesson and its steps, each with what it did, and what may have been meant."""
    from foldmath.lesson.echo import did_you_mean, echo_of
    from foldmath.words.steps import for_reader

    lesson, language = proved.lesson, terminal_language(os.environ)
    print(lesson.title)
    for index, (step, moment) in enumerate(zip(lesson.steps, proved.moments, strict=True)):
        echo = echo_of(moment)
        print(f"{index + 1:3}.  {for_reader(step, language)}" + (f":  {spoken(echo)}" if echo else ""))
        question = did_you_mean(lesson.steps, proved.moments, index)
        if question:
            print(f"      {spoken(question)}")
