"""The booklet that a folded, uncut sheet is: its layers, from the top of the stack, are the leaves.

A signature has one back: the newest fold, round which the layers nest. A pleat is a fan: it is read along
the printed side and then along the other.
"""

from collections import defaultdict
from typing import NamedTuple

from foldmath.paper.booklet.booklet import Booklet, Form, Leaf, Meeting, Opening, Spine, Trim
from foldmath.paper.booklet.pages import Read, landed, pages
from foldmath.paper.folding.hinges import Hinge, hinges
from foldmath.paper.refusals import NotABooklet, SheetNotOpen
from foldmath.paper.state import CUT, FoldedState
from foldmath.paper.steps import Edge, Open
from foldmath.phrases import phrase
from foldmath.plane import polygons
from foldmath.plane.lines import Line, Point
from foldmath.plane.motions import AT_REST, Motion, quarter_turn, reflection, three_quarter_turn
from foldmath.plane.numbers import ONE, ZERO, Exact
from foldmath.plane.polygons import Box

FEWEST_IN_PLEAT = 3


class Layers(NamedTuple):
    """Panels on one rectangle of the table.

    Args:
        footprint: the rectangle.
        stack: the panels from the top.
        joins: for each edge of the footprint, the layers joined there, the upper first, and their hinge.
    """

    footprint: Box
    stack: tuple[int, ...]
    joins: dict[Edge, dict[tuple[int, int], Hinge]]


def layers_booklet(state: FoldedState) -> Booklet:
    """Read the layers of a folded sheet as a booklet.

    Raises:
        SheetNotOpen: there is a slit, so the sheet must be open to be gathered.
        NotABooklet: the layers are not equal rectangles on one another, or have no common back.
    """
    if any(CUT in panel.edges for panel in state.panels):
        raise SheetNotOpen(
            phrase("the sheet is folded; closing the ring round a slit needs it open"), instead=Open()
        )
    layers = _layers(state)
    for edge in Edge:
        if _nests(layers, edge):
            return _signature(state, layers, edge)
    if _fans(layers, Edge.LEFT) or _fans(layers, Edge.TOP):
        return _pleat(state, layers)
    raise NotABooklet(
        phrase("these layers have no common fold for a back, and are no fan"),
        phrase("put one more fold in half before this step, or fold the open sheet like a fan"),
    )


def _layers(state: FoldedState) -> Layers:
    box = state.table.box
    lies_alike = all(polygons.box(panel.lying) == box for panel in state.panels)
    if not lies_alike or state.table.area != box.width * box.height:
        raise NotABooklet(
            phrase("the layers are not equal rectangles that lie on one another"),
            phrase("make all panels equal, by folding edge to edge"),
        )
    stack = sorted(range(len(state.panels)), key=lambda index: -state.panels[index].placements[-1].place)
    depth = {panel: index for index, panel in enumerate(stack)}
    joins: dict[Edge, dict[tuple[int, int], Hinge]] = defaultdict(dict)
    for hinge in hinges(state.panels):
        motion = state.panels[hinge.one].placements[-1].motion
        edge = _edge_of(box, motion.carry(hinge.start), motion.carry(hinge.end))
        upper, lower = sorted((depth[hinge.one], depth[hinge.other]))
        joins[edge][upper, lower] = hinge
    return Layers(box, tuple(stack), joins)


def _edge_of(box: Box, start: Point, end: Point) -> Edge:
    if start.x == end.x:
        return Edge.LEFT if start.x == box.left else Edge.RIGHT
    return Edge.BOTTOM if start.y == box.bottom else Edge.TOP


