"""The pictures of a step: the paper as it lies and moves, and the sheet opened where it lay, in one view."""

from collections.abc import Iterable, Mapping
from dataclasses import replace
from functools import reduce
from math import hypot
from typing import ClassVar, TypeAlias

from foldmath.drawing.layout import View, joined_boxes, view_of
from foldmath.drawing.scenes import Mark, Spot, Stroke
from foldmath.drawing.sheets.arrows import fold_to_come
from foldmath.drawing.sheets.scissors import cut_marks, ends_of_cut, scissors
from foldmath.drawing.stars import SLIDE_STAR_MM, star_outline
from foldmath.measured import as_float
from foldmath.paper.folding.folding import Turn
from foldmath.paper.moments.moment import Moment
from foldmath.paper.moments.performing import fold_lines
from foldmath.paper.state import FoldedState
from foldmath.paper.steps import Axis, FoldStep, Shade, Slit
from foldmath.plane.lines import Point
from foldmath.plane.numbers import HALF, ONE
from foldmath.plane.polygons import Box, box
from foldmath.slides.motion.flaps import Flap, Manner, flaps_at_rest, flaps_of
from foldmath.slides.motion.opened import BESIDE_MM, OpenedPicture, opened_picture
from foldmath.slides.motion.shading import ShadedSide
from foldmath.slides.motion.stages import Cutting, Spinning, Stage, Turning, box_of, foot_of
from foldmath.values import frozen

LONGEST_MM = 60.0
"""The longer side of what a picture shows; stars and arrows are as large beside it as they must be."""

MARGIN_MM = 3.2
"""Room for the layers of a stack, and for ends of arrows."""


@frozen
class Resting:
    """Paper that lies inside the dotted outline of the whole sheet.

    Args:
        whole: the outline.
        flaps: from the lowest.
        hollow: the corners of the star that stands for one out of sight; empty where the star is seen.
        marks: the lines of a fold or cut to come, and arrows; empty if none comes.
    """

    whole: tuple[Spot, ...]
    flaps: tuple[Flap, ...]
    hollow: tuple[Spot, ...]
    marks: tuple[Stroke, ...]


@frozen
class TurningPicture:
    """Paper turns about a line: a point of it, and the unit normal to the moving part."""

    kind: ClassVar[str] = "turn"

    flaps: tuple[Flap, ...]
    pivot: Spot
    normal: Spot
    over: bool


@frozen
class SpinningPicture:
    """Paper goes a quarter round about a spot."""

    kind: ClassVar[str] = "spin"

    flaps: tuple[Flap, ...]
    pivot: Spot
    left: bool


@frozen
class CuttingPicture:
    """Scissors run from one spot to another; they are drawn where the cut begins."""

    kind: ClassVar[str] = "cut"

    flaps: tuple[Flap, ...]
    start: Spot
    end: Spot
    scissors: tuple[Stroke, ...]


StagePicture: TypeAlias = TurningPicture | SpinningPicture | CuttingPicture


@frozen(kw_only=True)
class StepPicture:
    """The paper before a step, what moves, the paper after it, and the sheet opened; all at one scale.

    Args:
        aside: the room at the left and at the right for fractions beside the sheet.
        width, height: of the rest.
        before, stages, after, opened: the pictures.
    """

    aside: tuple[float, float]
    width: float
    height: float
    before: Resting
    stages: tuple[StagePicture, ...]
    after: Resting
    opened: OpenedPicture | None


def step_picture(
    moment: Moment, stages: tuple[Stage, ...], star: Point, shaded: Mapping[Axis, ShadedSide]
) -> StepPicture:
    """Draw the paper as a step finds it, moves it and leaves it.

    Args:
        moment: the step.
        stages: how the paper moves.
        star: where the star is on the sheet.
        shaded: where parts are shaded after the step.
    """
    view = view_of(_bounds(moment, stages), LONGEST_MM, LONGEST_MM, MARGIN_MM)
    manner = Manner(view, star, shaded)
    opened = None if isinstance(moment.step, Shade) else opened_picture(moment, _opened(moment, view), star)
    return StepPicture(
        aside=_aside(opened),
        width=view.width_mm,
        height=view.height_mm,
        before=resting_paper(moment.before, moment, manner),
        stages=tuple(moving_paper(stage, moment, manner) for stage in stages),
        after=resting_paper(moment.after, None, manner),
        opened=opened,
    )


def _aside(opened: OpenedPicture | None) -> tuple[float, float]:
    """Give the room that fractions beside the sheet need at its left and right."""
    lefts = [label.figure.middle.x < 0 for label in opened.beside] if opened else []
    return BESIDE_MM * any(lefts), BESIDE_MM * (not all(lefts))


