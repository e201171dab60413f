"""One booklet page laid out: stacks its flowables in the room it has, and shares out what is left."""

from collections.abc import Sequence
from itertools import pairwise
from typing import Any

from foldmath.booklets.booklet_flowables import Stretching, begins_anew, too_wide
from foldmath.booklets.booklet_styles import PageRoom
from foldmath.pages.pdf.flowables import Painted
from foldmath.pages.pdf.styles import points
from foldmath.values import frozen

HAIR_PT = 0.01

PICTURES_SHARE = 0.5
"""Of the room that is left, what pictures take where there are also lines or frames to fill."""

MORE_BETWEEN_MM, BETWEEN_SHARE = 4.0, 0.4
"""The most room added between blocks, and how much of the room that is left it may take."""

DROPPED = 0.3
"""Of the room that is left over on a cover, what stays above its title."""


@frozen
class Heights:
    """How a page is filled, in points.

    Args:
        stretched: the heights of what stretches, from the top.
        above: the room kept free above all.
        between: more room before each block that begins anew.
    """

    stretched: tuple[float, ...]
    above: float = 0.0
    between: float = 0.0


def fitted(flowables: Sequence[Painted], room: PageRoom, spacing: float, *, cover: bool) -> Heights | None:
    """Choose heights so that a page holds all its flowables; None if they do not fit.

    Args:
        flowables: in order; those that stretch are left at some height.
        room: of the page.
        spacing: between blocks, as a share of their own spaces.
        cover: whether room that is left over stays partly above.
    """
    width, height = points(room.width_mm), points(room.height_mm)
    stretching = [flowable for flowable in flowables if isinstance(flowable, Stretching)]
    for flowable in stretching:
        flowable.stretch(flowable.least)
    spare = height - max(_stack(flowables, width, spacing, 0.0), default=0.0)
    if spare < -HAIR_PT or any(too_wide(flowable, width) for flowable in flowables):
        return None
    spare, between = _apart(max(spare, 0.0), flowables)
    spare = _share(spare, stretching)
    above = spare * DROPPED if cover else 0.0
    return Heights(tuple(flowable.height for flowable in stretching), above, between)


def _apart(spare: float, flowables: Sequence[Painted]) -> tuple[float, float]:
    """Put more room before blocks that begin anew; give what is left, and the room for each, in points."""
    gaps = sum(begins_anew(before, flowable) for before, flowable in pairwise(flowables))
    between = min(points(MORE_BETWEEN_MM), spare * BETWEEN_SHARE / gaps) if gaps else 0.0
    return spare - gaps * between, between


def _share(spare: float, stretching: list[Stretching]) -> float:
    """Let pictures grow first, then what fills; give what is still left, in points."""
    fillers = [flowable for flowable in stretching if flowable.fills]
    pictures = [flowable for flowable in stretching if not flowable.fills]
    for_pictures = spare * PICTURES_SHARE if fillers else spare
    spare -= for_pictures
    for number, picture in enumerate(sorted(pictures, key=lambda picture: picture.most - picture.least)):
        more = min(for_pictures / (len(pictures) - number), picture.most - picture.least)
        picture.stretch(picture.least + more)
        for_pictures -= more
    spare += for_pictures
    for filler in fillers:
        filler.stretch(filler.least + spare / len(fillers))
    return 0.0 if fillers else spare


def paint(
    canvas: Any, flowables: Sequence[Painted], room: PageRoom, spacing: float, heights: Heights
) -> None:
    """Paint flowables from the top of a page, its bottom left corner at the canvas's own origin."""
    stretching = [flowable for flowable in flowables if isinstance(flowable, Stretching)]
    for stretched, height in zip(stretching, heights.stretched, strict=True):
        stretched.stretch(height)
    top = points(room.height_mm) - heights.above
    depths = _stack(flowables, points(room.width_mm), spacing, heights.between)
    for flowable, depth in zip(flowables, depths, strict=True):
        flowable.paint(canvas, 0.0, top - depth)


def _stack(flowables: Sequence[Painted], width: float, spacing: float, between: float) -> list[float]:
    """Wrap flowables and give the depths of their feet, in points."""
    depths: list[float] = []
    before: Painted | None = None
    for flowable in flowables:
        height = flowable.wrap(width, 0.0)[1]
        depth = depths[-1] if depths else 0.0
        if before:
            depth += max(before.getSpaceAfter(), flowable.getSpaceBefore()) * spacing
            depth += between if begins_anew(before, flowable) else 0.0
        depths.append(depth + height)
        before = flowable
    return depths
