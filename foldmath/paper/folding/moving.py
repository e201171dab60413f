"""Opening, turning, and taking several folds as one: moves that make no crease."""

from collections.abc import Callable
from dataclasses import replace

from foldmath.paper.state import Cover, Crease, FoldedState, Panel, Placement, Table
from foldmath.plane import polygons
from foldmath.plane.motions import AT_REST, Motion
from foldmath.plane.polygons import Polygon


def unfold(state: FoldedState, folds: int) -> FoldedState:
    """Undo the newest ``folds`` folds; their creases stay, and lie flat."""
    left = state.folds - folds
    return replace(
        state,
        gathered=False,
        panels=tuple(
            _lying(
                panel._replace(edges=_with_folds(panel, lambda fold: fold if fold <= left else 0)),
                panel.placements[: left + 1],
            )
            for panel in state.panels
        ),
        tables=state.tables[: left + 1],
        parents=tuple(range(len(state.panels))),
    )


def joined(before: FoldedState, after: FoldedState, parents: tuple[int, ...]) -> FoldedState:
    """Count every fold made since ``before`` as one, as the folds of a pleat are undone together.

    Args:
        before: the state that the folds began with.
        after: the state that they ended in.
        parents: for each panel of ``after``, its parent in ``before``.
    """
    newest = before.folds + 1
    return replace(
        after,
        panels=tuple(
            panel._replace(
                edges=_with_folds(panel, lambda fold: min(fold, newest)),
                placements=(*panel.placements[:newest], panel.placements[-1]),
            )
            for panel in after.panels
        ),
        tables=(*after.tables[:newest], after.tables[-1]),
        parents=parents,
    )


def _with_folds(panel: Panel, renumber: Callable[[int], int]) -> tuple[Crease | None, ...]:
    return tuple(crease and Crease(crease.kind, renumber(crease.fold)) for crease in panel.edges)


def turn_paper(state: FoldedState, motion: Motion) -> FoldedState:
    """Move the whole paper, with every fold it remembers; a reflection turns it over and restacks it."""
    turning = _Turning(state, motion)
    return replace(
        state,
        panels=tuple(turning.panel(panel) for panel in state.panels),
        tables=tuple(_turned_table(table, motion) for table in state.tables),
        parents=tuple(range(len(state.panels))),
    )


class _Turning:
    """One turn under way: panels share footprints and older placements, and each is turned once."""

    def __init__(self, state: FoldedState, motion: Motion) -> None:
        self.tables = state.tables
        self.motion = motion
        # Keyed by identity: everything met belongs to the state, which is kept while the turn lasts.
        self._placements: dict[int, Placement] = {}
        self._footprints: dict[int, Polygon] = {}

    def panel(self, panel: Panel) -> Panel:
        """Turn a panel."""
        placements = tuple(
            self._placements.get(id(placement)) or self._turned(placement, fold)
            for fold, placement in enumerate(panel.placements)
        )
        lying = self._footprints.get(id(panel.lying)) or self._carried(panel.lying)
        return panel._replace(lying=lying, placements=placements)

    def _turned(self, placement: Placement, fold: int) -> Placement:
        upright, places = self.motion.upright, self.tables[fold].places
        place = placement.place if upright else places - 1 - placement.place
        turned = Placement(placement.motion.then(self.motion), place)
        self._placements[id(placement)] = turned
        return turned

    def _carried(self, lying: Polygon) -> Polygon:
        carried = tuple(self.motion.carry(corner) for corner in lying)
        self._footprints[id(lying)] = carried
        return carried


def _lying(panel: Panel, placements: tuple[Placement, ...]) -> Panel:
    """Lay a panel where the last of its placements says."""
    motion = placements[-1].motion
    at_rest = motion is AT_REST
    lying = panel.corners if at_rest else tuple(motion.carry(corner) for corner in panel.corners)
    return panel._replace(lying=lying, placements=placements)


def _turned_table(table: Table, motion: Motion) -> Table:
    covers = []
    for cover in table.covers:
        landed = tuple(motion.carry(corner) for corner in cover.polygon)
        if not motion.upright:
            landed = polygons.turned_counter_clockwise(landed)
        covers.append(Cover(landed, cover.layers))
    return Table(tuple(covers), table.places)
