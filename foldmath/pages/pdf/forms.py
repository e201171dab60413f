"""Pictures on the page: places forms, and gives the ink of each, which a file has once."""

from collections.abc import Iterator
from typing import Any, assert_never

from foldmath.drawing.look import DIGIT_WIDTH
from foldmath.drawing.rendering.recording import Digits, Ink, Inked, Recording, Said
from foldmath.pages.lettering.glyph_fonts import Letter, letters_of
from foldmath.pages.pdf import fonts
from foldmath.pages.pdf.writing import operators
from foldmath.pages.tags import spoken
from foldmath.typeface.cutting import FIGURE_WIDTH


def place(canvas: Any, recording: Recording, x: float, y: float) -> None:
    """Place a picture with its bottom left corner at (x, y), in points."""
    name = f"p{recording.name}"
    canvas.needs.pictures[name] = recording
    canvas.saveState()
    canvas.translate(x, y)
    canvas.addLiteral(f"/{name} Do")
    canvas.restoreState()


def form_of(recording: Recording) -> str:
    """Give the operators of a picture's form."""
    return "\n".join(map(_operators, recording.ink))


def letters_on(recording: Recording) -> Iterator[Letter]:
    """Give the letters of a picture."""
    for ink in recording.ink:
        if isinstance(ink, Digits):
            yield from letters_of(ink.text, fonts.REGULAR)


def _operators(ink: Ink) -> str:
    match ink:
        case Inked(painted):
            return f"q {painted} Q"
        case Digits(x, y, size, text):
            # The picture keeps the room of another face's figures, which are a little wider.
            spare = size * len(text) * (DIGIT_WIDTH - FIGURE_WIDTH)
            return operators(x + spare / 2, y, text, fonts.REGULAR, size)
        case Said(words):
            return spoken.begin(words) if words else spoken.END
        case _:
            assert_never(ink)
