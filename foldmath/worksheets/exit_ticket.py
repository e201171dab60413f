"""The exit ticket: one question about today's sheet, one without paper; two tickets to a page."""

from collections.abc import Iterable, Sequence
from math import prod

from foldmath.lesson.kinds import reach
from foldmath.statements.composing import equation, times
from foldmath.statements.expressions import Claim, Figures, numbers_in
from foldmath.statements.items import Item, Reach
from foldmath.statements.products import Product
from foldmath.statements.ratios import Ratio, fraction, whole_number
from foldmath.values import frozen
from foldmath.worksheets.fold_rows import FoldRow
from foldmath.worksheets.folding_part import FoldingPart
from foldmath.worksheets.worksheet import Worksheet

PAIRS = tuple(
    Product(fraction(*first), fraction(*second))
    for first, second in (
        ((2, 3), (1, 2)),
        ((1, 2), (3, 4)),
        ((1, 3), (3, 4)),
        ((1, 2), (5, 6)),
        ((3, 4), (2, 3)),
        ((2, 5), (1, 2)),
        ((1, 4), (2, 3)),
    )
)
BY_WHOLES = tuple(
    Product(whole_number(whole), fraction(*part))
    for whole, part in ((3, (1, 4)), (2, (2, 5)), (4, (2, 3)), (3, (3, 8)), (5, (1, 6)))
)
"""Questions without paper, easy first; the first that no page of the lesson asks is taken."""

PANELS = (4, 6, 8, 3, 2)
"""For a class that multiplies no fractions: a sheet in so many equal panels."""


@frozen
class ExitTicket:
    """What the ticket asks.

    Args:
        row: the last fold of the lesson; None if it made no panels.
        product: the question without paper; None for a class that multiplies no fractions.
        panels: the question without paper for that class.
    """

    row: FoldRow | None
    product: Product | None
    panels: int

    @property
    def answer(self) -> Ratio:
        """The answer to the question without paper."""
        return self.product.unreduced if self.product else fraction(1, self.panels)

    @property
    def taken(self) -> Claim:
        """How many parts the product takes, ``2 × 1 = 2``; for a class that multiplies."""
        return _multiplied([factor.numerator for factor in self._factors])

    @property
    def parts(self) -> Claim:
        """How many parts the sheet has, ``3 × 2 = 6``; for a class that multiplies."""
        return _multiplied([factor.denominator for factor in self._factors])

    @property
    def part(self) -> Ratio:
        """One of the parts that are taken so many times; for a class that multiplies by whole numbers."""
        return fraction(1, self._factors[1].denominator)

    @property
    def _factors(self) -> tuple[Ratio, ...]:
        return (self.product.first, self.product.second) if self.product else ()


def exit_ticket(folding: FoldingPart, sheets: Iterable[Worksheet]) -> ExitTicket:
    """Choose the questions: the sheet as the last fold left it, and a product that no page asks."""
    rows = [row for row in folding.rows[-1:] if row.count]
    placed = [one for sheet in sheets for one in sheet.placed]
    asked = [_numbers_worked(one.item) for one in placed]
    stage = reach(folding.lesson.grade, folding.lesson.followed)
    products = PAIRS if stage is Reach.PAIRS else BY_WHOLES
    fresh = [product for product in products if not any(map(_factors(product).issubset, asked))]
    seen = rows[-1].panels if rows else 0
    panels = next(number for number in PANELS if number != seen)
    product = None if stage is Reach.NAMING else (fresh or products)[0]
    return ExitTicket(rows[-1] if rows else None, product, panels)


def _multiplied(numbers: Sequence[int]) -> Claim:
    return equation(times(*numbers), prod(numbers))


def _factors(product: Product) -> frozenset[Ratio]:
    return frozenset((product.first, product.second))


def _numbers_worked(item: Item) -> frozenset[Figures]:
    """Give the numbers that an item shows or multiplies: 2/3 × 1/2 is asked by 1/2 × 2/3 × 3/4 too."""
    return item.shown | frozenset(numbers_in(item.working.claims[0].asked))
