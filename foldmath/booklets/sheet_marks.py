"""The sheet's own marks: ticks where folds end, the slit and the star; and the page it is printed on."""

from math import hypot

from foldmath.booklets.booklet_sheet import TICK_MM, PrintSize, Segment
from foldmath.booklets.imposing import folded_edges, millimetres, on_edge
from foldmath.drawing.look import STAR_RADIUS_MM
from foldmath.drawing.scenes import Scene, Spot, Star
from foldmath.lesson.booklet.plan import BookletPlan
from foldmath.lesson.grammar.step_parser import step_in
from foldmath.pages.pdf.styles import PAGE_MM
from foldmath.paper.booklet import Booklet
from foldmath.paper.performing import perform
from foldmath.paper.state import Kind, Sheet, open_sheet
from foldmath.paper.steps import Gather
from foldmath.plane.lines import Point

STAR_SIDE_MM = 2.3 * STAR_RADIUS_MM
SAME_MM = 0.3
"""Sheets and pages that differ by less have one size."""


def star_scene() -> Scene:
    """Draw the star of the bottom left corner alone."""
    middle = Spot(STAR_SIDE_MM / 2, STAR_SIDE_MM / 2)
    return Scene(STAR_SIDE_MM, STAR_SIDE_MM, (Star(middle, STAR_RADIUS_MM),), "A star.")


def print_size(sheet: Sheet, paper: str) -> PrintSize:
    """Choose the page: the sheet itself, or the printer's page where a smaller sheet fits in it.

    Args:
        sheet: as it lies.
        paper: of the printer, ``letter`` or ``A4``.
    """
    width, height = millimetres(sheet.width, sheet), millimetres(sheet.height, sheet)
    narrow, long = PAGE_MM[paper]
    page_width, page_height = (long, narrow) if width > height else (narrow, long)
    fits = width <= page_width + SAME_MM and height <= page_height + SAME_MM
    same = abs(width - page_width) < SAME_MM and abs(height - page_height) < SAME_MM
    if fits and not same:
        return PrintSize(page_width, page_height, width, height)
    return PrintSize(width, height, width, height)


def larger_than(sheet: Sheet, paper: str) -> bool:
    """Tell whether a sheet does not lie on a printer's page, either way round."""
    sides = sorted((millimetres(sheet.width, sheet), millimetres(sheet.height, sheet)))
    return any(side > page + SAME_MM for side, page in zip(sides, sorted(PAGE_MM[paper]), strict=True))


def ticks(made: Booklet, sheet: Sheet) -> tuple[Segment, ...]:
    """Give a short line at the edge for every fold that ends there."""
    found = []
    for start, end in folded_edges(made, sheet):
        for here, there in ((start, end), (end, start)):
            if on_edge((here,), sheet):
                found.append(_begun(here, there, sheet))
    return tuple(dict.fromkeys(found))


def slits(plan: BookletPlan, sheet: Sheet) -> tuple[Segment, ...]:
    """Give the cuts on the opened sheet, by doing the plan's steps."""
    state = open_sheet(sheet)
    for sentence in plan.steps:
        step = step_in(sentence)
        if isinstance(step, Gather):
            break
        state = perform(step, state)
    return tuple(
        _segment(crease.start, crease.end, sheet) for crease in state.creases if crease.kind is Kind.CUT
    )


def _segment(start: Point, end: Point, sheet: Sheet) -> Segment:
    return (
        millimetres(start.x, sheet),
        millimetres(start.y, sheet),
        millimetres(end.x, sheet),
        millimetres(end.y, sheet),
    )


def _begun(start: Point, end: Point, sheet: Sheet) -> Segment:
    """Give the first few mm of a line."""
    x, y, end_x, end_y = _segment(start, end, sheet)
    share = TICK_MM / hypot(end_x - x, end_y - y)
    return x, y, x + (end_x - x) * share, y + (end_y - y) * share
