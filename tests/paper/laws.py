"""The laws that every folded state obeys, each looked for from its definition.

Every law takes a state and gives the breaches it finds, none if the law holds. All of it is exact.
"""

from collections import defaultdict
from collections.abc import Callable

from paper.inspection import Breach, carried, edges_on_sheet, ends, hinges, lying_at, signed_area, turning
from paper.layer_laws import (
    kinds_agree_with_the_stack,
    no_layer_passes_through_another,
    overlapping_panels_have_own_places,
)

from foldmath.paper.state import Crease, FoldedState, Kind, Panel, Sheet
from foldmath.plane.lines import Point
from foldmath.plane.numbers import ONE, ZERO, Exact
from foldmath.plane.overlaps import Span, counter_clockwise, pairs_that_share_area, spans
from foldmath.plane.polygons import Polygon

AREAS = "every panel's area is its share of the sheet, and all of them make 1"
COVERS = "the layers on the table are those of the panels that lie there, and make up the sheet"
TILES = "panels are convex, with straight corners only where a slit ends, and no two share paper"
EDGES = "panels that share a crease or a cut share the whole edge, and all other edges are the sheet's"
RIGID = "panels move without stretching, and lie where their placement says"
HINGES = "panels that share a crease meet along it, face to face just when it is folded"
OPENS = "opened flat, all panels lie as one sheet"
KAWASAKI = "the reflections in the folded creases round a point inside the uncut sheet undo one another"
MAEKAWA = "mountains and valleys folded round a point inside the uncut sheet differ in number by 2"


def areas_make_the_sheet(state: FoldedState) -> tuple[Breach, ...]:
    """Find panels whose area is not their share of the sheet, and shares that do not sum to exactly 1."""
    whole = state.sheet.width * state.sheet.height
    breaches = [
        Breach(AREAS, (index,), panel.corners)
        for index, panel in enumerate(state.panels)
        if not (panel.area > ZERO and signed_area(panel.corners) == panel.area * whole)
    ]
    if sum((panel.area for panel in state.panels), ZERO) != ONE:
        breaches.append(Breach(AREAS))
    return tuple(breaches)


def covers_are_the_panels_that_lie_there(state: FoldedState) -> tuple[Breach, ...]:
    """Find regions of the table whose layers are not the panels over them, or that overlap.

    The panels are counted just beside the middle of each region, where no crease can run.
    """
    covers = state.table.covers
    lying = [counter_clockwise(panel.lying) for panel in state.panels]
    panels = [(panel, *spans(panel)) for panel in lying]
    breaches = [
        Breach(COVERS, (), cover.polygon)
        for cover in covers
        if cover.layers != sum(_lies_beside(_middle(cover.polygon), *panel) for panel in panels)
    ]
    breaches += [
        Breach(COVERS, (), covers[one].polygon)
        for one, _ in pairs_that_share_area([cover.polygon for cover in covers])
    ]
    stacked = sum((signed_area(cover.polygon) * cover.layers for cover in covers), ZERO)
    if stacked != state.sheet.width * state.sheet.height:
        breaches.append(Breach(COVERS))
    return tuple(breaches)


def _middle(polygon: Polygon) -> Point:
    count = len(polygon)
    return Point(
        sum((corner.x for corner in polygon), ZERO) / count,
        sum((corner.y for corner in polygon), ZERO) / count,
    )


def _lies_beside(point: Point, polygon: Polygon, across: Span, up: Span) -> bool:
    """Tell whether the place infinitely little right of a point, and far less up, is inside a polygon.

    Args:
        point: the point.
        polygon: convex, with its corners counter-clockwise.
        across, up: how far the polygon reaches; most places are outside of that.
    """
    if not (across.start <= point.x < across.end and up.start <= point.y < up.end):
        return False
    for edge in range(len(polygon)):
        start, end = ends(polygon, edge)
        if (turning(start, end, point), start.y - end.y, end.x - start.x) < (ZERO, ZERO, ZERO):
            return False
    return True


