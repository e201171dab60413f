"""The folded sheet as it lies now: its panels, its creases, and the table it covers.

Every panel keeps its polygon on the opened sheet, and one placement for each fold still folded, the
first of them for the open sheet. So a fold pushes a placement, a cut copies them to both parts, opening
pops, and a turn moves them all: nothing is ever replayed.
"""

from dataclasses import field
from enum import Enum
from typing import NamedTuple

from foldmath.paper.lengths import MILLIMETRES
from foldmath.paper.steps import Axis
from foldmath.plane import polygons
from foldmath.plane.lines import Point
from foldmath.plane.motions import AT_REST, Motion
from foldmath.plane.numbers import ONE, ZERO, Exact
from foldmath.plane.polygons import Box, Polygon
from foldmath.values import frozen, made


class Kind(Enum):
    """The kind of a crease, as seen on the printed side of the opened sheet; or a cut where a crease was."""

    VALLEY = "valley"
    MOUNTAIN = "mountain"
    CUT = "cut"


class Crease(NamedTuple):
    """What an edge between two panels carries.

    Args:
        kind: valley or mountain, by the last fold along it; or a cut, which joins nothing.
        fold: which of the folds still folded holds it folded, counted from 1; 0 if it lies flat, or is cut.
    """

    kind: Kind
    fold: int


CUT = Crease(Kind.CUT, 0)
"""What the edges on both sides of a slit carry."""


class CreaseLine(NamedTuple):
    """A straight crease between two crossings, on the opened sheet, and whether it is folded now."""

    start: Point
    end: Point
    kind: Kind
    folded: bool


class Placement(NamedTuple):
    """How a panel lies: the motion from the opened sheet, and its place in the stack from below.

    Panels that overlap have different places; panels side by side may share one.
    """

    motion: Motion
    place: int

    @property
    def printed_side_up(self) -> bool:
        """Whether the printed side looks up."""
        return self.motion.upright


class Panel(NamedTuple):
    """A region of the sheet with no crease inside.

    Args:
        corners: its polygon on the opened sheet, in sheet units; where a slit ends inside an edge, that
            point is a corner too, on a straight edge.
        edges: for the edge that leaves each corner, its crease, or None where the sheet ends.
        area: as a fraction of the sheet.
        shadings: the axis along which each shading counted its parts, oldest first.
        lying: its corners on the table now, in the order of ``corners``; panels that lie alike share it.
        placements: how it lies, one for the open sheet and one for each fold still folded.
    """

    corners: Polygon
    edges: tuple[Crease | None, ...]
    area: Exact
    shadings: tuple[Axis, ...]
    lying: Polygon
    placements: tuple[Placement, ...]

    @property
    def shaded(self) -> int:
        """How many times it was shaded."""
        return len(self.shadings)


class Cover(NamedTuple):
    """A region of the table under one number of layers."""

    polygon: Polygon
    layers: int


class Table(NamedTuple):
    """What the paper covers: disjoint regions with their layers, and how many places the stack has."""

    covers: tuple[Cover, ...]
    places: int

    @property
    def box(self) -> Box:
        """The bounding box of the paper."""
        return polygons.box(tuple(corner for cover in self.covers for corner in cover.polygon))

    @property
    def layers(self) -> int:
        """The most layers at any point."""
        return max(cover.layers for cover in self.covers)

    @property
    def area(self) -> Exact:
        """The area covered, in square sheet units."""
        return sum((polygons.area(cover.polygon) for cover in self.covers), ZERO)


@frozen
class Sheet:
    """A sheet of paper before any fold: its width and height, and the unit both are in."""

    width: Exact
    height: Exact
    unit: str

    @property
    def area(self) -> Exact:
        """The area, in square units."""
        return self.width * self.height

    @property
    def unit_mm(self) -> Exact:
        """How many millimetres its unit has."""
        return MILLIMETRES[self.unit]

    @property
    def outline(self) -> Polygon:
        """The corners, from the bottom left, counter-clockwise."""
        return (
            Point(ZERO, ZERO),
            Point(self.width, ZERO),
            Point(self.width, self.height),
            Point(ZERO, self.height),
        )


@frozen(kw_only=True)
class FoldedState:
    """The sheet at one moment.

    Args:
        sheet: the sheet it was.
        panels: all panels; those cut from one panel stand together.
        tables: what the paper covers, one for the open sheet and one for each fold still folded.
        parents: for each panel, the place in the state before of the panel it was or was cut from.
        gathered: whether it is a booklet now, which can only be opened.
        handled: how many panels the steps so far went through, counted anew for each of their folds.
    """

    sheet: Sheet
    panels: tuple[Panel, ...]
    tables: tuple[Table, ...]
    parents: tuple[int, ...]
    gathered: bool = False
    handled: int = field(default=0, compare=False)

    @property
    def table(self) -> Table:
        """What the paper covers as it lies now."""
        return self.tables[-1]

    @property
    def folds(self) -> int:
        """How many folds (a pleat is one) are still folded."""
        return len(self.tables) - 1

    @property
    def creases(self) -> list[CreaseLine]:
        """Every crease and cut made so far, split where creases cross and where a slit ends.

        Creases end only where others cross them or a slit ends, so the two panels at a crease share a whole
        edge, and run along it in opposite directions: one of them alone has its ends in order.
        """
        return [
            made(CreaseLine, (start, end, crease.kind, crease.fold > 0))
            for panel in self.panels
            for start, end, crease in zip(
                panel.corners, panel.corners[1:] + panel.corners[:1], panel.edges, strict=True
            )
            if crease and start < end
        ]

    @property
    def whole(self) -> Polygon:
        """Where the whole sheet would lie if it were opened now: the outline that every picture keeps."""
        opened = self.panels[0].placements[0].motion
        return tuple(opened.carry(corner) for corner in self.sheet.outline)


def open_sheet(sheet: Sheet) -> FoldedState:
    """Lay a sheet printed side up, its bottom left corner at (0, 0)."""
    outline = sheet.outline
    panel = Panel(outline, (None,) * len(outline), ONE, (), outline, (Placement(AT_REST, 0),))
    table = Table((Cover(outline, 1),), 1)
    return FoldedState(sheet=sheet, panels=(panel,), tables=(table,), parents=(0,))
