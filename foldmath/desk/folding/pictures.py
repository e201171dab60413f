"""The pictures of the folding page: the sheet as it lies, how it came to lie so, and the sheet opened."""

from collections.abc import Iterable
from functools import reduce

from foldmath.desk.folding.paper_now import PaperNow
from foldmath.drawing.layout import View, joined_boxes
from foldmath.drawing.scenes import Spot
from foldmath.measured import as_float
from foldmath.paper.moments.moment import Moment
from foldmath.paper.state import FoldedState, Sheet
from foldmath.paper.steps import Open
from foldmath.plane.numbers import ZERO
from foldmath.plane.polygons import Box, box
from foldmath.slides.gathering import GatherSlide, gather_slide
from foldmath.slides.motion.flaps import Manner
from foldmath.slides.motion.opened import BESIDE_MM, OpenedPicture, opened_picture
from foldmath.slides.motion.shading import shaded_sides
from foldmath.slides.motion.stages import stages_of_last_step
from foldmath.slides.motion.stars import star_of
from foldmath.slides.pictures import (
    LONGEST_MM,
    Resting,
    StagePicture,
    hollow_star,
    moving_paper,
    resting_paper,
    star_is_seen,
)
from foldmath.values import frozen

MARGIN_MM = 4.0
"""Round the whole sheet: room for layers that peep out, and for a finger that takes an edge from outside."""


@frozen(kw_only=True)
class Lying:
    """The sheet as it lies, inside the outline of the whole, in mm from the picture's top left.

    Args:
        view: of the table.
        paper: what is drawn.
        covers: the regions that the paper covers, for the see-through flap.
    """

    view: View
    paper: Resting
    covers: tuple[tuple[Spot, ...], ...]


@frozen(kw_only=True)
class Moving:
    """How the last step moved the paper.

    Args:
        view: of the table, wide enough for both ends of the motion.
        before, after: the outline of the whole at both ends.
        hollow: the corners of the star that stands for one out of sight, at both ends; else empty.
        stages: the movements, one after the other; empty if the paper lay still.
    """

    view: View
    before: tuple[Spot, ...]
    after: tuple[Spot, ...]
    hollow: tuple[tuple[Spot, ...], tuple[Spot, ...]]
    stages: tuple[StagePicture, ...]


@frozen
class Opened:
    """The sheet opened, every panel with its fraction, and the room beside it for those of small panels."""

    view: View
    sheet: OpenedPicture
    aside: tuple[float, float]


def lying(now: PaperNow) -> Lying:
    """Draw the sheet as it lies."""
    view = lying_view(now)
    manner = _manner(now, view)
    covers = tuple(manner.spots(cover.polygon) for cover in now.state.table.covers)
    return Lying(view=view, paper=resting_paper(now.state, None, manner), covers=covers)


def lying_view(now: PaperNow) -> View:
    """Give the view in which the sheet is drawn as it lies."""
    return _view(now.state.sheet, _boxes(now.state))


def moving(now: PaperNow, lies: Lying) -> Moving | None:
    """Draw how the last step moved the paper to where it ``lies``; None if it lay still, or none was done."""
    if not now.moments:
        return None
    moment, stages = now.moments[-1], stages_of_last_step(now.proved)
    if not stages:
        return None
    view = _view(now.state.sheet, (*_boxes(moment.before), *_boxes(moment.after)))
    manner = _manner(now, view)
    drawn = tuple(moving_paper(stage, moment, manner) for stage in stages)
    was_seen, is_seen = star_is_seen(drawn[0].flaps), not lies.paper.hollow
    return Moving(
        view=view,
        before=manner.spots(moment.before.whole),
        after=manner.spots(moment.after.whole),
        hollow=(
            () if was_seen else hollow_star(moment.before, manner),
            () if is_seen else hollow_star(moment.after, manner),
        ),
        stages=drawn,
    )


def gathering(now: PaperNow) -> GatherSlide | None:
    """Give how the last step stood the sheet up and pushed it together; None if it did not."""
    if not now.moments:
        return None
    return gather_slide(now.done, now.moments[-1], now.lesson.steps[-1])


def opened_sheet(now: PaperNow) -> Opened:
    """Draw the opened sheet, printed side up, with the fraction of every panel."""
    sheet = now.state.sheet
    view = _view(sheet, (Box(ZERO, ZERO, sheet.width, sheet.height),))
    # The picture asks only how the paper lies after a step.
    moment = now.moments[-1] if now.moments else Moment(Open(), now.state, now.state)
    drawn = opened_picture(moment, view, star_of(now.state))
    lefts = [label.figure.middle.x < 0 for label in drawn.beside]
    return Opened(view, drawn, (BESIDE_MM * any(lefts), BESIDE_MM * (not all(lefts))))


def _boxes(state: FoldedState) -> tuple[Box, Box]:
    return state.table.box, box(state.whole)


def _view(sheet: Sheet, boxes: Iterable[Box]) -> View:
    """Give a view of some boxes in which the longer side of every sheet is alike, however the paper lies."""
    scale = LONGEST_MM / as_float(max(sheet.width, sheet.height))
    bounds = reduce(joined_boxes, boxes)
    return View(
        scale=scale,
        left=as_float(bounds.left),
        bottom=as_float(bounds.bottom),
        margin_mm=MARGIN_MM,
        width_mm=as_float(bounds.width) * scale + 2 * MARGIN_MM,
        height_mm=as_float(bounds.height) * scale + 2 * MARGIN_MM,
    )


def _manner(now: PaperNow, view: View) -> Manner:
    shaded = shaded_sides(now.proved)
    return Manner(view, star_of(now.state), shaded[-1] if shaded else {})
