"""Pictures for folding equal parts: a fold to come with the dot it goes to, and the parted sheet."""

from dataclasses import replace
from math import hypot

from foldmath.drawing.circles import circle
from foldmath.drawing.layout import View, joined_boxes, view_of
from foldmath.drawing.look import CREASE_STOPS_SHORT_MM
from foldmath.drawing.scenes import Area, Mark, Meaning, Scene, Spot, Stroke, Tone
from foldmath.drawing.sheets.arrows import fold_to_come, landing
from foldmath.drawing.sheets.dot_labels import GROUND_MM, LABEL_GAP_MM, half_size, label_beside, labelled
from foldmath.drawing.sheets.folded_sheets import SheetPicture, sheet_picture
from foldmath.drawing.stars import star_in_corner
from foldmath.paper.moments.moment import CreasePlace, crease_places
from foldmath.paper.state import FoldedState
from foldmath.paper.steps import Axis, FoldStep
from foldmath.phrases import joined, phrase
from foldmath.plane.lines import Point
from foldmath.plane.numbers import ZERO, Exact, written
from foldmath.plane.polygons import box

DOT_RADIUS_MM = 1.3
DOT_CORNERS = 24
LABEL_ROOM_MM = 5.0
"""Beside the paper, more than the margin that every picture has."""

MARGIN_MM = 3.0
"""Kept free round an open sheet: the names of dots stand partly outside of it."""

EDGE_ROOM_MM = 10.0
"""Kept free beside a parted sheet for the fractions of its creases."""


def fold_with_dot(
    state: FoldedState,
    fold: FoldStep | None,
    dot: tuple[Point, Exact] | None,
    width_mm: float,
    most_height_mm: float,
) -> Scene:
    """Draw the paper as it lies, a fold to come, and a dot with its fraction.

    Args:
        state: the paper before the fold.
        fold: the fold; None to draw the paper alone.
        dot: a place on the opened sheet that lies there still, and the fraction to write beside it.
        width_mm: the room there is across.
        most_height_mm: the room there is up.
    """
    if state.folds:
        picture = _without_creases(sheet_picture(state, fold, width_mm, most_height_mm))
    else:
        picture = _creased_sheet(state, fold, width_mm, most_height_mm)
    if dot is None:
        return picture.scene
    place, fraction = dot
    spot = picture.view.spot(state.panels[0].placements[0].motion.carry(place))
    marks = (
        Area(circle(spot, DOT_RADIUS_MM, DOT_CORNERS), Tone.INK),
        *label_beside(spot, DOT_RADIUS_MM, fraction, picture.scene),
    )
    dotted = phrase("A dot marks {fraction} of a side.", fraction=written(fraction))
    return picture.with_marks(marks, joined(" ", (picture.scene.words, dotted)))


def sheet_to_cut(state: FoldedState, width_mm: float, most_height_mm: float) -> Scene:
    """Draw an open sheet with the creases that are not slanted heavy, to be cut along from edge to edge."""
    picture = _creased_sheet(state, None, width_mm, most_height_mm)
    cuts = [
        Stroke(picture.view.spots(_on_sheet(place, state)), Meaning.CUT)
        for place in crease_places(state)
        if place.axis
    ]
    return picture.with_marks(cuts, phrase("The sheet lies open, to be cut."))


def _on_sheet(place: CreasePlace, state: FoldedState) -> tuple[Point, Point]:
    """Give the ends of a crease on the opened sheet."""
    width, height = state.sheet.width, state.sheet.height
    return (
        Point(place.start.x * width, place.start.y * height),
        Point(place.end.x * width, place.end.y * height),
    )


def _without_creases(picture: SheetPicture) -> SheetPicture:
    """Leave out old creases: on folded paper they are many short pieces, and nothing is folded to them."""
    scene = picture.scene
    marks = (
        mark for mark in scene.marks if not (isinstance(mark, Stroke) and mark.meaning is Meaning.CREASE)
    )
    return replace(picture, scene=replace(scene, marks=tuple(marks)))


def _creased_sheet(
    state: FoldedState, fold: FoldStep | None, width_mm: float, most_height_mm: float
) -> SheetPicture:
    """Draw an open sheet with every old crease as one line, since many broken ones would pass for dashes."""
    bounds = box(state.whole)
    if fold:
        bounds = joined_boxes(bounds, box(landing(fold, state)))
    view = _with_room_beside(view_of(bounds, width_mm, most_height_mm, MARGIN_MM), width_mm)
    whole = view.spots(state.whole)
    marks: list[Mark] = [Stroke(whole, Meaning.WHOLE, closed=True), Area(whole, Tone.PRINTED_SIDE)]
    marks += _old_creases(state, view)
    marks += [Stroke(whole, Meaning.SHEET_EDGE, closed=True), star_in_corner(whole[0], whole[2])]
    if fold:
        marks += fold_to_come(fold, state, view)
    return SheetPicture(
        Scene(
            width_mm=view.width_mm,
            height_mm=view.height_mm,
            marks=tuple(marks),
            words=phrase("The sheet lies open."),
        ),
        view,
    )


