"""A place for the check ruler on a sheet: where no line hides what is read on it."""

from collections.abc import Iterator
from dataclasses import replace
from typing import NamedTuple

from foldmath.drawing.look import MM_PER_INCH
from foldmath.guides.pieces.check_ruler import BEFORE_MM, FULL_REACH, HALF_REACH, USUAL_PT, Ruler
from foldmath.guides.sheets.free_places import Room, inside
from foldmath.pages.pdf.exact import Rectangle

CLEAR_MM = 1.0
"""Kept free round the ruler where there is room."""

CLEAR_END_MM, CLEAR_FIGURE_MM, CLEAR_TICK_MM = 3.0, 2.4, 0.6
"""How near to the ends, to figures of the usual size and to ticks no line may cross the ruler."""

MOST_SLANT_MM = 8.0
"""How far a crossing line may run along the ruler; one that runs along it farther would hide it."""


class RulerPlace(NamedTuple):
    """A ruler, its place, and whether it stands there turned upwards."""

    ruler: Ruler
    place: Rectangle
    turned: bool


def place_ruler(room: Room, ruler: Ruler) -> RulerPlace:
    """Find a place for the ruler, or for half of it.

    Best is one that no line crosses; where not even half the ruler has such a place, one that lines cross
    only where they hide no tick and no figure.
    """
    for reach in (FULL_REACH, HALF_REACH):
        for found in _lying(replace(ruler, reach=reach)):
            wide, high = found.place.right, found.place.top
            place = room.first_free(wide + 2 * CLEAR_MM, high + 2 * CLEAR_MM)
            if place:
                return found._replace(place=place.grown(-CLEAR_MM))
    for lying in _lying(ruler):
        for place in room.tried(lying.place.right, lying.place.top):
            if _readable(room, lying._replace(place=place)):
                return lying._replace(place=place)
    return RulerPlace(ruler, room.least_crossed(ruler.width_mm, ruler.height_mm), turned=False)


def _lying(ruler: Ruler) -> Iterator[RulerPlace]:
    """Give the ruler as it may lie, level first, with a place of its size."""
    yield RulerPlace(ruler, Rectangle(0.0, 0.0, ruler.width_mm, ruler.height_mm), turned=False)
    yield RulerPlace(ruler, Rectangle(0.0, 0.0, ruler.height_mm, ruler.width_mm), turned=True)


def _readable(room: Room, lying: RulerPlace) -> bool:
    """Tell whether lines cross the ruler only between its ticks and figures."""
    ruler, place, turned = lying
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
    millimetres, inches = ruler.reach
    if start < CLEAR_END_MM or end > millimetres - CLEAR_END_MM:
        return False
    figure = CLEAR_FIGURE_MM * ruler.size_pt / USUAL_PT
    marked = [(float(fifty), figure) for fifty in range(50, millimetres, 50)]
    marked += [(inch * MM_PER_INCH, figure) for inch in range(inches)]
    marked += [(millimetre, CLEAR_TICK_MM) for millimetre in range(0, millimetres, 10)]
    marked += [(half * MM_PER_INCH / 2, CLEAR_TICK_MM) for half in range(2 * inches)]
    return not any(start - clear < at < end + clear for at, clear in marked)
