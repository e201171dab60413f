"""How the paper moves in a step: one stage for each line that it folds along, all in table coordinates."""

from dataclasses import dataclass, replace
from typing import NamedTuple, assert_never

from foldmath.lesson.proving import ProvedLesson
from foldmath.paper.folding import Turn, fold
from foldmath.paper.moment import Moment
from foldmath.paper.performing import fold_lines
from foldmath.paper.state import Crease, FoldedState, Kind, Panel, Placement, Sheet
from foldmath.paper.steps import FoldStep, Gather, OpenStep, Shade, Slit, TurnOver, TurnStep
from foldmath.plane import polygons
from foldmath.plane.lines import Line, Point
from foldmath.plane.motions import Motion
from foldmath.plane.numbers import HALF, ONE, ZERO, exact
from foldmath.plane.polygons import Box, Polygon

STAR_INSET = exact(1, 25)
"""How far in the star is, as a share of the sheet's longer side."""


class Lying(NamedTuple):
    """How a piece of paper lies: its corners on the table, its place in the stack, and which side is up."""

    corners: Polygon
    place: int
    printed_side_up: bool


class Piece(NamedTuple):
    """A panel as a stage carries it.

    Args:
        start, end: how it lies before and after, the corners in the same order.
        firm: for the edge that leaves each corner, whether it is an edge of the sheet, of a fold or of a cut.
        star: where the star is before and after; None if it is not on this panel.
    """

    start: Lying
    end: Lying
    firm: tuple[bool, ...]
    star: tuple[Point, Point] | None

    @property
    def moves(self) -> bool:
        """Whether the stage turns it over."""
        return self.start.printed_side_up is not self.end.printed_side_up


@dataclass(frozen=True)
class Stage:
    """Paper that turns half round about one line.

    Args:
        pieces: all panels, those that move and those that stay.
        axis: the line, the moving part on its positive hand at the start.
        turn: whether the moving part rises towards the viewer, or sinks behind.
    """

    pieces: tuple[Piece, ...]
    axis: Line
    turn: Turn

    @property
    def box(self) -> Box:
        """The box that holds the paper before and after."""
        return polygons.box(
            tuple(corner for piece in self.pieces for lying in piece[:2] for corner in lying.corners)
        )

    def undone(self) -> "Stage":
        """Give the same movement backwards: what came over goes back over."""
        back = tuple(piece._replace(start=piece.end, end=piece.start) for piece in self.pieces)
        return replace(self, pieces=back, axis=self.axis.reversed())


def stages_of_lesson(proved: ProvedLesson) -> list[tuple[Stage, ...]]:
    """Give the stages of every step; none for a step that the paper does not move in, or only slides.

    Opening plays the folds that are still folded backwards, so long as the paper was not turned since.
    """
    folded: list[tuple[Stage, ...]] = []
    told: list[tuple[Stage, ...]] = []
    for moment in proved.moments:
        step = moment.step
        stages: tuple[Stage, ...] = ()
        if isinstance(step, FoldStep):
            stages = _folding(step, moment.before)
            # A gate is two folds, each opened alone; a pleat is one.
            alone = moment.after.folds - moment.before.folds == len(stages)
            folded += [(stage,) for stage in stages] if alone else [stages]
        elif isinstance(step, OpenStep):
            left = moment.after.folds
            stages = tuple(stage.undone() for fold in reversed(folded[left:]) for stage in reversed(fold))
            folded = folded[:left]
        elif isinstance(step, TurnStep):
            stages = (_turning_over(moment),) if isinstance(step, TurnOver) else ()
            folded = [()] * len(folded)
        elif isinstance(step, Shade | Slit | Gather):
            pass
        else:
            assert_never(step)
        told.append(stages)
    return told


def _folding(step: FoldStep, before: FoldedState) -> tuple[Stage, ...]:
    stages = []
    for line, turn in fold_lines(step, before):
        after = fold(before, line, turn)
        stages.append(_stage(before, after, line, turn))
        before = after
    return tuple(stages)


def _turning_over(moment: Moment) -> Stage:
    middle = moment.before.table.box.at(HALF, HALF)
    return _stage(moment.before, moment.after, Line(ONE, ZERO, -middle.x), Turn.OVER)


def _stage(before: FoldedState, after: FoldedState, line: Line, turn: Turn) -> Stage:
    pieces = []
    for panel, parent in zip(after.panels, after.parents, strict=True):
        pieces.append(piece_of(panel, before.panels[parent].placements[-1], star_of(after.sheet)))
    return Stage(tuple(pieces), line, turn)


def piece_of(panel: Panel, start: Placement, star: Point) -> Piece:
    """Take a panel as it lies now, and as it lay before."""
    end = panel.placements[-1]
    return Piece(
        Lying(
            tuple(start.motion.carry(corner) for corner in panel.corners), start.place, start.motion.upright
        ),
        Lying(panel.lying, end.place, end.motion.upright),
        tuple(_firm(crease) for crease in panel.edges),
        (start.motion.carry(star), end.motion.carry(star)) if _holds(panel, star) else None,
    )


def _carried(motion: Motion, corners: Polygon) -> Polygon:
    return tuple(motion.carry(corner) for corner in corners)


def _firm(crease: Crease | None) -> bool:
    return crease is None or crease.fold > 0 or crease.kind is Kind.CUT


def star_of(sheet: Sheet) -> Point:
    """Give where the star is on the opened sheet: a little in from its bottom left corner."""
    inset = STAR_INSET * max(sheet.width, sheet.height)
    return Point(inset, inset)


def _holds(panel: Panel, star: Point) -> bool:
    return all(line.side(star) >= ZERO for line in polygons.edge_lines(panel.corners))
