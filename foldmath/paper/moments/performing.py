"""Doing a step: takes the paper as it lies and a step, gives the paper after it, or says why not."""

from dataclasses import replace
from typing import NamedTuple, assert_never

from foldmath.paper.booklet.gathering import gather
from foldmath.paper.folding.folding import Turn, fold
from foldmath.paper.folding.moving import joined, turn_paper, unfold
from foldmath.paper.folding.slitting import slit
from foldmath.paper.measures import edge_said, place_said
from foldmath.paper.refusals import (
    BookletClosed,
    LineUndefined,
    NothingFolded,
    PanelAcrossLine,
    PointOffPaper,
    SheetNotOpen,
    TooMuchFolding,
)
from foldmath.paper.state import FoldedState, Panel
from foldmath.paper.steps import (
    Axis,
    Edge,
    FoldAlong,
    FoldAt,
    FoldBothEdges,
    FoldEdge,
    FoldPoint,
    FoldStep,
    Gather,
    Open,
    OpenLast,
    Pleat,
    Shade,
    Slit,
    Step,
    TurnOver,
    TurnQuarter,
    passes,
)
from foldmath.phrases import phrase
from foldmath.plane import polygons
from foldmath.plane.lines import Line, Point, bisector, line_through
from foldmath.plane.motions import Motion, quarter_turn, reflection, three_quarter_turn
from foldmath.plane.numbers import HALF, ONE, ZERO, Exact, exact, whole_part, written
from foldmath.plane.polygons import Box

MOST_HANDLED = 30_000
"""Steps of one folding go through no more panels in all, counted anew for each of their folds: two hundred
steps on a sheet of 150 panels. No class folds so much, and what is worked out of each step must end."""


class FoldLine(NamedTuple):
    """A line to fold along, in table coordinates, the moving paper on its positive hand."""

    line: Line
    turn: Turn


def perform(step: Step, state: FoldedState) -> FoldedState:
    """Do one step.

    Returns:
        The state after it; its ``parents`` point into ``state``, past all the folds of a gate or pleat.

    Raises:
        StepRefused: the step cannot be done on this paper; the class says why.
    """
    if state.gathered and not isinstance(step, Open):
        raise BookletClosed(phrase("the sheet is a booklet now, and can only be opened"), instead=Open())
    after = _performed(step, state)
    handled = state.handled + len(after.panels) * passes(step)
    if handled > MOST_HANDLED:
        raise TooMuchFolding(
            phrase("folds up to here go through more than {most} panels in all", most=f"{MOST_HANDLED:,}"),
            phrase("leave steps out, or make two lessons of this one"),
        )
    return replace(after, handled=handled)


def _performed(step: Step, state: FoldedState) -> FoldedState:
    if isinstance(step, FoldStep):
        return _folded(step, state)
    match step:
        case OpenLast():
            return _opened(state, folds=1)
        case Open():
            return _opened(state, state.folds)
        case TurnOver() | TurnQuarter():
            return turn_paper(state, turning(step, state))
        case Shade():
            return _shaded(step, state)
        case Slit():
            return slit(state, step)
        case Gather(column):
            return gather(state, column)
        case _:
            assert_never(step)


def _folded(step: FoldStep, state: FoldedState) -> FoldedState:
    (line, turn), *others = fold_lines(step, state)
    after = fold(state, line, turn)
    if not others:
        return after
    parents = after.parents
    for line, turn in others:
        after = fold(after, line, turn)
        parents = tuple(map(parents.__getitem__, after.parents))
    if isinstance(step, Pleat):
        return joined(state, after, parents)
    return replace(after, parents=parents)


def fold_lines(step: FoldStep, state: FoldedState) -> tuple[FoldLine, ...]:
    """Give the lines that a fold step folds along, in order, all measured on the paper before it.

    Raises:
        StepRefused: the step does not say which line is meant, or names a point that is not there.
    """
    match step:
        case FoldEdge():
            return (_edge_line(step, state),)
        case FoldBothEdges(axis, behind):
            edges = (Edge.LEFT, Edge.RIGHT) if axis is Axis.WIDTH else (Edge.TOP, Edge.BOTTOM)
            return tuple(_edge_line(FoldEdge(edge, HALF, behind), state) for edge in edges)
        case FoldAt():
            return (_line_inside(step, state),)
        case FoldPoint():
            return (_line_between_points(step, state),)
        case FoldAlong():
            return (_line_through_points(step, state),)
        case Pleat():
            return _pleat_lines(step, state)
        case _:
            assert_never(step)


def _turn(behind: bool) -> Turn:
    return Turn.BEHIND if behind else Turn.OVER


def _line_at(box: Box, at: Exact, moving: Edge) -> Line:
    """Give the line at a fraction of the box, the moving edge's side positive."""
    point = box.at(at, at)
    line = Line(ONE, ZERO, -point.x) if moving.axis is Axis.WIDTH else Line(ZERO, ONE, -point.y)
    return line if moving in (Edge.RIGHT, Edge.TOP) else line.reversed()


def _edge_line(step: FoldEdge, state: FoldedState) -> FoldLine:
    start = step.edge.position
    if step.to == start or not ZERO <= step.to <= ONE:
        raise LineUndefined(
            phrase("{edge} cannot travel to {to}", edge=edge_said(step.edge), to=written(step.to)),
            instead=FoldEdge(step.edge, step.edge.opposite.position),
        )
    line = _line_at(state.table.box, (start + step.to) * HALF, step.edge)
    return FoldLine(line, _turn(step.behind))