def panels_tile_the_sheet(state: FoldedState) -> tuple[Breach, ...]:
    """Find panels that are not convex, or that share paper with another on the opened sheet."""
    breaches = [
        Breach(TILES, (index,), panel.corners)
        for index, panel in enumerate(state.panels)
        if not _convex(panel)
    ]
    breaches += [
        Breach(TILES, pair, state.panels[pair[0]].corners)
        for pair in pairs_that_share_area([panel.corners for panel in state.panels])
    ]
    return tuple(breaches)


def _convex(panel: Panel) -> bool:
    """Tell whether every corner turns left, or stands on a straight edge where a slit begins or ends."""
    corners, edges = panel.corners, panel.edges
    return len(corners) > 2 and all(
        (turn := turning(corners[index - 1], corner, corners[(index + 1) % len(corners)])) > ZERO
        or (turn == ZERO and _slit_ends_between(edges[index - 1], edges[index]))
        for index, corner in enumerate(corners)
    )


def _slit_ends_between(before: Crease | None, after: Crease | None) -> bool:
    kinds = {before and before.kind, after and after.kind}
    return Kind.CUT in kinds and len(kinds) == 2 and None not in kinds


def edges_are_shared_whole(state: FoldedState) -> tuple[Breach, ...]:
    """Find creases that two panels do not share from end to end, and bare edges inside the sheet."""
    edges = edges_on_sheet(state)
    breaches = []
    for (start, end), sides in edges.items():
        crease = sides[0].crease
        opposite = edges.get((end, start), [])
        if crease is None:
            fits = not opposite and _on_outline(state.sheet, start, end)
        else:
            fits = [side.crease for side in opposite] == [crease]
        if not fits or len(sides) != 1:
            breaches.append(Breach(EDGES, tuple(side.panel for side in (*sides, *opposite)), (start, end)))
    return tuple(breaches)


def _on_outline(sheet: Sheet, start: Point, end: Point) -> bool:
    return (start.x == end.x and start.x in (ZERO, sheet.width)) or (
        start.y == end.y and start.y in (ZERO, sheet.height)
    )


def motions_are_rigid(state: FoldedState) -> tuple[Breach, ...]:
    """Find placements that stretch the paper, and panels that do not lie where their last placement says."""
    breaches = []
    for index, panel in enumerate(state.panels):
        motions = [placement.motion for placement in panel.placements]
        rigid = all(motion.c * motion.c + motion.s * motion.s == ONE for motion in motions)
        lies_there = panel.lying == tuple(carried(motions[-1], corner) for corner in panel.corners)
        kept_face = (signed_area(panel.lying) > ZERO) is motions[-1].upright
        if not (rigid and lies_there and kept_face and len(motions) == len(state.tables)):
            breaches.append(Breach(RIGID, (index,), panel.lying))
    return tuple(breaches)


def hinges_meet(state: FoldedState) -> tuple[Breach, ...]:
    """Find creases that tear, now or after opening any of the folds, and folded creases that lie flat."""
    laid = [[lying_at(panel, fold) for fold in range(len(panel.placements))] for panel in state.panels]
    breaches = []
    for one, other in hinges(state):
        folded_from = one.crease.fold if one.crease and one.crease.fold else len(state.tables)
        for fold in range(len(state.tables)):
            meet = ends(laid[one.panel][fold], one.edge) == ends(laid[other.panel][fold], other.edge)[::-1]
            faces = {state.panels[side.panel].placements[fold].motion.upright for side in (one, other)}
            if not meet or (len(faces) == 2) is not (fold >= folded_from):
                breaches.append(Breach(HINGES, (one.panel, other.panel)))
    return tuple(breaches)


