"""Numbers for items that compare, and that ask why: of several forms, so that no class writes one reason."""

from functools import partial

from foldmath.practice.fold_candidates import Group, equal_names, fresh_folds, named_by, parts_of_one
from foldmath.practice.product_numbers import just_over_one, products, wholes_to, written_as_one
from foldmath.practice.scope import Scope
from foldmath.statements.items import (
    Level,
    Reach,
    make_bigger_or_smaller,
    make_explain_all_of_it,
    make_explain_all_panels,
    make_explain_fewer_panels,
    make_explain_less,
    make_explain_more_panels,
    make_explain_same,
)
from foldmath.statements.ratios import Ratio, fraction, whole_number


def bigger_or_smaller(scope: Scope) -> tuple[Group, ...]:
    """Set a product beside one of its factors: less, more and as much come alike often."""
    if scope.reach is Reach.NAMING:
        return ()
    compared = parts_of_one(scope.denominators, units=False) or parts_of_one(scope.denominators)
    if scope.reach is Reach.BY_WHOLES:
        return _compared_by_wholes(scope, compared)
    over, alike = just_over_one(scope.denominators), written_as_one(scope.denominators)
    pairs = [
        [(first, second) for first in firsts for second in compared if first != second]
        for firsts in (compared, over, alike)
    ]
    beside_second = (tuple(partial(make_bigger_or_smaller, *pair) for pair in sort) for sort in pairs)
    beside_first = (
        partial(make_bigger_or_smaller, second, first, second) for sort in pairs for first, second in sort
    )
    return (*beside_second, tuple(beside_first))


def _compared_by_wholes(scope: Scope, compared: list[Ratio]) -> tuple[Group, ...]:
    """Set ``3 × 2/5`` beside 2/5, beside 3 and beside 1, so that more, less and as much come alike often."""
    one, wholes = whole_number(1), wholes_to(4)
    pairs = [(first, second) for first in wholes for second in compared]
    units = [fraction(1, below) for below in scope.denominators]
    even = [(first, second) for first in wholes for second in units if second.denominator == first.numerator]
    sorts: list[list[tuple[Ratio, ...]]] = [
        [*pairs],
        [(first, second, first) for first, second in pairs],
        [(first, second, one) for first, second in pairs if first.value * second.value != one.value],
        [(first, second, one) for first, second in even],
    ]
    return tuple(tuple(partial(make_bigger_or_smaller, *told) for told in sort) for sort in sorts)


def explain(scope: Scope) -> tuple[Group, ...]:
    """Give reasons of several forms, so that the pupils of one class do not all write the same one."""
    same = tuple(partial(make_explain_same, *choice) for choice in equal_names(scope))
    folds = [fold for fold in fresh_folds(scope) if not scope.named or named_by(scope, fold)]
    smaller = tuple(partial(make_explain_more_panels, fold.before, fold.parts) for fold in folds)
    if scope.reach is Reach.PAIRS:
        return (*_explain_products(scope), same, *(() if scope.level is Level.STRETCH else (smaller,)))
    fewer = tuple(
        partial(make_explain_fewer_panels, below, few, many)
        for below in scope.denominators
        for few in range(1, below)
        for many in range(few + 1, below)
    )
    every = tuple(
        partial(make_explain_all_panels, parts) for parts in scope.denominators if parts not in scope.recorded
    )
    if scope.reach is Reach.NAMING:
        return smaller, same, fewer, every
    more = tuple(partial(make_explain_less, product) for product in products(scope)[0])
    return more, smaller, same, fewer, every


def _explain_products(scope: Scope) -> tuple[Group, ...]:
    """Less than a factor, more, as much."""
    by_wholes, _, unit_and_other, proper, over_one = products(scope)
    guided = scope.level is Level.GUIDED
    pairs = (unit_and_other if guided else proper) or unit_and_other
    whole = [
        partial(make_explain_all_of_it, every.denominator, second)
        for every in written_as_one(scope.denominators)
        for second in parts_of_one(scope.denominators, units=False)
    ]
    return (
        tuple(partial(make_explain_less, product) for product in pairs),
        tuple(partial(make_explain_less, product) for product in (by_wholes if guided else over_one)),
        tuple(whole),
    )
