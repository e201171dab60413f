"""The crease pattern of the opened sheet: every crease by its kind, every panel with its fraction."""

from foldmath.drawing.layout import View, figure_in, view_of
from foldmath.drawing.scenes import (
    Area,
    Figure,
    Hatching,
    Lean,
    Mark,
    Meaning,
    Scene,
    Stroke,
    Tone,
)
from foldmath.drawing.sheets.shaded_parts import hatched_axes, shaded_inside
from foldmath.drawing.stars import star_in_corner
from foldmath.paper.measures import is_plain, share_said
from foldmath.paper.state import CreaseLine, FoldedState, Kind, Panel
from foldmath.paper.steps import Axis
from foldmath.phrases import Phrase, counted, either
from foldmath.plane.polygons import box

MARGIN_MM = 0.5
LARGEST_FIGURE_MM, SMALLEST_FIGURE_MM = 5.0, 1.9

KINDS = {Kind.VALLEY: Meaning.VALLEY, Kind.MOUNTAIN: Meaning.MOUNTAIN, Kind.CUT: Meaning.CUT}
LEANS = {Axis.WIDTH: Lean.RIGHT, Axis.HEIGHT: Lean.LEFT}


def crease_pattern(state: FoldedState, width_mm: float, most_height_mm: float) -> Scene:
    """Draw the opened sheet, printed side up, with the creases made so far.

    Panels too small for a readable number keep none, and so do those whose fraction tells nobody a size; a
    shaded panel keeps none either, for its hatch.
    """
    view = view_of(box(state.sheet.outline), width_mm, most_height_mm, MARGIN_MM)
    outline = view.spots(state.sheet.outline)
    marks: list[Mark] = [Area(outline, Tone.PRINTED_SIDE)]
    inside = shaded_inside(state)
    for panel in state.panels:
        marks += _inside(panel, hatched_axes(panel, inside), view)
    marks += (_crease(crease, view) for crease in state.creases)
    marks.append(Stroke(outline, Meaning.SHEET_EDGE, closed=True))
    marks.append(star_in_corner(outline[0], outline[2]))
    return Scene(width_mm=view.width_mm, height_mm=view.height_mm, marks=tuple(marks), words=_words(state))


def _inside(panel: Panel, hatched: list[Axis], view: View) -> list[Mark]:
    spots = view.spots(panel.corners)
    if hatched:
        return [Hatching(spots, LEANS[axis]) for axis in hatched]
    if not is_plain(panel.area):
        return []
    figure: Figure | None = figure_in(spots, panel.area, LARGEST_FIGURE_MM, SMALLEST_FIGURE_MM)
    return [figure] if figure else []


def _crease(crease: CreaseLine, view: View) -> Stroke:
    return Stroke((view.spot(crease.start), view.spot(crease.end)), KINDS[crease.kind])


def _words(state: FoldedState) -> Phrase:
    sizes = sorted({panel.area for panel in state.panels})
    return counted(
        "The opened sheet has {count} panel; each is {sizes} of the sheet.",
        "The opened sheet has {count} panels; each is {sizes} of the sheet.",
        len(state.panels),
        sizes=either([share_said(size) for size in sizes]),
    )