def opening_gives_one_sheet(state: FoldedState) -> tuple[Breach, ...]:
    """Find panels that would not lie with the rest if the sheet were opened, whatever turns were made."""
    flat = state.panels[0].placements[0]
    square = {abs(flat.motion.c), abs(flat.motion.s)} == {ZERO, ONE}
    return tuple(
        Breach(OPENS, (index,), panel.corners)
        for index, panel in enumerate(state.panels)
        if not square or panel.placements[0] != flat or flat.place != 0
    )


def folded_creases_close_up(state: FoldedState) -> tuple[Breach, ...]:
    """Find points inside the sheet where paper folded along the creases folded now would not come round.

    Source:
        Kawasaki's condition, in the form that the reflections in the creases, taken in turn, give the
        identity: T. Hull, "On the mathematics of flat origamis", Congressus Numerantium 100 (1994) 215-224.
    """
    breaches = []
    for point, spokes in _folded_spokes(state).items():
        image = [Point(ONE, ZERO), Point(ZERO, ONE)]
        for along, _ in sorted(spokes, key=lambda spoke: _angle_rank(spoke[0])):
            image = [_reflected(vector, along) for vector in image]
        if image != [Point(ONE, ZERO), Point(ZERO, ONE)]:
            breaches.append(Breach(KAWASAKI, (), (point,)))
    return tuple(breaches)


def mountains_and_valleys_differ_by_two(state: FoldedState) -> tuple[Breach, ...]:
    """Find points inside the sheet where the creases folded now break Maekawa's condition.

    Source:
        J. Justin, British Origami (June 1986) 28-30; T. Hull, Congressus Numerantium 100 (1994) 215-224.
    """
    return tuple(
        Breach(MAEKAWA, (), (point,))
        for point, spokes in _folded_spokes(state).items()
        if abs(sum(1 if kind is Kind.MOUNTAIN else -1 for _, kind in spokes)) != 2
    )


def _folded_spokes(state: FoldedState) -> dict[Point, list[tuple[Point, Kind]]]:
    """Give, for each point inside the sheet that folded creases leave, their directions and kinds.

    Points on a slit and at its ends are as free as those on the sheet's edge.
    """
    width, height = state.sheet.width, state.sheet.height
    edges = edges_on_sheet(state)
    cuts = [ends for ends, sides in edges.items() if sides[0].crease and sides[0].crease.kind is Kind.CUT]
    slit = {end for ends in cuts for end in ends}
    spokes: dict[Point, list[tuple[Point, Kind]]] = defaultdict(list)
    for (start, end), sides in edges.items():
        inside = ZERO < start.x < width and ZERO < start.y < height and start not in slit
        crease = sides[0].crease
        if inside and crease and crease.fold:
            spokes[start].append((Point(end.x - start.x, end.y - start.y), crease.kind))
    return spokes


def _angle_rank(direction: Point) -> Exact:
    """Rank directions counter-clockwise from the x axis, by where they leave a square stood on a corner."""
    x, y = direction
    rank = y / (abs(x) + abs(y))
    if x < ZERO:
        return 2 - rank
    return rank if y >= ZERO else 4 + rank


def _reflected(vector: Point, along: Point) -> Point:
    """Reflect a vector in the line through the origin along another: v goes to 2 (v·a) / (a·a) a - v."""
    scale = 2 * (vector.x * along.x + vector.y * along.y) / (along.x * along.x + along.y * along.y)
    return Point(scale * along.x - vector.x, scale * along.y - vector.y)


LAWS: tuple[Callable[[FoldedState], tuple[Breach, ...]], ...] = (
    areas_make_the_sheet,
    covers_are_the_panels_that_lie_there,
    panels_tile_the_sheet,
    edges_are_shared_whole,
    motions_are_rigid,
    hinges_meet,
    opening_gives_one_sheet,
    folded_creases_close_up,
    mountains_and_valleys_differ_by_two,
    overlapping_panels_have_own_places,
    no_layer_passes_through_another,
    kinds_agree_with_the_stack,
)


def breaches(state: FoldedState) -> tuple[Breach, ...]:
    """Look for breaches of every law."""
    return tuple(breach for law in LAWS for breach in law(state))
