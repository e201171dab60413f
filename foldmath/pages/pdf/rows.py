"""Flowables that hold others: columns, and rows of cells, which may be parts of a table or a list."""

# ruff: noqa: N802, N803 (Platypus's own names)

from contextlib import AbstractContextManager, ExitStack
from typing import Any

from foldmath.pages.pdf import styles
from foldmath.pages.pdf.flowables import Painted, Running
from foldmath.pages.pdf.styles import CellStyle, RowStyle, points
from foldmath.pages.tags import kinds
from foldmath.pages.tags.kinds import Tag
from foldmath.pages.tags.marking import Tags


class Column(Painted):
    """Flowables one above the other, never parted."""

    def __init__(self, flowables: list[Painted], after_mm: float = 0.0, tag: Tag | None = None) -> None:
        super().__init__()
        self.flowables = flowables
        self.after = points(after_mm)
        self.tag = tag

    def getSpaceBefore(self) -> float:
        """Give the space above, in points: the first flowable's own."""
        return float(self.flowables[0].getSpaceBefore()) if self.flowables else 0.0

    def getSpaceAfter(self) -> float:
        """Give the space below, in points."""
        return self.after

    def wrap(self, aW: float, aH: float) -> tuple[float, float]:
        """Stack the flowables."""
        self.width = aW
        self.tops: list[float] = []
        depth = 0.0
        for number, flowable in enumerate(self.flowables):
            height = flowable.wrap(aW, aH)[1]
            depth += flowable.getSpaceBefore() if number else 0.0
            depth += height
            self.tops.append(depth)
            depth += flowable.getSpaceAfter() if number < len(self.flowables) - 1 else 0.0
        self.height = depth
        return aW, depth

    def paint(self, canvas: Any, x: float, y: float) -> None:
        """Draw from the top."""
        with self._marked(canvas):
            for flowable, top in zip(self.flowables, self.tops, strict=True):
                flowable.paint(canvas, x, y + self.height - top)

    def _marked(self, canvas: Any) -> AbstractContextManager[None]:
        """Hold what it has in its own element; a single paragraph needs none in there."""
        tags: Tags = canvas.tags
        if self.tag and len(self.flowables) == 1 and _is_plain(self.flowables[0]):
            return tags.leaf(self.tag)
        return tags.group(self.tag)


def _is_plain(flowable: Painted) -> bool:
    return isinstance(flowable, Running) and flowable.tag == kinds.PARAGRAPH


class CellsInRow(Painted):
    """Cells side by side, and the rows that head them on a new page.

    Args:
        cells: from left to right.
        style: of the row.
        heads: of its table.
        tags: of the elements that hold it, from the outermost.
    """

    def __init__(
        self,
        cells: list[tuple[CellStyle, Column]],
        style: RowStyle,
        heads: "tuple[Repeated, ...]" = (),
        tags: tuple[Tag, ...] = (),
    ) -> None:
        super().__init__()
        self.heads = heads
        self.cells = cells
        self.style = style
        self.tags = tags

    def getSpaceBefore(self) -> float:
        """Give the space above, in points."""
        return points(self.style.before_mm)

    def getSpaceAfter(self) -> float:
        """Give the space below, in points."""
        return points(self.style.after_mm)

    def wrap(self, aW: float, aH: float) -> tuple[float, float]:
        """Make the row as high as its highest cell."""
        self.height = points(self.style.height_mm)
        spare = max(aW - sum(points(style.width_mm) for style, _ in self.cells), 0.0)
        self.widths = [points(style.width_mm) + (spare if style.fills else 0.0) for style, _ in self.cells]
        for (style, column), width in zip(self.cells, self.widths, strict=True):
            padding = points(style.padding_mm)
            height = column.wrap(width - 2 * padding, aH)[1]
            self.height = max(self.height, height + 2 * padding + points(style.top_mm + style.foot_mm))
        self.width = aW
        return aW, self.height

    def paint(self, canvas: Any, x: float, y: float) -> None:
        """Draw the cells, and the lines round or under them."""
        with ExitStack() as stack:
            for tag in self.tags:
                stack.enter_context(canvas.tags.group(tag))
            self._draw_cells(canvas, x, y)

    def _draw_cells(self, canvas: Any, x: float, y: float) -> None:
        left = x
        for (style, column), width in zip(self.cells, self.widths, strict=True):
            padding = points(style.padding_mm)
            spare = self.height - 2 * padding - points(style.top_mm + style.foot_mm) - column.height
            foot = y + padding + points(style.foot_mm) + (spare / 2 if style.middle else spare)
            if self.style.ruled:
                with canvas.tags.artifact():
                    canvas.setLineWidth(styles.RULE_PT)
                    canvas.rect(x, y, width, self.height)
            column.paint(canvas, x + padding, foot)
            x += width
        if self.style.line_mm:
            with canvas.tags.artifact():
                canvas.setLineWidth(points(self.style.line_mm))
                canvas.line(left, y, x, y)


class Repeated(Painted):
    """A row that stands again at the top of a page for the eye: it was read aloud before."""

    def __init__(self, row: CellsInRow) -> None:
        super().__init__()
        self.row = row

    def getSpaceBefore(self) -> float:
        """Give the space above, in points."""
        return self.row.getSpaceBefore()

    def getSpaceAfter(self) -> float:
        """Give the space below, in points."""
        return self.row.getSpaceAfter()

    def wrap(self, aW: float, aH: float) -> tuple[float, float]:
        """Be as high as the row."""
        self.width, self.height = self.row.wrap(aW, aH)
        return self.width, self.height

    def paint(self, canvas: Any, x: float, y: float) -> None:
        """Draw the row."""
        with canvas.tags.artifact():
            self.row.paint(canvas, x, y)


class InColumns(Painted):
    """Flowables for the columns of a page: whoever fills the page places each by itself."""

    def __init__(self, flowables: list[Painted], columns: int) -> None:
        super().__init__()
        self.flowables, self.columns = flowables, columns

    def paint(self, canvas: Any, x: float, y: float) -> None:
        """Leave no ink of its own."""
