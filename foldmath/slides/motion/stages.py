"""How the paper moves in a step: one stage for each movement of it, all in table coordinates."""

from collections.abc import Iterator, Sequence
from dataclasses import replace
from typing import NamedTuple, TypeAlias, assert_never

from foldmath.drawing.sheets.scissors import ends_of_cut
from foldmath.lesson.proving import ProvedLesson
from foldmath.paper.folding.folding import Turn, fold
from foldmath.paper.moments.moment import Moment
from foldmath.paper.moments.performing import fold_lines, turning
from foldmath.paper.state import FoldedState, Panel, Placement
from foldmath.paper.steps import FoldStep, Gather, OpenStep, Shade, Slit, TurnOver, TurnQuarter, TurnStep
from foldmath.plane import polygons
from foldmath.plane.lines import Line, Point, line_through
from foldmath.plane.motions import Motion
from foldmath.plane.numbers import HALF, ONE, ZERO
from foldmath.plane.polygons import Box
from foldmath.values import frozen


class Piece(NamedTuple):
    """A panel, and how it lies before a stage and after it."""

    panel: Panel
    start: Placement
    end: Placement


Pieces: TypeAlias = tuple[Piece, ...]


@frozen
class Turning:
    """Paper that turns half round about one line.

    Args:
        pieces: all panels, those that move and those that stay.
        axis: the line, the moving part on its positive hand at the start.
        turn: whether the moving part rises towards the viewer, or sinks behind.
    """

    pieces: Pieces
    axis: Line
    turn: Turn


@frozen
class Spinning:
    """Paper that stays flat on the table and goes a quarter round about a point, to the left or right."""

    pieces: Pieces
    centre: Point
    left: bool


@frozen
class Cutting:
    """Paper that lies still while scissors run from one point of it to another."""

    pieces: Pieces
    start: Point
    end: Point


Stage: TypeAlias = Turning | Spinning | Cutting


def box_of(stage: Stage) -> Box:
    """Give the box that holds the paper before a stage and after it."""
    placed = ((piece.panel.corners, lying.motion) for piece in stage.pieces for lying in piece[1:])
    return polygons.box(tuple(motion.carry(corner) for corners, motion in placed for corner in corners))


@frozen
class _Folded:
    """A fold along one line that is still folded: how each panel lay before it, and after."""

    before: tuple[Placement, ...]
    after: tuple[Placement, ...]
    axis: Line
    turn: Turn

    def inherited(self, parents: Sequence[int]) -> "_Folded":
        """Tell the same fold of the panels that were cut from its own."""
        before, after = (tuple(lay[parent] for parent in parents) for lay in (self.before, self.after))
        return replace(self, before=before, after=after)

    def turned(self, motion: Motion) -> "_Folded":
        """Tell the same fold of paper that was turned since; from the back, over is behind."""
        before, after = (tuple(_turned(lay, motion) for lay in lying) for lying in (self.before, self.after))
        turn = self.turn if motion.upright else _OTHER[self.turn]
        return _Folded(before, after, _carried(self.axis, motion), turn)

    def undone(self, panels: Sequence[Panel]) -> Turning:
        """Give the movement backwards: what came over goes back over."""
        pieces = tuple(map(Piece, panels, self.after, self.before))
        return Turning(pieces, self.axis.reversed(), self.turn)


_OTHER = {Turn.OVER: Turn.BEHIND, Turn.BEHIND: Turn.OVER}


def _turned(lying: Placement, motion: Motion) -> Placement:
    """Turn a placement; only the order of places counts, and seen from the back it is the other way round."""
    return Placement(lying.motion.then(motion), lying.place if motion.upright else -lying.place)


def _carried(line: Line, motion: Motion) -> Line:
    foot = foot_of(line)
    along, beside = Point(foot.x - line.b, foot.y + line.a), Point(foot.x + line.a, foot.y + line.b)
    return line_through(motion.carry(foot), motion.carry(along)).with_positive(motion.carry(beside))


def foot_of(line: Line) -> Point:
    """Give the point of a line that is nearest to (0, 0)."""
    squared = line.a * line.a + line.b * line.b
    return Point(-line.a * line.c / squared, -line.b * line.c / squared)


Group: TypeAlias = tuple[_Folded, ...]
"""The lines of one fold as it is undone: a gate is two folds, each opened alone; a pleat is one."""


def stages_of_lesson(proved: ProvedLesson) -> list[tuple[Stage, ...]]:
    """Give the stages of every step; none for a step in which the paper lies still."""
    folded: list[Group] = []
    staged: list[tuple[Stage, ...]] = []
    for moment in proved.moments:
        stages, folded = _told(moment, folded)
        staged.append(stages)
    return staged


def stages_of_last_step(proved: ProvedLesson) -> tuple[Stage, ...]:
    """Give the stages of the last step; only opening asks how the steps before it folded."""
    last = proved.moments[-1]
    return stages_of_lesson(proved)[-1] if isinstance(last.step, OpenStep) else _told(last, [])[0]


def _told(moment: Moment, folded: list[Group]) -> tuple[tuple[Stage, ...], list[Group]]:
    """Give the stages of one step, and what is folded after it."""
    step, before, after = moment.step, moment.before, moment.after
    inherited = [tuple(line.inherited(after.parents) for line in group) for group in folded]
    if isinstance(step, FoldStep):
        stages, done = _folding(step, before)
        alone = after.folds - before.folds == len(done)
        return stages, [*inherited, *([(line,) for line in done] if alone else [done])]
    if isinstance(step, OpenStep):
        # What a booklet was gathered along is no fold of a line.
        left = after.folds
        return tuple(_opening(before, folded[left:])), inherited[:left]
    if isinstance(step, TurnStep):
        motion = turning(step, before)
        turned = [tuple(line.turned(motion) for line in group) for group in folded]
        return (_turning(step, moment),), turned
    if isinstance(step, Slit):
        return (Cutting(_resting(before), *ends_of_cut(before, step)),), inherited
    if isinstance(step, Shade | Gather):
        return (), inherited
    assert_never(step)


def _opening(state: FoldedState, groups: Sequence[Group]) -> Iterator[Stage]:
    for group in reversed(groups):
        for line in reversed(group):
            yield line.undone(state.panels)


def _folding(step: FoldStep, before: FoldedState) -> tuple[tuple[Stage, ...], Group]:
    """Fold along each line in turn: give the stages, and the folds as the panels at the end know them."""
    stages: list[Stage] = []
    done: list[_Folded] = []
    for line, turn in fold_lines(step, before):
        after = fold(before, line, turn)
        lay = tuple(before.panels[parent].placements[-1] for parent in after.parents)
        lies = tuple(panel.placements[-1] for panel in after.panels)
        stages.append(Turning(tuple(map(Piece, after.panels, lay, lies)), line, turn))
        done = [*(fold.inherited(after.parents) for fold in done), _Folded(lay, lies, line, turn)]
        before = after
    return tuple(stages), tuple(done)


def _turning(step: TurnOver | TurnQuarter, moment: Moment) -> Stage:
    pairs = zip(moment.before.panels, moment.after.panels, strict=True)
    pieces = tuple(Piece(now, lay.placements[-1], now.placements[-1]) for lay, now in pairs)
    middle = moment.before.table.box.at(HALF, HALF)
    if isinstance(step, TurnQuarter):
        return Spinning(pieces, middle, step.left)
    return Turning(pieces, Line(ONE, ZERO, -middle.x), Turn.OVER)


def _resting(state: FoldedState) -> Pieces:
    return tuple(Piece(panel, panel.placements[-1], panel.placements[-1]) for panel in state.panels)
