"""Items that ask which folds make some panels: takes what a class can be asked, gives folds that do."""

from collections.abc import Iterator
from functools import partial

from foldmath.paper.steps import MOST_PLEATS, Axis, Edge, FoldAt, FoldBothEdges, FoldEdge, Step, fold_into
from foldmath.plane.numbers import ONE, denominator, exact
from foldmath.practice.fold_candidates import FIRST_GRADE_WITH_ANY_DENOMINATOR, MOST_DEALT, Group, dealt
from foldmath.practice.scope import DENOMINATORS, Scope
from foldmath.statements.answers import Folds
from foldmath.statements.items import Level, Reach, WhichFoldItem, make_which_fold
from foldmath.statements.items.which_fold import Sizes, sizes_after
from foldmath.statements.ratios import LARGEST_DENOMINATOR
from foldmath.statements.rules import Rule
from foldmath.statements.rules.folds import ADD_FOLDS, FOLD_ALL_ALIKE
from foldmath.statements.rules.problems import EqualPanels, FoldsAsked, UnequalPanels
from foldmath.values import frozen

FOLDED_OVER_BY_HAND = (3, 4)
"""Parts that a class finds by eye and folds over; sixths and fifths want a ruler."""

MOST_WITH_RULER = 6
"""No narrower part than 1/6 is measured out and folded over to make panels of two sizes."""

MOST_ASKED_TO_FOLD = 12
"""More panels than this are not asked to be found by folding."""


MOST_SLIPS = 1
"""Steps are long to read: a key has room for those of the likeliest slip."""


@frozen
class Wanted:
    """Folds to be found.

    Args:
        answer: the expected steps.
        others: steps that may be accepted.
        rule: behind the likeliest slips.
        asked: what it acts on.
    """

    answer: Folds
    others: tuple[Folds, ...]
    rule: Rule
    asked: FoldsAsked


def which_fold(scope: Scope) -> tuple[Group, ...]:
    """Two folds across each other; at stretch panels of different size, found by one fold or by two.

    A class that multiplies no fractions, whose grade has names for few of the panels, is asked for those of
    one fold that parts the sheet unevenly at core.
    """
    stretch, parts = scope.level is Level.STRETCH, [n for n in scope.denominators if n <= MOST_ASKED_TO_FOLD]
    wanted = [] if stretch else [*_equal(scope, parts or [2, 3, 4])]
    if stretch:
        wanted += _parted_and_crossed(scope, parts)
    elif scope.reach is Reach.NAMING:
        wanted += (*_strips(parts), *_parted(parts))
    fresh = {sizes: one for one in wanted if _fits(scope, sizes := sizes_after(one.answer.steps))}
    return dealt([partial(_item, one) for one in fresh.values()], MOST_DEALT)


def _item(wanted: Wanted) -> WhichFoldItem:
    slips = (slip for slip in wanted.rule.answers(wanted.asked) if isinstance(slip, Folds))
    likeliest = tuple((wanted.rule, slip) for slip in slips)[:MOST_SLIPS]
    return make_which_fold(wanted.answer, wanted.others, likeliest)


def _fits(scope: Scope, sizes: Sizes) -> bool:
    """Tell whether the lesson makes no such panels, and the class has names for them."""
    below = {denominator(area) for _, area in sizes}
    most = LARGEST_DENOMINATOR if scope.level is Level.STRETCH else MOST_ASKED_TO_FOLD
    early = scope.grade < FIRST_GRADE_WITH_ANY_DENOMINATOR and not scope.named
    named = not early or below <= set(DENOMINATORS[scope.grade])
    return sizes not in scope.made and named and max(below) <= most


