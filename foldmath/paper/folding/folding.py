"""Folding every layer along one line."""

from enum import Enum

from foldmath.paper.folding.footprints import Beside, Crossed, Footprints
from foldmath.paper.refusals import NoPaperMoves, NumbersTooLong, TooManyPanels
from foldmath.paper.state import Cover, Crease, FoldedState, Kind, Panel, Placement, Table
from foldmath.phrases import phrase
from foldmath.plane import polygons
from foldmath.plane.lines import Line, Point
from foldmath.plane.motions import Mirrored, Motion, reflection
from foldmath.plane.numbers import Exact, bit_length
from foldmath.values import made

MOST_PANELS = 4096
"""No sheet has more panels than this: twelve halvings of everything, far past what paper can do."""

MOST_BITS = 512
"""No fold line is longer than this, written exactly; repeated point-to-point folds square their numbers."""


class Turn(Enum):
    """Which way the moving part travels: over towards the viewer, or behind."""

    OVER = "over"
    BEHIND = "behind"


def fold(state: FoldedState, line: Line, turn: Turn) -> FoldedState:
    """Fold every layer on the positive hand of a line over to the other.

    All layers move together; a panel that the line crosses is cut in two. The given state is left as it was.

    Args:
        state: the paper as it lies.
        line: where to fold, in table coordinates; the paper on its positive hand moves.
        turn: OVER lays the moving layers on top, BEHIND beneath; either way their order reverses.

    Returns:
        A state with one more fold still folded, its ``parents`` pointing into the given state.

    Raises:
        NoPaperMoves: the line has paper on one hand only, or on none.
        TooManyPanels: more than ``MOST_PANELS`` panels.
        NumbersTooLong: a fold line longer than ``MOST_BITS`` bits.

    Source:
        Simple folds of all layers: Arkin et al., "When can you fold a map?", Comput. Geom. 29 (2004) 23-46.
    """
    mirror = reflection(line)
    if any(bit_length(number) > MOST_BITS for number in mirror[:4]):
        raise NumbersTooLong(
            phrase(
                "the exact place of this crease needs more than {most} binary digits",
                most=MOST_BITS,
            ),
            phrase("fold along edges and corners, or at simple fractions such as 1/2 and 1/3"),
        )
    footprints = Footprints(line, mirror)
    creasing = _Creasing(state, footprints, turn)
    for index, panel in enumerate(state.panels):
        meeting = footprints.meet(panel.lying)
        if isinstance(meeting, Crossed):
            creasing.cut(index, panel, meeting)
        else:
            creasing.lay(index, panel, meeting)
    return creasing.done(_fold_table(state.table, line, mirror))


