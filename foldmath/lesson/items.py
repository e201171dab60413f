"""Items of practice with answers that the model has checked: each product is folded, shaded and counted."""

from dataclasses import dataclass
from functools import cache

from foldmath.errors import FoldmathError
from foldmath.paper.performing import perform
from foldmath.paper.state import Sheet, open_sheet
from foldmath.paper.steps import FEWEST_PLEATS, MOST_PLEATS, Axis, Open, Pleat, Shade, Step
from foldmath.plane.numbers import ONE, exact
from foldmath.statements.products import Product
from foldmath.statements.ratios import Ratio


class AnswerNotShown(FoldmathError):
    """The model counts another answer than arithmetic gives; such a page is never printed."""


@dataclass(frozen=True)
class ShadedProduct:
    """A product of two proper fractions, as an area model.

    Args:
        product: as it is asked.
        columns, rows: into how many parts the sheet is cut each way.
        across, up: how many of them the factors take.
        counted: the panels shaded twice.
    """

    product: Product
    columns: int
    rows: int
    across: int
    up: int
    counted: int

    @property
    def panels(self) -> int:
        """All panels of the sheet."""
        return self.columns * self.rows


@cache
def shaded_product(product: Product) -> ShadedProduct | None:
    """Fold and shade a product on a sheet, and count; None for factors that no one sheet shows.

    The first factor takes columns from the left, the second rows from the bottom.

    Raises:
        AnswerNotShown: the count disagrees with the product.
    """
    first, second = product.first, product.second
    if not (_folds(first) and _folds(second)):
        return None
    steps: list[Step] = []
    for ratio, axis in ((second, Axis.HEIGHT), (first, Axis.WIDTH)):
        steps += (Pleat(axis, ratio.denominator), Open(), Shade(ratio.numerator, ratio.denominator, axis))
    state = open_sheet(Sheet(ONE, ONE, "sheet"))
    for step in steps:
        state = perform(step, state)
    counted = sum(panel.shaded == len((first, second)) for panel in state.panels)
    if exact(counted, len(state.panels)) != product.value:
        raise AnswerNotShown(f"folding shows {counted} of {len(state.panels)} panels for {product.text}")
    return ShadedProduct(
        product, first.denominator, second.denominator, first.numerator, second.numerator, counted
    )


def _folds(ratio: Ratio) -> bool:
    """Tell whether a factor is a part of one sheet that pleats can show."""
    return (
        FEWEST_PLEATS <= ratio.denominator <= MOST_PLEATS
        and ratio.numerator <= ratio.denominator
        and not ratio.whole
    )
