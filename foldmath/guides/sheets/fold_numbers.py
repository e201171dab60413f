"""The number of a fold in a circle beside its line, where nothing is in the way."""

from collections.abc import Iterator
from math import hypot

from foldmath.drawing.layout import spot
from foldmath.drawing.scenes import Spot
from foldmath.guides.marks.fold_lines import FoldLine
from foldmath.guides.pieces.circled_numbers import in_circle
from foldmath.guides.pieces.letters import Letters
from foldmath.guides.sheets.free_places import Room, Segment, round_place
from foldmath.pages.page_fit import Carry
from foldmath.pages.pdf.exact import ExactMark

GAP_MM = 0.9
"""Between a line and the circle beside it; half of it is kept free of other lines."""

FROM_END_MM, STEP_MM = 11.0, 4.0
"""Where along the line the first number is tried, and how far apart the next ones are."""


def fold_number(fold: FoldLine, carry: Carry, room: Room, letters: Letters) -> Iterator[ExactMark]:
    """Set the number of a fold beside its line, near its left or its top end, and take its place.

    Where no place beside it is free, the number stands on the line, as small as may be.
    """
    start, end = spot(carry(fold.start)), spot(carry(fold.end))
    line = (start, end) if abs(end.x - start.x) > abs(end.y - start.y) else (end, start)
    for size, radius in letters.numbers:
        for middle in _beside(line, radius + GAP_MM):
            place = round_place(middle, radius + GAP_MM / 2)
            if room.free_round(middle, radius + GAP_MM / 2):
                room.take(place)
                return in_circle(middle, fold.fold, size, radius)
    size, radius = letters.numbers[-1]
    area = room.area.grown(-radius)
    middle = Spot(
        min(max((start.x + end.x) / 2, area.left), area.right),
        min(max((start.y + end.y) / 2, area.bottom), area.top),
    )
    room.take(round_place(middle, radius))
    return in_circle(middle, fold.fold, size, radius)


def _beside(line: Segment, offset: float) -> Iterator[Spot]:
    """Give the spots beside a line, from its first end on, on one hand and on the other."""
    (x, y), (end_x, end_y) = line
    length = hypot(end_x - x, end_y - y)
    along_x, along_y = (end_x - x) / length, (end_y - y) / length
    way = min(FROM_END_MM, length / 2)
    while way < length:
        for hand in (offset, -offset):
            yield Spot(x + way * along_x - hand * along_y, y + way * along_y + hand * along_x)
        way += STEP_MM
