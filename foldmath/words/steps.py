"""A step as a sentence: the way back from a step to words that read as that step."""

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


def _point(point: Point) -> str:
    if point.x in (ZERO, ONE) and point.y in (ZERO, ONE):
        across = Edge.RIGHT if point.x == ONE else Edge.LEFT
        up = Edge.TOP if point.y == ONE else Edge.BOTTOM
        return f"{up.value} {across.value} corner"
    return _coordinates(point)
