"""What a picture of the sheet shows, for those who hear it: counted on the model, worded by a template."""

from dataclasses import dataclass

from foldmath.paper.state import FoldedState
from foldmath.plane.numbers import ZERO, Exact
from foldmath.plane.polygons import box
from foldmath.statements.ratios import Ratio, lowest_terms
from foldmath.statements.sentences import shaded_part


@dataclass(frozen=True)
class SheetTold:
    """What is true of a sheet at one moment.

    Args:
        panels: how many.
        sizes: how many panels have which area, smallest first.
        grid: panels across and up, where they form a grid; else None.
        layers: the most at any point.
        covers: the fraction of the whole sheet's area that the paper covers as it lies.
        shaded: the panels shaded most often over all panels; None if none is shaded.
        twice: whether those are shaded twice.
    """

    panels: int
    sizes: tuple[tuple[int, Ratio], ...]
    grid: tuple[int, int] | None
    layers: int
    covers: Ratio
    shaded: Ratio | None
    twice: bool


def told_of(state: FoldedState) -> SheetTold:
    """Count what a picture of a state shows."""
    areas = sorted(panel.area for panel in state.panels)
    shading = shaded_part(state)
    anything = any(panel.shadings for panel in state.panels)
    return SheetTold(
        len(areas),
        tuple((areas.count(area), lowest_terms(area)) for area in dict.fromkeys(areas)),
        _grid(state),
        state.table.layers,
        lowest_terms(state.table.area / state.sheet.area),
        shading.counted if anything else None,
        anything and shading.twice,
    )


def _grid(state: FoldedState) -> tuple[int, int] | None:
    """Count panels across and up: every panel fills its box, and there are as many as the lines make."""
    lefts, bottoms = set(), set()
    for panel in state.panels:
        bounds = box(panel.corners)
        filled: Exact = bounds.width * bounds.height / state.sheet.area
        if filled - panel.area != ZERO:
            return None
        lefts.add(bounds.left)
        bottoms.add(bounds.bottom)
    return (len(lefts), len(bottoms)) if len(lefts) * len(bottoms) == len(state.panels) else None
