"""The area model of a product: a rectangle whose columns show one factor and whose rows show the other."""

from dataclasses import dataclass

from foldmath.drawing.crease_patterns import star_in_corner
from foldmath.drawing.scenes import Area, Hatching, Lean, Mark, Meaning, Scene, Spot, Stroke, Tone

MARGIN_MM = 0.5
TICK_MM = 2.5


@dataclass(frozen=True)
class Grid:
    """The parts of a model: columns from the left and rows from the bottom, and how many are taken.

    Args:
        columns, rows: into how many equal parts the whole is cut each way.
        across, up: how many columns and rows the factors take.
    """

    columns: int
    rows: int
    across: int
    up: int


def blank_model(grid: Grid, width_mm: float, height_mm: float) -> Scene:
    """Draw the empty whole with ticks at its edges, where pupils draw the lines themselves."""
    outline = _rectangle(0, 0, 1, 1, width_mm, height_mm)
    marks: list[Mark] = [Area(outline, Tone.PRINTED_SIDE)]
    left, bottom, right, top = outline[0].x, outline[0].y, outline[2].x, outline[2].y
    for column in range(1, grid.columns):
        x = left + (right - left) * column / grid.columns
        marks.append(Stroke((Spot(x, bottom), Spot(x, bottom + TICK_MM)), Meaning.TICK))
        marks.append(Stroke((Spot(x, top), Spot(x, top - TICK_MM)), Meaning.TICK))
    for row in range(1, grid.rows):
        y = bottom + (top - bottom) * row / grid.rows
        marks.append(Stroke((Spot(left, y), Spot(left + TICK_MM, y)), Meaning.TICK))
        marks.append(Stroke((Spot(right, y), Spot(right - TICK_MM, y)), Meaning.TICK))
    marks += _frame(outline)
    words = f"An empty rectangle, to be cut into {grid.columns} columns and {grid.rows} rows."
    return Scene(width_mm, height_mm, tuple(marks), words)


def shaded_model(grid: Grid, width_mm: float, height_mm: float) -> Scene:
    """Draw the model shaded: the rows first, then the columns inside the shaded rows only."""
    outline = _rectangle(0, 0, 1, 1, width_mm, height_mm)
    across, up = grid.across / grid.columns, grid.up / grid.rows
    marks: list[Mark] = [
        Area(outline, Tone.PRINTED_SIDE),
        Hatching(_rectangle(0, 0, 1, up, width_mm, height_mm), Lean.LEFT),
        Hatching(_rectangle(0, 0, across, up, width_mm, height_mm), Lean.RIGHT),
    ]
    for column in range(1, grid.columns):
        line = _rectangle(column / grid.columns, 0, column / grid.columns, 1, width_mm, height_mm)
        marks.append(Stroke((line[0], line[2]), Meaning.GRID))
    for row in range(1, grid.rows):
        line = _rectangle(0, row / grid.rows, 1, row / grid.rows, width_mm, height_mm)
        marks.append(Stroke((line[0], line[2]), Meaning.GRID))
    marks += _frame(outline)
    words = (
        f"{grid.columns} columns and {grid.rows} rows; {grid.up} rows are shaded, and {grid.across} columns "
        f"of them twice: {grid.across * grid.up} of {grid.columns * grid.rows} parts."
    )
    return Scene(width_mm, height_mm, tuple(marks), words)


def _frame(outline: tuple[Spot, ...]) -> list[Mark]:
    return [Stroke(outline, Meaning.OUTLINE, closed=True), star_in_corner(outline[0])]


def _rectangle(
    left: float, bottom: float, right: float, top: float, width_mm: float, height_mm: float
) -> tuple[Spot, ...]:
    """Give the corners of a part of the whole, its sides as shares of the whole's."""
    across, up = width_mm - 2 * MARGIN_MM, height_mm - 2 * MARGIN_MM
    x, end_x = MARGIN_MM + left * across, MARGIN_MM + right * across
    y, end_y = MARGIN_MM + bottom * up, MARGIN_MM + top * up
    return Spot(x, y), Spot(end_x, y), Spot(end_x, end_y), Spot(x, end_y)