def _nests(layers: Layers, edge: Edge) -> bool:
    """Tell whether each layer is joined at this edge to the one as far from the other end of the stack."""
    count = len(layers.stack)
    return layers.joins[edge].keys() == {(index, count - 1 - index) for index in range(count // 2)} and (
        count % 2 == 0
    )


def _fans(layers: Layers, edge: Edge) -> bool:
    """Tell whether each layer is joined to the next, at this edge and the opposite one in turn."""
    count = len(layers.stack)
    links = [{(index, index + 1) for index in range(first, count - 1, 2)} for first in (0, 1)]
    found = [set(layers.joins[side]) for side in (edge, edge.opposite)]
    joined = sum(len(joins) for joins in layers.joins.values())
    return count >= FEWEST_IN_PLEAT and joined == count - 1 and (found in (links, links[::-1]))


def _signature(state: FoldedState, layers: Layers, back: Edge) -> Booklet:
    """Read nested layers, held so that their back is at the left of the front cover."""
    view = _view(layers.footprint, back)
    turned_over = not view.upright
    stack = layers.stack[::-1] if turned_over else layers.stack
    reading: list[Read] = []
    for panel in stack:
        motion = state.panels[panel].placements[-1].motion.then(view)
        spine = Line(ONE, ZERO, -landed(state.panels[panel], motion).left)
        reading += (Read(panel, motion), Read(panel, motion.then(reflection(spine))))
    last, count = len(reading), len(stack)
    hinged = layers.joins[back].keys()
    openings = [
        Opening(2 * leaf, 2 * leaf + 1, Meeting.HINGED if (leaf - 1, leaf) in hinged else Meeting.ADJOINING)
        for leaf in range(1, count)
    ]
    trims = [
        Trim(hinge.start, hinge.end)
        for edge, joins in layers.joins.items()
        if edge is not back
        for hinge in joins.values()
    ]
    seen = landed(state.panels[stack[0]], reading[0].motion)
    return Booklet(
        form=Form.SIGNATURE,
        pages=pages(reading, state.panels),
        width=seen.width,
        height=seen.height,
        leaves=tuple(Leaf(number, number + 1) for number in range(1, last, 2)),
        openings=tuple(openings),
        spines=_nested_spines(layers, back, last),
        trims=tuple(sorted(trims, key=lambda trim: (trim.start, trim.end))),
    )


def _view(box: Box, back: Edge) -> Motion:
    """Give the motion that brings an edge to the left: over, or a quarter turn, and never upside down."""
    if back is Edge.LEFT:
        return AT_REST
    if back is Edge.RIGHT:
        return reflection(Line(ONE, ZERO, -box.right))
    turn = quarter_turn if back is Edge.TOP else three_quarter_turn
    return turn(Point(box.left, box.bottom))


def _nested_spines(layers: Layers, back: Edge, last: int) -> tuple[Spine, ...]:
    """Each hinge in the back joins two pages on its outer side and two on its inner side."""
    spines = []
    for (upper, _), hinge in layers.joins[back].items():
        outer, inner = 2 * upper + 1, 2 * upper + 2
        spines += [
            Spine(last + 1 - outer, outer, hinge.start, hinge.end),
            Spine(inner, last + 1 - inner, hinge.start, hinge.end),
        ]
    return tuple(sorted(spines, key=lambda spine: spine.left))


def _pleat(state: FoldedState, layers: Layers) -> Booklet:
    """Read a fan opened out: along the printed side from the left, then along the other side."""
    chain, joins = _along_sheet(state, layers)
    level = joins[0].start.x == joins[0].end.x
    seen = AT_REST if level else quarter_turn(Point(ZERO, ZERO))
    over = seen.then(reflection(Line(ONE, ZERO, ZERO)))
    reading = [Read(panel, seen) for panel in chain] + [Read(panel, over) for panel in reversed(chain)]
    count, last = len(chain), len(reading)
    turns = list(zip(range(1, count), joins, strict=True)) + list(
        zip(range(count + 1, last), reversed(joins), strict=True)
    )
    page = landed(state.panels[chain[0]], seen)
    return Booklet(
        form=Form.PLEAT,
        pages=pages(reading, state.panels),
        width=page.width,
        height=page.height,
        leaves=tuple(Leaf(number, last + 1 - number) for number in range(1, count + 1)),
        openings=tuple(Opening(number, number + 1, Meeting.HINGED) for number, _ in turns),
        spines=tuple(Spine(number, number + 1, hinge.start, hinge.end) for number, hinge in turns),
        cover_outside=_printed_side_outside(state, layers, chain[0]),
    )


def _printed_side_outside(state: FoldedState, layers: Layers, panel: int) -> bool:
    """Tell whether a panel is uppermost with its printed side up, or lowest with that side down."""
    printed_side_up = state.panels[panel].placements[-1].printed_side_up
    return panel == layers.stack[0 if printed_side_up else -1]


def _along_sheet(state: FoldedState, layers: Layers) -> tuple[list[int], list[Hinge]]:
    """Follow the fan from its end at the left of the opened sheet, or at its top."""
    joins = [hinge for at in layers.joins.values() for hinge in at.values()]

    def from_top_left(panel: int) -> tuple[Exact, Exact]:
        return min((corner.x, -corner.y) for corner in state.panels[panel].corners)

    chain, order = [min(range(len(state.panels)), key=from_top_left)], []
    while joins:
        hinge = next(hinge for hinge in joins if chain[-1] in (hinge.one, hinge.other))
        joins.remove(hinge)
        order.append(hinge)
        chain.append(hinge.across(chain[-1]))
    return chain, order
