"""What is taken of an area, in cells of a millimetre, so that free places are found fast."""

from collections.abc import Iterator
from math import ceil, hypot

from foldmath.drawing.scenes import Spot
from foldmath.pages.pdf.exact import Rectangle

SAMPLE_MM = 0.5
"""A line is followed in steps of this length; a cell of which it only cuts a corner may be missed."""


class Cells:
    """An area in cells of 1 mm: a row is a whole number whose bits are its taken cells, from the left.

    Args:
        area: in mm on the page.
    """

    def __init__(self, area: Rectangle) -> None:
        self.area = area
        self.columns = max(int(area.right - area.left), 0)
        self.rows = [0] * max(int(area.top - area.bottom), 0)

    def mark_line(self, start: Spot, end: Spot) -> None:
        """Take the cells that a line runs through."""
        steps = ceil(hypot(end.x - start.x, end.y - start.y) / SAMPLE_MM)
        for step in range(steps + 1):
            share = step / steps if steps else 0.0
            across = start.x + share * (end.x - start.x) - self.area.left
            up = start.y + share * (end.y - start.y) - self.area.bottom
            if 0 <= across < self.columns and 0 <= up < len(self.rows):
                self.rows[int(up)] |= 1 << int(across)

    def mark_place(self, place: Rectangle) -> None:
        """Take the cells of a place."""
        first, mask = self._columns_of(place)
        for row in self._rows_of(place):
            self.rows[row] |= mask << first

    def taken(self, place: Rectangle) -> bool:
        """Tell whether a cell of a place is taken."""
        first, mask = self._columns_of(place)
        return any(self.rows[row] & mask << first for row in self._rows_of(place))

    def count(self, place: Rectangle) -> int:
        """Count the taken cells of a place."""
        first, mask = self._columns_of(place)
        return sum((self.rows[row] >> first & mask).bit_count() for row in self._rows_of(place))

    def free_blocks(self, width: float, height: float) -> Iterator[Rectangle]:
        """Give the places of a size of which no cell is taken, from the bottom up and from the left."""
        columns, high = ceil(width), ceil(height)
        whole = (1 << self.columns) - 1
        for row in range(len(self.rows) - high + 1):
            band = 0
            for taken in self.rows[row : row + high]:
                band |= taken
            starts = _runs(whole & ~band, columns)
            while starts:
                lowest = starts & -starts
                left, bottom = self.area.left + lowest.bit_length() - 1, self.area.bottom + row
                yield Rectangle(left, bottom, left + width, bottom + height)
                starts ^= lowest

    def _columns_of(self, place: Rectangle) -> tuple[int, int]:
        """Give the first column of a place, and as many bits as it has columns."""
        first = min(max(int(place.left - self.area.left), 0), self.columns)
        last = min(max(ceil(place.right - self.area.left), first), self.columns)
        return first, (1 << (last - first)) - 1

    def _rows_of(self, place: Rectangle) -> range:
        first = max(int(place.bottom - self.area.bottom), 0)
        return range(first, min(max(ceil(place.top - self.area.bottom), first), len(self.rows)))


def _runs(free: int, length: int) -> int:
    """Give the bits at which ``length`` free bits begin; the known length of runs doubles at every turn."""
    known = 1
    while known < length and free:
        more = min(known, length - known)
        free &= free >> more
        known += more
    return free