def _line_inside(step: FoldAt, state: FoldedState) -> FoldLine:
    if not ZERO < step.at < ONE:
        raise LineUndefined(
            phrase("a crease at {at} is not inside the paper", at=written(step.at)),
            instead=FoldAt(HALF, step.moving),
        )
    return FoldLine(_line_at(state.table.box, step.at, step.moving), _turn(step.behind))


def _line_between_points(step: FoldPoint, state: FoldedState) -> FoldLine:
    if step.point == step.to:
        raise LineUndefined(
            phrase("{point} is folded onto itself", point=place_said(step.point)),
            phrase("fold {point} to another point", point=place_said(step.point)),
        )
    box = state.table.box
    start = box.at(*_inside_box(step.point))
    end = box.at(*_inside_box(step.to))
    if not any(_lies_on(start, cover.polygon) for cover in state.table.covers):
        raise PointOffPaper(
            phrase("there is no paper at {point}", point=place_said(step.point)),
            instead=_somewhere_on_paper(state, step),
        )
    return FoldLine(bisector(start, end), _turn(step.behind))


def _line_through_points(step: FoldAlong, state: FoldedState) -> FoldLine:
    if step.start == step.end:
        raise LineUndefined(
            phrase("a crease needs two different points to go through"),
            instead=FoldAlong(Point(ZERO, ZERO), Point(ONE, ONE), step.moving),
        )
    box = state.table.box
    line = line_through(box.at(*step.start), box.at(*step.end))
    hand = line.side(box.at(*step.moving))
    if hand == ZERO:
        raise LineUndefined(
            phrase(
                "{moving} lies on the crease itself, so it does not say which side moves",
                moving=place_said(step.moving),
            ),
            phrase("name a point beside the crease after 'moving'"),
        )
    return FoldLine(line if hand > ZERO else line.reversed(), _turn(step.behind))


def _pleat_lines(step: Pleat, state: FoldedState) -> tuple[FoldLine, ...]:
    # Only paper before the crease at j/n has moved when it is folded, so the box of the open part keeps.
    moving = Edge.LEFT if step.axis is Axis.WIDTH else Edge.BOTTOM
    return tuple(
        FoldLine(_line_at(state.table.box, exact(crease, step.parts), moving), _turn(crease % 2 == 0))
        for crease in range(1, step.parts)
    )


def turning(step: TurnOver | TurnQuarter, state: FoldedState) -> Motion:
    """Give the motion by which a turn carries the whole paper as it lies."""
    middle = state.table.box.at(HALF, HALF)
    if isinstance(step, TurnOver):
        return reflection(Line(ONE, ZERO, -middle.x))
    return quarter_turn(middle) if step.left else three_quarter_turn(middle)


def _opened(state: FoldedState, folds: int) -> FoldedState:
    if not state.folds:
        raise NothingFolded(
            phrase("nothing is folded now, so nothing can be opened"), phrase("leave this step out")
        )
    return unfold(state, folds)


def _shaded(step: Shade, state: FoldedState) -> FoldedState:
    if state.folds:
        raise SheetNotOpen(
            phrase("the sheet is folded; shading needs it open"), phrase("open the sheet before this step")
        )
    box = state.table.box
    rising = Edge.RIGHT if step.axis is Axis.WIDTH else Edge.TOP
    if any(_across_parts(panel, box, step) for panel in state.panels):
        raise _not_creased(step)
    limit = _line_at(box, exact(step.taken, step.parts), rising)
    return replace(
        state,
        panels=tuple(_shaded_below(panel, limit, step.axis) for panel in state.panels),
        parents=tuple(range(len(state.panels))),
    )


def _not_creased(step: Shade) -> PanelAcrossLine:
    if step.axis is Axis.WIDTH:
        return PanelAcrossLine(
            phrase("there are no creases at every 1/{parts} of the width", parts=step.parts),
            phrase("before shading, fold into {parts} parts across, then open", parts=step.parts),
        )
    return PanelAcrossLine(
        phrase("there are no creases at every 1/{parts} of the height", parts=step.parts),
        phrase("before shading, fold into {parts} parts up, then open", parts=step.parts),
    )


def _across_parts(panel: Panel, box: Box, step: Shade) -> bool:
    """Tell whether a line between two parts runs through a panel."""
    if step.axis is Axis.WIDTH:
        places = [(corner.x - box.left) * step.parts / box.width for corner in panel.lying]
    else:
        places = [(corner.y - box.bottom) * step.parts / box.height for corner in panel.lying]
    return whole_part(min(places)) + 1 < max(places)


def _shaded_below(panel: Panel, limit: Line, axis: Axis) -> Panel:
    inside = all(limit.side(corner) <= ZERO for corner in panel.lying)
    return panel._replace(shadings=(*panel.shadings, axis)) if inside else panel


def _inside_box(point: Point) -> Point:
    if not (ZERO <= point.x <= ONE and ZERO <= point.y <= ONE):
        raise PointOffPaper(
            phrase("{point} is outside the paper", point=place_said(point)),
            phrase("use numbers from 0 to 1, as in (1/2, 1)"),
        )
    return point


def _lies_on(point: Point, polygon: polygons.Polygon) -> bool:
    return all(line.side(point) >= ZERO for line in polygons.edge_lines(polygon))


def _somewhere_on_paper(state: FoldedState, step: FoldPoint) -> FoldPoint:
    """Give the same fold from the nearest corner of the paper."""
    box = state.table.box
    aim = box.at(*step.point)
    corner = min(
        (corner for cover in state.table.covers for corner in cover.polygon),
        key=lambda corner: (corner.x - aim.x) * (corner.x - aim.x) + (corner.y - aim.y) * (corner.y - aim.y),
    )
    nearest = Point((corner.x - box.left) / box.width, (corner.y - box.bottom) / box.height)
    return FoldPoint(nearest, step.to)
