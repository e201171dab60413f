"""What a picture of the sheet shows, for those who hear it: counted on the model, worded by a template."""

from foldmath.drawing.sheets.crease_runs import crease_runs
from foldmath.paper.measures import is_plain
from foldmath.paper.state import FoldedState, Kind, Panel
from foldmath.plane.lines import Point
from foldmath.plane.numbers import ZERO, Exact
from foldmath.plane.polygons import box
from foldmath.statements.ratios import Ratio, lowest_terms
from foldmath.statements.sentences import shaded_part
from foldmath.values import frozen

MOST_SIZES_READ = 6
"""More sizes than this are told as a number of sizes only."""


@frozen(kw_only=True)
class SheetDescription:
    """What is true of a sheet at one moment.

    Args:
        panels: how many.
        valleys, mountains: how many creases of each kind, each as far as it runs straight on.
        printed_up, back_up: whether the printed side, or the back, is seen anywhere on top.
        sizes: how many panels have which area, smallest first.
        grid: panels across and up, where they form a grid; else None.
        layers: the most at any point.
        covers: the fraction of the whole sheet's area that the paper covers as it lies.
        shaded: the fraction of the sheet that is shaded most often; None if none is.
        twice: whether those are shaded twice.
    """

    panels: int
    valleys: int
    mountains: int
    printed_up: bool
    back_up: bool
    sizes: tuple[tuple[int, Ratio], ...]
    grid: tuple[int, int] | None
    layers: int
    covers: Ratio
    shaded: Ratio | None
    twice: bool

    @property
    def speakable(self) -> bool:
        """Whether its fractions say how large they are when they are read out."""
        shares = (self.covers, *(area for _, area in self.sizes))
        return len(self.sizes) <= MOST_SIZES_READ and all(is_plain(share.value) for share in shares)


@frozen
class StarDescription:
    """Where the corner with the star lies, in the outline of the whole sheet as it lies now.

    Args:
        top, left: which corner of the outline it is.
        printed_side_up: whether the corner looks up.
        on_top: whether no other layer lies over it.
    """

    top: bool
    left: bool
    printed_side_up: bool
    on_top: bool


def star_description(state: FoldedState) -> StarDescription:
    """Tell where the star's corner lies: its panel is up, and on top, where it is seen."""
    panel = next(panel for panel in state.panels if Point(ZERO, ZERO) in panel.corners)
    lies = panel.placements[-1]
    corner = panel.lying[panel.corners.index(Point(ZERO, ZERO))]
    bounds = box(state.whole)
    return StarDescription(
        2 * corner.y > bounds.bottom + bounds.top,
        2 * corner.x < bounds.left + bounds.right,
        lies.printed_side_up,
        panel in _top_panels(state),
    )


def sheet_description(state: FoldedState) -> SheetDescription:
    """Count what a picture of a state shows."""
    areas = sorted(panel.area for panel in state.panels)
    shading = shaded_part(state)
    anything = any(panel.shadings for panel in state.panels)
    up = {panel.placements[-1].printed_side_up for panel in _top_panels(state)}
    return SheetDescription(
        panels=len(areas),
        valleys=_runs(state, Kind.VALLEY),
        mountains=_runs(state, Kind.MOUNTAIN),
        printed_up=True in up,
        back_up=False in up,
        sizes=tuple((areas.count(area), lowest_terms(area)) for area in dict.fromkeys(areas)),
        grid=_grid(state),
        layers=state.table.layers,
        covers=lowest_terms(state.table.area / state.sheet.area),
        shaded=shading.share if anything else None,
        twice=anything and shading.twice,
    )


def _top_panels(state: FoldedState) -> list[Panel]:
    """Give the topmost panel of every footprint."""
    top: dict[frozenset[Point], Panel] = {}
    for panel in sorted(state.panels, key=lambda panel: panel.placements[-1].place):
        top[frozenset(panel.lying)] = panel
    return list(top.values())


def _runs(state: FoldedState, kind: Kind) -> int:
    return len(crease_runs((line.start, line.end) for line in state.creases if line.kind is kind))


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
