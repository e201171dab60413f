"""The closed booklet: its cover, its back at the left, the edges of its leaves, and those still to trim."""

from foldmath.drawing.layout import figure_in, middle
from foldmath.drawing.look import LAYER_STEP_MM, MOST_LAYERS_SHOWN
from foldmath.drawing.scenes import Area, Mark, Meaning, Scene, Spot, Stroke, Tone
from foldmath.drawing.sheets.scissors import scissors
from foldmath.drawing.stars import star_in_corner
from foldmath.measured import as_float
from foldmath.paper.booklet.booklet import Booklet, Face, Page, Trim
from foldmath.paper.state import FoldedState
from foldmath.phrases import phrase
from foldmath.plane.lines import Point
from foldmath.plane.numbers import ONE, ZERO

MARGIN_MM = 1.5
SCISSORS_ROOM_MM = 15.0
"""Across and up, for the scissors at one side; the picture of a booklet to trim keeps it at all."""

STRIP_MM, CUT_PAST_MM = 1.4, 1.5
"""How thin the strip is that is trimmed off, in the picture, and how far its line goes past the paper."""

LARGEST_NUMBER_MM, SMALLEST_NUMBER_MM = 9.0, 3.0
SIDES = ("left", "right", "bottom", "top")


def closed_booklet(
    state: FoldedState, booklet: Booklet, width_mm: float, height_mm: float, *, trimming: bool = False
) -> Scene:
    """Draw the booklet closed, upright, its back at the left.

    Args:
        state: the sheet that it was gathered from.
        booklet: what the sheet becomes.
        width_mm: of the picture.
        height_mm: of the picture.
        trimming: whether the edges to trim are drawn as cuts, with scissors.
    """
    across, up = as_float(booklet.width), as_float(booklet.height)
    sides = trimmed_sides(state, booklet) if trimming else ()
    leaves = min(len(booklet.leaves), MOST_LAYERS_SHOWN)
    room = 2 * MARGIN_MM + (leaves - 1) * LAYER_STEP_MM
    beside = SCISSORS_ROOM_MM if booklet.trims else 0.0
    scale = min((width_mm - room - beside) / across, (height_mm - room - beside) / up)
    left = (width_mm - across * scale - (leaves - 1) * LAYER_STEP_MM) / 2
    low = (height_mm - up * scale - (leaves - 1) * LAYER_STEP_MM) / 2
    cover = _rectangle(left, low, across * scale, up * scale)
    marks: list[Mark] = []
    for layer in reversed(range(leaves)):
        spots = tuple(Spot(x + layer * LAYER_STEP_MM, y + layer * LAYER_STEP_MM) for x, y in cover)
        marks += [Area(spots, Tone.PRINTED_SIDE), Stroke(spots, Meaning.SHEET_EDGE, closed=True)]
    marks.append(Stroke((cover[0], cover[3]), Meaning.OUTLINE))
    figure = figure_in(cover, ONE, LARGEST_NUMBER_MM, SMALLEST_NUMBER_MM)
    marks += [figure] if figure else []
    marks += _star(booklet.pages[0], state, cover, scale)
    marks += _trims(sides, cover)
    return Scene(
        width_mm=width_mm,
        height_mm=height_mm,
        marks=tuple(marks),
        words=phrase("The closed booklet, page 1 in front."),
    )


def _rectangle(left: float, low: float, width: float, height: float) -> tuple[Spot, ...]:
    right, high = left + width, low + height
    return Spot(left, low), Spot(right, low), Spot(right, high), Spot(left, high)


def trimmed_sides(state: FoldedState, booklet: Booklet) -> tuple[str, ...]:
    """Name the sides of the closed booklet, its cover in front, along which folds are still to be cut."""
    sides = {_side(trim, page, booklet) for trim in booklet.trims for page in _front_pages(state, booklet)}
    return tuple(side for side in SIDES if side in sides)


def _front_pages(state: FoldedState, booklet: Booklet) -> list[Page]:
    """Give the pages that look the way the cover does: the front of every leaf."""
    return [booklet.page(leaf.front) for leaf in booklet.leaves]


def _side(trim: Trim, page: Page, booklet: Booklet) -> str:
    start, end = page.motion.carry(trim.start), page.motion.carry(trim.end)
    on_page = all(ZERO <= x <= booklet.width and ZERO <= y <= booklet.height for x, y in (start, end))
    if not on_page:
        return ""
    if start.x == end.x:
        return "left" if start.x == ZERO else "right"
    return "bottom" if start.y == ZERO else "top"


def _star(page: Page, state: FoldedState, cover: tuple[Spot, ...], scale: float) -> list[Mark]:
    """Put the star in the sheet's bottom left corner if that is on the cover, printed side out."""
    corner = Point(ZERO, ZERO)
    if page.face is not Face.PRINTED or corner not in state.panels[page.panel].corners:
        return []
    place = page.motion.carry(corner)
    x = cover[0].x + as_float(place.x) * scale
    y = cover[0].y + as_float(place.y) * scale
    return [star_in_corner(Spot(x, y), middle(cover))]


def _trims(sides: tuple[str, ...], cover: tuple[Spot, ...]) -> list[Mark]:
    """Draw where a thin strip is cut off at each side, with scissors at the last one."""
    (left, low), _, (right, high), _ = cover
    into, past = STRIP_MM, CUT_PAST_MM
    lines = {
        "left": (Spot(left + into, low - past), Spot(left + into, high + past)),
        "right": (Spot(right - into, low - past), Spot(right - into, high + past)),
        "bottom": (Spot(right + past, low + into), Spot(left - past, low + into)),
        "top": (Spot(right + past, high - into), Spot(left - past, high - into)),
    }
    marks: list[Mark] = [Stroke(lines[side], Meaning.CUT) for side in sides]
    return marks + [mark for side in sides[-1:] for mark in scissors(*lines[side])]
