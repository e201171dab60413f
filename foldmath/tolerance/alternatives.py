"""The same creases made in other ways, and how true each comes out: the figures behind advice."""

from collections.abc import Iterator, Sequence
from itertools import islice, permutations, takewhile

from foldmath.paper.moments.moment import Moment, crease_places
from foldmath.paper.moments.performing import perform
from foldmath.paper.refusals import StepRefused
from foldmath.paper.steps import FoldStep, Step
from foldmath.tolerance.accuracy import Accuracy, accuracy
from foldmath.tolerance.comparing import MOST_WORK, best_marks, singly, work
from foldmath.values import frozen

MOST_ORDERED = 4
"""So many first folds are tried in every order, 24 in all; nobody weighs more (this house's rule)."""

MOST_SINGLY = 31
"""No class makes more creases one by one: 32 columns, or 16 columns and 16 rows (this house's rule)."""


@frozen(kw_only=True)
class Alternatives:
    """How true the same creases come out if they are made in other ways; None for a way that there is not.

    Args:
        order: the truest other order of the first folds, by their steps, counted from 0; empty if none.
        in_order: how true it is.
        singly: each crease made through one layer, the sheet opened after it.
        ticks: the steps at which ticks help, counted from 0; empty if they help at none.
        ticked: how true it is with ticks there or, if they help at none, at the one step where they do best.
    """

    order: tuple[int, ...]
    in_order: Accuracy | None
    singly: Accuracy | None
    ticks: tuple[int, ...]
    ticked: Accuracy | None


def alternatives(moments: Sequence[Moment], made: Accuracy) -> Alternatives:
    """Try other orders, opening the sheet after every crease, and ticks at every step.

    Args:
        moments: what each step did, from the open sheet.
        made: how true it comes out as it is folded.
    """
    spread = made.spread
    tries = MOST_WORK // work(moments, made)
    orders = {order: accuracy(other, spread) for order, other in _other_orders(moments, tries)}
    order = min(orders, key=lambda order: (_off(orders[order]), order), default=())
    alone = singly(moments) if 0 < len(made.creases) <= MOST_SINGLY else ()
    ticks = tuple(sorted(mark.step for mark in best_marks(moments, spread)))
    tried = [ticks] if ticks else [(step,) for step in {landmark.step for landmark in made.landmarks}]
    ticked = [accuracy(moments, spread, ticks=steps) for steps in tried[: max(1, tries)]]
    return Alternatives(
        order=order,
        in_order=orders.get(order),
        singly=accuracy(alone, spread) if alone else None,
        ticks=ticks,
        ticked=min(ticked, key=_off, default=None),
    )


def _off(made: Accuracy) -> tuple[float, float]:
    """Give how far off the worst panel is and, where that is alike, all sizes together."""
    return round(made.worst_mm, 6), sum(part.error.off_mm**2 for part in made.parts)


def _other_orders(
    moments: Sequence[Moment], tries: int
) -> Iterator[tuple[tuple[int, ...], tuple[Moment, ...]]]:
    """Give the orders of the folds before the first opening that make the same creases in the end."""
    steps = [moment.step for moment in moments]
    folds = list(takewhile(lambda step: isinstance(step, FoldStep), steps))
    if len(folds) > MOST_ORDERED:
        return
    wanted, known = crease_places(moments[-1].after), {tuple(folds)}
    for order in islice(permutations(range(len(folds))), tries):
        reordered = tuple(folds[index] for index in order)
        if reordered in known:
            continue
        known.add(reordered)
        other = _performed([*reordered, *steps[len(folds) :]], moments)
        if other and crease_places(other[-1].after) == wanted:
            yield order, other


def _performed(steps: Sequence[Step], moments: Sequence[Moment]) -> tuple[Moment, ...]:
    """Do steps from the same open sheet; give nothing if one cannot be done."""
    state, done = moments[0].before, []
    for step in steps:
        try:
            after = perform(step, state)
        except StepRefused:
            return ()
        done.append(Moment(step, state, after))
        state = after
    return tuple(done)
