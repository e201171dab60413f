"""The sheet's own marks on the printer's page: ticks where folds end, the slit, the star and the frame."""

from math import hypot

from foldmath.booklets.booklet_sheet import TICK_MM, Segment
from foldmath.booklets.imposing import EDGE_MM, folded_edges, on_edge
from foldmath.booklets.laying_out import Layout
from foldmath.drawing.layout import spot
from foldmath.drawing.look import STAR_RADIUS_MM
from foldmath.drawing.scenes import Scene, Spot, Star
from foldmath.lesson.grammar.step_parser import step_in
from foldmath.pages.page_fit import PageFit
from foldmath.paper.performing import perform
from foldmath.paper.state import Kind, open_sheet
from foldmath.paper.steps import Gather
from foldmath.plane.lines import Point
from foldmath.plane.numbers import ZERO

STAR_SIDE_MM = 2.3 * STAR_RADIUS_MM


def star_scene() -> Scene:
    """Draw the star of the bottom left corner alone."""
    middle = Spot(STAR_SIDE_MM / 2, STAR_SIDE_MM / 2)
    return Scene(STAR_SIDE_MM, STAR_SIDE_MM, (Star(middle, STAR_RADIUS_MM),), "A star.")


def star_place(lies: PageFit) -> Spot:
    """Give where the bottom left corner of the star's picture lies."""
    corner = spot(lies.on_front(Point(ZERO, ZERO)))
    return Spot(corner.x + EDGE_MM, corner.y + EDGE_MM)


def frame(lies: PageFit) -> tuple[Segment, ...]:
    """Give the lines along which a smaller sheet is cut out."""
    return tuple((spot(start), spot(end)) for start, end in lies.frame)


def ticks(layout: Layout) -> tuple[Segment, ...]:
    """Give a short line at the edge for every fold that ends there."""
    sheet, found = layout.sheet, []
    for start, end in folded_edges(layout.plan.booklet, sheet):
        for here, there in ((start, end), (end, start)):
            if on_edge((here,), sheet):
                found.append(_begun(_segment(here, there, layout.lies)))
    return tuple(dict.fromkeys(found))


def slits(layout: Layout) -> tuple[Segment, ...]:
    """Give the cuts on the opened sheet, by doing the plan's steps."""
    state = open_sheet(layout.sheet)
    for sentence in layout.plan.steps:
        step = step_in(sentence)
        if isinstance(step, Gather):
            break
        state = perform(step, state)
    return tuple(
        _segment(crease.start, crease.end, layout.lies) for crease in state.creases if crease.kind is Kind.CUT
    )


def _segment(start: Point, end: Point, lies: PageFit) -> Segment:
    return spot(lies.on_front(start)), spot(lies.on_front(end))


def _begun(line: Segment) -> Segment:
    """Give the first few mm of a line."""
    (x, y), (end_x, end_y) = line
    share = TICK_MM / hypot(end_x - x, end_y - y)
    return Spot(x, y), Spot(x + (end_x - x) * share, y + (end_y - y) * share)
