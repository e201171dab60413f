"""Ranking: takes plans, gives the list that is shown, best first, each with why it stands there."""

from enum import Enum
from typing import assert_never

from foldmath.paper.moments.moment import Moment
from foldmath.paper.steps import (
    FoldAt,
    FoldEdge,
    FoldStep,
    Gather,
    OpenStep,
    Pleat,
    Shade,
    Slit,
    Step,
    TurnStep,
)
from foldmath.plane.numbers import HALF, ONE, ZERO, denominator
from foldmath.planning.plans import Plan
from foldmath.planning.trials import Trials
from foldmath.tolerance.assumed.stock import Stock
from foldmath.tolerance.limits import MOST_LAYERS, Judgement, Severity, judged
from foldmath.values import frozen

NOTICED = 2
"""A plan is called shorter to say if it has two sentences less; each opening is one."""


LAST_GRADE_BY_STEPS = 5
"""Up to this grade comes first what takes least measuring, and of that what is soonest said: for eighths
three halvings, for fifteenths a fan of 5 and a fan of 3 [common practice, no source]."""

EASILY_SEEN = 3
"""Into so many parts a side is divided by eye without marks [common practice, no source]."""


class Priority(Enum):
    """What the first plan of a list has fewest of."""

    FOLDS = "folds"
    STEPS = "steps"

    def key(self, plan: Plan) -> tuple[int, ...]:
        """Give what plans are ordered by: ``Plan.key``; or steps before it, where small hands can do them.

        Few steps are few only of those that take as little measuring.
        """
        if self is Priority.FOLDS:
            return plan.key
        return plan.layers > MOST_LAYERS, sum(map(_measured, plan.steps)), len(plan.steps), *plan.key


def _measured(step: Step) -> int:
    """Weigh what is measured for a step: nothing where an edge is brought to an edge or to the middle.

    A fan into an even number of parts weighs more than one into an odd number, since halving would do a part
    of it by itself; and a crease at 4/9 more than one at 1/3.
    """
    if isinstance(step, Pleat):
        return 1 if step.parts % 2 else 2
    if isinstance(step, FoldAt):
        return 1 if denominator(step.at) <= EASILY_SEEN else 2
    if isinstance(step, FoldEdge):
        return int(step.to not in (ZERO, HALF, ONE))
    if isinstance(step, FoldStep | OpenStep | TurnStep | Shade | Slit | Gather):
        return 0
    assert_never(step)


def priority_of(grade: int) -> Priority:
    """Tell what matters most to a grade: few steps to say and to follow, or few folds."""
    return Priority.STEPS if grade <= LAST_GRADE_BY_STEPS else Priority.FOLDS


class Reason(Enum):
    """Why a plan ranks where it does; the value names its words."""

    ONLY = "only"
    TRUEST = "truest"
    FEWEST_LAYERS = "fewest_layers"
    LARGER = "larger"
    FEWEST_STEPS = "fewest_steps"
    SOONEST_SAID = "soonest_said"
    LEAST_MEASURED = "least_measured"
    FOLDS = "folds"
    LAYERS = "layers"
    TRUER = "truer"
    CLOSED = "closed"
    STEPS = "steps"
    PANELS = "panels"


@frozen
class Ranked:
    """A plan on the list.

    Args:
        plan: it.
        reasons: why it stands there.
        moments: what each of its steps does.
        judgements: what speaks against single steps.
    """

    plan: Plan
    reasons: tuple[Reason, ...]
    moments: tuple[Moment, ...]
    judgements: tuple[Judgement, ...]


def ranked(
    plans: list[Plan], trials: Trials, stock: Stock, most: int, priority: Priority = Priority.FOLDS
) -> tuple[Ranked, ...]:
    """List up to so many plans: the best, then each that is the best so far in something.

    Plans that this paper cannot do are left out.
    """
    ordered = sorted(plans, key=lambda plan: (priority.key(plan), plan.off_mm))
    listed: list[Ranked] = []
    for index, plan in enumerate(ordered):
        reasons = (
            _records(plan, [other.plan for other in listed]) if listed else _lead(ordered[index:], priority)
        )
        if not reasons:
            continue
        moments = tuple(trials.moments(plan.steps))
        judgements = judged(moments, stock)
        if any(judgement.severity is Severity.IMPOSSIBLE for judgement in judgements):
            continue
        listed.append(Ranked(plan, reasons, moments, judgements))
        if len(listed) == most:
            break
    return tuple(listed)


def _lead(ordered: list[Plan], priority: Priority) -> tuple[Reason, ...]:
    """Say by which figure the first plan leads the next that is not like it in all."""
    if priority is Priority.STEPS:
        layers = max(ordered[0].layers, MOST_LAYERS)
        fewest = min(len(plan.steps) for plan in ordered if plan.layers <= layers)
        soonest = len(ordered[0].steps) == fewest
        return (Reason.SOONEST_SAID if soonest else Reason.LEAST_MEASURED,)
    leads = (Reason.ONLY, Reason.TRUEST, Reason.FEWEST_LAYERS, Reason.LARGER, Reason.FEWEST_STEPS)
    first = ordered[0].key
    for plan in ordered[1:]:
        if plan.key != first:
            return (leads[[one == other for one, other in zip(first, plan.key, strict=True)].index(False)],)
    return (Reason.ONLY,)


def _records(plan: Plan, above: list[Plan]) -> tuple[Reason, ...]:
    """Say in what a plan is better than every plan above it."""
    better = {
        Reason.FOLDS: plan.folds < min(other.folds for other in above),
        Reason.LAYERS: plan.layers < min(other.layers for other in above),
        Reason.TRUER: plan.off_whole_mm < min(other.off_whole_mm for other in above),
        Reason.CLOSED: plan.openings == 1 < min(other.openings for other in above),
        Reason.STEPS: len(plan.steps) + NOTICED <= min(len(other.steps) for other in above),
        Reason.PANELS: plan.narrow_mm > max(other.narrow_mm for other in above),
    }
    return tuple(reason for reason, true in better.items() if true)
