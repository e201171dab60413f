"""A practice product as a teacher writes it: two factors, their product and the answers to accept."""

import re
from dataclasses import replace
from functools import cached_property

from foldmath.phrases import phrase
from foldmath.plane.numbers import ZERO, Exact
from foldmath.statements.claim_grammar import parse, with_nearest
from foldmath.statements.composing import equation
from foldmath.statements.expressions import Claim, Operation, Sign
from foldmath.statements.ratios import Ratio, fraction, lowest_terms, mixed_form, whole_number
from foldmath.statements.refusals import SentenceRefused
from foldmath.values import frozen

LARGEST = 10_000
"""No number above or below the bar of a factor is larger: more parts than any page can show."""

EXAMPLE = "2/3 × 4/5"


@frozen
class Product:
    """Two factors as written, and the sign between them.

    Args:
        first: the first factor; 2/4 stays 2/4.
        second: the second factor.
        sign: TIMES, or OF where it is read "2/3 of 4/5".
    """

    first: Ratio
    second: Ratio
    sign: Sign = Sign.TIMES

    @property
    def asked(self) -> Operation:
        """The product as it is asked: ``2/3 × 4/5`` or ``2/3 of 4/5``."""
        return Operation(self.sign, self.first, self.second)

    @property
    def in_fractions(self) -> "Product":
        """The same with fractions for decimals and percentages: ``1/2 × 1/4`` for ``0.5 × 25%``."""
        return replace(self, first=self.first.as_fraction, second=self.second.as_fraction)

    @property
    def multiplied(self) -> Operation:
        """The product with the sign of multiplication, however it is asked."""
        return Operation(Sign.TIMES, self.first, self.second)

    @property
    def part_taken(self) -> Operation:
        """The product as a part of something, however it is asked: ``2/3 of 4/5``."""
        return Operation(Sign.OF, self.first, self.second)

    @property
    def worked(self) -> Claim:
        """The product worked out: as multiplied, in lowest terms, mixed: ``2 × 3/4 = 6/4 = 3/2 = 1 1/2``."""
        return equation(self.multiplied, *self.forms)

    @property
    def text(self) -> str:
        """The product as it is written."""
        return str(self.asked)

    @cached_property
    def value(self) -> Exact:
        """The product itself."""
        return self.first.value * self.second.value

    @property
    def unreduced(self) -> Ratio:
        """Numerators multiplied over denominators multiplied: (a/b)(c/d) = ac/bd.

        Source:
            Common Core State Standards for Mathematics (2010), 5.NF.B.4.
        """
        above = self.first.numerator * self.second.numerator
        below = self.first.denominator * self.second.denominator
        return whole_number(above) if below == 1 else fraction(above, below)

    @property
    def lowest(self) -> Ratio:
        """The product in lowest terms."""
        return lowest_terms(self.value)

    @property
    def mixed(self) -> Ratio:
        """The product as a whole, proper or mixed number, in lowest terms."""
        return mixed_form(self.value)

    @property
    def forms(self) -> tuple[Ratio, ...]:
        """The product as multiplied, in lowest terms and as a mixed number, each different."""
        return tuple(dict.fromkeys([self.unreduced, self.lowest, self.mixed]))

    @property
    def equivalents(self) -> tuple[Ratio, ...]:
        """A few ways to write the product, each different: as multiplied, lowest, mixed, and two more.

        ``accepts`` tells of any other.
        """
        lowest = self.lowest
        more = [fraction(n * lowest.numerator, n * lowest.denominator) for n in (2, 3)]
        return tuple(dict.fromkeys([*self.forms, *more]))

    def accepts(self, answer: Ratio) -> bool:
        """Tell whether an answer is right, however it is written."""
        return answer.value == self.value


def parse_product(text: str) -> Product:
    """Read ``2/3 × 4/5``, ``3 x 2/5``, ``2/3 of 4/5`` or ``1 1/2 × 2/3``.

    Raises:
        SentenceRefused: it is not two numbers with × or "of" between them, a factor is 0, or a number
            in it is larger than ``LARGEST``; carries the column.
    """
    try:
        return _read(text)
    except SentenceRefused as refusal:
        raise with_nearest(refusal, text, lambda near: _read(near).text, EXAMPLE) from None


def _read(text: str) -> Product:
    claim = parse(text)
    if claim.comparisons and (found := re.search(r"[=<>≤≥≠!]", text)):
        raise SentenceRefused(
            found.start() + 1, phrase("a product to practice has no answer in it"), text[found.start() :]
        )
    product = claim.sides[0]
    if (
        not isinstance(product, Operation)
        or product.sign not in (Sign.TIMES, Sign.OF)
        or not isinstance(product.left, Ratio)
        or not isinstance(product.right, Ratio)
    ):
        raise SentenceRefused(
            1, phrase("a product is two numbers with × or of between them"), text.strip(), EXAMPLE
        )
    _refuse_sizes(text, product.left, product.right)
    return Product(product.left, product.right, product.sign)


def _refuse_sizes(text: str, *factors: Ratio) -> None:
    for found in re.finditer(r"[0-9]+", text):
        if int(found[0]) > LARGEST:
            message = phrase(
                "a factor has no number larger than {largest} above or below its bar", largest=LARGEST
            )
            raise SentenceRefused(found.start() + 1, message, found[0], EXAMPLE)
    for factor in factors:
        column = text.find(factor.text) + 1 or 1
        if factor.numerator > LARGEST or factor.denominator > LARGEST:
            message = phrase(
                "this factor has {numerator} parts, more than {largest}",
                numerator=factor.numerator,
                largest=LARGEST,
            )
            raise SentenceRefused(column, message, factor.text, EXAMPLE)
        if factor.value == ZERO:
            raise SentenceRefused(
                column, phrase("a factor of 0 leaves nothing to fold or shade"), factor.text, EXAMPLE
            )