def _bounds(moment: Moment, stages: Iterable[Stage]) -> Box:
    boxes = [box(state.whole) for state in (moment.before, moment.after)]
    boxes += [state.table.box for state in (moment.before, moment.after)]
    boxes += [box_of(stage) for stage in stages]
    sheet = moment.after.sheet
    corner = _opened_corner(moment)
    boxes.append(Box(corner.x, corner.y, corner.x + sheet.width, corner.y + sheet.height))
    return reduce(joined_boxes, boxes)


def _opened_corner(moment: Moment) -> Point:
    """Give where the opened sheet's corner is if its middle lies on the middle of the whole's outline."""
    middle, sheet = box(moment.after.whole).at(HALF, HALF), moment.after.sheet
    return Point(middle.x - sheet.width * HALF, middle.y - sheet.height * HALF)


def _opened(moment: Moment, view: View) -> View:
    """Give the view of the sheet's own plane in which it lies over the whole's outline."""
    corner = _opened_corner(moment)
    return replace(view, left=view.left - as_float(corner.x), bottom=view.bottom - as_float(corner.y))


def resting_paper(state: FoldedState, coming: Moment | None, manner: Manner) -> Resting:
    """Draw paper that lies, with the lines of the step that comes, if one does."""
    step = coming.step if coming else None
    to_come = tuple(line for line, _ in fold_lines(step, state)) if isinstance(step, FoldStep) else ()
    flaps = flaps_at_rest(state, manner._replace(to_come=to_come))
    marks = tuple(
        replace(mark, spots=manner.down(mark.spots))
        for mark in (*_fold_marks(state, coming, manner.view), *_cut_marks(state, coming, manner.view))
        if isinstance(mark, Stroke)
    )
    hollow = () if star_is_seen(flaps) else hollow_star(state, manner)
    return Resting(manner.spots(state.whole), flaps, hollow, marks)


def _fold_marks(state: FoldedState, coming: Moment | None, view: View) -> Iterable[Mark]:
    step = coming.step if coming else None
    return fold_to_come(step, state, view) if isinstance(step, FoldStep) else ()


def _cut_marks(state: FoldedState, coming: Moment | None, view: View) -> Iterable[Mark]:
    step = coming.step if coming else None
    return cut_marks(step, *view.spots(ends_of_cut(state, step))) if isinstance(step, Slit) else ()


def star_is_seen(flaps: tuple[Flap, ...]) -> bool:
    """Tell whether the star is seen on paper as it lies at the start of a stage."""
    for number, flap in enumerate(flaps):
        star = flap.faces[0].star
        if star:
            middle = Spot(sum(x for x, _ in star) / len(star), sum(y for _, y in star) / len(star))
            if not any(_covers(over, middle) for over in flaps[number + 1 :]):
                return True
    return False


def hollow_star(state: FoldedState, manner: Manner) -> tuple[Spot, ...]:
    """Draw the hollow star on the dotted whole, which stands for a star that is out of sight."""
    opened = state.panels[0].placements[0].motion.carry(manner.star)
    return manner.down(star_outline(manner.view.spot(opened), SLIDE_STAR_MM))


def _covers(flap: Flap, spot: Spot) -> bool:
    """Tell whether a flap covers a spot: a ray to the right leaves its paper an odd number of times."""
    crossings = 0
    for outline in flap.faces[0].outlines:
        for index, (x, y) in enumerate(outline):
            before = outline[index - 1]
            if (y > spot.y) is not (before.y > spot.y):
                crossings += x + (spot.y - y) * (before.x - x) / (before.y - y) > spot.x
    return crossings % 2 == 1


def moving_paper(stage: Stage, moment: Moment, manner: Manner) -> StagePicture:
    """Draw paper that moves."""
    flaps = flaps_of(stage.pieces, manner)
    match stage:
        case Turning(_, axis, turn):
            (pivot,) = manner.spots((foot_of(axis),))
            across, up = as_float(axis.a), as_float(axis.b)
            length = hypot(across, up)
            return TurningPicture(flaps, pivot, Spot(across / length, -up / length), turn is Turn.OVER)
        case Spinning(_, centre, left):
            return SpinningPicture(flaps, manner.spots((centre,))[0], left)
        case Cutting(_, start, end):
            return _cutting(flaps, moment, (start, end), manner)


def _cutting(
    flaps: tuple[Flap, ...], moment: Moment, ends: tuple[Point, Point], manner: Manner
) -> CuttingPicture:
    """Let the scissors run from the edge that the cut begins at, or else from its first end."""
    step = moment.step
    assert isinstance(step, Slit)
    if step.end == ONE:
        ends = ends[1], ends[0]
    start, end = manner.view.spots(ends)
    drawn = tuple(
        replace(mark, spots=manner.down(mark.spots))
        for mark in scissors(start, end)
        if isinstance(mark, Stroke)
    )
    first, last = manner.down((start, end))
    return CuttingPicture(flaps, first, last, drawn)
