"""Everything true that a step shows, within a bounded grammar, labelled and in the best order for a grade.

The grammar: a whole, a part and a part of the part, multiplied and divided as far as they meet; equal
fractions; sizes and counts compared; parts added up to what they were cut from; the folds so far as one
product or power; and for a shading its part by two names and its product with the one across it.
"""

from collections import Counter
from collections.abc import Iterator, Sequence
from typing import assert_never

from foldmath.paper.moments.moment import Moment
from foldmath.paper.steps import FoldStep, Gather, OpenStep, Shade, Slit, TurnStep
from foldmath.plane.numbers import ONE
from foldmath.statements.explaining.folds_so_far import equal_parts, products_of_folds
from foldmath.statements.explaining.found import Family, Found, has_small_numbers, reduced, says_little
from foldmath.statements.explaining.labels import standard_served
from foldmath.statements.explaining.parts_of_parts import Nested, sentences_between
from foldmath.statements.explaining.renaming import (
    equal_fractions,
    parts_added,
    product_and_factor,
    sizes_compared,
)
from foldmath.statements.explaining.said_anyway import counted_and_whole
from foldmath.statements.explaining.shaded_parts import shading_sentences
from foldmath.statements.expressions import Claim, is_true
from foldmath.statements.sameness import form
from foldmath.statements.standards import Followed, Standard
from foldmath.values import frozen

__all__ = ["Explanation", "Family", "best_of_each_kind", "explanations"]


@frozen
class Explanation:
    """A true sentence that a step shows.

    Args:
        family: its kind.
        claim: the sentence, in figures.
        of: the same with "of", read before the sign; None if it has none.
        standard: the line of a curriculum that it serves; None for whole numbers alone.
    """

    family: Family
    claim: Claim
    of: Claim | None
    standard: Standard | None


def explanations(
    moments: Sequence[Moment], index: int, *, grade: int, followed: Followed
) -> tuple[Explanation, ...]:
    """Give everything true that a step shows, best for the grade first.

    A step that neither cuts a panel nor shades shows nothing. No two sentences are the same but for the order
    of terms, factors and sides and for lowest terms.

    Args:
        moments: those of a whole lesson.
        index: which of them, counted from 0.
        grade: of the class.
        followed: whose standards.
    """
    different: dict[str, Found] = {}
    for found in sorted(_found(moments[: index + 1]), key=lambda found: found.family):
        if has_small_numbers(found) and is_true(found.claim) and not says_little(found):
            different.setdefault(form(reduced(found.claim)), found)
    told = [
        Explanation(found.family, found.claim, found.of, standard_served(found, followed))
        for found in different.values()
    ]
    return tuple(sorted(told, key=lambda explanation: (*_rank(explanation, grade), explanation.family)))


def best_of_each_kind(told: Sequence[Explanation], most: int) -> tuple[Explanation, ...]:
    """Keep the first few sentences of every kind, in their order."""
    met: Counter[Family] = Counter()
    kept = []
    for explanation in told:
        met[explanation.family] += 1
        if met[explanation.family] <= most:
            kept.append(explanation)
    return tuple(kept)


def _found(moments: Sequence[Moment]) -> Iterator[Found]:
    moment = moments[-1]
    step = moment.step
    if isinstance(step, Shade):
        yield from shading_sentences(moments)
    elif isinstance(step, FoldStep):
        if moment.new_panels:
            yield from _found_in_fold(moment)
            yield from products_of_folds(moments)
    elif isinstance(step, OpenStep | TurnStep | Slit | Gather):
        return
    else:
        assert_never(step)


def _found_in_fold(moment: Moment) -> Iterator[Found]:
    alike = equal_parts(moment) > 1
    yield from counted_and_whole(moment)
    for panel, part in moment.cuts:
        yield from sentences_between(Nested(panel, part, counted=alike))
    for panel, part in moment.cuts:
        if panel < ONE:
            yield product_and_factor(panel, part / panel)
    if alike:
        yield from equal_fractions(len(moment.before.panels), len(moment.after.panels))
    yield from sizes_compared(moment)
    yield from parts_added(moment)


def _rank(explanation: Explanation, grade: int) -> tuple[int, int]:
    """Put the step's own two sentences first, then the grade's, earlier grades', others, later ones."""
    if explanation.family in (Family.COUNT, Family.SIZE):
        return (0, explanation.family)
    if explanation.standard is None:
        return (2, 0)
    early = grade - explanation.standard.grade
    return (1 if early >= 0 else 3, abs(early))
