"""Writing on a canvas: letters of any script, which are read back as they were typed."""

from typing import Any

from foldmath.pages.lettering.shaping import EM, runs_of, stands_as_it_is
from foldmath.pages.pdf import fonts
from foldmath.pages.tags import spoken


def write(canvas: Any, x: float, y: float, text: str, font: str, size: float) -> None:
    """Write a text with its left end on the baseline at (x, y), in points."""
    if stands_as_it_is(text, font):
        canvas.setFont(font, size)
        canvas.drawString(x, y, text)
        return
    for run in runs_of(text, font):
        if run.told:
            canvas.addLiteral(spoken.begin(run.told))
        line = canvas.beginText(x, y)
        line.setFont(run.font, size)
        line.textOut(run.signs)
        canvas.drawText(line)
        if run.told:
            canvas.addLiteral(spoken.END)
        x += run.width * size / EM


def write_middle(canvas: Any, x: float, y: float, text: str, font: str, size: float) -> None:
    """Write a text with its middle at x."""
    write(canvas, x - 0.5 * fonts.width_of(text, font, size), y, text, font, size)


def write_right(canvas: Any, x: float, y: float, text: str, font: str, size: float) -> None:
    """Write a text that ends at x."""
    write(canvas, x - fonts.width_of(text, font, size), y, text, font, size)
