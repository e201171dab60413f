"""On which side of the sheet a lesson shades: the side that lies up at the time."""

from collections.abc import Mapping
from typing import NamedTuple

from foldmath.drawing.scenes import Lean
from foldmath.drawing.sheets.crease_patterns import LEANS
from foldmath.drawing.sheets.shaded_parts import shaded_inside
from foldmath.lesson.proving import ProvedLesson
from foldmath.paper.steps import Axis, Shade
from foldmath.plane.motions import Motion
from foldmath.plane.numbers import ZERO


class ShadedSide(NamedTuple):
    """How parts are shaded that were counted along one axis.

    Args:
        printed: whether it is the printed side that was shaded.
        lean: of the hatch, in the sheet's own frame.
        inside: the axis of the parts of this side inside which these are hatched; None for all of them.
    """

    printed: bool
    lean: Lean
    inside: Axis | None


_OTHER = {Lean.LEFT: Lean.RIGHT, Lean.RIGHT: Lean.LEFT}


def shaded_sides(proved: ProvedLesson) -> list[Mapping[Axis, ShadedSide]]:
    """Give for each step where parts are shaded after it, by the axis along which they were counted."""
    sides: dict[Axis, ShadedSide] = {}
    shaded: list[Mapping[Axis, ShadedSide]] = []
    for moment in proved.moments:
        if isinstance(moment.step, Shade):
            axis, lies = moment.step.axis, moment.before.panels[0].placements[-1].motion
            around = shaded_inside(moment.after).get(axis)
            inside = around if around and sides[around].printed is lies.upright else None
            sides = sides | {axis: ShadedSide(lies.upright, _lean(axis, lies), inside)}
        shaded.append(sides)
    return shaded


def _lean(axis: Axis, lies: Motion) -> Lean:
    """Give the lean in the sheet's own frame of a hatch as it lies: a mirror or quarter turn swaps it."""
    return LEANS[axis] if lies.upright is (lies.c != ZERO) else _OTHER[LEANS[axis]]
