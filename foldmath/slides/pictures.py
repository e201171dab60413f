"""The pictures of a step, in mm from the top left: the paper as it lies and moves, and the opened sheet."""

from collections.abc import Iterable
from dataclasses import dataclass
from functools import reduce
from math import hypot
from typing import assert_never

from foldmath.drawing.arrows import fold_to_come
from foldmath.drawing.crease_patterns import LEANS
from foldmath.drawing.hatching import hatch_lines
from foldmath.drawing.layout import View, as_float, figure_in, joined_boxes, view_of
from foldmath.drawing.look import STAR_RADIUS_MM
from foldmath.drawing.scenes import Figure, Lean, Mark, Spot, Star, Stroke
from foldmath.drawing.scissors import cut_marks, ends_of_cut
from foldmath.paper.folding import Turn
from foldmath.paper.moment import Moment
from foldmath.paper.state import FoldedState, Kind
from foldmath.paper.steps import FoldStep, Gather, OpenStep, Shade, Slit, TurnStep
from foldmath.plane.lines import Point
from foldmath.plane.numbers import denominator
from foldmath.plane.polygons import box
from foldmath.slides.flaps import Flap, flaps_at_rest, flaps_of_stage, star_at_rest
from foldmath.slides.stages import Stage, star_of
from foldmath.worksheets.folding_part import LARGEST_DENOMINATOR

LONGEST_MM = 60.0
"""The longer side of a sheet in a picture; stars, arrows and hatches are as large beside it as in print."""

MARGIN_MM = 3.2
"""Room for the layers of a stack, and for ends of arrows."""

HATCH_PITCH_MM = 2.6
LARGEST_FIGURE_MM, SMALLEST_FIGURE_MM = 12.0, 3.0

Lines = tuple[tuple[Spot, Spot], ...]


@dataclass(frozen=True)
class Resting:
    """Paper that lies inside the dotted outline of the whole sheet.

    Args:
        whole: the outline.
        flaps: from the lowest.
        star: on the paper, or hollow on the whole.
        marks: the lines of a fold to come and its arrows; empty if none comes.
    """

    whole: tuple[Spot, ...]
    flaps: tuple[Flap, ...]
    star: Star
    marks: tuple[Stroke, ...]


@dataclass(frozen=True)
class Moving:
    """A stage: what moves, and a point of the line it turns about with the unit normal to the moving part."""

    flaps: tuple[Flap, ...]
    pivot: Spot
    normal: Spot
    over: bool


@dataclass(frozen=True)
class LyingPicture:
    """The paper before a step, what moves, and the paper after it."""

    width: float
    height: float
    before: Resting
    stages: tuple[Moving, ...]
    after: Resting


@dataclass(frozen=True)
class Creases:
    """The lines on an opened sheet: valley and mountain creases, cuts, and the hatches of each lean."""

    valley: Lines
    mountain: Lines
    cut: Lines
    right: Lines
    left: Lines


@dataclass(frozen=True)
class OpenedPicture:
    """The opened sheet, printed side up.

    Args:
        panels: the polygons of all panels after the step, in the model's order.
        outline: the sheet.
        before, after: its lines before the step and after it.
        figures: the fraction of each panel that has room for it, as large as it fits.
        star: at the bottom left.
    """

    width: float
    height: float
    panels: tuple[tuple[Spot, ...], ...]
    outline: tuple[Spot, ...]
    before: Creases
    after: Creases
    figures: tuple[Figure, ...]
    star: Star


def lying_picture(moment: Moment, stages: tuple[Stage, ...]) -> LyingPicture:
    """Draw the paper as a step finds it, moves it and leaves it, all in one view."""
    boxes = [box(state.whole) for state in (moment.before, moment.after)]
    boxes += [state.table.box for state in (moment.before, moment.after)]
    boxes += [stage.box for stage in stages]
    view = view_of(reduce(joined_boxes, boxes), LONGEST_MM, LONGEST_MM, MARGIN_MM)
    return LyingPicture(
        view.width_mm,
        view.height_mm,
        _resting(moment.before, moment, view),
        tuple(_moving(stage, view) for stage in stages),
        _resting(moment.after, None, view),
    )