def _equal(scope: Scope, parts: list[int]) -> Iterator[Wanted]:
    """Equal panels; the slip is to fold into parts that add up to their number."""
    across = (parts, parts) if scope.named else (sorted({2, *parts}), [2, 3, 4])
    for columns in across[0]:
        for rows in across[1]:
            number = columns * rows
            pairs = [(one, number // one) for one in range(2, number) if number % one == 0]
            others = tuple(_across(*pair) for pair in pairs if max(pair) <= MOST_PLEATS)
            yield Wanted(_across(columns, rows), others, ADD_FOLDS, EqualPanels(columns, rows))


def _strips(parts: list[int]) -> Iterator[Wanted]:
    """Three strips, rolled until they are alike; the slip is that each fold makes one more."""
    if 3 in parts:
        across, up = _folds(fold_into(Axis.WIDTH, 3)), _folds(fold_into(Axis.HEIGHT, 3))
        yield Wanted(across, (up,), ADD_FOLDS, EqualPanels(3, 1))


def _parted(parts: list[int]) -> Iterator[Wanted]:
    """One fold that parts the sheet unevenly, or the two of a gate."""
    for columns in (number for number in parts if number in FOLDED_OVER_BY_HAND):
        near, far = exact(1, columns), exact(columns - 1, columns)
        answer, *others = (
            _folds(FoldAt(near, Edge.LEFT)),
            _folds(FoldAt(far, Edge.RIGHT)),
            _folds(FoldAt(near, Edge.BOTTOM)),
            _folds(FoldAt(far, Edge.TOP)),
        )
        yield Wanted(answer, tuple(others), FOLD_ALL_ALIKE, UnequalPanels(columns, 1))
    if {2, 4} <= set(parts):
        other = (_folds(FoldBothEdges(Axis.HEIGHT)),)
        yield Wanted(_folds(FoldBothEdges(Axis.WIDTH)), other, FOLD_ALL_ALIKE, UnequalPanels(4, 1))


def _parted_and_crossed(scope: Scope, parts: list[int]) -> Iterator[Wanted]:
    """A fold that parts the sheet unevenly, then folds across it; a gate so crossed; the rest halved."""
    narrow = [number for number in parts if 2 < number <= MOST_WITH_RULER]
    for rows in parts if scope.named else (2, 3, 4):
        crossing, turned = fold_into(Axis.HEIGHT, rows), fold_into(Axis.WIDTH, rows)
        for columns in narrow:
            near, far = exact(1, columns), exact(columns - 1, columns)
            others = (
                _folds(FoldAt(far, Edge.RIGHT), crossing),
                _folds(FoldAt(near, Edge.BOTTOM), turned),
                _folds(crossing, FoldAt(near, Edge.LEFT)),
            )
            answer = _folds(FoldAt(near, Edge.LEFT), crossing)
            yield Wanted(answer, others, FOLD_ALL_ALIKE, UnequalPanels(columns, rows))
        if {2, 4} <= set(parts):
            gate = FoldBothEdges(Axis.WIDTH)
            also = (_folds(crossing, gate), _folds(FoldBothEdges(Axis.HEIGHT), turned))
            yield Wanted(_folds(gate, crossing), also, FOLD_ALL_ALIKE, UnequalPanels(4, rows))
    # What is left beside a third is two thirds, whose halves are thirds too.
    yield from (_rest_halved(columns) for columns in narrow if 2 in parts and columns > 3)


def _rest_halved(columns: int) -> Wanted:
    """Fold a narrow part over, then halve what lies on the table: 1/4, and twice 3/8."""
    near = exact(1, columns)
    answer = _folds(FoldAt(near, Edge.LEFT), FoldEdge(Edge.LEFT, ONE))
    others = (_folds(FoldAt(near, Edge.BOTTOM), FoldEdge(Edge.BOTTOM, ONE)),)
    return Wanted(answer, others, FOLD_ALL_ALIKE, UnequalPanels(columns, 1))


def _across(columns: int, rows: int) -> Folds:
    return _folds(fold_into(Axis.WIDTH, columns), fold_into(Axis.HEIGHT, rows))


def _folds(*steps: Step) -> Folds:
    return Folds(steps)
