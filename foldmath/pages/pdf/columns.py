"""Columns: takes flowables that are wrapped already, shares them out; each column is read down to its end."""

from collections.abc import Sequence
from typing import TypeAlias

from foldmath.pages.pdf.flowables import Painted

Shares: TypeAlias = "list[list[tuple[Painted, float]]]"
"""What stands in each column, with the depth of its foot below the column's top, in points."""

CLOSE_PT = 0.001
"""Depths are sums of floats: two that differ by less are the same."""


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
    deepest = _filled(flowables, columns, room, spacing)
    if _count(deepest) < len(flowables):
        return deepest
    for depth in sorted(_runs(flowables, spacing)):
        shares = _filled(flowables, columns, depth, spacing)
        if _count(shares) == len(flowables):
            return shares
    return deepest


def _count(shares: Shares) -> int:
    return sum(map(len, shares))


def _filled(flowables: Sequence[Painted], columns: int, room: float, spacing: float) -> Shares:
    shares: Shares = [[]]
    for flowable in flowables:
        depth = _below(shares[-1], flowable, spacing)
        if depth > room + CLOSE_PT:
            if len(shares) == columns or flowable.height > room + CLOSE_PT:
                break
            shares.append([])
            depth = flowable.height
        shares[-1].append((flowable, depth))
    return shares


def _below(share: list[tuple[Painted, float]], flowable: Painted, spacing: float) -> float:
    """Give how deep a column is with one more flowable."""
    if not share:
        return float(flowable.height)
    last, depth = share[-1]
    return float(depth + spacing * max(last.getSpaceAfter(), flowable.getSpaceBefore()) + flowable.height)


def _runs(flowables: Sequence[Painted], spacing: float) -> set[float]:
    """Give the depths of all columns that flowables in a row can make."""
    depths = set()
    for start in range(len(flowables)):
        share: list[tuple[Painted, float]] = []
        for flowable in flowables[start:]:
            share.append((flowable, _below(share, flowable, spacing)))
            depths.add(share[-1][1])
    return depths
