"""The pictures of items: empty for pupils, with as much help as their level gives, and shaded for the key."""

from dataclasses import replace
from functools import lru_cache

from foldmath.drawing.area_models import (
    BETWEEN_SHEETS_MM,
    Grid,
    Guide,
    blank_sheets,
    part_shaded,
    shaded_sheets,
    sheet_size,
)
from foldmath.drawing.scenes import Scene
from foldmath.statements.items import Item, Level, ModelSheet, OwnItem, SameSizeItem, ShadeItem
from foldmath.values import frozen

GUIDES = {Level.GUIDED: Guide.LINES, Level.CORE: Guide.TICKS, Level.STRETCH: Guide.NOTHING}
"""Lines already drawn, ticks at the edges, or an empty sheet (common practice, no source)."""

PICTURES_KEPT = 4096
"""Sets of worksheets share their models: there are only so many small denominators."""


NARROWEST = 2.5
"""Of several sheets none is narrower than so many of the narrowest cells: it would look like a strip."""


@frozen(kw_only=True)
class ModelSize:
    """How large models are, in mm.

    Args:
        width, height: of one sheet, unless its cells need more.
        most_width, most_height: what a page has room for.
        cell: no cell is narrower, so far as the page allows: a child must be able to shade it.
        solved_cell: no row of an example, which is only looked at, is lower.
        several_cell: the same where several sheets share the page.
        several_width: of a row of several sheets.
        row_width: the most of several sheets that have their question beside them; 0 where it has no room.
        beside_width: of one sheet that has its answer beside it, in a column of the page.
        column_width: of such a column.
    """

    width: float
    height: float
    most_width: float
    most_height: float
    cell: float
    solved_cell: float
    several_cell: float
    several_width: float
    row_width: float
    beside_width: float
    column_width: float

    @property
    def in_column(self) -> "ModelSize":
        """The size of models that stand in a column, as narrow as their cells allow."""
        height = self.height * self.beside_width / self.width
        return replace(
            self,
            width=self.beside_width,
            height=height,
            most_width=self.column_width,
            several_width=self.column_width,
        )


@frozen(kw_only=True)
class ItemPicture:
    """Two scenes of one item, and a name that tells them from all others.

    Args:
        name: of the empty one.
        blank, shaded: the scenes.
        beside: whether an answer finds room in a column beside them, or a question in a row.
        in_column: whether they stand in a column of the page.
    """

    name: str
    blank: Scene
    shaded: Scene
    beside: bool = False
    in_column: bool = False

    @property
    def in_row(self) -> "ItemPicture":
        """The same in a row as wide as the page, if there is room for a question beside it."""
        return replace(self, in_column=False) if self.beside else self

    @property
    def shaded_name(self) -> str:
        """The name of the shaded scene."""
        return f"{self.name}-shaded"


def item_picture(item: Item, level: Level, size: ModelSize) -> ItemPicture | None:
    """Give the pictures of an item; None for an item without one."""
    if isinstance(item, ShadeItem) and item.sheets:
        return _model(item.sheets.sheets, item.sheets.beside, GUIDES[level], size)
    if isinstance(item, OwnItem) and item.sheets:
        return _model_in_column(item.sheets.sheets[0], GUIDES[level], size)
    if isinstance(item, SameSizeItem):
        return _refolded(item.before, item.after, size)
    return None


def example_picture(item: Item, size: ModelSize) -> ItemPicture | None:
    """Give the pictures of a solved item: nobody shades there, so sheets are small, the answer beside."""
    if isinstance(item, ShadeItem) and item.sheets:
        return _solved(item.sheets.sheets, item.sheets.beside, size)
    return item_picture(item, Level.GUIDED, size)


