"""Numbers of folds, and letters of joins, in circles."""

from collections.abc import Iterator

from foldmath.drawing.look import POINT_MM
from foldmath.drawing.scenes import Spot
from foldmath.pages.pdf.exact import Anchor, Disc, ExactMark, Words
from foldmath.pages.pdf.fonts import FIGURE_HEIGHT


def in_circle(middle: Spot, sign: int | str, size_pt: float, radius: float) -> Iterator[ExactMark]:
    """Give a number or a letter in a circle."""
    yield Disc(middle, radius)
    baseline = middle.y - FIGURE_HEIGHT * size_pt * POINT_MM / 2
    yield Words(at=Spot(middle.x, baseline), text=str(sign), size_pt=size_pt, bold=True, anchor=Anchor.MIDDLE)
