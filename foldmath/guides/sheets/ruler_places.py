"""A place for the check ruler on a sheet: where no line hides what is read on it."""

from foldmath.drawing.look import MM_PER_INCH
from foldmath.guides.pieces.check_ruler import BEFORE_MM, INCHES, LENGTH_MM, USUAL_PT, Ruler
from foldmath.guides.sheets.free_places import Room, inside
from foldmath.pages.pdf.exact import Rectangle

CLEAR_MM = 1.0
"""Kept free round the ruler where there is room."""

CLEAR_END_MM, CLEAR_FIGURE_MM, CLEAR_TICK_MM = 3.0, 2.4, 0.6
"""How near to the ends, to figures of the usual size and to ticks no line may cross the ruler."""

MOST_SLANT_MM = 8.0
"""How far a crossing line may run along the ruler; one that runs along it farther would hide it."""


def place_ruler(room: Room, ruler: Ruler) -> tuple[Rectangle, bool]:
    """Find a place for the ruler, and tell whether it stands turned upwards.

    Best is one that no line crosses; next, one that lines cross only where they hide no tick and no figure.
    """
    wide, high = ruler.width_mm, ruler.height_mm
    sizes = ((wide, high, False), (high, wide, True))
    for width, height, turned in sizes:
        place = room.first_free(width + 2 * CLEAR_MM, height + 2 * CLEAR_MM)
        if place:
            return place.grown(-CLEAR_MM), turned
    for width, height, turned in sizes:
        for place in room.tried(width, height):
            if _readable(room, place, turned, ruler):
                return place, turned
    return room.least_crossed(wide, high), False


def _readable(room: Room, place: Rectangle, turned: bool, ruler: Ruler) -> bool:
    """Tell whether lines cross the ruler only between its ticks and figures."""
    if not room.clear(place):
        return False
    zero = (place.bottom if turned else place.left) + BEFORE_MM
    for line in room.lines:
        crossing = inside(line, place)
        if crossing is None:
            continue
        along = sorted((end.y if turned else end.x) - zero for end in crossing)
        if along[1] - along[0] > MOST_SLANT_MM or not _between_marks(along[0], along[1], ruler):
            return False
    return True


def _between_marks(start: float, end: float, ruler: Ruler) -> bool:
    if start < CLEAR_END_MM or end > LENGTH_MM - CLEAR_END_MM:
        return False
    figure = CLEAR_FIGURE_MM * ruler.size_pt / USUAL_PT
    marked = [(50.0, figure)]
    marked += [(inch * MM_PER_INCH, figure) for inch in range(INCHES)]
    marked += [(millimetre, CLEAR_TICK_MM) for millimetre in range(0, LENGTH_MM, 10)]
    marked += [(half * MM_PER_INCH / 2, CLEAR_TICK_MM) for half in range(2 * INCHES)]
    return not any(start - clear < at < end + clear for at, clear in marked)
