"""Pictures on the page: lays a recording's ink on a form, once a document, and places the form."""

from typing import Any, assert_never

from foldmath.drawing.look import DIGIT_WIDTH
from foldmath.drawing.rendering.recording import Digits, Inked, Recording, Said
from foldmath.pages.pdf import fonts
from foldmath.pages.tags import spoken
from foldmath.typeface.cutting import FIGURE_WIDTH


def place(canvas: Any, recording: Recording, x: float, y: float) -> None:
    """Place a picture with its bottom left corner at (x, y), in points."""
    name = f"p{recording.name}"
    if not canvas.hasForm(name):
        canvas.beginForm(name, 0, 0, recording.width, recording.height)
        _lay_ink(canvas, recording)
        canvas.endForm()
    canvas.saveState()
    canvas.translate(x, y)
    canvas.doForm(name)
    canvas.restoreState()


def _lay_ink(canvas: Any, recording: Recording) -> None:
    for ink in recording.ink:
        match ink:
            case Inked(operators):
                canvas.addLiteral(f"q {operators} Q")
            case Digits(x, y, size, text):
                # The picture keeps the room of another face's figures, which are a little wider.
                spare = size * len(text) * (DIGIT_WIDTH - FIGURE_WIDTH)
                canvas.setFont(fonts.REGULAR, size)
                canvas.drawString(x + spare / 2, y, text)
            case Said(words):
                canvas.addLiteral(spoken.begin(words) if words else spoken.END)
            case _:
                assert_never(ink)
