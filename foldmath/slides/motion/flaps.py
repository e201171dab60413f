"""What is seen of stacked paper: leaves of one footprint are one flap, told by its top and its bottom."""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from typing import NamedTuple, TypeAlias

from foldmath.drawing.layout import View
from foldmath.drawing.rendering.hatching import hatch_lines
from foldmath.drawing.scenes import Spot
from foldmath.drawing.sheets.crease_runs import crease_runs, lies_along
from foldmath.drawing.sheets.shaded_parts import hatched_axes
from foldmath.drawing.stars import SLIDE_STAR_MM, star_outline
from foldmath.measured import as_float
from foldmath.paper.state import CUT, FoldedState, Panel, Placement
from foldmath.paper.steps import Axis
from foldmath.plane import polygons
from foldmath.plane.lines import Line, Point
from foldmath.plane.motions import Motion
from foldmath.slides.motion.outlines import InnerEdge, inner_edges, outlines
from foldmath.slides.motion.shading import ShadedSide
from foldmath.slides.motion.stages import Piece
from foldmath.slides.motion.stars import holds_star
from foldmath.values import frozen

HATCH_PITCH_MM = 2.6
CREASE_MM, THINNEST_MM = 0.42, 0.08
"""An old crease: 1/300 of the height of a screen, or thinner where panels are small."""

CREASE_SHARE = 0.07
"""The most of a panel's narrower side that an old crease along it may take, or the panel turns grey."""

STOPS_SHORT_MM, LONGEST_SHARE = 1.3, 0.3
"""How far an old crease stops before its ends, and the most of it that may be left out at each end."""

Lines: TypeAlias = tuple[tuple[Spot, Spot], ...]


class Manner(NamedTuple):
    """How all paper of one picture is drawn.

    Args:
        view: of the table.
        star: where the star is on the sheet.
        shaded: where parts were shaded, by the axis along which they were counted.
        to_come: lines of a fold to come; an old crease along one gives way to it.
    """

    view: View
    star: Point
    shaded: Mapping[Axis, ShadedSide]
    to_come: tuple[Line, ...] = ()

    def spots(self, points: Iterable[Point]) -> tuple[Spot, ...]:
        """Carry points of the table into the picture, heights counted from the top."""
        return self.down(self.view.spots(points))

    def down(self, spots: Iterable[Spot]) -> tuple[Spot, ...]:
        """Count heights from the top, as SVG does."""
        return tuple(Spot(x, self.view.height_mm - y) for x, y in spots)


@frozen(kw_only=True)
class Face:
    """One side of a leaf as it lies at the start of a stage, all in mm from the picture's top left.

    Args:
        printed: whether it is the printed side.
        outlines: the borders of its paper.
        creases: old creases, through all crossings, as far as they are drawn.
        crease_mm: how thick those are.
        cuts: slits inside it.
        hatches: its shading, if it is this side that was shaded.
        star: the star's corners; empty if it is not on this side.
    """

    printed: bool
    outlines: tuple[tuple[Spot, ...], ...]
    creases: Lines
    crease_mm: float
    cuts: Lines
    hatches: Lines
    star: tuple[Spot, ...]


@frozen
class Flap:
    """Leaves of one footprint, which a stage moves together.

    Args:
        faces: what is seen of it until half-way, and after.
        order: of painting until half-way, and after.
        layers: how many leaves lie here.
        moves: whether the stage turns it over.
    """

    faces: tuple[Face, Face]
    order: tuple[int, int]
    layers: int
    moves: bool


class _Leaf(NamedTuple):
    """Panels that lie in one plane, before a stage and after it."""

    start: Placement
    end: Placement
    panels: tuple[Panel, ...]

    @property
    def moves(self) -> bool:
        return self.start.printed_side_up is not self.end.printed_side_up


def flaps_of(pieces: Iterable[Piece], manner: Manner) -> tuple[Flap, ...]:
    """Give the flaps of a stage, in the order in which they are painted at its start."""
    stacks: dict[tuple[frozenset[frozenset[Point]], bool], list[_Leaf]] = {}
    for leaf in _leaves(pieces):
        carry = leaf.start.motion.carry
        footprint = frozenset(frozenset(carry(corner) for corner in panel.corners) for panel in leaf.panels)
        stacks.setdefault((footprint, leaf.moves), []).append(leaf)
    flaps = [_flap(stack, manner) for stack in stacks.values()]
    return tuple(sorted(flaps, key=lambda flap: flap.order[0]))


def flaps_at_rest(state: FoldedState, manner: Manner) -> tuple[Flap, ...]:
    """Give the flaps of paper that lies, from the lowest."""
    return flaps_of(
        (Piece(panel, panel.placements[-1], panel.placements[-1]) for panel in state.panels), manner
    )


