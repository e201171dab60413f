"""On which side of the sheet a lesson shades: the side that lies up at the time."""

from collections.abc import Mapping
from typing import NamedTuple

from foldmath.drawing.scenes import Lean
from foldmath.drawing.sheets.crease_patterns import LEANS
from foldmath.lesson.proving import ProvedLesson
from foldmath.paper.steps import Axis, Shade
from foldmath.plane.motions import Motion
from foldmath.plane.numbers import ZERO


class ShadedSide(NamedTuple):
    """Whether it is the printed side that was shaded, and how its hatch leans in the sheet's own frame."""

    printed: bool
    lean: Lean


_OTHER = {Lean.LEFT: Lean.RIGHT, Lean.RIGHT: Lean.LEFT}


def shaded_sides(proved: ProvedLesson) -> list[Mapping[Axis, ShadedSide]]:
    """Give for each step where parts are shaded after it, by the axis along which they were counted."""
    sides: dict[Axis, ShadedSide] = {}
    shaded: list[Mapping[Axis, ShadedSide]] = []
    for moment in proved.moments:
        if isinstance(moment.step, Shade):
            lies = moment.before.panels[0].placements[-1].motion
            sides = sides | {moment.step.axis: ShadedSide(lies.upright, _lean(moment.step.axis, lies))}
        shaded.append(sides)
    return shaded


def _lean(axis: Axis, lies: Motion) -> Lean:
    """Give the lean in the sheet's own frame of a hatch as it lies: a mirror or quarter turn swaps it."""
    return LEANS[axis] if lies.upright is (lies.c != ZERO) else _OTHER[LEANS[axis]]
