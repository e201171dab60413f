"""Where on a page there is room: finds places that no line and no other mark runs through."""

from collections.abc import Iterable, Iterator
from itertools import product
from math import hypot

from foldmath.drawing.scenes import Spot
from foldmath.guides.sheets.cells import Cells
from foldmath.pages.pdf.exact import Rectangle

STEP_MM = 3.0
"""Places that lines may cross are tried so far apart."""

WITHIN_CIRCLE = 0.55
"""Of the radius: what is taken off a square round a circle to leave one whose cells lie inside the circle."""

Segment = tuple[Spot, Spot]


class Room:
    """What is taken of an area by lines and places.

    Args:
        area: where marks may stand.
        lines: what they must keep clear of.
        places: what else is taken.
    """

    def __init__(
        self, area: Rectangle, lines: Iterable[Segment] = (), places: Iterable[Rectangle] = ()
    ) -> None:
        self.area = area
        self.lines: list[Segment] = []
        self.places: list[Rectangle] = []
        self._cells = Cells(area)
        for start, end in lines:
            self.draw(start, end)
        for place in places:
            self.take(place)

    def draw(self, start: Spot, end: Spot) -> None:
        """Draw a line, of which other marks keep clear."""
        self.lines.append((start, end))
        self._cells.mark_line(start, end)

    def take(self, place: Rectangle) -> None:
        """Take a place, so that nothing else comes there."""
        self.places.append(place)
        self._cells.mark_place(place)

    def without(self, place: Rectangle) -> "Room":
        """Give the same room with one place more taken."""
        return Room(self.area, self.lines, [*self.places, place])

    def clear(self, place: Rectangle) -> bool:
        """Tell whether a place lies in the area and no other place does in it; lines may."""
        return self.area.holds(place) and not any(place.meets(other) for other in self.places)

    def free(self, place: Rectangle) -> bool:
        """Tell whether a place is clear, and no line runs through it."""
        return self.clear(place) and not any(inside(line, place) for line in self.lines)

    def tried(self, width: float, height: float) -> Iterator[Rectangle]:
        """Give the places of a size, from the bottom up and from the left."""
        ups = _steps(self.area.bottom, self.area.top - height)
        acrosses = list(_steps(self.area.left, self.area.right - width))
        for bottom, left in product(ups, acrosses):
            yield Rectangle(left, bottom, left + width, bottom + height)

    def first_free(self, width: float, height: float, before: Rectangle | None = None) -> Rectangle | None:
        """Give the first place of a size that is free, of those read before another one if that is given."""
        blocks = self._cells.free_blocks(width, height)
        return next(
            (place for place in blocks if (not before or read_before(place, before)) and self.free(place)),
            None,
        )

    def free_round(self, middle: Spot, radius: float) -> bool:
        """Tell whether a circle is clear, and no line runs through it."""
        square = round_place(middle, radius)
        if self._cells.taken(square.grown(-WITHIN_CIRCLE * radius)) or not self.clear(square):
            return False
        return not any(distance(middle, line) < radius for line in self.lines)

    def least_crossed(self, width: float, height: float) -> Rectangle:
        """Give the clear place of a size that lines take least of; or any such, where none is clear."""
        tried = list(self.tried(width, height))
        if not tried:
            left, bottom = self.area.left, self.area.bottom
            return Rectangle(left, bottom, left + width, bottom + height)
        clear = [place for place in tried if self.clear(place)]
        return min(clear or tried, key=self._cells.count)


def _steps(start: float, end: float) -> Iterator[float]:
    while start <= end:
        yield start
        start += STEP_MM


def read_before(one: Rectangle, other: Rectangle) -> bool:
    """Tell whether one place comes before another, as a page is read: above it, or level and left of it."""
    return one.bottom >= other.top or (one.right <= other.left and one.top >= other.top)


def round_place(middle: Spot, radius: float) -> Rectangle:
    """Give the place of a circle."""
    return Rectangle(*middle, *middle).grown(radius)


def distance(point: Spot, line: Segment) -> float:
    """Give the distance from a point to the nearest point of a line."""
    (x, y), (end_x, end_y) = line
    across, up = end_x - x, end_y - y
    share = ((point.x - x) * across + (point.y - y) * up) / (across * across + up * up)
    share = min(max(share, 0.0), 1.0)
    return hypot(point.x - x - share * across, point.y - y - share * up)


def inside(line: Segment, place: Rectangle) -> tuple[Spot, Spot] | None:
    """Give the part of a line inside a place, or None if it has none.

    Source:
        Y.-D. Liang and B. A. Barsky, "A new concept and method for line clipping", ACM Transactions on
        Graphics 3 (1984) 1-22.
    """
    (x, y), (end_x, end_y) = line
    across, up = end_x - x, end_y - y
    first, last = 0.0, 1.0
    for way, room in (
        (-across, x - place.left),
        (across, place.right - x),
        (-up, y - place.bottom),
        (up, place.top - y),
    ):
        if way == 0:
            if room <= 0:
                return None
        elif way < 0:
            first = max(first, room / way)
        else:
            last = min(last, room / way)
    if first >= last:
        return None
    return Spot(x + first * across, y + first * up), Spot(x + last * across, y + last * up)