def _leaves(pieces: Iterable[Piece]) -> list[_Leaf]:
    gathered: dict[tuple[Placement, Placement], list[Panel]] = {}
    for piece in pieces:
        gathered.setdefault((piece.start, piece.end), []).append(piece.panel)
    return [_Leaf(start, end, tuple(panels)) for (start, end), panels in gathered.items()]


def _flap(stack: list[_Leaf], manner: Manner) -> Flap:
    first = max(stack, key=lambda leaf: leaf.start.place)
    last = max(stack, key=lambda leaf: leaf.end.place)
    seen = _face(first, first.start, manner)
    lies_still = last is first and not first.moves
    return Flap(
        (seen, seen if lies_still else _face(last, last.end, manner)),
        (first.start.place, last.end.place),
        len(stack),
        first.moves,
    )


def _face(leaf: _Leaf, seen: Placement, manner: Manner) -> Face:
    """Draw the side of a leaf that is up in one of its two placements, where it lies at the start."""
    motion, corners = leaf.start.motion, [panel.corners for panel in leaf.panels]
    printed = seen.printed_side_up
    inner = inner_edges(leaf.panels)
    joined = [edge for edge in inner if edge.crease != CUT]
    cuts = [edge for edge in inner if edge.crease == CUT]
    return Face(
        printed=printed,
        outlines=tuple(manner.spots(map(motion.carry, outline)) for outline in outlines(corners)),
        creases=tuple(_old(joined, motion, manner)),
        crease_mm=_crease_mm(leaf.panels, manner),
        cuts=tuple(
            _line(manner.spots(map(motion.carry, run))) for run in crease_runs(edge[:2] for edge in cuts)
        ),
        hatches=tuple(_hatches(leaf.panels, motion, printed, manner)),
        star=_star(leaf, motion, manner) if printed else (),
    )


def _old(joined: Iterable[InnerEdge], motion: Motion, manner: Manner) -> Iterator[tuple[Spot, Spot]]:
    """Give old creases as they lie, each in one line through all crossings, short of its ends."""
    for run in crease_runs(edge[:2] for edge in joined):
        start, end = map(motion.carry, run)
        if not lies_along((start, end), manner.to_come):
            yield _short(*manner.spots((start, end)))


def _line(spots: Sequence[Spot]) -> tuple[Spot, Spot]:
    start, end = spots
    return start, end


def _short(start: Spot, end: Spot) -> tuple[Spot, Spot]:
    across, down = end.x - start.x, end.y - start.y
    share = STOPS_SHORT_MM / (across * across + down * down) ** 0.5
    share = min(share, LONGEST_SHARE)
    across, down = across * share, down * share
    return Spot(start.x + across, start.y + down), Spot(end.x - across, end.y - down)


def _crease_mm(panels: Iterable[Panel], manner: Manner) -> float:
    """Give how thick old creases are between panels: no more than a share of the narrowest."""
    boxes = (polygons.box(panel.corners) for panel in panels)
    narrowest = min(as_float(min(bounds.width, bounds.height)) for bounds in boxes) * manner.view.scale
    return max(THINNEST_MM, min(CREASE_MM, CREASE_SHARE * narrowest))


def _hatches(
    panels: Iterable[Panel], motion: Motion, printed: bool, manner: Manner
) -> Iterable[tuple[Spot, Spot]]:
    """Hatch what was shaded on this side, in the frame of the sheet, so that hatches move with the paper."""
    scale = manner.view.scale
    inside = {axis: side.inside for axis, side in manner.shaded.items() if side.inside}
    for panel in panels:
        for axis in hatched_axes(panel, inside):
            side = manner.shaded[axis]
            if side.printed is printed:
                flat = tuple(Spot(as_float(x) * scale, as_float(y) * scale) for x, y in panel.corners)
                for line in hatch_lines(flat, side.lean, HATCH_PITCH_MM):
                    yield _line(_carried(line, motion, manner))


def _star(leaf: _Leaf, motion: Motion, manner: Manner) -> tuple[Spot, ...]:
    """Draw the star on the leaf that has it, turned as the paper is turned."""
    if not any(holds_star(panel, manner.star) for panel in leaf.panels):
        return ()
    scale = manner.view.scale
    middle = Spot(as_float(manner.star.x) * scale, as_float(manner.star.y) * scale)
    return _carried(star_outline(middle, SLIDE_STAR_MM), motion, manner)


def _carried(spots: Iterable[Spot], motion: Motion, manner: Manner) -> tuple[Spot, ...]:
    """Carry spots of the opened sheet, in mm at the view's scale, to where they lie in the picture."""
    view = manner.view
    c, s, x, y = (as_float(number) for number in motion[:4])
    sign = 1 if motion.upright else -1
    right, up = view.margin_mm + (x - view.left) * view.scale, view.margin_mm + (y - view.bottom) * view.scale
    return manner.down(Spot(c * px - sign * s * py + right, s * px + sign * c * py + up) for px, py in spots)