class _Creasing:
    """One fold under way: gathers the panels it cuts, moves and leaves."""

    def __init__(self, before: FoldedState, footprints: Footprints, turn: Turn) -> None:
        places = before.table.places
        over = turn is Turn.OVER
        self.before = before
        self.footprints = footprints
        self.mirrored = Mirrored(footprints.mirror)
        self.lift = 0 if over else places
        self.crown = 2 * places - 1 if over else places - 1
        on_printed, on_back = (Kind.VALLEY, Kind.MOUNTAIN) if over else (Kind.MOUNTAIN, Kind.VALLEY)
        self.crease_on_printed = Crease(on_printed, before.folds + 1)
        self.crease_on_back = Crease(on_back, before.folds + 1)
        self.room = MOST_PANELS - len(before.panels) + 1
        self.panels: list[Panel] = []
        self.parents: list[int] = []
        # Keyed by identity: the meetings are kept while the fold lasts.
        self.areas: dict[int, tuple[Exact, Exact]] = {}
        self.along: dict[frozenset[Point], list[tuple[int, int, bool]]] = {}

    def _new_crease(self, panel: Panel) -> Crease:
        return self.crease_on_printed if panel.placements[-1].motion.upright else self.crease_on_back

    def _placed(self, panel: Panel, *, moves: bool) -> tuple[Placement, ...]:
        motion, place = panel.placements[-1]
        if moves:
            return (*panel.placements, Placement(self.mirrored.after(motion), self.crown - place))
        return (*panel.placements, Placement(motion, place + self.lift))

    def lay(self, index: int, panel: Panel, beside: Beside) -> None:
        """Lay down a panel that the line does not cross."""
        for edge in beside.along:
            crease = panel.edges[edge]
            if crease and crease.kind is not Kind.CUT:
                ends = frozenset((panel.corners[edge], panel.corners[edge + 1 - len(panel.corners)]))
                self.along.setdefault(ends, []).append((len(self.panels), edge, beside.moves))
        self.panels.append(
            panel._replace(lying=beside.lying, placements=self._placed(panel, moves=beside.moves))
        )
        self.parents.append(index)

    def cut(self, index: int, panel: Panel, crossed: Crossed) -> None:
        """Cut a panel that the line crosses, and move one part of it."""
        corners, edges, area, shadings, _, placements = panel
        where, share, lying, landed = crossed
        motion, place = placements[-1]
        # Panels with one footprint are equally large, and their parts too: these are worked out once.
        areas = self.areas.get(id(crossed))
        if areas is None:
            self.areas[id(crossed)] = areas = area - area * share, area * share
        staying, moving = where.parts(corners)
        crease = self.crease_on_printed if motion.upright else self.crease_on_back
        staying_edges, moving_edges = where.edges(edges, crease)
        kept = made(Placement, (motion, place + self.lift))
        landing = made(Placement, (self.mirrored.after(motion), self.crown - place))
        self.panels += (
            made(Panel, (staying, staying_edges, areas[0], shadings, lying, (*placements, kept))),
            made(Panel, (moving, moving_edges, areas[1], shadings, landed, (*placements, landing))),
        )
        self.parents += (index, index)
        if len(self.panels) - index > self.room:
            raise TooManyPanels(
                phrase("this would make more than {most} panels", most=MOST_PANELS),
                phrase("open the sheet, or fold it into fewer parts"),
            )

    def done(self, table: Table) -> FoldedState:
        """Give the state after the fold."""
        if not self.footprints.parted:
            raise NoPaperMoves(phrase("there is no paper on both sides of this crease"))
        for meeting in self.along.values():
            if len({moves for _, _, moves in meeting}) == 2:
                for index, edge, _ in meeting:
                    self._fold_again(index, edge)
        return FoldedState(
            sheet=self.before.sheet,
            panels=tuple(self.panels),
            tables=(*self.before.tables, table),
            parents=tuple(self.parents),
        )

    def _fold_again(self, index: int, edge: int) -> None:
        """Give an edge that lay flat along the line the crease of this fold."""
        panel = self.panels[index]
        crease = self._new_crease(self.before.panels[self.parents[index]])
        self.panels[index] = panel._replace(edges=(*panel.edges[:edge], crease, *panel.edges[edge + 1 :]))


def _fold_table(table: Table, line: Line, mirror: Motion) -> Table:
    """Give what the paper covers after a fold, over or behind: counting layers is blind to their order."""
    moving: list[Cover] = []
    covers: list[Cover] = []
    for cover in table.covers:
        moves, stays = polygons.cut(cover.polygon, line)
        if moves:
            landed = tuple(mirror.carry(corner) for corner in moves)
            moving.append(Cover(polygons.turned_counter_clockwise(landed), cover.layers))
        if stays:
            covers.append(Cover(stays, cover.layers))
    for cover in moving:
        covers = _lay_over(cover, covers)
    return Table(tuple(covers), 2 * table.places)


def _lay_over(cover: Cover, covers: list[Cover]) -> list[Cover]:
    """Add one region's layers to disjoint regions, cutting both where they part."""
    result: list[Cover] = []
    loose = [cover.polygon]
    bounds = polygons.box(cover.polygon)
    for under in covers:
        if not polygons.boxes_overlap(bounds, polygons.box(under.polygon)):
            result.append(under)
            continue
        common, rest = polygons.overlay(cover.polygon, under.polygon)
        if not common:
            result.append(under)
            continue
        result.append(Cover(common, under.layers + cover.layers))
        result += (Cover(piece, under.layers) for piece in rest)
        loose = [piece for part in loose for piece in polygons.overlay(under.polygon, part)[1]]
    return result + [Cover(piece, cover.layers) for piece in loose]
