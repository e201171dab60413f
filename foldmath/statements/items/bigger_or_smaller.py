"""Bigger or smaller? A product beside one of its factors, or 1, to be compared without working it out."""

from functools import cache
from typing import ClassVar

from foldmath.statements.answers import working
from foldmath.statements.composing import compared, equation, times
from foldmath.statements.expressions import Claim, Comparison, Expression
from foldmath.statements.items.item import Difficulty, Item, ItemKind, NoSuchItem, figures_in
from foldmath.statements.products import Product
from foldmath.statements.ratios import Ratio, fraction, whole_number
from foldmath.statements.rules.product_compared import ProductCompared
from foldmath.statements.rules.wrong_answers import likely_wrong_answers
from foldmath.values import frozen

CIRCLE = "○"
"""Stands in a sentence of figures where the pupil writes <, > or =."""


@frozen(kw_only=True)
class BiggerOrSmallerItem(Item):
    """A product and a number, with a circle between for <, > or =.

    Args:
        product: on the left, unless they are turned.
        compared: with what: one of the product's factors, or 1.
        turned: whether the product stands on the right.
        question: the sentence, as ``2/3 × 4/5 ○ 4/5``.
        sign: what belongs in the circle.
        makes: how the product stands to the other number.
        with_whole: whether it stands beside 1, and no factor alone decides.
    """

    kind: ClassVar[ItemKind] = ItemKind.BIGGER_OR_SMALLER

    answer: Comparison
    product: Product
    compared: Ratio
    turned: bool
    question: str
    sign: Comparison
    makes: Comparison
    with_whole: bool

    @property
    def statement(self) -> Claim:
        """The sentence with its sign, as a key tells it: ``2/3 × 4/5 < 4/5``."""
        left, right = self.sides
        return compared(left, self.sign, right)

    @property
    def sides(self) -> tuple[Expression, Expression]:
        """What stands on the left, and on the right."""
        asked = self.product.asked
        return (self.compared, asked) if self.turned else (asked, self.compared)


@cache
def make_bigger_or_smaller(
    first: Ratio, second: Ratio, beside: Ratio | None = None, *, turned: bool = False
) -> BiggerOrSmallerItem:
    """Make the item ``first × second ○ second``; or ``○ first`` or ``○ 1``, where that stands ``beside`` it.

    Raises:
        NoSuchItem: there is nothing to multiply, or a fraction times a fraction stands beside 1.
    """
    product = Product(first, second)
    if not product.value:
        raise NoSuchItem(f"{product.text} is nothing, so there is nothing to compare")
    part = fraction(1, first.numerator)
    problem = ProductCompared(first, second, beside, turned)
    makes, other = problem.makes, problem.other
    with_whole = other not in (first, second)
    if with_whole and not (first.whole and other == whole_number(1)):
        raise NoSuchItem(f"{product.text} is not compared with {other}")
    question = f" {CIRCLE} ".join(map(str, (other, product.text) if turned else (product.text, other)))
    return BiggerOrSmallerItem(
        asks=question,
        difficulty=Difficulty.COMPARE.of(second, more=2 * (makes is not Comparison.LESS)),
        answer=problem.sign,
        working=working(problem.turns_on, *([equation(times(first, part), 1)] if with_whole else [])),
        accepted=(),
        problem=problem,
        wrong=likely_wrong_answers(problem),
        shown=figures_in(product.asked, other),
        product=product,
        compared=other,
        turned=turned,
        question=question,
        sign=problem.sign,
        makes=makes,
        with_whole=with_whole,
    )
