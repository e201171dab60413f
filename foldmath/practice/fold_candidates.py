"""Numbers for items about folds: how many panels, how big, how often folded, by which steps."""

from collections.abc import Callable, Iterator, Sequence
from functools import partial
from itertools import product as pairs
from math import gcd, prod
from typing import TypeAlias

from foldmath.practice.scope import DENOMINATORS, EvenFold, Scope
from foldmath.statements.items import (
    Item,
    Level,
    Pieces,
    Reach,
    Repeated,
    make_count_or_size,
    make_how_many_pieces,
    make_repeated_halving,
    make_same_size,
)
from foldmath.statements.items.count_or_size import ARRANGEMENTS
from foldmath.statements.ratios import LARGEST_DENOMINATOR, Ratio, fraction
from foldmath.statements.standards import Followed

Group: TypeAlias = tuple[Callable[[], Item], ...]
"""Items of one sort, not made yet; chance picks a group first, so that rare sorts come as often."""

FOLDS_TO_SORT = tuple(
    EvenFold(before, parts, None)
    for before, parts in ((4, 2), (3, 2), (2, 3), (2, 2), (3, 4), (4, 3), (5, 2), (3, 3), (3, 5), (6, 4))
)
"""Folds whose sentences are sorted; a lesson's own are answered on its first page."""

MOST_DEALT = 14
"""So many groups of numbers pupils take turns at, where all are of one form."""

FIRST_GRADE_WITH_ANY_DENOMINATOR = 5
"""Before it, panels keep to the denominators of the grade."""

TWO_FOLDS = ((2, 3), (2, 4), (2, 5), (2, 6), (3, 4))
"""Into how many parts a sheet is folded, and then again; few enough layers to be tried."""


def parts_of_one(denominators: tuple[int, ...], *, units: bool = True) -> list[Ratio]:
    """Give the proper fractions in lowest terms with these denominators; without unit fractions if asked."""
    return [
        fraction(above, below)
        for below in denominators
        for above in range(1 if units else 2, below)
        if gcd(above, below) == 1
    ]


def count_or_size(scope: Scope) -> tuple[Group, ...]:
    """Their sentences in every order, which a group has of all folds that are not the lesson's."""
    return tuple(
        tuple(
            partial(
                make_count_or_size,
                fold.before,
                fold.parts,
                scope.reach,
                arrangement=arrangement,
                moment=fold.moment,
            )
            for fold in fresh_folds(scope)
        )
        for arrangement in range(len(ARRANGEMENTS))
    )


def fresh_folds(scope: Scope) -> list[EvenFold]:
    """Give folds that are not the lesson's, of the denominators of the grade where possible."""
    fresh = [fold for fold in _folds_to_sort(scope) if fold.before * fold.parts not in scope.recorded]
    return fresh if scope.named else [fold for fold in fresh if named_by(scope, fold)] or fresh


def _folds_to_sort(scope: Scope) -> tuple[EvenFold, ...]:
    """Give the usual folds; those of the denominators that a lesson names, where it names any."""
    if not scope.named:
        return FOLDS_TO_SORT
    return tuple(
        EvenFold(before, parts, None)
        for before, parts in pairs(scope.denominators, repeat=2)
        if before * parts <= LARGEST_DENOMINATOR
    )


def named_by(scope: Scope, fold: EvenFold) -> bool:
    """Tell whether denominators of the grade, or those of the lesson, name panels before and after a fold."""
    names = scope.denominators if scope.named else DENOMINATORS[scope.grade]
    return {fold.before, fold.before * fold.parts} <= set(names)


def same_size(scope: Scope) -> tuple[Group, ...]:
    """A shaded part of a sheet, and a fold across it; both denominators are of the grade where possible.

    A grade that has few leaves the hardest for stretch.
    """
    choices = [partial(make_same_size, *choice) for choice in equal_names(scope)]
    if scope.reach is Reach.NAMING and scope.level is Level.CORE:
        hardest = max((make().difficulty for make in choices), default=0)
        choices = [make for make in choices if make().difficulty < hardest] or choices
    return dealt(choices, MOST_DEALT)


def equal_names(scope: Scope) -> list[tuple[Ratio, int]]:
    """Give fractions, and into how many parts each panel is cut for another name."""
    parts = (2, 3) if scope.level is Level.GUIDED else (2, 3, 4)
    choices = [
        (given, more)
        for given in parts_of_one(scope.denominators)
        for more in parts
        if given.denominator * more <= LARGEST_DENOMINATOR
    ]
    known = [choice for choice in choices if choice[0].denominator * choice[1] in scope.denominators]
    return known if len(known) >= len(parts) else choices


def how_many_pieces(scope: Scope) -> tuple[Group, ...]:
    """Sheets cut into parts; from the grade that divides, also with its sign, and parts cut again."""
    if scope.level is Level.GUIDED or scope.reach < Reach.PAIRS:
        sorts = [Pieces.COUNT]
    elif scope.followed is Followed.ENGLAND:
        sorts = [Pieces.PART_BY_NUMBER]
    else:
        sorts = [Pieces.SHEETS_BY_PART, Pieces.PART_BY_NUMBER]
    most = 3 if scope.level is Level.GUIDED else 6
    choices = [
        partial(make_how_many_pieces, sort, number, parts)
        for sort in sorts
        for number in range(2, most + 1)
        for parts in scope.denominators
        if number * parts <= LARGEST_DENOMINATOR and number != parts
    ]
    return dealt(choices, MOST_DEALT)


