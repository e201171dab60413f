"""Numbers for items that compare: of several forms, so that no class writes one sign for one reason."""

from collections.abc import Sequence
from functools import partial
from typing import TypeAlias

from foldmath.practice.fold_candidates import Group, parts_of_one
from foldmath.practice.product_numbers import just_over_one, wholes_to, written_as_one
from foldmath.practice.scope import Scope
from foldmath.statements.items import Reach, make_bigger_or_smaller
from foldmath.statements.ratios import Ratio, whole_number

Told: TypeAlias = Sequence[tuple[Ratio, ...]]
"""A product's factors, and what it is compared with where that is not the second of them."""


def bigger_or_smaller(scope: Scope) -> tuple[Group, ...]:
    """Set a product beside one of its factors, on either side: less, more and as much come alike often."""
    if scope.reach is Reach.NAMING:
        return ()
    compared = parts_of_one(scope.denominators, units=False) or parts_of_one(scope.denominators)
    sorts = _by_wholes(compared) if scope.reach is Reach.BY_WHOLES else _by_fractions(scope, compared)
    return tuple(
        tuple(partial(make_bigger_or_smaller, *told, turned=turned) for told in sort)
        for sort in sorts
        for turned in (False, True)
    )


def _by_fractions(scope: Scope, compared: list[Ratio]) -> list[Told]:
    """Set a part of a fraction, more of it and all of it beside it; a part and more with factors turned."""
    firsts = (compared, just_over_one(scope.denominators), written_as_one(scope.denominators))
    told = [[(one, other) for one in sort for other in compared if one != other] for sort in firsts]
    return [*told, *([(other, one, other) for one, other in sort] for sort in told[:2])]


def _by_wholes(compared: list[Ratio]) -> list[Told]:
    """Set ``3 × 2/5`` beside 2/5, beside 3 and beside 1; not ``3 × 1/3``, which is 1 only when worked out."""
    one = whole_number(1)
    pairs = [(first, second) for first in wholes_to(4) for second in compared]
    beside_one = [(pair[0].value * pair[1].value - one.value, (*pair, one)) for pair in pairs]
    return [
        [*pairs],
        [(first, second, first) for first, second in pairs],
        [told for over, told in beside_one if over < 0],
        [told for over, told in beside_one if over > 0],
    ]
