"""The area model of a product for the wall: sheets whose rows are shaded, then columns inside them."""

from foldmath.drawing.rendering.hatching import hatch_lines
from foldmath.drawing.scenes import Lean, Spot, Star
from foldmath.drawing.stars import PICTURE_STAR_MM, star_in_corner
from foldmath.statements.items.sheets import ModelSheet, Sheets
from foldmath.values import frozen

SHEET_MM = (60.0, 46.0)
BETWEEN_MM, MARGIN_MM = 6.0, 1.0
PITCH_MM = 3.0

STAR_OF_WIDTH, STAR_OF_HEIGHT = 0.024, 0.019
"""The star's radius as a share of the picture: from tip to tip at least 1/40 of a screen's height.

A picture of many sheets takes half of the width of a screen of 4 to 3, or most of its height.
"""

Lines = tuple[tuple[Spot, Spot], ...]


@frozen(kw_only=True)
class Model:
    """One sheet of an area model.

    Args:
        outline: its corners.
        grid: the lines between its parts.
        rows, columns: the hatch of the shaded rows, and of the columns shaded inside them.
        star: at its bottom left.
    """

    outline: tuple[Spot, ...]
    grid: Lines
    rows: Lines
    columns: Lines
    star: Star


@frozen
class ModelPicture:
    """All sheets of a product, in mm from the top left."""

    width: float
    height: float
    models: tuple[Model, ...]


def model_picture(sheets: Sheets) -> ModelPicture:
    """Draw the sheets of a product, row by row from the bottom, as they stand on a worksheet."""
    beside, stacked = sheets.beside, -(-len(sheets.sheets) // sheets.beside)
    width = beside * SHEET_MM[0] + (beside - 1) * BETWEEN_MM + 2 * MARGIN_MM
    height = stacked * SHEET_MM[1] + (stacked - 1) * BETWEEN_MM + 2 * MARGIN_MM
    star_mm = max(PICTURE_STAR_MM, STAR_OF_WIDTH * width, STAR_OF_HEIGHT * height)
    models = []
    for number, sheet in enumerate(sheets.sheets):
        corner = Spot(
            MARGIN_MM + (number % beside) * (SHEET_MM[0] + BETWEEN_MM),
            MARGIN_MM + (number // beside) * (SHEET_MM[1] + BETWEEN_MM),
        )
        models.append(_model(sheet, corner, height, star_mm))
    return ModelPicture(width, height, tuple(models))


def _model(sheet: ModelSheet, corner: Spot, height: float, star_mm: float) -> Model:
    outline = _part(corner, 1, 1)
    rows = hatch_lines(_part(corner, 1, sheet.up / sheet.rows), Lean.LEFT, PITCH_MM) if sheet.up else []
    twice = _part(corner, sheet.across / sheet.columns, sheet.up / sheet.rows)
    columns = hatch_lines(twice, Lean.RIGHT, PITCH_MM) if sheet.across and sheet.up else []
    star = star_in_corner(outline[0], outline[2], star_mm)
    return Model(
        outline=_down(outline, height),
        grid=tuple(_line_down(line, height) for line in _grid(sheet, corner)),
        rows=tuple(_line_down(line, height) for line in rows),
        columns=tuple(_line_down(line, height) for line in columns),
        star=Star(_down((star.middle,), height)[0], star.radius_mm),
    )


def _part(corner: Spot, across: float, up: float) -> tuple[Spot, ...]:
    """Give the corners of a share of a sheet that begins at its bottom left."""
    right, top = corner.x + across * SHEET_MM[0], corner.y + up * SHEET_MM[1]
    return corner, Spot(right, corner.y), Spot(right, top), Spot(corner.x, top)


def _grid(sheet: ModelSheet, corner: Spot) -> list[tuple[Spot, Spot]]:
    lines = []
    for column in range(1, sheet.columns):
        _, foot, head, _ = _part(corner, column / sheet.columns, 1)
        lines.append((foot, head))
    for row in range(1, sheet.rows):
        *_, right, left = _part(corner, 1, row / sheet.rows)
        lines.append((left, right))
    return lines


def _line_down(line: tuple[Spot, Spot], height: float) -> tuple[Spot, Spot]:
    start, end = _down(line, height)
    return start, end


def _down(spots: tuple[Spot, ...], height: float) -> tuple[Spot, ...]:
    """Count heights from the top, as SVG does."""
    return tuple(Spot(x, height - y) for x, y in spots)
