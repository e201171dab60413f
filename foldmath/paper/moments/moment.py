"""One moment of a lesson: the paper before a step and after it, and the figures that the step changed."""

from collections import Counter
from functools import cached_property

from foldmath.paper.state import CreaseLine, FoldedState
from foldmath.paper.steps import Axis, FoldAlong, Step
from foldmath.plane.lines import Point
from foldmath.plane.numbers import Exact
from foldmath.values import frozen

PANELS_AT_A_CROSSING = 4
"""As many panels meet where two creases cross; where one ends at another only three do."""


@frozen
class CreasePlace:
    """Where a crease runs, as fractions of the whole sheet.

    Args:
        axis: WIDTH for an upright crease, HEIGHT for a level one, None for a slanted one.
        at: its place on the axis; None for a slanted one.
        start, end: its ends, as fractions of width and height.
    """

    axis: Axis | None
    at: Exact | None
    start: Point
    end: Point


@frozen
class Moment:
    """The paper before one step and after it; ``after.parents`` points into ``before``."""

    step: Step
    before: FoldedState
    after: FoldedState

    @cached_property
    def sizes(self) -> dict[Exact, int]:
        """How many panels have each area, smallest first; areas are fractions of the sheet."""
        # Parts of panels that lay alike share their area, and an exact number takes long to hash.
        areas = [panel.area for panel in self.after.panels]
        shared = {id(area): area for area in areas}
        counted: Counter[Exact] = Counter()
        for area, count in Counter(map(id, areas)).items():
            counted[shared[area]] += count
        return dict(sorted(counted.items()))

    @property
    def new_panels(self) -> int:
        """How many more panels there are than before."""
        return len(self.after.panels) - len(self.before.panels)

    @cached_property
    def parts(self) -> list[int]:
        """Into how many parts each panel of ``before`` was cut; 1 for those left whole."""
        parts = [0] * len(self.before.panels)
        for parent in self.after.parents:
            parts[parent] += 1
        return parts

    @cached_property
    def cuts(self) -> list[tuple[Exact, Exact]]:
        """The different cuts that happened: the area of a panel that was cut, and of a part, sorted."""
        before, parts = self.before.panels, self.parts
        cut = {}
        for panel, parent in zip(self.after.panels, self.after.parents, strict=True):
            if parts[parent] > 1:
                whole, part = before[parent].area, panel.area
                cut[id(whole), id(part)] = whole, part
        return sorted({*cut.values()})

    @cached_property
    def at_crossing(self) -> bool:
        """Whether it folds the open sheet along a line through a point inside it where creases cross."""
        state, step = self.before, self.step
        if not isinstance(step, FoldAlong) or state.folds:
            return False
        through = state.table.box.at(*step.end)
        return sum(through in panel.lying for panel in state.panels) >= PANELS_AT_A_CROSSING

    @cached_property
    def new_places(self) -> list[CreasePlace]:
        """Where this step made creases that were not there before."""
        known = set(crease_places(self.before))
        return [place for place in crease_places(self.after) if place not in known]


def crease_places(state: FoldedState) -> list[CreasePlace]:
    """Give where the creases of the opened sheet run, collinear ones that meet taken as one."""
    width, height = state.sheet.width, state.sheet.height
    runs: dict[tuple[Exact | None, Exact], list[CreaseLine]] = {}
    for crease in state.creases:
        runs.setdefault(_direction_and_place(crease), []).append(crease)
    places = []
    for creases in runs.values():
        ends = sorted(end for crease in creases for end in (crease.start, crease.end))
        start, end = (Point(point.x / width, point.y / height) for point in (ends[0], ends[-1]))
        if start.x == end.x:
            places.append(CreasePlace(Axis.WIDTH, start.x, start, end))
        elif start.y == end.y:
            places.append(CreasePlace(Axis.HEIGHT, start.y, start, end))
        else:
            places.append(CreasePlace(None, None, start, end))
    return sorted(places, key=lambda place: (place.axis is None, place.axis is Axis.HEIGHT, place.start))


def _direction_and_place(crease: CreaseLine) -> tuple[Exact | None, Exact]:
    """Give a mark that collinear creases share: slope and intercept, or no slope and x for an upright one."""
    (x, y), (end_x, end_y) = crease.start, crease.end
    if x == end_x:
        return None, x
    slope = (end_y - y) / (end_x - x)
    return slope, y - slope * x
