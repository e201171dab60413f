"""The folded sheet as it lies, inside the dotted outline of the whole sheet, its layers seen at the edges."""

from collections.abc import Iterable, Sequence
from dataclasses import replace
from math import hypot

from foldmath.drawing.layout import View, joined_boxes, middle, view_of
from foldmath.drawing.look import (
    CREASE_STOPS_SHORT_MM,
    LAYER_STEP_MM,
    MOST_LAYERS_SHOWN,
)
from foldmath.drawing.scenes import Area, Mark, Meaning, Scene, Spot, Star, Stroke, Tone
from foldmath.drawing.sheets.arrows import fold_to_come, landing
from foldmath.drawing.sheets.crease_runs import crease_runs, lies_along
from foldmath.drawing.stars import star_beside_line, star_in_corner
from foldmath.measured import as_float
from foldmath.paper.moments.performing import fold_lines
from foldmath.paper.state import CUT, FoldedState, Panel, Placement
from foldmath.paper.steps import FoldAlong, FoldStep, Pleat, Step
from foldmath.phrases import Phrase, Said, joined, phrase
from foldmath.plane import polygons
from foldmath.plane.lines import Line, Point
from foldmath.plane.numbers import ZERO
from foldmath.values import frozen

MARGIN_MM = 2.0
MOST_LEAVES_SORTED = 40
"""Past so many leaves a picture shows their order only, not which overlap: nobody could tell."""

MOST_LINES_TOLD = 2
"""A gate has two lines; more are those of a fan, and told together."""


@frozen
class Leaf:
    """Panels that lie in one plane, joined by creases that are flat now, and their level in the stack."""

    placement: Placement
    panels: tuple[Panel, ...]
    level: int


@frozen
class SheetPicture:
    """A picture of paper as it lies, and the view that carries the table into it."""

    scene: Scene
    view: View

    def with_marks(self, marks: Iterable[Mark], words: Said) -> Scene:
        """Draw marks over it; the words say what it shows then."""
        return replace(self.scene, marks=(*self.scene.marks, *marks), words=words)


def folded_sheet(state: FoldedState, next_step: Step | None, width_mm: float, most_height_mm: float) -> Scene:
    """Draw the paper as it lies; if the next step is a fold, with its line and a motion arrow."""
    return sheet_picture(state, next_step, width_mm, most_height_mm).scene


def sheet_picture(
    state: FoldedState, next_step: Step | None, width_mm: float, most_height_mm: float
) -> SheetPicture:
    """Draw the same for more to be drawn over it."""
    bounds = joined_boxes(polygons.box(state.whole), state.table.box)
    fold = next_step if isinstance(next_step, FoldStep) else None
    if fold and not isinstance(fold, Pleat | FoldAlong):
        bounds = joined_boxes(bounds, polygons.box(landing(fold, state)))
    leaves = leaves_of(state)
    towards = _shift_direction(state)
    view = view_of(bounds, width_mm, most_height_mm, MARGIN_MM)
    if _leaves_the_picture(state, _shift(max(leaf.level for leaf in leaves), towards), view):
        view = view_of(bounds, width_mm, most_height_mm, MARGIN_MM + MOST_LAYERS_SHOWN * LAYER_STEP_MM)
    marks: list[Mark] = [Stroke(view.spots(state.whole), Meaning.WHOLE, closed=True)]
    to_come = [line for line, _ in fold_lines(fold, state)] if fold else []
    for leaf in leaves:
        marks += _leaf(leaf, to_come, view, _shift(leaf.level, towards))
    marks.append(_star(state, leaves, to_come, view, towards))
    if fold:
        marks += fold_to_come(fold, state, view)
    return SheetPicture(
        Scene(
            width_mm=view.width_mm, height_mm=view.height_mm, marks=tuple(marks), words=_words(state, to_come)
        ),
        view,
    )


def leaves_of(state: FoldedState) -> list[Leaf]:
    """Gather panels into leaves, bottom to top; a leaf's level counts the most leaves that lie beneath it."""
    gathered: dict[Placement, list[Panel]] = {}
    for panel in state.panels:
        gathered.setdefault(panel.placements[-1], []).append(panel)
    leaves: list[Leaf] = []
    for order, placement in enumerate(sorted(gathered, key=lambda placement: placement.place)):
        panels = tuple(gathered[placement])
        if len(gathered) > MOST_LEAVES_SORTED:
            level = order
        else:
            level = max((below.level + 1 for below in leaves if _overlap(below.panels, panels)), default=0)
        leaves.append(Leaf(placement, panels, level))
    return leaves


def _overlap(some: tuple[Panel, ...], others: tuple[Panel, ...]) -> bool:
    return any(_share_area(one, other) for one in some for other in others)


def _share_area(one: Panel, other: Panel) -> bool:
    ours, theirs = (
        panel.lying
        if panel.placements[-1].printed_side_up
        else polygons.turned_counter_clockwise(panel.lying)
        for panel in (one, other)
    )
    if not polygons.boxes_overlap(polygons.box(ours), polygons.box(theirs)):
        return False
    return bool(polygons.overlay(ours, theirs)[0])


def _shift_direction(state: FoldedState) -> Spot:
    """Let upper layers slip towards the middle of the whole, so that the picture stays inside it."""
    whole, paper = polygons.box(state.whole), state.table.box
    across = whole.left + whole.right - paper.left - paper.right
    up = whole.bottom + whole.top - paper.bottom - paper.top
    return Spot(-1.0 if across < ZERO else 1.0, -1.0 if up < ZERO else 1.0)


