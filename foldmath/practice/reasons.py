"""Numbers for items that ask why: reasons of many forms, so that no class writes the same one."""

from collections.abc import Callable, Iterable, Iterator
from functools import partial
from itertools import product as pairs
from typing import TypeAlias

from foldmath.practice.fold_candidates import Group, equal_names, fresh_folds, named_by, parts_of_one
from foldmath.practice.product_numbers import products, written_as_one
from foldmath.practice.scope import Scope
from foldmath.statements.items import (
    ExplainItem,
    Level,
    Reach,
    make_explain_all_of_it,
    make_explain_all_panels,
    make_explain_as_many_in_all,
    make_explain_bigger_panels,
    make_explain_equal_groups,
    make_explain_fewer_panels,
    make_explain_half_of_panels,
    make_explain_less,
    make_explain_more_panels,
    make_explain_more_than_all,
    make_explain_one_missing,
    make_explain_part_of_less,
    make_explain_part_of_panels,
    make_explain_round_half,
    make_explain_same,
    make_explain_sheet_turned,
    make_explain_sheets_filled,
)
from foldmath.statements.items.item import weight
from foldmath.statements.ratios import LARGEST_DENOMINATOR, Ratio, fraction

HARD = 6
"""Reasons at stretch turn on numbers of this weight or more, those of other pages on numbers of no more."""

EVEN = (4, 6, 8, 10, 12)
"""Into so many parts a sheet is folded so that half of them is counted."""

SIDES = (True, False)
"""Less than half, and more."""

Choice: TypeAlias = tuple[Callable[[], ExplainItem], tuple[Ratio, ...]]
"""An item that is not made yet, and the numbers on which its reason turns."""


def explain(scope: Scope) -> tuple[Group, ...]:
    """Give reasons of as many forms as a class can give, those of stretch with harder numbers.

    What a glance answers, that fewer panels are less and all of them 1, is asked with most support only.
    """
    guided, stretch = scope.level is Level.GUIDED, scope.level is Level.STRETCH
    sorts: list[Iterable[Choice]] = [_same(scope), _bigger(scope), *_half(scope)]
    sorts += [] if stretch else [_smaller(scope)]
    if stretch or not (guided or scope.reach is Reach.NAMING):
        sorts.append(_one_missing(scope))
    if scope.reach < Reach.PAIRS:
        sorts.append(_sheets_filled(scope))
        sorts += [] if stretch else [_more_than_all(scope)]
        sorts += [_fewer(scope), _all_panels(scope)] if guided else []
    if scope.reach is Reach.BY_WHOLES:
        sorts.append(_several(scope))
    if scope.reach > Reach.NAMING:
        sorts += [] if stretch else [_groups(scope)]
        sorts += [] if guided else [_as_many(scope), _round_half(scope)]
    if scope.reach is Reach.PAIRS:
        sorts += _parts_of_parts(scope)
    return tuple(group for sort in sorts if (group := _of_weight(sort, stretch)))


def _of_weight(choices: Iterable[Choice], stretch: bool) -> Group:
    return tuple(
        make
        for make, turns_on in choices
        if (weight(*turns_on) >= HARD if stretch else weight(*turns_on) <= HARD)
    )


def _same(scope: Scope) -> Iterator[Choice]:
    for given, parts in equal_names(scope):
        if scope.level is not Level.STRETCH or not given.unit_fraction:
            yield partial(make_explain_same, given, parts), (given, given, given)


def _smaller(scope: Scope) -> Iterator[Choice]:
    for fold in fresh_folds(scope):
        if not scope.named or named_by(scope, fold):
            now, was = fraction(1, fold.before * fold.parts), fraction(1, fold.before)
            yield partial(make_explain_more_panels, fold.before, fold.parts), (now, was)


def _bigger(scope: Scope) -> Iterator[Choice]:
    for below, more in pairs(scope.denominators, repeat=2):
        for few in range(2, below if more > below else 0):
            numbers = fraction(few, below), fraction(few, more)
            yield partial(make_explain_bigger_panels, few, below, more), numbers


