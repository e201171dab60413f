"""A step as a sentence: the way back from a step to words that read as that step."""

from functools import singledispatch

from foldmath.paper.slitting import said as slit_said
from foldmath.paper.steps import (
    Axis,
    Edge,
    FoldAlong,
    FoldAt,
    FoldBothEdges,
    FoldEdge,
    FoldPoint,
    Gather,
    Open,
    OpenLast,
    Pleat,
    Shade,
    Slit,
    Step,
    TurnOver,
    TurnQuarter,
)
from foldmath.plane.lines import Point
from foldmath.plane.numbers import HALF, ONE, ZERO, Exact, written


@singledispatch
def said(step: Step) -> str:
    """Say a step in one plain sentence of the step language."""
    raise TypeError(f"not a step: {step!r}")


@said.register
def _(step: FoldEdge) -> str:
    to = f"{step.edge.opposite.value} edge" if step.to == step.edge.opposite.position else _position(step.to)
    return f"fold {step.edge.value} edge to {to}{_behind(step.behind)}"


@said.register
def _(step: FoldBothEdges) -> str:
    edges = "left and right" if step.axis is Axis.WIDTH else "top and bottom"
    return f"fold {edges} edges to middle{_behind(step.behind)}"


@said.register
def _(step: FoldAt) -> str:
    return f"fold at {_position(step.at)} moving {step.moving.value}{_behind(step.behind)}"


@said.register
def _(step: FoldPoint) -> str:
    return f"fold {_point(step.point)} to {_point(step.to)}{_behind(step.behind)}"


@said.register
def _(step: FoldAlong) -> str:
    points = f"{_coordinates(step.start)} {_coordinates(step.end)}"
    return f"fold along {points} moving {_coordinates(step.moving)}{_behind(step.behind)}"


@said.register
def _(step: Pleat) -> str:
    return f"pleat {step.axis.value} into {step.parts}"


@said.register
def _(_step: OpenLast) -> str:
    return "open last"


@said.register
def _(_step: Open) -> str:
    return "open"


@said.register
def _(_step: TurnOver) -> str:
    return "turn over"


@said.register
def _(step: TurnQuarter) -> str:
    return "turn left" if step.left else "turn right"


@said.register
def _(step: Shade) -> str:
    return f"shade {step.taken} of {step.parts} {'across' if step.axis is Axis.WIDTH else 'up'}"


@said.register
def _(step: Slit) -> str:
    return slit_said(step)


@said.register
def _(step: Gather) -> str:
    cover = "" if step.column is None else f" with cover at column {step.column}"
    return f"gather into booklet{cover}"


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
