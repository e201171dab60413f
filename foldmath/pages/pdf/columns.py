"""Columns: takes flowables that are wrapped already, shares them out; each column is read down to its end."""

from bisect import bisect_left
from collections.abc import Sequence
from typing import NamedTuple, TypeAlias

from foldmath.pages.pdf.flowables import Painted

Shares: TypeAlias = "list[list[tuple[Painted, float]]]"
"""What stands in each column, with the depth of its foot below the column's top, in points."""

CLOSE_PT = 0.001
"""Depths are sums of floats: two that differ by less are the same."""


class _Measured(NamedTuple):
    """What flowables take of a column, in points: their heights, and the space above each but the first."""

    heights: list[float]
    spaces: list[float]


def shared_out(flowables: Sequence[Painted], columns: int, room: float, spacing: float) -> Shares:
    """Fill columns from the first flowable on, none parted.

    Where all find room, the columns are as shallow as can be; else they are as deep as the room, and the
    flowables that are left go on elsewhere.

    Args:
        flowables: wrapped to the width of a column.
        columns: how many.
        room: how deep they may be, in points.
        spacing: the share that is kept of the spaces between flowables.
    """
    measured = _measured(flowables, spacing)
    depths = _filled(measured, columns, room)
    if _count(depths) == len(flowables):
        # Deeper columns never hold less, so the shallowest that hold all are found by halving.
        runs = sorted(_runs(measured))
        least = bisect_left(
            runs, True, key=lambda deep: _count(_filled(measured, columns, deep)) == len(flowables)
        )
        depths = _filled(measured, columns, runs[least])
    following = iter(flowables)
    return [[(next(following), depth) for depth in share] for share in depths]


def _measured(flowables: Sequence[Painted], spacing: float) -> _Measured:
    afters = [one.getSpaceAfter() for one in flowables]
    befores = [one.getSpaceBefore() for one in flowables]
    spaces = [spacing * max(after, before) for after, before in zip([0.0, *afters], befores, strict=False)]
    return _Measured([float(one.height) for one in flowables], spaces)


def _count(depths: list[list[float]]) -> int:
    return sum(map(len, depths))


def _filled(measured: _Measured, columns: int, room: float) -> list[list[float]]:
    """Give the depths of the feet in each column, down to the first flowable that finds no room."""
    shares: list[list[float]] = [[]]
    for height, space in zip(*measured, strict=True):
        depth = shares[-1][-1] + space + height if shares[-1] else height
        if depth > room + CLOSE_PT:
            if len(shares) == columns or height > room + CLOSE_PT:
                break
            shares.append([])
            depth = height
        shares[-1].append(depth)
    return shares


def _runs(measured: _Measured) -> set[float]:
    """Give the depths of all columns that flowables in a row can make."""
    heights, spaces = measured
    depths = set()
    for start, depth in enumerate(heights):
        depths.add(depth)
        for space, height in zip(spaces[start + 1 :], heights[start + 1 :], strict=True):
            depth += space + height
            depths.add(depth)
    return depths
