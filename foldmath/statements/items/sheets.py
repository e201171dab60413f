"""The shaded sheets that show a product: as many whole sheets as its factors need, cell by cell."""

from typing import TypeAlias

from foldmath.plane.numbers import Exact, exact
from foldmath.statements.composing import equation, times
from foldmath.statements.expressions import Claim
from foldmath.statements.items.item import NoSuchItem
from foldmath.statements.products import Product
from foldmath.statements.ratios import Ratio
from foldmath.values import frozen

MOST_SHEETS = 6
"""More outlined sheets than this do not stand beside each other on a page."""

MOST_PARTS = 12
"""No side of a sheet is cut into more parts: a pleat makes no more."""

Cell: TypeAlias = tuple[int, int]
"""A column from the left and a row from the bottom, both counted from 0."""


@frozen
class ModelSheet:
    """One sheet, cut into equal cells: rows are shaded first, then columns inside the shaded rows.

    Args:
        columns, rows: into how many equal parts the sheet is cut each way; 1 if it is not cut.
        across: how many columns from the left are shaded a second time, inside the shaded rows only.
        up: how many rows from the bottom are shaded.
    """

    columns: int
    rows: int
    across: int
    up: int

    @property
    def twice(self) -> frozenset[Cell]:
        """The cells shaded twice."""
        return frozenset((column, row) for column in range(self.across) for row in range(self.up))

    @property
    def once(self) -> frozenset[Cell]:
        """The cells shaded once."""
        return frozenset(
            (column, row) for column in range(self.across, self.columns) for row in range(self.up)
        )

    @property
    def cells(self) -> int:
        """All cells."""
        return self.columns * self.rows

    @property
    def twice_counted(self) -> Claim:
        """How many cells are shaded twice: ``2 × 4 = 8``."""
        return equation(times(self.across, self.up), self.across * self.up)

    @property
    def cells_counted(self) -> Claim:
        """How many cells there are: ``3 × 5 = 15``."""
        return equation(times(self.columns, self.rows), self.cells)


@frozen
class Sheets:
    """The sheets of one picture, all cut alike.

    Args:
        sheets: from left to right; where both factors are more than one whole, row by row from the bottom.
        beside: how many stand side by side in a row.
        times: how often a cell that counts for the answer is shaded: 2, or 1 where equal groups are shown.
    """

    sheets: tuple[ModelSheet, ...]
    beside: int
    times: int

    @property
    def columns(self) -> int:
        """Into how many columns each sheet is cut."""
        return self.sheets[0].columns

    @property
    def rows(self) -> int:
        """Into how many rows each sheet is cut."""
        return self.sheets[0].rows

    @property
    def counted(self) -> int:
        """How many cells count for the answer."""
        return sum(len(sheet.twice if self.times == 2 else sheet.once) for sheet in self.sheets)

    @property
    def shaded(self) -> int:
        """How many cells are shaded, once or twice."""
        return sum(len(sheet.once | sheet.twice) for sheet in self.sheets)

    @property
    def value(self) -> Exact:
        """What the counted cells are worth, in whole sheets."""
        return exact(self.counted, self.sheets[0].cells)


def sheets_of(product: Product) -> Sheets | None:
    """Shade a product; None where a page has no room for it, or where both factors are whole.

    ``3 × 2/5`` is three sheets with 2/5 shaded. Else the second factor is shaded in rows, and the first
    factor of that again in columns: ``2/5 of 3`` is three sheets shaded all over, and 2/5 of each again.
    A factor of more than one whole needs more than one sheet.

    Raises:
        NoSuchItem: the cells count another answer than arithmetic gives.
    """
    across, up = _shaded_in(product)
    if not across:
        return None
    shown = Sheets(
        tuple(
            ModelSheet(product.first.denominator, product.second.denominator, columns, rows)
            for rows in up
            for columns in across
        ),
        len(across),
        1 if product.first.whole else 2,
    )
    if shown.value != product.value:
        raise NoSuchItem(f"the cells show {shown.counted} of {shown.sheets[0].cells} for {product.text}")
    return shown


def sheet_count(product: Product) -> int:
    """Tell on how many sheets a product is shaded, without counting its cells; 0 where it is on none."""
    across, up = _shaded_in(product)
    return len(across) * len(up)


def _shaded_in(product: Product) -> tuple[list[int], list[int]]:
    """Give the columns shaded in each sheet beside the others, the rows in each below; none without room."""
    first, second = product.first, product.second
    if (first.whole and second.whole) or max(first.denominator, second.denominator) > MOST_PARTS:
        return [], []
    across = [0] * first.numerator if first.whole and first.numerator <= MOST_SHEETS else _split(first)
    up = _split(second)
    return (across, up) if across and up and len(across) * len(up) <= MOST_SHEETS else ([], [])


def _split(ratio: Ratio) -> list[int]:
    """Give how many parts of each sheet a factor takes: 4/3 takes 3 and then 1."""
    wholes, rest = divmod(ratio.numerator, ratio.denominator)
    if wholes > MOST_SHEETS:
        return []
    return [ratio.denominator] * wholes + ([rest] if rest else [])
