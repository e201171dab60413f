"""The fonts of every page, embedded, and how wide words are in them; other fonts have what they lack."""

from functools import cache
from io import BytesIO

from reportlab.pdfbase import pdfmetrics

from foldmath.pages.lettering.glyph_fonts import PageFont
from foldmath.pages.lettering.shaping import EM, runs_of, stands_as_it_is
from foldmath.typeface.cutting import cut_font

REGULAR, BOLD = "Lexend", "Lexend-Bold"

AXIS = 0.292
"""Of the em: how high a fraction bar stands over the baseline, as the minus sign of Lexend does."""

FIGURE_HEIGHT = 0.71
ASCENT, DESCENT = 0.75, 0.23
"""Of the em: figures, and letters above and below the baseline, from the tables of Lexend."""

BRACKET_TOP, BRACKET_FOOT = 0.702, 0.186
"""Of the em: round brackets above and below the baseline, from their outlines in Lexend."""


@cache
def register_fonts() -> None:
    """Make both fonts known to reportlab, once in a process."""
    for name in (REGULAR, BOLD):
        pdfmetrics.registerFont(PageFont(name, BytesIO(cut_font(name))))


def font_name(bold: bool) -> str:
    """Give the name of the font for a weight."""
    return BOLD if bold else REGULAR


@cache
def width_of(text: str, font: str, size: float) -> float:
    """Give a text's width in points."""
    if stands_as_it_is(text, font):
        return float(pdfmetrics.stringWidth(text, font, size))
    return sum(run.width for run in runs_of(text, font)) * size / EM
