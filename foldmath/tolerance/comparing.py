"""Where guide marks help most, and the same creases made one by one on the open sheet."""

from collections.abc import Sequence

from foldmath.paper.moments.moment import Moment
from foldmath.paper.moments.performing import perform
from foldmath.paper.state import open_sheet
from foldmath.paper.steps import Axis, Edge, FoldAt, FoldEdge, FoldStep, Open
from foldmath.plane.numbers import ONE, ZERO, Exact
from foldmath.tolerance.accuracy import Accuracy, accuracy
from foldmath.tolerance.assumed.spread import Spread
from foldmath.tolerance.landmarks.freezing import freeze
from foldmath.values import frozen

LEAST_GAIN = 0.1
"""Ticks are named if they make the squared errors of all sizes smaller by this share (this house's rule)."""


MOST_WORK = 500_000
"""How much is worked out again to find better ways, in panels seen and errors added up: about a second."""

WORK_OF_A_FOLD = 100
"""What naming the landmarks of one fold costs, counted likewise (measured)."""


@frozen
class Mark:
    """A step whose creases are best laid on printed ticks.

    Args:
        step: counted from 0.
        without_mm: how far off the worst panel may be without ticks there.
        with_mm: and with them.
    """

    step: int
    without_mm: float
    with_mm: float


def best_marks(moments: Sequence[Moment], spread: Spread) -> tuple[Mark, ...]:
    """Tell at which steps ticks help, the best first, each on top of those before.

    The best makes the worst panel best; where two parts are alike bad, so that no step alone helps the worst
    panel, it makes all sizes truer together. A step is named only if it does that by ``LEAST_GAIN``, and the
    search ends where it would be more than ``MOST_WORK``.
    """
    found: list[Mark] = []
    before = accuracy(moments, spread)
    steps = list(dict.fromkeys(landmark.step for landmark in before.landmarks))
    tries = MOST_WORK // work(moments, before)
    while steps and len(steps) <= tries:
        tries -= len(steps)
        marked = [mark.step for mark in found]
        tried = {step: accuracy(moments, spread, ticks=(*marked, step)) for step in steps}
        step = min(tried, key=lambda step: (round(tried[step].worst_mm, 6), _squares(tried[step]), step))
        after = tried[step]
        if _squares(after) > (1 - LEAST_GAIN) * _squares(before):
            break
        found.append(Mark(step, before.worst_mm, after.worst_mm))
        steps.remove(step)
        before = after
    return tuple(found)


def work(moments: Sequence[Moment], made: Accuracy) -> int:
    """Tell how much it is to work out once more how true a folding comes out."""
    errors = len(made.frozen.tape) * len(made.frozen.sources)
    return moments[-1].after.handled + errors + WORK_OF_A_FOLD * (1 + len(made.landmarks))


def _squares(made: Accuracy) -> float:
    return sum(part.error.off_mm**2 for part in made.parts)


def singly(moments: Sequence[Moment]) -> tuple[Moment, ...]:
    """Make the same creases one by one through one layer, opening the sheet after each.

    A crease half-way between an edge and the other edge or an earlier crease is made by bringing that edge
    there, and such creases come first. Slanted creases are left out.
    """
    frozen = freeze(moments)
    lengths = dict(frozen.lengths)
    wanted = sorted(frozen.creases, key=lambda crease: crease.step)
    places = [(crease.axis, crease.at / lengths[crease.axis]) for crease in wanted]
    state, made = open_sheet(moments[0].before.sheet), []
    known = {axis: {ZERO, ONE} for axis in Axis}
    while places:
        tried = [(place, _by_landmarks(*place, known[place[0]])) for place in places]
        (axis, at), fold = next((each for each in tried if each[1]), tried[0])
        for step in (fold or FoldAt(at, _ends(axis)[0]), Open()):
            after = perform(step, state)
            made.append(Moment(step, state, after))
            state = after
        known[axis].add(at)
        places.remove((axis, at))
    return tuple(made)


def _by_landmarks(axis: Axis, at: Exact, known: set[Exact]) -> FoldStep | None:
    """Give the fold that brings an edge of the open sheet onto what makes this crease, if that is there."""
    low, high = _ends(axis)
    if 2 * at in known:
        return FoldEdge(low, 2 * at)
    if 2 * at - ONE in known:
        return FoldEdge(high, 2 * at - ONE)
    return None


def _ends(axis: Axis) -> tuple[Edge, Edge]:
    return (Edge.LEFT, Edge.RIGHT) if axis is Axis.WIDTH else (Edge.BOTTOM, Edge.TOP)