def _half(scope: Scope) -> tuple[Iterable[Choice], ...]:
    """Less than half, and more."""
    if 2 not in scope.denominators:
        return ()
    even = [given for given in parts_of_one(scope.denominators) if given.denominator in EVEN]
    sorts = ([given for given in even if (2 * given.numerator < given.denominator) is less] for less in SIDES)
    return tuple(
        [(partial(make_explain_half_of_panels, given), (given, given)) for given in sort] for sort in sorts
    )


def _round_half(scope: Scope) -> Iterator[Choice]:
    parts = parts_of_one(scope.denominators)
    for less, more in pairs(parts, repeat=2) if 2 in scope.denominators else ():
        apart = 2 * less.numerator < less.denominator and 2 * more.numerator > more.denominator
        if apart and less.denominator != more.denominator:
            yield partial(make_explain_round_half, less, more), (less, more)


def _one_missing(scope: Scope) -> Iterator[Choice]:
    for few, many in pairs(scope.denominators, repeat=2):
        if few < many:
            numbers = fraction(few - 1, few), fraction(many - 1, many)
            yield partial(make_explain_one_missing, few, many), numbers


def _fewer(scope: Scope) -> Iterator[Choice]:
    for below in scope.denominators:
        for few, many in pairs(range(1, below), repeat=2):
            if few < many:
                yield partial(make_explain_fewer_panels, below, few, many), (fraction(few, below),)


def _all_panels(scope: Scope) -> Iterator[Choice]:
    for parts in scope.denominators:
        if parts > 2 and parts not in scope.recorded:
            yield partial(make_explain_all_panels, parts), (fraction(parts, parts),)


def _more_than_all(scope: Scope) -> Iterator[Choice]:
    for below in scope.denominators:
        for many in range(below + 1, below + 3 if below > 2 else 0):
            yield partial(make_explain_more_than_all, many, below), (fraction(many, below),)


def _sheets_filled(scope: Scope) -> Iterator[Choice]:
    for sheets, parts in pairs((2, 3), scope.denominators):
        if sheets * parts <= LARGEST_DENOMINATOR:
            given = fraction(sheets * parts, parts)
            yield partial(make_explain_sheets_filled, sheets, parts), (given, given)


def _several(scope: Scope) -> Iterator[Choice]:
    for product in products(scope)[0]:
        yield partial(make_explain_less, product), (product.first, product.second)


def _groups(scope: Scope) -> Iterator[Choice]:
    for number, given in pairs((2, 3, 4), parts_of_one(scope.denominators, units=False)):
        if number * given.numerator < given.denominator:
            yield partial(make_explain_equal_groups, number, given), (given,)


def _as_many(scope: Scope) -> Iterator[Choice]:
    for number, given in pairs((2, 3, 4, 5), parts_of_one(scope.denominators, units=False)):
        if given.numerator < number < given.denominator:
            yield partial(make_explain_as_many_in_all, number, given), (given, given)


def _parts_of_parts(scope: Scope) -> list[Iterable[Choice]]:
    """Less than a factor, more, as much; turned round, and panels taken of panels."""
    by_wholes, _, unit_and_other, proper, over_one = products(scope)
    guided = scope.level is Level.GUIDED
    parts = (unit_and_other if guided else proper) or unit_and_other
    whole = [
        (partial(make_explain_all_of_it, every.denominator, second), (every, second))
        for every in written_as_one(scope.denominators)
        for second in parts_of_one(scope.denominators, units=False)
    ]
    less = [(product.first, product.second) for product in parts]
    more = by_wholes if guided else over_one
    return [
        [(partial(make_explain_less, product), (product.first, product.second)) for product in parts],
        [(partial(make_explain_less, product), (product.first, product.second)) for product in more],
        whole,
        [(partial(make_explain_sheet_turned, *pair), pair) for pair in less],
        _panels_taken(scope),
        *([] if guided else [[(partial(make_explain_part_of_less, *pair), pair) for pair in less]]),
    ]


def _panels_taken(scope: Scope) -> Iterator[Choice]:
    for many, below in pairs(scope.denominators, repeat=2):
        for few in range(1, many if many < below else 0):
            share, given = fraction(few, many), fraction(many, below)
            yield partial(make_explain_part_of_panels, few, many, below), (share, given)
