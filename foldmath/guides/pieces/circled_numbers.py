"""Numbers of folds in circles."""

from collections.abc import Iterator

from foldmath.drawing.look import POINT_MM
from foldmath.drawing.scenes import Spot
from foldmath.pages.pdf.exact import Anchor, Disc, ExactMark, Words
from foldmath.pages.pdf.fonts import FIGURE_HEIGHT


def number_in_circle(middle: Spot, number: int, size_pt: float, radius: float) -> Iterator[ExactMark]:
    """Give a number in a circle."""
    yield Disc(middle, radius)
    baseline = middle.y - FIGURE_HEIGHT * size_pt * POINT_MM / 2
    yield Words(
        at=Spot(middle.x, baseline), text=str(number), size_pt=size_pt, bold=True, anchor=Anchor.MIDDLE
    )
