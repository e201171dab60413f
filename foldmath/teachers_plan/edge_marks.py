"""Which edges to mark before the lesson, and into how many parts: for folds whose place is judged by eye.

A mark checks an edge-to-edge fold and never replaces one, so a fold that brings what can be seen onto what
can be seen has none.
"""

from collections import defaultdict
from collections.abc import Iterable, Sequence
from math import lcm
from typing import NamedTuple

from foldmath.paper.moments.moment import Moment
from foldmath.paper.steps import Axis
from foldmath.plane.numbers import denominator
from foldmath.tolerance.assumed.spread import Placing
from foldmath.tolerance.landmarks.freezing import freeze
from foldmath.tolerance.landmarks.frozen import Frozen


class EdgeMarks(NamedTuple):
    """Marks that divide two opposite edges of the open sheet.

    Args:
        axis: WIDTH for marks along the top and bottom edges, HEIGHT for the left and right ones.
        parts: into how many equal parts they divide the edge.
        moments: the steps whose creases lie there, by their index in the lesson.
    """

    axis: Axis
    parts: int
    moments: tuple[int, ...]


def edge_marks(moments: Sequence[Moment]) -> tuple[EdgeMarks, ...]:
    """Give the marks that a folding needs, by the first step that needs them.

    Folds aslant, and those made while one of them is folded, have none: their creases divide no edge evenly.
    """
    frozen = freeze(moments)
    found: dict[tuple[Axis, int], list[int]] = defaultdict(list)
    for step in sorted({source.step for source in frozen.sources if source.placing is Placing.EYE}):
        for axis in Axis:
            parts = _parts(frozen, step, axis)
            if parts > 1:
                found[axis, parts].append(step)
    return tuple(EdgeMarks(axis, parts, tuple(steps)) for (axis, parts), steps in found.items())


def parts_marked(marks: Iterable[EdgeMarks]) -> tuple[int, ...]:
    """Give the numbers of parts, the fewest first, each once."""
    return tuple(sorted({mark.parts for mark in marks}))


def _parts(frozen: Frozen, step: int, axis: Axis) -> int:
    """Give the fewest equal parts of an edge between which all creases of a step lie; 1 if none does."""
    length = dict(frozen.lengths)[axis]
    return lcm(
        *(
            denominator(crease.at / length)
            for crease in frozen.creases
            if crease.step == step and crease.axis is axis
        )
    )
