"""Pens on a canvas: takes a line style of the table of pictures, and draws with it from there on."""

from typing import Any

from foldmath.drawing.look import Pen
from foldmath.pages.pdf.styles import points

FLAT_CAP, ROUND_CAP = 0, 1
"""Ends of lines: ISO 32000-1:2008, 8.4.3.3."""


def take_pen(canvas: Any, pen: Pen) -> None:
    """Draw with a pen, until another one is taken or what was saved before is restored."""
    canvas.setLineWidth(points(pen.width_mm))
    canvas.setStrokeGray(pen.grey)
    canvas.setLineCap(ROUND_CAP if pen.round_ends else FLAT_CAP)
    canvas.setDash([points(dash) for dash in pen.dashes_mm])
