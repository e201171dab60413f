"""The area model of a product: sheets whose columns show one factor and whose rows show the other."""

from enum import Enum
from typing import assert_never

from foldmath.drawing.scenes import Area, Hatching, Lean, Mark, Meaning, Scene, Spot, Stroke, Tone
from foldmath.drawing.stars import star_in_corner
from foldmath.phrases import Phrase, counted, phrase
from foldmath.values import frozen

MARGIN_MM = 0.5
TICK_MM = 2.5
BETWEEN_SHEETS_MM = 5.0


class Guide(Enum):
    """What an empty model gives to a pupil who draws the lines."""

    LINES = "lines"
    TICKS = "ticks"
    NOTHING = "nothing"


@frozen
class Grid:
    """The parts of a sheet: columns from the left and rows from the bottom, and how many are taken.

    Args:
        columns, rows: into how many equal parts the whole is cut each way.
        across, up: how many columns and rows the factors take.
    """

    columns: int
    rows: int
    across: int
    up: int


@frozen
class _Frame:
    """Where one sheet stands in the picture, in mm."""

    left: float
    bottom: float
    width: float
    height: float

    def part(self, left: float, bottom: float, right: float, top: float) -> tuple[Spot, ...]:
        """Give the corners of a part, its sides as shares of the sheet's."""
        x, end_x = self.left + left * self.width, self.left + right * self.width
        y, end_y = self.bottom + bottom * self.height, self.bottom + top * self.height
        return Spot(x, y), Spot(end_x, y), Spot(end_x, end_y), Spot(x, end_y)


def blank_model(grid: Grid, width_mm: float, height_mm: float, guide: Guide = Guide.TICKS) -> Scene:
    """Draw one empty sheet, with ticks at its edges, lines, or nothing."""
    return blank_sheets((grid,), 1, width_mm, height_mm, guide)


def shaded_model(grid: Grid, width_mm: float, height_mm: float) -> Scene:
    """Draw one sheet shaded: the rows first, then the columns inside the shaded rows only."""
    return shaded_sheets((grid,), 1, width_mm, height_mm)


def blank_sheets(
    grids: tuple[Grid, ...], beside: int, width_mm: float, height_mm: float, guide: Guide
) -> Scene:
    """Draw empty sheets, ``beside`` of them in a row, row by row from the bottom."""
    marks: list[Mark] = []
    for grid, frame in zip(grids, _frames(len(grids), beside, width_mm, height_mm), strict=True):
        marks.append(Area(frame.part(0, 0, 1, 1), Tone.PRINTED_SIDE))
        if guide is Guide.TICKS:
            marks += _ticks(grid, frame)
        elif guide is Guide.LINES:
            marks += _lines(grid, frame)
        marks += _outline(frame)
    words = _words_of_blank(grids, guide)
    return Scene(width_mm=width_mm, height_mm=height_mm, marks=tuple(marks), words=words)


def shaded_sheets(grids: tuple[Grid, ...], beside: int, width_mm: float, height_mm: float) -> Scene:
    """Draw sheets shaded: the rows first, then the columns inside the shaded rows only."""
    marks: list[Mark] = []
    for grid, frame in zip(grids, _frames(len(grids), beside, width_mm, height_mm), strict=True):
        marks.append(Area(frame.part(0, 0, 1, 1), Tone.PRINTED_SIDE))
        if grid.up:
            marks.append(Hatching(frame.part(0, 0, 1, grid.up / grid.rows), Lean.LEFT))
        if grid.across and grid.up:
            twice = frame.part(0, 0, grid.across / grid.columns, grid.up / grid.rows)
            marks.append(Hatching(twice, Lean.RIGHT))
        marks += _lines(grid, frame)
        marks += _outline(frame)
    return Scene(width_mm=width_mm, height_mm=height_mm, marks=tuple(marks), words=_words_of_shaded(grids))


def part_shaded(grid: Grid, width_mm: float, height_mm: float) -> Scene:
    """Draw one sheet with one part of it shaded, once, and the rest left white."""
    (frame,) = _frames(1, 1, width_mm, height_mm)
    part = frame.part(0, 0, grid.across / grid.columns, grid.up / grid.rows)
    marks: list[Mark] = [Area(frame.part(0, 0, 1, 1), Tone.PRINTED_SIDE), Hatching(part, Lean.RIGHT)]
    marks += _lines(grid, frame)
    marks += _outline(frame)
    cells, shaded = grid.columns * grid.rows, grid.across * grid.up
    return Scene(
        width_mm=width_mm,
        height_mm=height_mm,
        marks=tuple(marks),
        words=counted(
            "One sheet of {parts} parts; {count} is shaded.",
            "One sheet of {parts} parts; {count} are shaded.",
            shaded,
            parts=cells,
        ),
    )


