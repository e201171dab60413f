"""Gathering the sheet into a booklet: what booklet it becomes, and the paper closed flat."""

from dataclasses import replace

from foldmath.paper.booklet.booklet import Booklet
from foldmath.paper.booklet.layers import layers_booklet
from foldmath.paper.booklet.ring import USUAL_COLUMN, Ring, ring, ring_booklet
from foldmath.paper.folding.hinges import Hinge, hinges
from foldmath.paper.refusals import NotABooklet
from foldmath.paper.state import Cover, Crease, FoldedState, Kind, Panel, Placement, Table
from foldmath.paper.steps import Gather
from foldmath.phrases import phrase
from foldmath.plane import polygons
from foldmath.plane.lines import Point


def booklet(state: FoldedState, column: int | None = None) -> Booklet:
    """Tell what booklet the paper becomes if it is gathered as it lies.

    An open sheet is closed round its slit, printed side outside; a folded sheet is read as it is folded.

    Args:
        state: the paper before it is gathered.
        column: of the cover in the bottom row, counted from 0, for a sheet with a slit; None for the usual.

    Raises:
        SlitTooShort: a hinge blocks the closing; the message says where, and how much more to cut.
        NotABooklet: the paper cannot be gathered as it lies.
        SheetNotOpen: there is a slit, and the sheet is folded.
    """
    if state.folds == 0:
        return ring_booklet(state, USUAL_COLUMN if column is None else column)
    made = layers_booklet(state)
    if column is not None:
        raise NotABooklet(phrase("only a sheet with a slit has a choice of covers"), instead=Gather())
    return made


def gather(state: FoldedState, column: int | None = None) -> FoldedState:
    """Close the paper into its booklet, lying flat; the cover of a ring stays where it lies.

    Raises:
        StepRefused: as ``booklet`` does.
    """
    booklet(state, column)
    still = tuple(range(len(state.panels)))
    if state.folds:
        return replace(state, parents=still, gathered=True)
    return _close(state, ring(state, USUAL_COLUMN if column is None else column))


def _close(state: FoldedState, round_slit: Ring) -> FoldedState:
    """Fold every hinge of the ring, each panel beneath the one before, seen from the cover."""
    panels = list(state.panels)
    cover = panels[round_slit.panels[0]].placements[-1].motion
    count = len(panels)
    for depth, (index, motion) in enumerate(zip(round_slit.panels, round_slit.motions(cover), strict=True)):
        place = count - 1 - depth if cover.upright else depth
        panels[index] = _laid(panels[index], Placement(motion, place))
    for hinge in hinges(panels):
        crease = Crease(_kind(panels, hinge), state.folds + 1)
        for index in (hinge.one, hinge.other):
            panels[index] = _folded_along(panels[index], hinge, crease)
    box = polygons.box(panels[round_slit.panels[0]].lying)
    footprint = (
        Point(box.left, box.bottom),
        Point(box.right, box.bottom),
        Point(box.right, box.top),
        Point(box.left, box.top),
    )
    return replace(
        state,
        panels=tuple(panels),
        tables=(*state.tables, Table((Cover(footprint, count),), count)),
        parents=tuple(range(count)),
        gathered=True,
    )


def _laid(panel: Panel, placement: Placement) -> Panel:
    lying = tuple(placement.motion.carry(corner) for corner in panel.corners)
    return panel._replace(lying=lying, placements=(*panel.placements, placement))


def _kind(panels: list[Panel], hinge: Hinge) -> Kind:
    """Tell a crease's kind: a valley if the panel with its printed side up lies below the other."""
    up, down = sorted(
        (hinge.one, hinge.other), key=lambda index: not panels[index].placements[-1].printed_side_up
    )
    return (
        Kind.VALLEY if panels[up].placements[-1].place < panels[down].placements[-1].place else Kind.MOUNTAIN
    )


def _folded_along(panel: Panel, hinge: Hinge, crease: Crease) -> Panel:
    ends = {hinge.start, hinge.end}
    edges = tuple(
        crease if {corner, panel.corners[index + 1 - len(panel.corners)]} == ends else edge
        for index, (corner, edge) in enumerate(zip(panel.corners, panel.edges, strict=True))
    )
    return panel._replace(edges=edges)
