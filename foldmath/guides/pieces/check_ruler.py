"""The check ruler: millimetres and inches, by which a teacher sees that nothing was scaled."""

from collections.abc import Iterator
from typing import NamedTuple

from foldmath.drawing.look import MM_PER_INCH, POINT_MM
from foldmath.drawing.scenes import Meaning, Spot, Stroke
from foldmath.pages.pdf.exact import Anchor, ExactMark, Rectangle, Words
from foldmath.pages.pdf.fonts import FIGURE_HEIGHT
from foldmath.values import frozen


class Reach(NamedTuple):
    """How far a ruler goes: whole tens of millimetres, and no less in whole inches."""

    millimetres: int
    inches: int

    @property
    def length_mm(self) -> float:
        """From its zero to its last inch."""
        return self.inches * MM_PER_INCH


FULL_REACH, HALF_REACH = Reach(100, 4), Reach(50, 2)
"""The longer the ruler, the plainer is a small change of scale; half of it lies between folds where all of it
would lie across them."""

LONG_MM, SHORT_MM = 2.6, 1.5
BEFORE_MM = 2.5
"""The room for words before the zero."""

FIGURE_GAP_MM, RIM_MM = 0.7, 0.68
"""Between ticks and figures, and below and above the figures."""

USUAL_PT = 9.0
AFTER_MM, UNIT_SHIFT_MM = 9.5, 3.6
"""The room for words after the last inch, and from the middle of the last figure to the name of the unit;
for figures of the usual size."""


@frozen
class Ruler:
    """The ruler with figures of a size, in points; its lengths are the same at all sizes.

    Args:
        size_pt: of its figures and words.
        reach: how far it goes.
        inches_name: what its second scale counts, as its reader calls them in short.
    """

    size_pt: float = USUAL_PT
    reach: Reach = FULL_REACH
    inches_name: str = "in"

    @property
    def figure_mm(self) -> float:
        """How high figures are in the font of the pages."""
        return FIGURE_HEIGHT * self.size_pt * POINT_MM

    @property
    def base_mm(self) -> float:
        """The base line's height over the foot of the ruler's place."""
        return LONG_MM + FIGURE_GAP_MM + self.figure_mm + RIM_MM

    @property
    def height_mm(self) -> float:
        """The place's height."""
        return 2 * self.base_mm

    @property
    def width_mm(self) -> float:
        """The place's width."""
        return BEFORE_MM + self.reach.length_mm + AFTER_MM * self.size_pt / USUAL_PT

    @property
    def unit_shift_mm(self) -> float:
        """From the middle of the last figure to the name of the unit."""
        return UNIT_SHIFT_MM * self.size_pt / USUAL_PT


def ruler_marks(place: Rectangle, turned: bool, ruler: Ruler) -> Iterator[ExactMark]:
    """Give the marks of a ruler in its place."""

    def at(along: float, over: float) -> Spot:
        if turned:
            return Spot(place.right - ruler.base_mm - over, place.bottom + BEFORE_MM + along)
        return Spot(place.left + BEFORE_MM + along, place.bottom + ruler.base_mm + over)

    def words(along: float, over: float, text: str, anchor: Anchor = Anchor.MIDDLE) -> Words:
        return Words(at=at(along, over), text=text, size_pt=ruler.size_pt, anchor=anchor, turned=turned)

    millimetres, inches = ruler.reach
    last = ruler.reach.length_mm
    yield Stroke((at(0, 0), at(last, 0)), Meaning.TICK)
    above, below = LONG_MM + FIGURE_GAP_MM, -LONG_MM - FIGURE_GAP_MM - ruler.figure_mm
    for millimetre in range(0, millimetres + 1, 10):
        long = LONG_MM if millimetre % 50 == 0 else SHORT_MM
        yield Stroke((at(millimetre, 0), at(millimetre, long)), Meaning.TICK)
        if millimetre % 50 == 0:
            yield words(millimetre, above, str(millimetre))
    for half in range(2 * inches + 1):
        long = SHORT_MM if half % 2 else LONG_MM
        yield Stroke((at(half * MM_PER_INCH / 2, 0), at(half * MM_PER_INCH / 2, -long)), Meaning.TICK)
        if half % 2 == 0:
            yield words(half * MM_PER_INCH / 2, below, str(half // 2))
    yield words(millimetres + ruler.unit_shift_mm, above, "mm", Anchor.START)
    yield words(last + ruler.unit_shift_mm / 2, below, ruler.inches_name, Anchor.START)
