"""``parts``: the ways to fold a side into equal parts, told in short and laid out as a page."""

import os
from pathlib import Path

from foldmath.cli.terminal.speaking import tell_written
from foldmath.errors import Unreadable
from foldmath.pages.looks import LARGE, REGULAR
from foldmath.paper.lengths import NumberRefused, read_length
from foldmath.paper.sizes import ORIENTATIONS, paper_named
from foldmath.paper.sizes import sheet as laid
from foldmath.paper.state import Sheet
from foldmath.paper.steps import Axis
from foldmath.phrases import either, phrase
from foldmath.plane.numbers import Exact, exact, written
from foldmath.planning.parts.equal_parts import Way, ways
from foldmath.planning.parts.ways_in_words import in_words
from foldmath.words.languages import terminal_language

FINEST_MM = exact(1, 10)
"""Nobody folds finer by hand (common practice, no source)."""

USUAL_ACCURACY = '--accuracy "1 mm"'


def tell_parts(
    parts: int,
    paper: str,
    orientation: str,
    along: str,
    accuracy: str,
    out: str,
    *,
    large_print: bool = False,
) -> int:
    """Print the ways to fold equal parts, and write the page that shows them; give the exit code.

    Args:
        parts: how many, from 3 to 12.
        paper: the name of a paper; A4 and papers in millimetres are printed on A4, others on letter.
        orientation: ``landscape`` or ``portrait``.
        along: ``width`` or ``height``.
        accuracy: how far off a crease may be where a way is not exact, such as ``1 mm``.
        out: the folder to write in.
        large_print: whether the page is set at 18 points.

    Raises:
        Unreadable: one of the words cannot be read.
        CannotWrite: the page could not be put in place.
    """
    _one_of(orientation, ORIENTATIONS, "--orientation")
    _one_of(along, tuple(axis.value for axis in Axis), "--along")
    size = paper_named(paper)
    sheet = laid(size, orientation)
    found = ways(sheet, parts, Axis(along), _accuracy_mm(accuracy))
    print(in_words(found, size.name, sheet, terminal_language(os.environ)))
    print()
    tell_written(_written(found, size.name, sheet, Path(out), LARGE if large_print else REGULAR))
    return 0


def _one_of(word: str, known: tuple[str, ...], option: str) -> None:
    if word not in known:
        raise Unreadable(
            phrase("{option} {word}: choose {known}", option=option, word=word, known=either(known)),
            f"{option} {known[0]}",
        )


def _accuracy_mm(words: str) -> Exact:
    try:
        accuracy = read_length(words).in_millimetres
    except NumberRefused as error:
        raise Unreadable(
            phrase("--accuracy {words}: {message}", words=words, message=error.message), USUAL_ACCURACY
        ) from None
    if accuracy < FINEST_MM:
        raise Unreadable(
            phrase(
                "--accuracy {words}: nobody folds finer than {finest} mm by hand",
                words=words,
                finest=written(FINEST_MM),
            ),
            USUAL_ACCURACY,
        )
    return accuracy


def _written(found: tuple[Way, ...], paper: str, sheet: Sheet, out: Path, look: str) -> Path:
    """Lay out the page and put it in place."""
    from foldmath.drawing.rendering.picture_process import PictureProcess
    from foldmath.guides.parts_page import parts_page
    from foldmath.making.sets.writing import put_in_place
    from foldmath.pages.page_fit import usual_page
    from foldmath.pages.printing import printed

    with PictureProcess() as picture_process:
        language = terminal_language(os.environ)
        page = parts_page(found, paper, usual_page(sheet), language, look)
        recordings = picture_process.recordings(list(page.pictures.values()))
        pictures = dict(zip(page.pictures, recordings.result(), strict=True))
    file = out / page.file
    put_in_place({file: printed([page.document], pictures, page.title, language, page.look)})
    return file
