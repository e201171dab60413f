"""From one mark to all creases: stretches between a mark and an edge are halved until no part is left over.

Only edges travel, and only to marks, since that is what hands do well without a ruler. One mark k/n in lowest
terms leads to every part for every n up to twelve; beyond that it may not.
"""

from foldmath.paper.moments.performing import perform
from foldmath.paper.state import FoldedState
from foldmath.paper.steps import Edge, FoldEdge, Open
from foldmath.plane.lines import Point
from foldmath.plane.numbers import ONE, ZERO, Exact, exact
from foldmath.planning.parts.direction import Direction
from foldmath.planning.parts.instructions import Doing, Dot, Instruction, on_sheet
from foldmath.values import frozen

MOST_HALVINGS = 3
"""Eight layers are the most that children crease well (common practice, no source)."""


@frozen
class Stretch:
    """An edge folded to a mark, and again and again to the same mark; places are counted in parts.

    Args:
        edge: the edge that travels.
        start: its place: 0, or the number of parts.
        mark: the place it travels to.
        halvings: how often.
    """

    edge: Edge
    start: int
    mark: int
    halvings: int

    @property
    def creases(self) -> frozenset[int]:
        """Where creases arise: at every part of the stretch."""
        step = (self.start - self.mark) // 2**self.halvings
        return frozenset(self.mark + step * number for number in range(1, 2**self.halvings))


def stretches(parts: int, marks: frozenset[int], direction: Direction) -> tuple[Stretch, ...]:
    """Choose the stretches that crease every part, those with most new creases a fold first.

    Args:
        parts: how many equal parts.
        marks: known places between the edges, in parts from the near edge; not creased yet.
        direction: along which parts are counted.

    Raises:
        ValueError: the marks do not lead to every part.
    """
    known, creased, chosen = marks | {0, parts}, frozenset({0, parts}), list[Stretch]()
    while len(creased) <= parts:
        possible = [
            Stretch(edge, start, mark, halvings)
            for edge, start in ((direction.far, parts), (direction.near, 0))
            for mark in sorted(known - {start})
            for halvings in range(1, MOST_HALVINGS + 1)
            if (start - mark) % 2**halvings == 0
        ]
        best = max(
            possible,
            key=lambda stretch: (
                exact(len(stretch.creases - creased), stretch.halvings),
                -stretch.halvings,
            ),
            default=None,
        )
        if best is None or best.creases <= creased:
            raise ValueError(f"marks at {sorted(marks)} do not lead to {parts} parts")
        chosen.append(best)
        creased |= best.creases
        known |= best.creases
    return tuple(chosen)


@frozen
class Known:
    """A place known before the parts are creased.

    Args:
        part: its place, in parts from the near edge.
        at: where its dot is, on the opened sheet.
        along: where it truly is, as a fraction of the side; off ``part`` where it was found by nearing it.
    """

    part: int
    at: Point
    along: Exact


def finished(
    parts: int, known: tuple[Known, ...], direction: Direction, before: FoldedState
) -> tuple[Instruction, ...]:
    """Crease every part of a sheet, from the places that are known, on the model.

    Args:
        parts: how many equal parts.
        known: at most one place between the edges.
        direction: along which parts are counted.
        before: the sheet, open.
    """
    places = {0: ZERO, parts: ONE} | {place.part: place.along for place in known}
    dots = {place.part: place.at for place in known}
    done: list[Instruction] = []
    state = before
    for stretch in stretches(parts, frozenset(dots), direction):
        mark = places[stretch.mark]
        at = dots.get(stretch.mark, on_sheet(state, direction.point(mark, ONE)))
        dot = Dot(at, exact(stretch.mark, parts)) if 0 < stretch.mark < parts else None
        instructions = _stretched(stretch, direction, mark, dot, state)
        done += instructions
        state = instructions[-1].after
        length = places[stretch.start] - mark
        for crease in stretch.creases - places.keys():
            share = exact(crease - stretch.mark, stretch.start - stretch.mark)
            places[crease] = mark + share * length
    return tuple(done)


def _stretched(
    stretch: Stretch, direction: Direction, mark: Exact, dot: Dot | None, before: FoldedState
) -> tuple[Instruction, ...]:
    """Fold an edge to a mark so often, then open.

    ``mark`` is a fraction of the side; ``dot`` shows it, and is None if it is the edge across.
    """
    doing = Doing.EDGE_TO_DOT if dot else Doing.HALVE
    done: list[Instruction] = []
    state = before
    for number in range(1, stretch.halvings + 1):
        box = state.table.box
        near, far = (direction.along(corner) for corner in (box.at(ZERO, ZERO), box.at(ONE, ONE)))
        line = mark * direction.along(Point(state.sheet.width, state.sheet.height))
        fold = FoldEdge(stretch.edge, (line - near) / (far - near))
        last = number == stretch.halvings
        steps = (fold, Open()) if last else (fold,)
        after = perform(fold, state)
        after = perform(Open(), after) if last else after
        done.append(
            Instruction(doing=doing, steps=steps, before=state, after=after, edge=stretch.edge, dot=dot)
        )
        doing, state = Doing.EDGE_AGAIN, after
    return tuple(done)