def _shift(level: int, towards: Spot) -> Spot:
    steps = min(level, MOST_LAYERS_SHOWN) * LAYER_STEP_MM
    return Spot(towards.x * steps, towards.y * steps)


def _leaves_the_picture(state: FoldedState, slip: Spot, view: View) -> bool:
    """Tell whether upper layers slip past the margin, as where the paper reaches from edge to edge."""
    left, bottom, right, top = state.table.box
    corners = _shifted(view.spots((Point(left, bottom), Point(right, top))), slip)
    return any(not (0 <= x <= view.width_mm and 0 <= y <= view.height_mm) for x, y in corners)


def _leaf(leaf: Leaf, to_come: list[Line], view: View, shift: Spot) -> list[Mark]:
    """Draw a leaf; an old crease along which it will be folded again gives way to the new line."""
    tone = Tone.PRINTED_SIDE if leaf.placement.printed_side_up else Tone.BACK_SIDE
    laid = [(panel, _shifted(view.spots(panel.lying), shift)) for panel in leaf.panels]
    marks: list[Mark] = [Area(spots, tone) for _, spots in laid]
    old: list[tuple[Point, Point]] = []
    for panel, spots in laid:
        for index, crease in enumerate(panel.edges):
            following = index + 1 - len(spots)
            if crease is None or crease == CUT:
                marks.append(Stroke((spots[index], spots[following]), Meaning.SHEET_EDGE))
            elif crease.fold:
                marks.append(Stroke((spots[index], spots[following]), Meaning.FOLDED_EDGE))
            else:
                old.append((panel.lying[index], panel.lying[following]))
    for run in crease_runs(old):
        if not lies_along(run, to_come):
            marks += _short_of_edge(*_shifted(view.spots(run), shift))
    return marks


def _short_of_edge(start: Spot, end: Spot) -> list[Mark]:
    length = hypot(end.x - start.x, end.y - start.y)
    if length <= 3 * CREASE_STOPS_SHORT_MM:
        return []
    share = CREASE_STOPS_SHORT_MM / length
    dx, dy = (end.x - start.x) * share, (end.y - start.y) * share
    return [Stroke((Spot(start.x + dx, start.y + dy), Spot(end.x - dx, end.y - dy)), Meaning.CREASE)]


def _shifted(spots: tuple[Spot, ...], shift: Spot) -> tuple[Spot, ...]:
    return tuple(Spot(x + shift.x, y + shift.y) for x, y in spots)


def _star(state: FoldedState, leaves: list[Leaf], to_come: list[Line], view: View, towards: Spot) -> Star:
    """Put the star on the sheet's own corner where that can be seen; else, hollow, on the whole's."""
    corner = Point(ZERO, ZERO)
    for order, leaf in enumerate(leaves):
        for panel in leaf.panels:
            if corner in panel.corners:
                place = panel.lying[panel.corners.index(corner)]
                hidden = any(_covers(above, place, panel) for above in leaves[order + 1 :])
                if leaf.placement.printed_side_up and not hidden:
                    spots = _shifted(view.spots(panel.lying), _shift(leaf.level, towards))
                    return _clear_star(place, spots[panel.corners.index(corner)], middle(spots), to_come)
    whole = view.spots(state.whole)
    return star_in_corner(whole[0], middle(whole), hollow=True)


def _clear_star(place: Point, corner: Spot, inside: Spot, to_come: list[Line]) -> Star:
    """Put it in its corner, or beside a line to come that runs from there into the paper."""
    for a, b, _ in (line for line in to_come if line.side(place) == ZERO):
        way = Spot(as_float(b), -as_float(a))
        if way.x * way.y * (inside.x - corner.x) * (inside.y - corner.y) > 0:
            return star_beside_line(corner, inside, way)
    return star_in_corner(corner, inside)


def _covers(above: Leaf, place: Point, panel: Panel) -> bool:
    """Tell whether a leaf hides the part of a panel round one of its corners."""
    return any(_inside(place, other) and _share_area(other, panel) for other in above.panels)


def _inside(place: Point, panel: Panel) -> bool:
    sides = [line.side(place) for line in polygons.edge_lines(panel.lying)]
    return all(side >= ZERO for side in sides) or all(side <= ZERO for side in sides)


def _words(state: FoldedState, to_come: Sequence[Line]) -> Phrase:
    """Say how the sheet lies, and where the lines are that it is folded along next."""
    return joined(" ", [_lying_words(state.table.layers), *_lines_words(to_come, state.table.box)])


def _lying_words(layers: int) -> Phrase:
    if layers == 1:
        return phrase("The sheet lies open inside its outline.")
    return phrase(
        "The sheet is folded, up to {layers} layers thick, inside the dotted outline of the whole sheet.",
        layers=layers,
    )


def _lines_words(lines: Sequence[Line], box: polygons.Box) -> list[Phrase]:
    if len(lines) > MOST_LINES_TOLD:
        return [phrase("{count} lines to fold on cross the paper, like a fan.", count=len(lines))]
    return [_line_words(line, box) for line in lines]


def _line_words(line: Line, box: polygons.Box) -> Phrase:
    if line.b == ZERO:
        at = (-line.c / line.a - box.left) / box.width
        return phrase("A line to fold on runs from top to bottom, at {at} of the width.", at=str(at))
    if line.a == ZERO:
        at = (-line.c / line.b - box.bottom) / box.height
        return phrase("A line to fold on runs from side to side, at {at} of the height.", at=str(at))
    return phrase("A line to fold on runs slantwise across the paper.")