def sheet_size(count: int, beside: int, width_mm: float, height_mm: float) -> tuple[float, float]:
    """Give the width and the height of each of so many sheets that share a picture, in mm."""
    stacked = -(-count // beside)
    width = (width_mm - 2 * MARGIN_MM - (beside - 1) * BETWEEN_SHEETS_MM) / beside
    height = (height_mm - 2 * MARGIN_MM - (stacked - 1) * BETWEEN_SHEETS_MM) / stacked
    return width, height


def _frames(count: int, beside: int, width_mm: float, height_mm: float) -> list[_Frame]:
    """Share the picture out to sheets of one size."""
    width, height = sheet_size(count, beside, width_mm, height_mm)
    return [
        _Frame(
            MARGIN_MM + (number % beside) * (width + BETWEEN_SHEETS_MM),
            MARGIN_MM + (number // beside) * (height + BETWEEN_SHEETS_MM),
            width,
            height,
        )
        for number in range(count)
    ]


def _lines(grid: Grid, frame: _Frame) -> list[Mark]:
    ends = [
        frame.part(column / grid.columns, 0, column / grid.columns, 1) for column in range(1, grid.columns)
    ]
    ends += [frame.part(0, row / grid.rows, 1, row / grid.rows) for row in range(1, grid.rows)]
    return [Stroke((start, end), Meaning.GRID) for start, _, end, _ in ends]


def _ticks(grid: Grid, frame: _Frame) -> list[Mark]:
    left, bottom = frame.left, frame.bottom
    right, top = left + frame.width, bottom + frame.height
    marks: list[Mark] = []
    for column in range(1, grid.columns):
        x = left + frame.width * column / grid.columns
        marks.append(Stroke((Spot(x, bottom), Spot(x, bottom + TICK_MM)), Meaning.TICK))
        marks.append(Stroke((Spot(x, top), Spot(x, top - TICK_MM)), Meaning.TICK))
    for row in range(1, grid.rows):
        y = bottom + frame.height * row / grid.rows
        marks.append(Stroke((Spot(left, y), Spot(left + TICK_MM, y)), Meaning.TICK))
        marks.append(Stroke((Spot(right, y), Spot(right - TICK_MM, y)), Meaning.TICK))
    return marks


def _outline(frame: _Frame) -> list[Mark]:
    outline = frame.part(0, 0, 1, 1)
    return [Stroke(outline, Meaning.OUTLINE, closed=True), star_in_corner(outline[0], outline[2])]


def _words_of_blank(grids: tuple[Grid, ...], guide: Guide) -> Phrase:
    """Say what is drawn, and no more: how a sheet is to be divided is told only where its edges show it."""
    drawn = {"columns": grids[0].columns, "rows": grids[0].rows}
    match guide:
        case Guide.LINES:
            return counted(
                "{count} sheet, {columns} columns by {rows} rows, nothing shaded.",
                "{count} sheets, each of {columns} columns by {rows} rows, nothing shaded.",
                len(grids),
                **drawn,
            )
        case Guide.TICKS:
            return counted(
                "{count} sheet, marks at its edges for {columns} columns by {rows} rows, nothing shaded.",
                "{count} sheets, marks at the edges of each for {columns} columns by {rows} rows, "
                "nothing shaded.",
                len(grids),
                **drawn,
            )
        case Guide.NOTHING:
            return counted(
                "{count} sheet, nothing drawn on it.", "{count} sheets, nothing drawn on them.", len(grids)
            )
    assert_never(guide)


def _words_of_shaded(grids: tuple[Grid, ...]) -> Phrase:
    grid = grids[0]
    twice = sum(grid.across * grid.up for grid in grids)
    if len(grids) == 1:
        return phrase(
            "{columns} columns and {rows} rows; rows shaded: {up}; columns of them shaded twice: {across}; "
            "{twice} of {parts} parts.",
            columns=grid.columns,
            rows=grid.rows,
            up=grid.up,
            across=grid.across,
            twice=twice,
            parts=grid.columns * grid.rows,
        )
    once = sum((grid.columns - grid.across) * grid.up for grid in grids)
    return phrase(
        "{sheets} sheets of {parts} parts each; parts shaded twice: {twice}; once: {once}.",
        sheets=len(grids),
        parts=grid.columns * grid.rows,
        twice=twice,
        once=once,
    )
