"""The check ruler: 100 millimetres and 4 inches, by which a teacher sees that nothing was scaled."""

from collections.abc import Iterator

from foldmath.drawing.layout import MM_PER_INCH, POINT_MM
from foldmath.drawing.scenes import Meaning, Spot, Stroke
from foldmath.pages.pdf.exact import Anchor, ExactMark, Rectangle, Words
from foldmath.pages.pdf.fonts import FIGURE_HEIGHT

LENGTH_MM, INCHES = 100, 4
BASE_MM, HEIGHT_MM = 6.2, 12.4
"""The base line's height over the foot of the ruler's place, and the place's height."""

BEFORE_MM, AFTER_MM = 2.5, 9.5
"""The room for words before the zero and after the last inch."""

WIDTH_MM = BEFORE_MM + INCHES * MM_PER_INCH + AFTER_MM
LONG_MM, SHORT_MM = 2.6, 1.5
SIZE_PT = 9.0
FIGURE_MM = FIGURE_HEIGHT * SIZE_PT * POINT_MM
"""How high figures are in the font of the pages."""

FIGURE_GAP_MM = 0.7
UNIT_SHIFT_MM = 3.6
"""From the middle of the last figure to the name of the unit."""


def ruler_marks(place: Rectangle, turned: bool) -> Iterator[ExactMark]:
    """Give the marks of the ruler in its place."""

    def at(along: float, over: float) -> Spot:
        if turned:
            return Spot(place.right - BASE_MM - over, place.bottom + BEFORE_MM + along)
        return Spot(place.left + BEFORE_MM + along, place.bottom + BASE_MM + over)

    def words(along: float, over: float, text: str, anchor: Anchor = Anchor.MIDDLE) -> Words:
        return Words(at=at(along, over), text=text, size_pt=SIZE_PT, anchor=anchor, turned=turned)

    last = INCHES * MM_PER_INCH
    yield Stroke((at(0, 0), at(last, 0)), Meaning.TICK)
    above, below = LONG_MM + FIGURE_GAP_MM, -LONG_MM - FIGURE_GAP_MM - FIGURE_MM
    for millimetre in range(0, LENGTH_MM + 1, 10):
        long = LONG_MM if millimetre % 50 == 0 else SHORT_MM
        yield Stroke((at(millimetre, 0), at(millimetre, long)), Meaning.TICK)
        if millimetre % 50 == 0:
            yield words(millimetre, above, str(millimetre))
    for half in range(2 * INCHES + 1):
        long = SHORT_MM if half % 2 else LONG_MM
        yield Stroke((at(half * MM_PER_INCH / 2, 0), at(half * MM_PER_INCH / 2, -long)), Meaning.TICK)
        if half % 2 == 0:
            yield words(half * MM_PER_INCH / 2, below, str(half // 2))
    yield words(LENGTH_MM + UNIT_SHIFT_MM, above, "mm", Anchor.START)
    yield words(last + UNIT_SHIFT_MM / 2, below, "in", Anchor.START)
