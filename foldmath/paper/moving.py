"""Opening, turning, and taking several folds as one: moves that make no crease."""

from collections.abc import Callable
from dataclasses import replace

from foldmath.paper.state import Cover, Crease, FoldedState, Panel, Placement, Table
from foldmath.plane import polygons
from foldmath.plane.motions import Motion


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
    return replace(
        state,
        panels=tuple(_lying(panel, _turned(panel, state, motion)) for panel in state.panels),
        tables=tuple(_turned_table(table, motion) for table in state.tables),
        parents=tuple(range(len(state.panels))),
    )


def _lying(panel: Panel, placements: tuple[Placement, ...]) -> Panel:
    """Lay a panel where the last of its placements says."""
    motion = placements[-1].motion
    lying = tuple(motion.carry(corner) for corner in panel.corners)
    return panel._replace(lying=lying, placements=placements)


def _turned(panel: Panel, state: FoldedState, motion: Motion) -> tuple[Placement, ...]:
    return tuple(
        Placement(
            placement.motion.then(motion),
            placement.place if motion.upright else table.places - 1 - placement.place,
        )
        for placement, table in zip(panel.placements, state.tables, strict=True)
    )


def _turned_table(table: Table, motion: Motion) -> Table:
    covers = []
    for cover in table.covers:
        landed = tuple(motion.carry(corner) for corner in cover.polygon)
        if not motion.upright:
            landed = polygons.turned_counter_clockwise(landed)
        covers.append(Cover(landed, cover.layers))
    return Table(tuple(covers), table.places)
