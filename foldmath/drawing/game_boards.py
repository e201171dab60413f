"""The board of a game: the opened sheet as a path through its panels, from the star on, row by row."""

from collections.abc import Callable
from itertools import pairwise

from foldmath.drawing.fractions_to_write import (
    BOX_HEIGHT_MM,
    BOX_WIDTH_MM,
    GAP_MM,
    HEIGHT_OVER_GIVEN_MM,
    empty_over,
    written_over,
)
from foldmath.drawing.scenes import Area, Mark, Meaning, Scene, Spot, Stroke, Tone
from foldmath.drawing.stars import star_in_corner
from foldmath.phrases import Phrase, phrase

MARGIN_MM = 0.6
INSET_MM, ACROSS_MM = 1.2, 3.4
"""From the edges of a panel to its fraction, up and across: star and arrows stand left of it."""

LEAST_UP_MM = HEIGHT_OVER_GIVEN_MM + 2 * INSET_MM
"""No panel is smaller, so that a fraction and a paper clip have room."""

ARROW_MM = 1.6
"""Half the width of the arrow from one panel to the next, and its length to either side of their edge."""

ARROW_RISE_MM = 2.6
"""From the foot of two panels side by side to the arrow between them.

One between two panels above each other stands in the middle of what is free beside their fractions.
"""


def blank_board(columns: int, rows: int, width_mm: float, height_mm: float) -> Scene:
    """Draw the path, with a box in every panel for how many of all the panels it makes."""
    panels = columns * rows
    words = phrase(
        "A board of {panels} panels in a path from the star. Each has a box over {panels}.", panels=panels
    )
    return _scene(columns, rows, width_mm, height_mm, lambda _, bar: empty_over(bar, str(panels)), words)


def numbered_board(columns: int, rows: int, width_mm: float, height_mm: float) -> Scene:
    """Draw the same with the numbers written in."""
    panels = columns * rows
    words = phrase(
        "A board of {panels} panels in a path from the star, from 1 over {panels} to {panels} over {panels}.",
        panels=panels,
    )
    return _scene(
        columns,
        rows,
        width_mm,
        height_mm,
        lambda number, bar: written_over(bar, str(number), str(panels)),
        words,
    )


def least_height_mm(rows: int) -> float:
    """Tell how high a board of so many rows is at least."""
    return rows * LEAST_UP_MM + 2 * MARGIN_MM


def _scene(
    columns: int,
    rows: int,
    width_mm: float,
    height_mm: float,
    fraction: Callable[[int, Spot], list[Mark]],
    words: Phrase,
) -> Scene:
    across, up = (width_mm - 2 * MARGIN_MM) / columns, (height_mm - 2 * MARGIN_MM) / rows
    marks: list[Mark] = [Area(_panel(0, 0, columns * across, rows * up), Tone.PRINTED_SIDE)]
    path = [
        (column if row % 2 == 0 else columns - 1 - column, row)
        for row in range(rows)
        for column in range(columns)
    ]
    for number, (column, row) in enumerate(path, start=1):
        left, low = column * across, row * up
        marks.append(Stroke(_panel(left, low, across, up), Meaning.GRID, closed=True))
        marks += fraction(number, _bar(left, low, up))
    for one, other in pairwise(path):
        marks.append(_arrow(one, other, across, up))
    outline = _panel(0, 0, columns * across, rows * up)
    marks += [Stroke(outline, Meaning.OUTLINE, closed=True), star_in_corner(outline[0], outline[2])]
    return Scene(width_mm=width_mm, height_mm=height_mm, marks=tuple(marks), words=words)


def _panel(left: float, low: float, width: float, height: float) -> tuple[Spot, ...]:
    x, y = MARGIN_MM + left, MARGIN_MM + low
    return Spot(x, y), Spot(x + width, y), Spot(x + width, y + height), Spot(x, y + height)


def _bar(left: float, low: float, up: float) -> Spot:
    """Give where the bar of a panel's fraction stands: at its top, left of the room for a paper clip."""
    x = MARGIN_MM + left + ACROSS_MM + BOX_WIDTH_MM / 2
    return Spot(x, MARGIN_MM + low + up - INSET_MM - BOX_HEIGHT_MM - GAP_MM)


def _arrow(one: tuple[int, int], other: tuple[int, int], across: float, up: float) -> Area:
    """Draw an arrow over the edge between two panels, from the first into the second."""
    dx, dy = other[0] - one[0], other[1] - one[1]
    x = MARGIN_MM + (one[0] + other[0] + 1) / 2 * across
    beside = ARROW_RISE_MM - up / 2 if dx else 0.0
    x += 0.0 if dx else (ACROSS_MM + BOX_WIDTH_MM) / 2
    y = MARGIN_MM + (one[1] + other[1] + 1) / 2 * up + beside
    size = ARROW_MM
    return Area(
        (
            Spot(x + dx * size, y + dy * size),
            Spot(x - dx * size - dy * size, y - dy * size + dx * size),
            Spot(x - dx * size + dy * size, y - dy * size - dx * size),
        ),
        Tone.INK,
    )
