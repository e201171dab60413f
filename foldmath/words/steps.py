"""A step as a sentence: complete, so that it reads back as that step, or for a child beside a picture."""

from dataclasses import dataclass
from typing import assert_never

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
    OpenStep,
    Pleat,
    Shade,
    Slit,
    Step,
    TurnOver,
    TurnQuarter,
    TurnStep,
)
from foldmath.plane.lines import Point
from foldmath.plane.numbers import HALF, ONE, ZERO, Exact, written

FOLD_IN_PICTURE = "fold along the line in the picture"
"""What a child reads of a fold that only numbers could tell without a picture."""


@dataclass(frozen=True)
class WrittenStep:
    """A step and the sentence that somebody wrote for it, which is what pages about that lesson say.

    Args:
        text: the sentence, without the spaces round it.
        step: what it asks for.
        line: where the sentence begins in the lesson file, counted from 1; 0 if it stands in none.
        column: the same.
    """

    text: str
    step: Step
    line: int = 0
    column: int = 0


def as_written(step: Step) -> WrittenStep:
    """Give a step with its own sentence, as if that had been written."""
    return WrittenStep(step_sentence(step), step)


def picture_sentence(written: WrittenStep) -> str:
    """Say what a child reads beside a picture of a step: what was written, unless places are told by numbers.

    Corners are told by their names, other points are shown by the picture.
    """
    step = written.step
    if isinstance(step, OpenStep | TurnStep | Shade | Slit | Gather):
        return written.text
    match step:
        case FoldEdge() | FoldBothEdges() | FoldAt() | Pleat():
            return written.text
        case FoldPoint(point, to):
            return step_sentence(step) if _is_corner(point) and _is_corner(to) else FOLD_IN_PICTURE
        case FoldAlong():
            return FOLD_IN_PICTURE
        case _:
            assert_never(step)


def step_sentence(step: Step) -> str:
    """Say a step in one complete sentence of the step language, which reads back as the same step."""
    if isinstance(step, FoldStep):
        return _fold(step)
    if isinstance(step, OpenStep | TurnStep):
        return _opening_or_turn(step)
    match step:
        case Shade(taken, parts, axis):
            return f"shade {taken} of {parts} {'across' if axis is Axis.WIDTH else 'up'}"
        case Slit():
            return _slit(step)
        case Gather(column):
            cover = "" if column is None else f" with cover at column {column}"
            return f"gather into booklet{cover}"
        case _:
            assert_never(step)


def _fold(step: FoldStep) -> str:
    match step:
        case FoldEdge(edge, to):
            onto = f"{edge.opposite.value} edge" if to == edge.opposite.position else _position(to)
            return f"fold {edge.value} edge to {onto}{_behind(step.behind)}"
        case FoldBothEdges(axis):
            edges = "left and right" if axis is Axis.WIDTH else "top and bottom"
            return f"fold {edges} edges to middle{_behind(step.behind)}"
        case FoldAt(at, moving):
            return f"fold at {_position(at)} moving {moving.value}{_behind(step.behind)}"
        case FoldPoint(point, to):
            return f"fold {_point(point)} to {_point(to)}{_behind(step.behind)}"
        case FoldAlong(start, end, moving):
            points = f"{_coordinates(start)} {_coordinates(end)}"
            return f"fold along {points} moving {_coordinates(moving)}{_behind(step.behind)}"
        case Pleat(axis, parts):
            return f"pleat {axis.value} into {parts}"
        case _:
            assert_never(step)


def _opening_or_turn(step: OpenStep | TurnStep) -> str:
    match step:
        case OpenLast():
            return "open last"
        case Open():
            return "open"
        case TurnOver():
            return "turn over"
        case TurnQuarter(left):
            return "turn left" if left else "turn right"
        case _:
            assert_never(step)


def _slit(step: Slit) -> str:
    low, high = ("bottom", "top") if step.axis is Axis.WIDTH else ("left", "right")
    start = f"{low} edge" if step.start == ZERO else written(step.start)
    end = f"{high} edge" if step.end == ONE else written(step.end)
    return f"slit at {step.axis.value} {written(step.at)} from {start} to {end}"


def _behind(behind: bool) -> str:
    return ", behind" if behind else ""


def _position(position: Exact) -> str:
    return "middle" if position == HALF else written(position)


def _coordinates(point: Point) -> str:
    return f"({written(point.x)}, {written(point.y)})"


def _is_corner(point: Point) -> bool:
    return point.x in (ZERO, ONE) and point.y in (ZERO, ONE)


def _point(point: Point) -> str:
    if _is_corner(point):
        across = Edge.RIGHT if point.x == ONE else Edge.LEFT
        up = Edge.TOP if point.y == ONE else Edge.BOTTOM
        return f"{up.value} {across.value} corner"
    return _coordinates(point)
