"""Products that tell wrong rules apart: takes rules, gives products on which each leads somewhere else.

The search is exact: every product of the class's denominators is tried, and every choice of the best of them.
"""

from collections.abc import Iterable, Sequence
from itertools import combinations
from math import gcd

from foldmath.plane.numbers import Exact, exact
from foldmath.statements.answers import worth
from foldmath.statements.products import Product
from foldmath.statements.ratios import LARGEST_DENOMINATOR, Ratio, fraction, whole_number
from foldmath.statements.rules import Rule
from foldmath.values import frozen

VISIBLE = exact(1, LARGEST_DENOMINATOR)
"""Two answers differ visibly if they are a panel of the finest sheet apart."""

LARGEST_WHOLE = 5
"""Of whole factors: more sheets do not lie on a desk."""

COMPARED = 16
"""So many of the best products are chosen from: 4 of 16 are 1,820 choices."""

Pair = tuple[str, str]

RIGHT = "right"
"""Stands for the right way among the names of rules."""


@frozen
class Candidate:
    """A product, and the pairs of ways that lead to visibly different answers on it, or to answers alike."""

    product: Product
    apart: frozenset[Pair]
    alike: int

    @property
    def effort(self) -> int:
        """How hard its numbers are."""
        return self.product.unreduced.denominator + self.product.unreduced.numerator

    @property
    def plain(self) -> bool:
        """Whether both factors are one part of a whole, so that no numerators are multiplied."""
        return self.product.first.unit_fraction and self.product.second.unit_fraction

    @property
    def factors(self) -> frozenset[str]:
        """The factors, in whatever order."""
        return frozenset((self.product.first.text, self.product.second.text))


def separating_products(
    rules: Sequence[Rule],
    denominators: Iterable[int],
    count: int,
    *,
    wholes: bool = False,
    known: frozenset[str] = frozenset(),
) -> tuple[Product, ...]:
    """Choose products that tell ways apart: most pairs first, then on most of the products, then easy ones.

    Nobody who follows one of the rules is right by chance on any of them.

    Args:
        rules: that were found in a class; the right way is always one more.
        denominators: of the factors.
        count: how many products; fewer where there are not as many.
        wholes: whether a class multiplies by whole numbers only.
        known: products that the class has done, as they are written.
    """
    products = [one for one in products_of(denominators, wholes=wholes) if one.text not in known]
    usable = [_candidate(one, rules) for one in products if _never_right(one, rules)]
    usable.sort(key=lambda one: (one.alike, one.plain, one.effort, one.product.text))
    once = list({one.factors: one for one in reversed(usable)}.values())[::-1]
    best = _varied(once)[:COMPARED]
    if len(best) <= count:
        return tuple(one.product for one in best)
    chosen = max(combinations(best, count), key=_worth)
    return tuple(one.product for one in sorted(chosen, key=lambda one: one.effort))


def _worth(chosen: tuple[Candidate, ...]) -> tuple[int, int, int, int]:
    """Weigh a choice: pairs told apart by any, pairs alike, factors that differ, and ease."""
    return (
        len(frozenset().union(*(one.apart for one in chosen))),
        -sum(one.alike for one in chosen),
        len(frozenset().union(*(one.factors for one in chosen))) - sum(one.plain for one in chosen),
        -sum(one.effort for one in chosen),
    )


def _varied(usable: Sequence[Candidate]) -> list[Candidate]:
    """Put the best product for each pair of ways in front, so that none is lost."""
    pairs = {pair for one in usable for pair in one.apart}
    first = [next(one for one in usable if pair in one.apart) for pair in sorted(pairs)]
    return list(dict.fromkeys([*usable[: COMPARED // 2], *first, *usable]))


def products_of(denominators: Iterable[int], *, wholes: bool) -> list[Product]:
    """Give all products of two fractions in lowest terms with these denominators, or of a whole and one."""
    parts = [
        fraction(above, below)
        for below in sorted(set(denominators))
        for above in range(1, below)
        if gcd(above, below) == 1
    ]
    firsts: list[Ratio] = (
        [whole_number(number) for number in range(2, LARGEST_WHOLE + 1)] if wholes else parts
    )
    pairs = [Product(first, second) for first in firsts for second in parts if first != second]
    return [product for product in pairs if product.unreduced.denominator <= LARGEST_DENOMINATOR]


def _never_right(product: Product, rules: Sequence[Rule]) -> bool:
    return all(worth(answer) != product.value for rule in rules for answer in rule.answers(product))


def _candidate(product: Product, rules: Sequence[Rule]) -> Candidate:
    values: dict[str, Exact] = {RIGHT: product.value}
    for rule in rules:
        answers = [answer for answer in rule.answers(product) if isinstance(answer, Ratio)]
        if answers:
            values[rule.name] = answers[0].value
    pairs = list(combinations(values, 2))
    apart = frozenset(pair for pair in pairs if abs(values[pair[0]] - values[pair[1]]) >= VISIBLE)
    return Candidate(product, apart, len(pairs) - len(apart))
