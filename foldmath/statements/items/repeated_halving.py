"""Repeated halving: two or more factors, told as folds, as a product, or as a power."""

from enum import Enum
from functools import cache
from typing import ClassVar

from foldmath.plane.numbers import ONE, ZERO
from foldmath.statements.answers import working
from foldmath.statements.composing import equation, times
from foldmath.statements.expressions import Expression, Figures, Power
from foldmath.statements.items.item import (
    Difficulty,
    Item,
    ItemKind,
    NoSuchItem,
    figures_in,
    other_forms,
)
from foldmath.statements.ratios import Ratio, fraction, lowest_terms, whole_number
from foldmath.statements.rules.problems import PartsOfParts
from foldmath.statements.rules.wrong_answers import likely_wrong_answers, where_folds_are_told
from foldmath.values import frozen


class Repeated(Enum):
    """How the question is put."""

    FOLDS = "folds"
    """Fold in half three times, or in half and then into thirds: what fraction of the sheet is one panel?
    No fraction is multiplied."""
    PRODUCT = "product"
    """1/2 × 1/2 × 1/2; the factors may differ."""
    POWER = "power"
    """(1/2)^3. Source: Common Core State Standards for Mathematics (2010), 6.EE.A.1."""


_DIFFICULTIES = {
    Repeated.FOLDS: Difficulty.FOLDS_REPEATED,
    Repeated.PRODUCT: Difficulty.SEVERAL_FACTORS,
    Repeated.POWER: Difficulty.SEVERAL_FACTORS,
}


@frozen(kw_only=True)
class RepeatedHalvingItem(Item):
    """Several factors, each a part of what the one before left.

    Args:
        repeated: how the question is put.
        factors: two or more proper fractions; all alike with POWER, and with FOLDS if more than two.
        question: ``1/2 × 1/2 × 1/2``, or ``(1/2)³``; None with FOLDS.
        base: the factor, where all are alike; else None.
        times: how many factors there are: the exponent of a power.
        panels: how many panels the folds make in all.
    """

    kind: ClassVar[ItemKind] = ItemKind.REPEATED_HALVING

    answer: Ratio
    repeated: Repeated
    factors: tuple[Ratio, ...]
    question: Expression | None
    base: Ratio | None
    times: int
    panels: int


@cache
def make_repeated_halving(factors: tuple[Ratio, ...], repeated: Repeated) -> RepeatedHalvingItem:
    """Make the item of these factors.

    Raises:
        NoSuchItem: fewer than two factors, one that is no part of a whole, or factors that differ where
            one fold is repeated more than once.
    """
    problem = PartsOfParts(factors)
    _refuse(problem, repeated)
    answer = problem.multiplied
    multiplied = times(*factors)
    question = {
        Repeated.FOLDS: None,
        Repeated.PRODUCT: multiplied,
        Repeated.POWER: Power(factors[0], len(factors)),
    }[repeated]
    lowest = lowest_terms(answer.value)
    counted = equation(times(*(factor.denominator for factor in factors)), answer.denominator)
    forms = dict.fromkeys([answer, lowest])
    return RepeatedHalvingItem(
        asks=" × ".join(sorted(factor.text for factor in factors)),
        difficulty=_DIFFICULTIES[repeated].of(*factors, more=2 * len(factors)),
        answer=answer,
        working=working(equation(multiplied, *forms) if question else counted),
        accepted=other_forms(answer, lowest, fraction(2 * lowest.numerator, 2 * lowest.denominator)),
        problem=problem,
        wrong=likely_wrong_answers(problem) if question else where_folds_are_told(problem),
        shown=figures_in(multiplied) if repeated is Repeated.PRODUCT else _shown(factors, repeated),
        repeated=repeated,
        factors=factors,
        question=question,
        base=factors[0] if problem.alike else None,
        times=len(factors),
        panels=answer.denominator,
    )


def _refuse(problem: PartsOfParts, repeated: Repeated) -> None:
    factors = problem.factors
    if len(factors) < 2 or not all(ZERO < factor.value < ONE for factor in factors):
        raise NoSuchItem("a repeated fold takes a part of a part, two times or more")
    two_folds = repeated is Repeated.FOLDS and len(factors) == 2
    if not (repeated is Repeated.PRODUCT or two_folds or problem.alike):
        raise NoSuchItem("one fold is repeated, so all factors must be alike")
    if repeated is Repeated.FOLDS and not all(factor.unit_fraction for factor in factors):
        raise NoSuchItem("a fold makes panels of one part each, so a factor must be a unit fraction")


def _shown(factors: tuple[Ratio, ...], repeated: Repeated) -> frozenset[Figures]:
    if len(set(factors)) > 1:
        return figures_in(*(whole_number(factor.denominator) for factor in factors))
    times = whole_number(len(factors))
    return figures_in(times, factors[0]) if repeated is Repeated.POWER else figures_in(times)