def _resting(state: FoldedState, coming: Moment | None, view: View) -> Resting:
    whole = _down(view.spots(state.whole), view)
    flaps = flaps_at_rest(state, view)
    marks = tuple(
        Stroke(_down(mark.spots, view), mark.meaning, mark.closed, mark.bends)
        for mark in _to_come(state, coming, view)
        if isinstance(mark, Stroke)
    )
    return Resting(whole, flaps, star_at_rest(flaps, state, view), marks)


def _to_come(state: FoldedState, coming: Moment | None, view: View) -> Iterable[Mark]:
    """Draw the fold or the cut that is to come."""
    if coming is None:
        return ()
    step = coming.step
    if isinstance(step, FoldStep):
        return fold_to_come(step, state, view)
    if isinstance(step, Slit):
        return cut_marks(step, *view.spots(ends_of_cut(state, step)))
    if isinstance(step, OpenStep | TurnStep | Shade | Gather):
        return ()
    assert_never(step)


def _moving(stage: Stage, view: View) -> Moving:
    line = stage.axis
    squared = line.a * line.a + line.b * line.b
    foot = Point(-line.a * line.c / squared, -line.b * line.c / squared)
    (pivot,) = _down((view.spot(foot),), view)
    across, up = as_float(line.a), as_float(line.b)
    length = hypot(across, up)
    normal = Spot(across / length, -up / length)
    return Moving(flaps_of_stage(stage, view), pivot, normal, stage.turn is Turn.OVER)


def opened_picture(moment: Moment) -> OpenedPicture:
    """Draw the opened sheet before a step and after it."""
    state = moment.after
    view = view_of(box(state.sheet.outline), LONGEST_MM, LONGEST_MM, MARGIN_MM)
    outline = view.spots(state.sheet.outline)
    star = Star(view.spot(star_of(state.sheet)), STAR_RADIUS_MM)
    panels = tuple(view.spots(panel.corners) for panel in state.panels)
    figures = [
        figure_in(spots, panel.area, LARGEST_FIGURE_MM, SMALLEST_FIGURE_MM)
        for spots, panel in zip(panels, state.panels, strict=True)
        if not panel.shadings and denominator(panel.area) <= LARGEST_DENOMINATOR
    ]
    return OpenedPicture(
        view.width_mm,
        view.height_mm,
        tuple(_down(spots, view) for spots in panels),
        _down(outline, view),
        _creases(moment.before, view),
        _creases(moment.after, view),
        tuple(_figure_down(figure, view) for figure in figures if figure),
        Star(_down((star.middle,), view)[0], star.radius_mm),
    )


def _creases(state: FoldedState, view: View) -> Creases:
    runs: dict[Kind, list[tuple[Spot, Spot]]] = {kind: [] for kind in Kind}
    for crease in state.creases:
        line = view.spot(crease.start), view.spot(crease.end)
        runs[crease.kind].append(_line_down(line, view))
    hatches: dict[Lean, list[tuple[Spot, Spot]]] = {Lean.RIGHT: [], Lean.LEFT: []}
    for panel in state.panels:
        for axis in dict.fromkeys(panel.shadings):
            lines = hatch_lines(view.spots(panel.corners), LEANS[axis], HATCH_PITCH_MM)
            hatches[LEANS[axis]] += (_line_down(line, view) for line in lines)
    return Creases(
        tuple(runs[Kind.VALLEY]),
        tuple(runs[Kind.MOUNTAIN]),
        tuple(runs[Kind.CUT]),
        tuple(hatches[Lean.RIGHT]),
        tuple(hatches[Lean.LEFT]),
    )


def _line_down(line: tuple[Spot, Spot], view: View) -> tuple[Spot, Spot]:
    start, end = _down(line, view)
    return start, end


def _figure_down(figure: Figure, view: View) -> Figure:
    (place,) = _down((figure.middle,), view)
    return Figure(place, figure.numerator, figure.denominator, figure.size_mm)


def _down(spots: tuple[Spot, ...], view: View) -> tuple[Spot, ...]:
    """Count heights from the top, as SVG does."""
    return tuple(Spot(x, view.height_mm - y) for x, y in spots)