def repeated_halving(scope: Scope) -> tuple[Group, ...]:
    """Folds of folds, products of three factors, and powers where the class knows them."""
    if scope.named:
        return _repeated_with_named(scope)
    half, third = fraction(1, 2), fraction(1, 3)
    halvings: list[tuple[Ratio, ...]] = [(half,) * 3, (half,) * 4, (third,) * 2, (half,) * 2]
    if scope.reach < Reach.PAIRS or scope.level is Level.GUIDED:
        two = [(fraction(1, first), fraction(1, second)) for first, second in TWO_FOLDS]
        return _repeated(scope, (_of_the_grade(scope, [*halvings, *two]), Repeated.FOLDS))
    units: list[tuple[Ratio, ...]] = [(half, half, fraction(1, d)) for d in (2, 3, 4, 5, 6)]
    units += [(third, half, third), (half,) * 4]
    if scope.level is Level.CORE:
        return _repeated(scope, (halvings[:3], Repeated.PRODUCT), (units, Repeated.PRODUCT))
    factors = parts_of_one(tuple(d for d in scope.denominators if d <= 6) or (2, 3, 4))
    mixed: list[tuple[Ratio, ...]] = [
        (first, second, third_one)
        for first, second in pairs((half, third, fraction(2, 3)), factors)
        for third_one in (half, third, fraction(3, 4))
        if len({first, second, third_one}) > 1
    ]
    powers: list[tuple[Ratio, ...]] = [(base,) * 2 for base in parts_of_one((3, 4), units=False)]
    powers.append((half,) * 4)
    sorts = ([(powers, Repeated.POWER)] if scope.powers else []) + [(mixed, Repeated.PRODUCT)]
    return _repeated(scope, *sorts)


def _of_the_grade(scope: Scope, folds: list[tuple[Ratio, ...]]) -> list[tuple[Ratio, ...]]:
    """Keep those whose panels have a denominator of the grade, where the grade has not all of them."""
    if scope.grade >= FIRST_GRADE_WITH_ANY_DENOMINATOR:
        return folds
    return [factors for factors in folds if _panels(factors) in DENOMINATORS[scope.grade]]


def _panels(factors: tuple[Ratio, ...]) -> int:
    return prod(factor.denominator for factor in factors)


def _repeated_with_named(scope: Scope) -> tuple[Group, ...]:
    """Repeat folds, and multiply several factors, with the denominators that a lesson names and no others."""
    units = parts_of_one(scope.denominators)
    units = [unit for unit in units if unit.unit_fraction]
    alike: list[tuple[Ratio, ...]] = [(unit,) * times for unit in units for times in (2, 3, 4)]
    if scope.reach < Reach.PAIRS or scope.level is Level.GUIDED:
        return _repeated(scope, (alike, Repeated.FOLDS))
    factors = units if scope.level is Level.CORE else parts_of_one(scope.denominators)
    several = [three for three in pairs(factors, repeat=3) if len(set(three)) > 1]
    sorts = [(several or alike, Repeated.PRODUCT)]
    if scope.powers and scope.level is Level.STRETCH:
        sorts.append((alike, Repeated.POWER))
    return _repeated(scope, *sorts)


def _repeated(scope: Scope, *sorts: tuple[list[tuple[Ratio, ...]], Repeated]) -> tuple[Group, ...]:
    """Leave out panels that the page's own folds make, unless there are no others."""
    short = [
        ([factors for factors in choices if _panels(factors) <= LARGEST_DENOMINATOR], repeated)
        for choices, repeated in sorts
    ]
    fresh = [
        ([factors for factors in choices if not _folded_already(scope, factors)], repeated)
        for choices, repeated in short
    ]
    kept = fresh if any(choices for choices, _ in fresh) else short
    return _groups(
        *(
            tuple(partial(make_repeated_halving, factors, repeated) for factors in choices)
            for choices, repeated in kept
        )
    )


def _folded_already(scope: Scope, factors: tuple[Ratio, ...]) -> bool:
    return all(factor.unit_fraction for factor in factors) and _panels(factors) in scope.recorded


def dealt(choices: Sequence[Callable[[], Item]], most: int) -> tuple[Group, ...]:
    """Deal choices out to so many groups at most, so that pupils take turns at them."""
    return tuple(tuple(choices[start::most]) for start in range(min(most, len(choices))))


def _groups(*groups: Group) -> tuple[Group, ...]:
    """Leave out what is empty."""
    return tuple(group for group in groups if group)


def all_of(groups: tuple[Group, ...]) -> Iterator[Callable[[], Item]]:
    """Give every candidate of every group."""
    return (candidate for group in groups for candidate in group)