def _with_room_beside(view: View, width_mm: float) -> View:
    """Give a picture that is narrower than its room some of that, so that a fraction can stand beside."""
    room = min((width_mm - view.width_mm) / 2, LABEL_ROOM_MM)
    return replace(view, left=view.left - room / view.scale, width_mm=view.width_mm + 2 * room)


def _old_creases(state: FoldedState, view: View) -> list[Mark]:
    """Draw every crease from end to end, a little short of both."""
    marks: list[Mark] = []
    for place in crease_places(state):
        start, end = view.spots(_on_sheet(place, state))
        share = CREASE_STOPS_SHORT_MM / hypot(end.x - start.x, end.y - start.y)
        dx, dy = (end.x - start.x) * share, (end.y - start.y) * share
        spots = (Spot(start.x + dx, start.y + dy), Spot(end.x - dx, end.y - dy))
        marks.append(Stroke(spots, Meaning.CREASE))
    return marks


def parted_sheet(
    state: FoldedState, axis: Axis, creases: tuple[Exact, ...], width_mm: float, most_height_mm: float
) -> Scene:
    """Draw the opened sheet with the creases of its parts heavy, their fractions beside it, older ones thin.

    Args:
        state: the sheet, open.
        axis: along which it is parted.
        creases: of the parts, in order, as fractions of the side.
        width_mm: the room there is across.
        most_height_mm: the room there is up.
    """
    parts = len(creases) + 1
    view = view_of(box(state.sheet.outline), width_mm, most_height_mm, EDGE_ROOM_MM)
    crowded = _crowded(view, axis, parts)
    if axis is Axis.WIDTH and not crowded:
        view = _without_room_below(view)
    outline = view.spots(state.sheet.outline)
    marks: list[Mark] = [Area(outline, Tone.PRINTED_SIDE), *_old_creases(state, view)]
    for number, along in enumerate(creases, start=1):
        start, end = view.spots(_ends(state, axis, along))
        marks.append(Stroke((start, end), Meaning.OUTLINE))
        place = _beside((start, end), axis, half_size(number, parts), turned=crowded and number % 2 == 0)
        marks += labelled(place, number, parts)
    marks.append(Stroke(outline, Meaning.SHEET_EDGE, closed=True))
    marks.append(star_in_corner(outline[0], outline[2]))
    words = (
        phrase("The opened sheet has creases at every 1/{parts} of its width.", parts=parts)
        if axis is Axis.WIDTH
        else phrase("The opened sheet has creases at every 1/{parts} of its height.", parts=parts)
    )
    return Scene(width_mm=view.width_mm, height_mm=view.height_mm, marks=tuple(marks), words=words)


def _without_room_below(view: View) -> View:
    """Take back what is kept free below a parted sheet for fractions, where none stand there."""
    spare = EDGE_ROOM_MM - MARGIN_MM
    return replace(view, bottom=view.bottom + spare / view.scale, height_mm=view.height_mm - spare)


def _ends(state: FoldedState, axis: Axis, along: Exact) -> tuple[Point, Point]:
    """Give the ends of a crease from edge to edge, on the opened sheet."""
    width, height = state.sheet.width, state.sheet.height
    if axis is Axis.WIDTH:
        return Point(along * width, ZERO), Point(along * width, height)
    return Point(ZERO, along * height), Point(width, along * height)


def _crowded(view: View, axis: Axis, parts: int) -> bool:
    """Tell whether fractions have no room side by side, so that they must stand at both ends by turns."""
    half_width, half_height = half_size(1, parts)
    if axis is Axis.WIDTH:
        return (view.width_mm - 2 * EDGE_ROOM_MM) / parts < 2 * (half_width + GROUND_MM)
    return (view.height_mm - 2 * EDGE_ROOM_MM) / parts < 2 * (half_height + GROUND_MM)


def _beside(ends: tuple[Spot, Spot], axis: Axis, half: tuple[float, float], *, turned: bool) -> Spot:
    """Give the place of a crease's fraction: above an upright one, right of a level one; turned, across."""
    start, end = ends
    if axis is Axis.WIDTH:
        away = LABEL_GAP_MM + half[1]
        return Spot(start.x, start.y - away) if turned else Spot(end.x, end.y + away)
    away = LABEL_GAP_MM + half[0]
    return Spot(start.x - away, start.y) if turned else Spot(end.x + away, end.y)
