"""How each meaning is drawn: the one place for line styles, tones and sizes of pictures.

Valley dashed, mountain dash-dot-dot, an existing crease a thin line, the outline of the whole dotted:
the Yoshizawa-Randlett conventions (S. Randlett, The Art of Origami, 1961). None rests on colour.
"""

from dataclasses import replace

from foldmath.drawing.scenes import Meaning, Tone
from foldmath.values import frozen

MM_PER_INCH, POINTS_PER_INCH = 25.4, 72
POINT_MM = MM_PER_INCH / POINTS_PER_INCH
"""A point in PDF is 1/72 in (ISO 32000-1:2008, 8.3.2.3)."""


@frozen
class Pen:
    """A line style: width, grey (0 black, 1 white) and dashes, all lengths in mm.

    A copier that knows only black and white, at 150 dots an inch, loses lines thinner than 0.2 mm or paler
    than black: one that falls between two rows of dots leaves both of them less than half black.
    """

    width_mm: float
    grey: float = 0.0
    dashes_mm: tuple[float, ...] = ()
    round_ends: bool = False


PENS = {
    Meaning.SHEET_EDGE: Pen(0.3),
    Meaning.FOLDED_EDGE: Pen(0.3),
    Meaning.VALLEY: Pen(0.42, dashes_mm=(2.2, 1.2)),
    Meaning.MOUNTAIN: Pen(0.42, dashes_mm=(2.8, 0.9, 0.42, 0.9, 0.42, 0.9)),
    Meaning.CREASE: Pen(0.22),
    Meaning.CUT: Pen(0.9),
    Meaning.CUT_ACROSS: Pen(0.25, dashes_mm=(2.0, 1.5)),
    Meaning.CREASE_TO_COME: Pen(0.23, dashes_mm=(0.73, 0.53)),
    Meaning.FLAP_OVER: Pen(0.33),
    Meaning.FLAP_BEHIND: Pen(0.33, dashes_mm=(1.07, 0.73)),
    Meaning.WHOLE: Pen(0.32, dashes_mm=(0.01, 0.9), round_ends=True),
    Meaning.GRID: Pen(0.3),
    Meaning.OUTLINE: Pen(0.6),
    Meaning.HATCH: Pen(0.22, grey=0.15),
    Meaning.ARROW: Pen(0.4, round_ends=True),
    Meaning.ARROW_BEHIND: Pen(0.4, dashes_mm=(1.3, 1.1)),
    Meaning.TICK: Pen(0.3),
}

INK = Pen(0.3)
"""Outlines of stars and circles."""

SCREEN_WEIGHT = 1.5
"""On a screen, read from the back of a room, lines and dashes are so many times what they are on paper."""

TONES = {Tone.PRINTED_SIDE: 1.0, Tone.BACK_SIDE: 0.86, Tone.INK: 0.0}

CREASE_STOPS_SHORT_MM = 1.3
"""How far an existing crease stops before the paper's edge (from memory, common in diagrams)."""

LAYER_STEP_MM = 0.55
"""How far each lower layer peeps out, so that layers can be told at the edges."""

MOST_LAYERS_SHOWN = 8

ARROW_HEAD_MM = 2.2
DIGIT_HEIGHT = 0.73
"""Of the em, in DejaVu Sans: (from the font's own table) figures are 1493 of 2048 units high."""

FIGURE_GAP = 0.2
"""Of the em: from the bar of a fraction to the digits above and below."""

BAR_WIDTH = 0.07
"""Of the em: the thickness of a fraction's bar."""

BAR_OVERHANG = 0.08
"""Of the em: how far the bar goes past the wider number at each end."""

DIGIT_WIDTH = 0.636
"""Of the em, in DejaVu Sans: every figure is 1303 of 2048 units wide."""


def on_screen(pen: Pen) -> Pen:
    """Give the pen of a line on a screen, in mm of a picture that has the size that it has on paper."""
    dashes = tuple(SCREEN_WEIGHT * dash for dash in pen.dashes_mm)
    return replace(pen, width_mm=SCREEN_WEIGHT * pen.width_mm, dashes_mm=dashes)
