"""Shade and multiply: a product, and the sheets on which it is shaded and counted."""

from functools import cache
from typing import ClassVar

from foldmath.plane.numbers import ONE
from foldmath.statements.answers import working
from foldmath.statements.composing import equation
from foldmath.statements.items.item import Difficulty, Item, ItemKind, figures_in, other_forms
from foldmath.statements.items.sheets import Sheets, sheets_of
from foldmath.statements.products import Product
from foldmath.statements.ratios import Ratio
from foldmath.statements.rules.wrong_answers import likely_wrong_answers
from foldmath.values import frozen


@frozen(kw_only=True)
class ShadeItem(Item):
    """A product to shade and solve; its answer is as multiplied, not reduced.

    Args:
        product: as it is asked.
        sheets: the sheets to shade; None where a page has no room for them, and only figures are asked.
    """

    kind: ClassVar[ItemKind] = ItemKind.SHADE

    answer: Ratio
    product: Product
    sheets: Sheets | None

    @property
    def sheet_count(self) -> int:
        """On how many sheets it is shaded; 0 where only figures are asked."""
        return len(self.sheets.sheets) if self.sheets else 0


@cache
def make_shade(product: Product) -> ShadeItem:
    """Make the item of a product, its cells counted."""
    sheets = sheets_of(product)
    right = product.unreduced
    return ShadeItem(
        asks=f"{product.first} × {product.second} = ",
        difficulty=Difficulty.SHADE.of(product.first, product.second, more=4 * (product.value > ONE)),
        answer=right,
        working=working(equation(product.asked, *product.forms)),
        accepted=other_forms(right, *product.equivalents),
        problem=product,
        wrong=likely_wrong_answers(product),
        shown=figures_in(product.asked),
        product=product,
        sheets=sheets,
    )
