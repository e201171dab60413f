"""The pictures of a booklet, each ready to be drawn as large as its page allows."""

from collections.abc import Callable
from dataclasses import dataclass

from foldmath.booklets.booklet_flowables import Bounds
from foldmath.drawing.area_models import Grid, Guide, blank_model, shaded_model
from foldmath.drawing.place_value import blocks, least_height_mm
from foldmath.drawing.scenes import Scene
from foldmath.drawing.sheets.folded_sheets import folded_sheet
from foldmath.paper.moments.moment import Moment
from foldmath.statements.products import Product

LEAST_FOLD_MM, MOST_FOLD_MM = 22.0, 75.0
LEAST_CELL_MM = 5.0
"""No cell of a model is smaller, so far as its page allows: a child must be able to shade it."""

LEAST_MODEL_MM, MOST_MODEL_WIDTH_MM = 24.0, 90.0
MODEL_SHAPE = 0.72
"""The height of a model as a share of its width."""

BLOCKS_INSET_MM = 2.0
ENDLESS_MM = 1000.0


@dataclass(frozen=True, kw_only=True)
class Drawing:
    """A picture without a size yet.

    Args:
        name: that its page's HTML gives it.
        draw: gives its scene for a width and a greatest height, in mm.
        least_mm, most_mm: its height at least and at most, in mm.
        inset_mm: kept free all round inside that height and its width, for a frame.
    """

    name: str
    draw: Callable[[float, float], Scene]
    least_mm: float
    most_mm: float
    inset_mm: float = 0.0

    def scene(self, width_mm: float, height_mm: float) -> Scene:
        """Draw it for a width and a greatest height, in mm."""
        return self.draw(width_mm - 2 * self.inset_mm, height_mm - 2 * self.inset_mm)

    def bounds(self, width_mm: float) -> Bounds:
        """Give how high it may be on a page of a width."""
        natural = self.scene(width_mm, max(self.most_mm, self.least_mm)).height_mm + 2 * self.inset_mm
        most = min(natural, self.most_mm)
        return Bounds(min(self.least_mm, most), most)


def fold_drawing(name: str, moment: Moment) -> Drawing:
    """Draw the sheet before a fold, with the fold's arrow."""
    return Drawing(
        name=name,
        draw=lambda width, height: folded_sheet(moment.before, moment.step, width, height),
        least_mm=LEAST_FOLD_MM,
        most_mm=MOST_FOLD_MM,
    )


def model_drawings(name: str, product: Product) -> tuple[Drawing, Drawing]:
    """Draw the area model of a product: empty with ticks, and shaded."""
    first, second = product.first, product.second
    grid = Grid(first.denominator, second.denominator, first.numerator, second.numerator)
    most = MODEL_SHAPE * MOST_MODEL_WIDTH_MM
    least = max(LEAST_MODEL_MM, LEAST_CELL_MM * max(grid.rows, MODEL_SHAPE * grid.columns))
    return (
        Drawing(
            name=name,
            draw=lambda width, height: blank_model(grid, *_model_size(width, height), Guide.TICKS),
            least_mm=least,
            most_mm=most,
        ),
        Drawing(
            name=f"{name}-shaded",
            draw=lambda width, height: shaded_model(grid, *_model_size(width, height)),
            least_mm=least,
            most_mm=most,
        ),
    )


def block_drawing(name: str, value: int, width_mm: float) -> Drawing:
    """Draw a number in blocks.

    Raises:
        BlocksRefused: there are none, or the page is too narrow for the smallest of them.
    """
    least = least_height_mm(value, width_mm - 2 * BLOCKS_INSET_MM) + 2 * BLOCKS_INSET_MM
    return Drawing(
        name=name,
        draw=lambda width, height: blocks(value, width, height),
        least_mm=least,
        most_mm=ENDLESS_MM,
        inset_mm=BLOCKS_INSET_MM,
    )


def _model_size(width_mm: float, height_mm: float) -> tuple[float, float]:
    width = min(width_mm, MOST_MODEL_WIDTH_MM, height_mm / MODEL_SHAPE)
    return width, width * MODEL_SHAPE
