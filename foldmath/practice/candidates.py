"""Numbers for items: takes what a class can be asked, gives every sensible choice for a kind of item."""

from collections.abc import Callable
from functools import cache, partial

from foldmath.lesson.kinds import stories_for
from foldmath.practice.comparing_candidates import bigger_or_smaller
from foldmath.practice.fold_candidates import (
    Group,
    count_or_size,
    fresh_folds,
    how_many_pieces,
    parts_of_one,
    repeated_halving,
    same_size,
)
from foldmath.practice.folds_to_find import which_fold
from foldmath.practice.product_numbers import paired, products, wholes_to
from foldmath.practice.reasons import explain
from foldmath.practice.scope import Scope
from foldmath.statements.answers import Worth, worth
from foldmath.statements.expressions import Sign
from foldmath.statements.items import (
    ItemKind,
    Level,
    Reach,
    Told,
    make_mend,
    make_mend_adding,
    make_mend_count,
    make_mend_doubling,
    make_missing_factor,
    make_shade,
)
from foldmath.statements.items.sheets import sheet_count
from foldmath.statements.items.story import make_story
from foldmath.statements.products import Product
from foldmath.statements.ratios import LARGEST_DENOMINATOR, Ratio
from foldmath.statements.rules import Rule, likeliest_rules
from foldmath.statements.rules.operations import (
    ADD_DENOMINATORS,
    ADD_INSTEAD,
    ADD_TOPS_AND_BOTTOMS,
    DROP_DENOMINATOR,
    INVERT_FIRST,
    INVERT_SECOND,
    KEEP_COMMON_DENOMINATOR,
    MULTIPLY_BOTH_BY_WHOLE,
)
from foldmath.statements.story_numbers import Filling, fillings

MOST_COLUMNS, MOST_ROWS = 10, 7
"""Of an area model of 80 by 60 mm, so that no cell is under 8 mm (common practice, no source)."""

SHEETS_TO_A_COLUMN = 3
"""More sheets to shade for one product stand in a row as wide as the page."""

MENDED = (
    KEEP_COMMON_DENOMINATOR,
    ADD_INSTEAD,
    INVERT_FIRST,
    ADD_TOPS_AND_BOTTOMS,
    INVERT_SECOND,
    ADD_DENOMINATORS,
    MULTIPLY_BOTH_BY_WHOLE,
)
"""Rules whose answers are put on a page to be mended."""

MENDED_BY_WHOLES = (
    MULTIPLY_BOTH_BY_WHOLE,
    ADD_TOPS_AND_BOTTOMS,
    ADD_INSTEAD,
    DROP_DENOMINATOR,
    INVERT_SECOND,
)
"""Those of them that a class can follow that multiplies fractions by whole numbers only."""


COUNTED_BY_ADDING = (Told.FOLDED_TWICE, Told.PANELS_FOLDED)
"""What is told of panels that are counted by adding two numbers."""

MOST_AT_CORE = 12
"""So many panels at most are counted at core in such a slip."""


@cache
def candidates(kind: ItemKind, scope: Scope) -> tuple[Group, ...]:
    """Give all items of a kind that fit, sorted into groups, none of them made yet; may be empty."""
    return tuple(group for group in _SOURCES[kind](scope) if group)


def _fitting(products: list[Product]) -> list[Product]:
    """Keep those whose cells are large enough, on sheets that stand side by side in a column, if any are."""
    kept = [
        product
        for product in products
        if product.first.denominator <= MOST_COLUMNS
        and product.second.denominator <= MOST_ROWS
        and sheet_count(product) <= SHEETS_TO_A_COLUMN
    ]
    return kept or products


def _shade(scope: Scope) -> tuple[Group, ...]:
    if scope.reach is Reach.NAMING:
        return ()
    if scope.reach is Reach.BY_WHOLES:
        by_wholes, units, mixed = products(scope)
        sorts = {
            Level.GUIDED: [by_wholes, units],
            Level.CORE: [by_wholes],
            Level.STRETCH: [by_wholes, mixed],
        }[scope.level]
    else:
        _, units, unit_and_other, proper, over_one = products(scope)
        wholes = paired(parts_of_one(scope.denominators, units=False), wholes_to(3), Sign.OF)
        sorts = {
            Level.GUIDED: [units, unit_and_other],
            Level.CORE: [unit_and_other, proper, proper],
            Level.STRETCH: [proper, wholes, over_one],
        }[scope.level]
    return tuple(tuple(partial(make_shade, product) for product in _fitting(sort)) for sort in sorts)


