"""The sheet's own marks on the printer's page: ticks where folds end, slit and scissors, star and frame."""

from collections.abc import Iterator
from math import hypot

from foldmath.booklets.imposing import EDGE_MM, folded_edges, on_edge
from foldmath.booklets.laying_out import Layout
from foldmath.drawing.layout import spot
from foldmath.drawing.scenes import Meaning, Spot, Star, Stroke
from foldmath.drawing.sheets.scissors import scissors
from foldmath.drawing.stars import PICTURE_STAR_MM
from foldmath.pages.page_fit import PageFit
from foldmath.pages.pdf.exact import ExactMark
from foldmath.paper.moments.performing import perform
from foldmath.paper.state import Kind, open_sheet
from foldmath.paper.steps import Gather
from foldmath.plane.lines import Point
from foldmath.plane.numbers import ZERO

TICK_MM = 9.0
"""Ticks reach past the rim that printers leave white (up to 6 mm: common practice, no source)."""

STAR_INSET_MM = EDGE_MM + 1.15 * PICTURE_STAR_MM
"""From the sheet's own edges to the middle of the star, whose white ground lies inside the margins."""


def sheet_marks(layout: Layout) -> Iterator[ExactMark]:
    """Give the marks of the printed side, in mm on the printer's page."""
    yield from _ticks(layout)
    yield from _slits(layout)
    for start, end in layout.lies.frame:
        yield Stroke((spot(start), spot(end)), Meaning.SHEET_EDGE)
    corner = spot(layout.lies.on_front(Point(ZERO, ZERO)))
    yield Star(Spot(corner.x + STAR_INSET_MM, corner.y + STAR_INSET_MM), PICTURE_STAR_MM)


def _ticks(layout: Layout) -> Iterator[Stroke]:
    """Give a short line at the edge for every fold that ends there."""
    sheet = layout.sheet
    for start, end in folded_edges(layout.plan.booklet, sheet):
        for here, there in ((start, end), (end, start)):
            if on_edge((here,), sheet):
                yield Stroke(_begun(*_on_page(here, there, layout.lies)), Meaning.TICK)


def _slits(layout: Layout) -> Iterator[Stroke]:
    """Give the cuts on the opened sheet, by doing the plan's steps."""
    state = open_sheet(layout.sheet)
    for written in layout.plan.steps:
        if isinstance(written.step, Gather):
            break
        state = perform(written.step, state)
    cuts = [
        _on_page(crease.start, crease.end, layout.lies) for crease in state.creases if crease.kind is Kind.CUT
    ]
    for cut in cuts:
        yield Stroke(cut, Meaning.CUT)
    if cuts:
        yield from _scissors(cuts)


def _scissors(cuts: list[tuple[Spot, Spot]]) -> Iterator[Stroke]:
    """Lay scissors on a cut, in its middle, where the folded edge is that it begins from."""
    ends = sorted(end for cut in cuts for end in cut)
    middle = Spot((ends[0].x + ends[-1].x) / 2, (ends[0].y + ends[-1].y) / 2)
    for mark in scissors(middle, ends[-1]):
        if isinstance(mark, Stroke):
            yield mark


def _on_page(start: Point, end: Point, lies: PageFit) -> tuple[Spot, Spot]:
    return spot(lies.on_front(start)), spot(lies.on_front(end))


def _begun(start: Spot, end: Spot) -> tuple[Spot, Spot]:
    """Give the first few mm of a line."""
    across, up = end.x - start.x, end.y - start.y
    share = TICK_MM / hypot(across, up)
    return start, Spot(start.x + across * share, start.y + up * share)
