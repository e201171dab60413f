"""Random sequences of steps, drawn from a seed, held to every law of folding after every step."""

import random
from collections.abc import Iterator

from paper import laws

from foldmath.paper.moments.performing import perform
from foldmath.paper.refusals import StepRefused
from foldmath.paper.state import FoldedState, Sheet, open_sheet
from foldmath.paper.steps import (
    Axis,
    Edge,
    FoldAlong,
    FoldAt,
    FoldBothEdges,
    FoldEdge,
    FoldPoint,
    Gather,
    Open,
    OpenLast,
    Pleat,
    Shade,
    Slit,
    Step,
    TurnOver,
    TurnQuarter,
)
from foldmath.plane.lines import Point
from foldmath.plane.numbers import HALF, Exact, exact

MANY_PANELS = 48
"""A sequence stops growing here, so that a million of them can be looked at."""

LONGEST = 7
SHEETS = (
    Sheet(exact(11), exact(17, 2), "in"),
    Sheet(exact(210), exact(297), "mm"),
    Sheet(exact(1), exact(1), "in"),
    Sheet(exact(5), exact(1, 3), "in"),
)
BOOKLET = (
    FoldEdge(Edge.LEFT, exact(1)),
    FoldEdge(Edge.TOP, exact(0)),
    FoldEdge(Edge.LEFT, exact(1)),
    Open(),
    Slit(Axis.HEIGHT, HALF, exact(1, 4), exact(3, 4)),
    Gather(),
    Open(),
)
"""Every so many sequences begin with a part of these, so that slits and gathers are reached."""


def share(chance: random.Random) -> Exact:
    """Draw a fraction from 0 to 1."""
    below = chance.choice([2, 2, 3, 4, 5, 6])
    return exact(chance.randint(0, below), below)


def drawn(chance: random.Random) -> Step:
    """Draw a step of any kind."""
    edge, axis = chance.choice(list(Edge)), chance.choice(list(Axis))
    behind = chance.random() < 0.4
    points = [Point(share(chance), share(chance)) for _ in range(3)]
    start, end = sorted((share(chance), share(chance)))
    kinds = (
        lambda: FoldEdge(edge, edge.opposite.position, behind),
        lambda: FoldEdge(edge, share(chance), behind),
        lambda: FoldAt(share(chance), edge, behind),
        lambda: FoldBothEdges(axis, behind),
        lambda: FoldPoint(points[0], points[1], behind),
        lambda: FoldAlong(*points, behind),
        lambda: Pleat(axis, chance.randint(2, 5)),
        OpenLast,
        Open,
        TurnOver,
        lambda: TurnQuarter(behind),
        lambda: Shade(1, chance.randint(1, 4), axis),
        lambda: Slit(axis, share(chance), start, end),
        lambda: Slit(axis, HALF, exact(1, 4), exact(3, 4)),
        lambda: Gather(chance.choice([None, 0, 1])),
    )
    weights = (5, 3, 3, 2, 3, 2, 2, 2, 3, 2, 2, 1, 2, 1, 1)
    return chance.choices(kinds, weights)[0]()


def sequence(seed: int, number: int) -> tuple[Sheet, list[Step]]:
    """Give a sheet and one sequence of steps."""
    chance = random.Random(f"{seed} sequence {number}")
    begun = list(BOOKLET[: chance.randint(1, len(BOOKLET))]) if chance.random() < 0.15 else []
    steps = begun + [drawn(chance) for _ in range(chance.randint(1, LONGEST))]
    return chance.choice(SHEETS), steps


def states(sheet: Sheet, steps: list[Step]) -> Iterator[tuple[Step, FoldedState]]:
    """Do the steps that can be done and that do not cut too finely."""
    state = open_sheet(sheet)
    for step in steps:
        try:
            after = perform(step, state)
        except StepRefused:
            continue
        if len(after.panels) <= MANY_PANELS:
            state = after
            yield step, state


def broken(seed: int, number: int) -> tuple[int, str]:
    """Hold a sequence to the laws; gives how many steps could be done, and what is broken, or nothing."""
    count = 0
    for step, state in states(*sequence(seed, number)):
        count += 1
        # A booklet stands on its spine and does not lie on the table; its laws are those of its pages.
        found = () if state.gathered else laws.breaches(state)
        if found:
            return count, f"after {step}: {found[0].law}"
    return count, ""
