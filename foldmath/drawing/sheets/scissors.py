"""Scissors: a small picture of them, and the folded sheet with the cut that is to come."""

from math import atan2, cos, pi, sin

from foldmath.drawing.circles import circle
from foldmath.drawing.layout import View
from foldmath.drawing.scenes import Mark, Meaning, Scene, Spot, Stroke
from foldmath.drawing.sheets.folded_sheets import sheet_picture
from foldmath.paper.state import FoldedState, Kind
from foldmath.paper.steps import Axis, Slit, Step
from foldmath.phrases import phrase
from foldmath.plane.lines import Point
from foldmath.plane.numbers import ONE, ZERO

BLADE_MM, GRIP_MM, RING_MM = 5.2, 3.0, 1.4
"""From the pivot to the tips, from the pivot to the middles of the finger rings, and a ring's radius."""

HALF_OPEN = pi / 9
"""Half the angle between the blades."""

BACK_MM, BACK_OUT_MM = 1.6, 0.7
"""Where a blade's back stands out most: from the pivot, and from its edge."""

RING_CORNERS = 16
BEFORE_CUT_MM = 3.6
"""From the pivot of the scissors to the beginning of the cut, which lies between the tips alone: with a line
that ran on to the pivot the blades would be an arrow, the other way round."""


def scissors(start: Spot, towards: Spot) -> list[Mark]:
    """Draw open scissors that are about to cut from one spot towards another."""
    way = atan2(towards.y - start.y, towards.x - start.x)
    pivot = _on(start, way, -BEFORE_CUT_MM)
    marks: list[Mark] = []
    for sign in (1, -1):
        along = way - sign * HALF_OPEN
        grip, tip = _on(pivot, along, -GRIP_MM), _on(pivot, along, BLADE_MM)
        back = _on(_on(pivot, along, BACK_MM), along - sign * pi / 2, BACK_OUT_MM)
        marks.append(Stroke((grip, tip, back, pivot), Meaning.OUTLINE))
        ring = _on(pivot, along, -GRIP_MM - RING_MM)
        marks.append(Stroke(circle(ring, RING_MM, RING_CORNERS), Meaning.OUTLINE, closed=True))
    return marks


def _on(start: Spot, way: float, reach: float) -> Spot:
    return Spot(start.x + reach * cos(way), start.y + reach * sin(way))


def cut_to_come(state: FoldedState, step: Slit, width_mm: float, most_height_mm: float) -> Scene:
    """Draw the paper as it lies, where it will be slit, and scissors where the cut begins at an edge."""
    picture = sheet_picture(state, None, width_mm, most_height_mm)
    start, end = picture.view.spots(ends_of_cut(state, step))
    return picture.with_marks(cut_marks(step, start, end), phrase("Scissors cut the folded sheet."))


def ends_of_cut(state: FoldedState, step: Slit) -> tuple[Point, Point]:
    """Give where a slit begins and ends on the table."""
    start, end = (
        (step.at, place) if step.axis is Axis.WIDTH else (place, step.at) for place in (step.start, step.end)
    )
    return state.table.box.at(*start), state.table.box.at(*end)


def cut_marks(step: Slit, start: Spot, end: Spot) -> tuple[Mark, ...]:
    """Draw the line of a cut, and scissors where it begins at an edge."""
    marks: list[Mark] = [Stroke((start, end), Meaning.CUT)]
    if step.start == ZERO:
        marks += scissors(start, end)
    elif step.end == ONE:
        marks += scissors(end, start)
    return tuple(marks)


def cut_open(state: FoldedState, width_mm: float, most_height_mm: float) -> Scene:
    """Draw the open sheet with its slit."""
    picture = sheet_picture(state, None, width_mm, most_height_mm)
    return picture.with_marks(_slits(state, picture.view), phrase("The open sheet has a slit."))


def fold_along_slit(state: FoldedState, step: Step, width_mm: float, most_height_mm: float) -> Scene:
    """Draw the open sheet with its slit, and the fold that is to come along it."""
    picture = sheet_picture(state, step, width_mm, most_height_mm)
    words = phrase("The open sheet has a slit; it will be folded in half along it.")
    return picture.with_marks(_slits(state, picture.view), words)


def _slits(state: FoldedState, view: View) -> tuple[Stroke, ...]:
    """Give the cuts of an open sheet, to be drawn over the picture of it as it lies."""
    carry = state.panels[0].placements[-1].motion.carry
    return tuple(
        Stroke(view.spots((carry(line.start), carry(line.end))), Meaning.CUT)
        for line in state.creases
        if line.kind is Kind.CUT
    )
