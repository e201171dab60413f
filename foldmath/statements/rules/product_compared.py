"""A product beside another number, which is a problem of its own: more, less or as much."""

from foldmath.statements.composing import compared
from foldmath.statements.expressions import Claim, Comparison
from foldmath.statements.ratios import Ratio, fraction
from foldmath.values import frozen

MIRRORED = {
    Comparison.LESS: Comparison.GREATER,
    Comparison.GREATER: Comparison.LESS,
    Comparison.EQUAL: Comparison.EQUAL,
}
"""What a comparison says when its sides change places."""


@frozen
class ProductCompared:
    """``first × second ○ second``, where <, > or = is written in the circle; or ○ the first factor, or ○ 1.

    Args:
        first, second: the factors.
        beside: what the product is compared with; None for the second factor.
        turned: whether the product stands on the right.
    """

    first: Ratio
    second: Ratio
    beside: Ratio | None = None
    turned: bool = False

    @property
    def other(self) -> Ratio:
        """What the product is compared with."""
        return self.beside or self.second

    @property
    def beside_factor(self) -> bool:
        """Whether it is compared with one of its factors, so that the other one decides."""
        return self.other in (self.first, self.second)

    @property
    def makes(self) -> Comparison:
        """How the product stands to the other number."""
        product, other = self.first.value * self.second.value, self.other.value
        if product == other:
            return Comparison.EQUAL
        return Comparison.LESS if product < other else Comparison.GREATER

    @property
    def sign(self) -> Comparison:
        """What belongs in the circle."""
        return self.seen(self.makes)

    def seen(self, makes: Comparison) -> Comparison:
        """Give the sign that says how the product stands to the other number, from where it stands."""
        return MIRRORED[makes] if self.turned else makes

    @property
    def turns_on(self) -> Claim:
        """What decides it: the other factor beside 1; where 1 is compared, the second beside 1/first."""
        if self.other == self.second:
            return compared(self.first, self.makes, 1)
        if self.other == self.first:
            return compared(self.second, self.makes, 1)
        return compared(self.second, self.makes, fraction(1, self.first.numerator))

    @property
    def value(self) -> Comparison:
        """The sign itself."""
        return self.sign
