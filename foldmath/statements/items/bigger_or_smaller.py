"""Bigger or smaller? A product beside one of its factors, to be compared without working it out."""

from dataclasses import dataclass
from functools import cache
from typing import ClassVar

from foldmath.statements.answers import working
from foldmath.statements.composing import compared
from foldmath.statements.expressions import Comparison
from foldmath.statements.items.item import Difficulty, Item, ItemKind, NoSuchItem, figures_in
from foldmath.statements.products import Product
from foldmath.statements.ratios import Ratio
from foldmath.statements.rules.problems import ProductCompared
from foldmath.statements.rules.wrong_answers import likely_wrong_answers

CIRCLE = "○"
"""Stands in a sentence of figures where the pupil writes <, > or =."""


@dataclass(frozen=True, kw_only=True)
class BiggerOrSmallerItem(Item):
    """A product and its second factor, with a circle between for <, > or =.

    Args:
        product: on the left.
        compared: on the right, the product's second factor.
        question: the sentence, as ``2/3 × 4/5 ○ 4/5``.
        sign: what belongs in the circle.
    """

    kind: ClassVar[ItemKind] = ItemKind.BIGGER_OR_SMALLER

    answer: Comparison
    product: Product
    compared: Ratio
    question: str
    sign: Comparison


@cache
def make_bigger_or_smaller(first: Ratio, second: Ratio) -> BiggerOrSmallerItem:
    """Make the item ``first × second ○ second``.

    Raises:
        NoSuchItem: there is nothing to multiply.
    """
    product = Product(first, second)
    if not product.value:
        raise NoSuchItem(f"{product.text} is nothing, so there is nothing to compare")
    problem = ProductCompared(first, second)
    sign = problem.sign
    question = f"{product.text} {CIRCLE} {second}"
    return BiggerOrSmallerItem(
        asks=question,
        difficulty=Difficulty.COMPARE.of(second, more=2 * (sign is not Comparison.LESS)),
        answer=sign,
        working=working(compared(first, sign, 1)),
        accepted=(),
        problem=problem,
        wrong=likely_wrong_answers(problem),
        shown=figures_in(product.asked, second),
        product=product,
        compared=second,
        question=question,
        sign=sign,
    )
