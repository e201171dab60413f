"""Points of a sheet in words: exact, as a step is typed, or told to somebody who only wants to find them."""

from collections.abc import Callable, Mapping
from typing import Any

from foldmath.paper.steps import Axis, Edge, point_on
from foldmath.plane.lines import Point
from foldmath.plane.numbers import HALF, ONE, ZERO, Exact, denominator, written
from foldmath.statements.ratios import LARGEST_DENOMINATOR


def is_corner(point: Point) -> bool:
    """Tell whether a point is a corner of the sheet."""
    return point.x in (ZERO, ONE) and point.y in (ZERO, ONE)


def is_landmark(point: Point) -> bool:
    """Tell whether a point is a corner, the middle of an edge, or that of the sheet."""
    return all(at in (ZERO, HALF, ONE) for at in point)


def is_inside(point: Point) -> bool:
    """Tell whether a point is on the sheet and on none of its edges."""
    return ZERO < point.x < ONE and ZERO < point.y < ONE


def typed_point(point: Point, words: Mapping[str, Any]) -> str:
    """Say where a point is, so that it reads back as that point: by two numbers, where no words find it."""
    return told_point(point, words, written) if _is_found_by_hand(point) else _pair(point)


def told_point(point: Point, words: Mapping[str, Any], number: Callable[[Exact], str]) -> str:
    """Say where a point is: at a corner or a middle, else along an edge, else across and up.

    Args:
        point: in shares of width and height; off the sheet it is told by two numbers.
        words: the language's own for steps.
        number: how a share is written.
    """
    if not all(ZERO <= at <= ONE for at in point):
        return _pair(point)
    on = {edge for edge in Edge if point == point_on(edge, point.y if edge.axis is Axis.WIDTH else point.x)}
    if not on:
        if point == Point(HALF, HALF):
            return str(words["point_in"]["middle"])
        across, up = number(point.x), number(point.y)
        return str(words["point_in"]["sheet"]).format(across=across, up=up)
    if is_corner(point):
        up_edge, across_edge = sorted(on, key=lambda edge: edge.axis is Axis.WIDTH)
        return str(words["corner"][f"{up_edge.value}_{across_edge.value}"])
    return _on_edge(point, on.pop(), words, number)


def _pair(point: Point) -> str:
    return f"({written(point.x)}, {written(point.y)})"


def _is_found_by_hand(point: Point) -> bool:
    """Tell whether a point is on the paper, at parts of it that people have names for."""
    return all(ZERO <= at <= ONE and denominator(at) <= LARGEST_DENOMINATOR for at in point)


def _on_edge(point: Point, edge: Edge, words: Mapping[str, Any], number: Callable[[Exact], str]) -> str:
    """Say how far along its edge a point is, from the nearer end."""
    low, high, at = (
        (Edge.BOTTOM, Edge.TOP, point.y) if edge.axis is Axis.WIDTH else (Edge.LEFT, Edge.RIGHT, point.x)
    )
    told = words["point_on"][edge.value]
    if at == HALF:
        return str(told["middle"])
    end, share = (low, at) if at < HALF else (high, ONE - at)
    return str(told[end.value]).format(at=number(share))
