"""Rows of a Word file: those that follow each other with cells of the same widths make one table."""

from collections.abc import Iterator
from itertools import groupby
from typing import Any

from docx.enum.table import WD_CELL_VERTICAL_ALIGNMENT, WD_ROW_HEIGHT_RULE
from docx.oxml.ns import nsdecls
from docx.oxml.parser import parse_xml
from docx.shared import Mm
from docx.table import Table

from foldmath.pages.markup.blocks import Block, Row
from foldmath.pages.pdf.styles import RowStyle, StyleSheet
from foldmath.values import frozen


@frozen
class RowsTogether:
    """Rows that make one table, at least one, with cells of the same widths."""

    rows: tuple[Row, ...]

    @property
    def heads(self) -> frozenset[Row]:
        """The rows that stand again on every page that the table goes on to."""
        return frozenset(head for row in self.rows for head in row.heads)


def rows_together(blocks: tuple[Block, ...], sheet: StyleSheet) -> Iterator[Block | RowsTogether]:
    """Gather the rows that make a table; rows whose cells are stacked, and all other blocks, stay alone."""

    def shape(block: Block) -> tuple[object, ...]:
        if not isinstance(block, Row) or sheet.rows[block.style].stacked:
            return ()
        return sheet.rows[block.style].lined, *(sheet.cells[cell.style].width_mm for cell in block.cells)

    for alike, group in groupby(blocks, key=shape):
        members = tuple(group)
        if alike:
            yield RowsTogether(tuple(row for row in members if isinstance(row, Row)))
        else:
            yield from members


def shape_table(table: Table, together: RowsTogether, sheet: StyleSheet) -> None:
    """Give a table its widths, heights and lines; rows of its head stand again on every page it goes on to.

    Args:
        table: as many rows and cells as are together, still empty.
        together: the rows.
        sheet: the styles of the page.
    """
    table.autofit = False
    first = together.rows[0]
    table._tbl.tblPr.append(parse_xml(f'<w:tblInd {nsdecls("w")} w:w="0" w:type="dxa"/>'))
    table._tbl.tblPr.append(_lines(sheet.rows[first.style]))
    for row, made in zip(together.rows, table.rows, strict=True):
        style, properties = sheet.rows[row.style], made._tr.get_or_add_trPr()
        properties.append(parse_xml(f"<w:cantSplit {nsdecls('w')}/>"))
        if row in together.heads:
            properties.append(parse_xml(f"<w:tblHeader {nsdecls('w')}/>"))
        if style.height_mm:
            made.height, made.height_rule = Mm(style.height_mm), WD_ROW_HEIGHT_RULE.AT_LEAST
        for cell, room in zip(row.cells, made.cells, strict=True):
            shape = sheet.cells[cell.style]
            room.width = Mm(shape.width_mm)
            room._tc.get_or_add_tcPr().append(_padding(shape.padding_mm))
            if shape.middle:
                room.vertical_alignment = WD_CELL_VERTICAL_ALIGNMENT.CENTER
    for column, cell in zip(table.columns, first.cells, strict=True):
        column.width = Mm(sheet.cells[cell.style].width_mm)


def _lines(style: RowStyle) -> Any:
    level = ("bottom", "insideH")
    drawn = (*level, "top", "left", "right", "insideV") if style.ruled else level if style.lined else ()
    sides = "".join(
        f'<w:{side} w:val="{"single" if side in drawn else "nil"}" w:sz="6" w:space="0" w:color="000000"/>'
        for side in ("top", "left", "bottom", "right", "insideH", "insideV")
    )
    return parse_xml(f"<w:tblBorders {nsdecls('w')}>{sides}</w:tblBorders>")


def _padding(width_mm: float) -> Any:
    twips = round(Mm(width_mm).twips)
    sides = "".join(f'<w:{side} w:w="{twips}" w:type="dxa"/>' for side in ("top", "left", "bottom", "right"))
    return parse_xml(f"<w:tcMar {nsdecls('w')}>{sides}</w:tcMar>")