@lru_cache(maxsize=PICTURES_KEPT)
def _solved(sheets: tuple[ModelSheet, ...], beside: int, size: ModelSize) -> ItemPicture:
    grids = tuple(_grid(sheet) for sheet in sheets)
    high = max(size.beside_width / beside * size.height / size.width, size.solved_cell * grids[0].rows)
    stacked = -(-len(grids) // beside)
    measures = size.beside_width, stacked * high + (stacked - 1) * BETWEEN_SHEETS_MM
    return ItemPicture(
        name=f"solved-{_told(grids)}-{beside}",
        blank=blank_sheets(grids, beside, *measures, Guide.LINES),
        shaded=shaded_sheets(grids, beside, *measures),
        beside=True,
        in_column=len(sheets) > 1,
    )


def _told(grids: tuple[Grid, ...]) -> str:
    return "-".join(f"{grid.columns}.{grid.rows}.{grid.across}.{grid.up}" for grid in grids)


@lru_cache(maxsize=PICTURES_KEPT)
def _model(sheets: tuple[ModelSheet, ...], beside: int, guide: Guide, size: ModelSize) -> ItemPicture:
    grids = tuple(_grid(sheet) for sheet in sheets)
    in_column = len(sheets) > 1 and _find_room(grids, beside, size.in_column)
    measures = _measures(grids, beside, size.in_column if in_column else size)
    return ItemPicture(
        name=f"model-{_told(grids)}-{beside}-{guide.value}",
        blank=blank_sheets(grids, beside, *measures, guide),
        shaded=shaded_sheets(grids, beside, *measures),
        beside=in_column and measures[0] <= size.row_width,
        in_column=in_column,
    )


@lru_cache(maxsize=PICTURES_KEPT)
def _model_in_column(sheet: ModelSheet, guide: Guide, size: ModelSize) -> ItemPicture | None:
    """Draw the model of an item in a column; None where its cells are too narrow to be shaded."""
    grids = (_grid(sheet),)
    width, height = _measures(grids, 1, size.in_column)
    if width < size.cell * sheet.columns:
        return None
    return ItemPicture(
        name=f"column-{sheet.columns}.{sheet.rows}.{sheet.across}.{sheet.up}-{guide.value}",
        blank=blank_sheets(grids, 1, width, height, guide),
        shaded=shaded_sheets(grids, 1, width, height),
        beside=width <= size.beside_width,
        in_column=True,
    )


@lru_cache(maxsize=PICTURES_KEPT)
def _refolded(before: ModelSheet, after: ModelSheet, size: ModelSize) -> ItemPicture:
    grids = (_grid(before),), (_grid(after),)
    measures = _measures(grids[1], 1, size.in_column)
    name = f"refolded-{before.columns}.{before.across}-{after.rows}"
    blank, shaded = (part_shaded(grid, *measures) for (grid,) in grids)
    beside = measures[0] <= size.beside_width
    return ItemPicture(name=name, blank=blank, shaded=shaded, beside=beside, in_column=True)


def _grid(sheet: ModelSheet) -> Grid:
    return Grid(sheet.columns, sheet.rows, sheet.across, sheet.up)


def _find_room(grids: tuple[Grid, ...], beside: int, size: ModelSize) -> bool:
    """Tell whether several sheets can be shaded at a size, and still look like sheets of paper."""
    width, height = sheet_size(len(grids), beside, *_measures(grids, beside, size))
    narrowest = size.several_cell * max(NARROWEST, grids[0].columns)
    return width >= narrowest and height >= size.several_cell * grids[0].rows


def _measures(grids: tuple[Grid, ...], beside: int, size: ModelSize) -> tuple[float, float]:
    """Make sheets large enough for their cells, so far as the page allows."""
    cell = size.cell if len(grids) == 1 else size.several_cell
    height = min(max(size.height, cell * grids[0].rows + 1), size.most_height)
    if len(grids) == 1:
        return min(max(size.width, cell * grids[0].columns + 1), size.most_width), height
    stacked = -(-len(grids) // beside)
    several_high = stacked * height + (stacked - 1) * BETWEEN_SHEETS_MM
    return min(size.several_width, beside * size.width), min(several_high, size.most_height)
