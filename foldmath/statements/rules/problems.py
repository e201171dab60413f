"""What a pupil works out, as values: a wrong-answer rule says on which of these kinds of problem it acts."""

from math import prod
from typing import TypeAlias

from foldmath.plane.numbers import ONE, Exact, exact
from foldmath.statements.answers import Sorting
from foldmath.statements.composing import equation, times
from foldmath.statements.expressions import Claim, Expression
from foldmath.statements.expressions import value as worked_out
from foldmath.statements.products import Product
from foldmath.statements.ratios import Ratio, fraction, whole_number
from foldmath.statements.rules.product_compared import ProductCompared
from foldmath.statements.sentences import About
from foldmath.statements.story_numbers import Asks, Filling, Worked
from foldmath.values import frozen


@frozen
class Sum:
    """Two numbers to add."""

    first: Ratio
    second: Ratio

    @property
    def value(self) -> Exact:
        """The sum itself."""
        return self.first.value + self.second.value


@frozen
class MissingFactor:
    """``known × □ = product``, the product as multiplied, not reduced; ``missing`` belongs in the box."""

    known: Ratio
    product: Ratio
    missing: Ratio

    @property
    def value(self) -> Exact:
        """The missing factor itself."""
        return self.missing.value


@frozen
class OtherName:
    """A fraction to be named again after every panel was cut into ``parts``: ``2/4 = □/8``."""

    given: Ratio
    parts: int

    @property
    def value(self) -> Exact:
        """The fraction itself, which stays as big."""
        return self.given.value

    @property
    def denominator(self) -> int:
        """Of the other name."""
        return self.given.denominator * self.parts


@frozen
class SheetsCut:
    """So many sheets, each cut into equal parts: how many pieces? ``3 ÷ 1/4``."""

    sheets: int
    parts: int

    @property
    def value(self) -> Exact:
        """How many pieces there are."""
        return exact(self.sheets * self.parts)


@frozen
class PanelCut:
    """One panel of a sheet in equal parts, cut into ``pieces``: how big is each? ``1/4 ÷ 3``."""

    parts: int
    pieces: int

    @property
    def value(self) -> Exact:
        """The fraction of the sheet that a piece is."""
        return exact(1, self.parts * self.pieces)


@frozen
class PartsOfParts:
    """Two or more numbers multiplied; of proper fractions, each is a part of what the one before left."""

    factors: tuple[Ratio, ...]

    @property
    def multiplied(self) -> Ratio:
        """Numerators multiplied over denominators multiplied."""
        above = prod(factor.numerator for factor in self.factors)
        return fraction(above, prod(factor.denominator for factor in self.factors))

    @property
    def value(self) -> Exact:
        """The product itself."""
        return self.multiplied.value

    @property
    def alike(self) -> bool:
        """Whether one fold is repeated."""
        return len(set(self.factors)) == 1


@frozen
class Raised:
    """A number multiplied by itself, written as a power: ``2³``."""

    base: Ratio
    exponent: int

    @property
    def value(self) -> Exact:
        """The power itself."""
        return prod([self.base.value] * self.exponent, start=ONE)


@frozen
class InSteps:
    """Something worked out step by step, each going on from the answer before: ``1/2 × 1/2``, then ``× 1/2``.

    Args:
        written: the sides of all steps, joined as one sentence.
        whole: all of it in one expression: ``1/2 × 1/2 × 1/2``.
    """

    written: Claim
    whole: Expression

    @property
    def value(self) -> Claim:
        """The true sentence of all steps."""
        return equation(self.whole, worked_out(self.whole))


@frozen
class PanelsMade:
    """A fold that cuts each of ``before`` equal panels into ``parts``: how many panels are there after it?"""

    before: int
    parts: int

    @property
    def value(self) -> Exact:
        """How many there are."""
        return exact(self.before * self.parts)


@frozen
class Sorted:
    """A true sentence, and what it is about: COUNT or SIZE."""

    claim: Claim
    about: About


@frozen
class SentencesSorted:
    """True sentences about one fold, to be sorted into those of count and those of size."""

    sentences: tuple[Sorted, ...]

    @property
    def value(self) -> Sorting:
        """What they are about, in their order."""
        return Sorting(tuple(sentence.about for sentence in self.sentences))


@frozen
class CountMended:
    """``4 × 1/2 = 8``, of a fold that cut each of ``before`` panels into ``parts``; to be put right."""

    before: int
    parts: int

    @property
    def value(self) -> Claim:
        """The true sentence of the fold."""
        return equation(times(self.before, self.parts), self.before * self.parts)


@frozen
class PartsAdded:
    """Panels counted by adding parts that multiply, ``2 + 2 + 2`` of three halvings; to be put right."""

    parts: tuple[int, ...]

    @property
    def panels(self) -> int:
        """How many panels there are."""
        return prod(self.parts)

    @property
    def value(self) -> Claim:
        """The true sentence of the folds."""
        return equation(times(*self.parts), self.panels)

    @property
    def given(self) -> Ratio:
        """What adding makes of them, which is to be put right."""
        return whole_number(sum(self.parts))


@frozen
class Telling:
    """A word problem that is more than one product, worked out."""

    asks: Asks
    filling: Filling
    worked: Worked

    @property
    def value(self) -> Exact:
        """What is asked for."""
        return self.worked.value


@frozen
class EqualPanels:
    """So many equal panels are wanted, and the folds that make them asked: ``columns`` × ``rows``."""

    columns: int
    rows: int


@frozen
class UnequalPanels:
    """Panels of two sizes are wanted: ``rows`` of 1/``columns`` of the width, and as many of all the rest."""

    columns: int
    rows: int


Problem: TypeAlias = (
    Product
    | Sum
    | MissingFactor
    | OtherName
    | ProductCompared
    | SheetsCut
    | PanelCut
    | PartsOfParts
    | Raised
    | InSteps
    | PanelsMade
    | SentencesSorted
    | CountMended
    | PartsAdded
    | Telling
)
"""What is answered by a number, a sign or a sentence; ``value`` is what the right answer is worth."""

FoldsAsked: TypeAlias = EqualPanels | UnequalPanels
"""What is answered by steps; the model tells whether they are right."""