def _missing_factor(scope: Scope) -> tuple[Group, ...]:
    if scope.reach is Reach.NAMING:
        factors = [(first, second) for first in wholes_to(6) for second in wholes_to(4) if first != second]
    else:
        sorts = products(scope)[:1] if scope.reach is Reach.BY_WHOLES else _unknown(scope)
        factors = [(product.first, product.second) for sort in sorts for product in sort]
    return tuple(
        tuple(partial(make_missing_factor, *pair, box_first=box_first) for pair in factors)
        for box_first in (False, True)
    )


def _unknown(scope: Scope) -> tuple[list[Product], ...]:
    """Give the products of which a factor is to be found; at stretch no unit fraction gives it away."""
    *_, proper, _ = sorts = products(scope)
    return (proper,) if scope.level is Level.STRETCH and proper else sorts[1:4]


def _story(scope: Scope) -> tuple[Group, ...]:
    templates = stories_for(scope.grade, scope.followed)
    wanted = [story for story in templates if story.stretch is (scope.level is Level.STRETCH)]
    return tuple(
        tuple(
            partial(make_story, story, filling)
            for filling in fillings(story.asks, story.ranges)
            if not scope.named or _named(scope, filling)
        )
        for story in wanted or templates
    )


def _named(scope: Scope, filling: Filling) -> bool:
    return all(
        number.whole or number.denominator in scope.denominators for number in (filling.take, filling.amount)
    )


def _mend(scope: Scope) -> tuple[Group, ...]:
    if scope.reach is Reach.NAMING:
        return (_mend_doubling(scope), *(_mend_adding(scope, told) for told in COUNTED_BY_ADDING))
    # Of a lesson's folds that cut all panels alike, its own slip of this sort is judged on the same page.
    folds = [] if scope.folds else fresh_folds(scope)
    counts = tuple(partial(make_mend_count, fold.before, fold.parts) for fold in folds)
    by_wholes = scope.reach is Reach.BY_WHOLES
    sorts = products(scope)[:1] if by_wholes else products(scope)[2:4]
    by_rule = tuple(
        tuple(
            partial(make_mend, product, rule)
            for sort in sorts
            for product in sort
            if _mendable(product, rule)
        )
        for rule in (MENDED_BY_WHOLES if by_wholes else MENDED)
    )
    return (counts, *by_rule)


def _mend_doubling(scope: Scope) -> Group:
    """Twos that are added, of three halvings or more; at stretch of one more."""
    halves = not scope.named or 2 in scope.denominators
    times = (4, 5) if scope.level is Level.STRETCH else (3, 4)
    fresh = [folds for folds in times if 2**folds not in scope.recorded]
    return tuple(partial(make_mend_doubling, folds) for folds in fresh if halves)


def _mend_adding(scope: Scope, told: Told) -> Group:
    """Two numbers that are added where they multiply; at stretch they make more panels than at core."""
    least, most = (
        (MOST_AT_CORE + 1, LARGEST_DENOMINATOR) if scope.level is Level.STRETCH else (1, MOST_AT_CORE)
    )
    return tuple(
        partial(make_mend_adding, first, second, told)
        for first in scope.denominators
        for second in scope.denominators
        if first != second and least <= first * second <= most and first * second not in scope.recorded
    )


def _mendable(product: Product, rule: Rule) -> bool:
    """Tell whether a rule gives a wrong answer that a page can show, and that no other rule gives."""
    given = next((wrong for wrong in rule.answers(product) if worth(wrong) != product.value), None)
    if not isinstance(given, Ratio) or given.denominator > LARGEST_DENOMINATOR:
        return False
    value = given.value
    return not any(value in worths for other, worths in _worths(product).items() if other is not rule)


@cache
def _worths(product: Product) -> dict[Rule, tuple[Worth, ...]]:
    """Give what the answers are worth to which rules lead."""
    return {rule: tuple(map(worth, rule.answers(product))) for rule in likeliest_rules(product)}


_SOURCES: dict[ItemKind, Callable[[Scope], tuple[Group, ...]]] = {
    ItemKind.SHADE: _shade,
    ItemKind.COUNT_OR_SIZE: count_or_size,
    ItemKind.MISSING_FACTOR: _missing_factor,
    ItemKind.SAME_SIZE: same_size,
    ItemKind.BIGGER_OR_SMALLER: bigger_or_smaller,
    ItemKind.HOW_MANY_PIECES: how_many_pieces,
    ItemKind.REPEATED_HALVING: repeated_halving,
    ItemKind.WHICH_FOLD: which_fold,
    ItemKind.STORY: _story,
    ItemKind.MEND: _mend,
    ItemKind.EXPLAIN: explain,
}
