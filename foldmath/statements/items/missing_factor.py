"""Missing factor: ``2/3 × □ = 8/15``, or the box on the other side, or whole numbers of panels."""

from functools import cache
from typing import ClassVar

from foldmath.plane.numbers import ZERO
from foldmath.statements.answers import working
from foldmath.statements.composing import equation
from foldmath.statements.items.item import (
    BOX,
    Difficulty,
    Item,
    ItemKind,
    NoSuchItem,
    figures_in,
    other_forms,
)
from foldmath.statements.products import Product
from foldmath.statements.ratios import Ratio, fraction, lowest_terms
from foldmath.statements.rules.problems import MissingFactor
from foldmath.statements.rules.wrong_answers import likely_wrong_answers
from foldmath.values import frozen


@frozen(kw_only=True)
class MissingFactorItem(Item):
    """A product with one factor missing.

    Args:
        question: the sentence, with ``□`` for the missing factor.
        first: the first factor; None where the box stands.
        second: the second factor; None where the box stands.
        product: the product as shown, not reduced.
        missing: what belongs in the box.
        counts: whether all numbers count panels, so that the missing one is a number of parts.
    """

    kind: ClassVar[ItemKind] = ItemKind.MISSING_FACTOR

    answer: Ratio
    question: str
    first: Ratio | None
    second: Ratio | None
    product: Ratio
    missing: Ratio
    counts: bool


@cache
def make_missing_factor(first: Ratio, second: Ratio, *, box_first: bool) -> MissingFactorItem:
    """Make the item whose full sentence is ``first × second``, one of them hidden.

    Raises:
        NoSuchItem: a factor is 0, or the product shows the missing factor as it is.
    """
    known, missing = (second, first) if box_first else (first, second)
    product = Product(first, second)
    shown = product.unreduced
    if ZERO in (first.value, second.value) or shown == missing:
        raise NoSuchItem(f"nothing is missing in {product.text} = {shown}")
    sides = (BOX, second.text) if box_first else (first.text, BOX)
    question = f"{sides[0]} × {sides[1]} = {shown}"
    counts = first.whole and second.whole
    problem = MissingFactor(known, shown, missing)
    return MissingFactorItem(
        asks=f"{known} × {BOX} = {shown}",
        difficulty=Difficulty.MISSING_FACTOR.of(known, missing, more=2 * box_first),
        answer=missing,
        working=working(equation(product.asked, shown)),
        accepted=other_forms(missing, *_forms(missing)),
        problem=problem,
        wrong=likely_wrong_answers(problem),
        shown=figures_in(known, shown),
        question=question,
        first=None if box_first else first,
        second=second if box_first else None,
        product=shown,
        missing=missing,
        counts=counts,
    )


def _forms(missing: Ratio) -> tuple[Ratio, ...]:
    lowest = lowest_terms(missing.value)
    if missing.whole:
        return (lowest,)
    return (lowest, *(fraction(n * missing.numerator, n * missing.denominator) for n in (2, 3)))
