"""From blocks to flowables: one small function for each kind of block."""

from collections.abc import Callable
from functools import singledispatchmethod
from typing import Any, assert_never

from foldmath.drawing.rendering.recording import Recording
from foldmath.pages.markup.blocks import (
    Block,
    Cell,
    CellRole,
    Columns,
    CutLine,
    NewPage,
    Paragraph,
    Picture,
    Row,
    RowRole,
    Run,
    Text,
    Together,
    WritingLines,
)
from foldmath.pages.pdf.clusters import clusters_of
from foldmath.pages.pdf.flowables import CutAcross, Painted, PictureFlowable, RuledLines, Running
from foldmath.pages.pdf.inline import BLANK, Setting, setting
from foldmath.pages.pdf.rows import CellsInRow, Column, InColumns, Repeated
from foldmath.pages.pdf.styles import StyleSheet, TextStyle
from foldmath.pages.tags import kinds
from foldmath.pages.tags.kinds import Tag
from foldmath.words.saying import say

ASKED_ABOVE = "asked-above"
"""The style of blocks together that ask about what stands right above them."""


class PageStart(Painted):
    """Asks for a new page; a soft one stays on a page that has little on it yet."""

    def __init__(self, *, soft: bool) -> None:
        super().__init__()
        self.soft = soft

    def paint(self, canvas: Any, x: float, y: float) -> None:
        """Leave no ink."""


class Compositor:
    """Turns blocks into flowables, with answers hidden or shown.

    Args:
        pictures: gives the recording of a picture by its name.
        sheet: the styles of the page.
        language: in which pictures and boxes are read aloud.
        answers: whether answers show; either way every box keeps its size.
    """

    def __init__(
        self, pictures: Callable[[str], Recording], sheet: StyleSheet, language: str, *, answers: bool
    ) -> None:
        self.pictures = pictures
        self.sheet = sheet
        self.language = language
        self.answers = answers
        self.settings: dict[int, Setting] = {}
        self.known: dict[tuple[Block, ...], Painted] = {}
        self.heads: dict[int, tuple[tuple[Row, ...], tuple[Repeated, ...]]] = {}

    def flowables(self, blocks: tuple[Block, ...]) -> list[Painted]:
        """Turn a document's blocks into flowables; a heading is joined to the block that follows it.

        Blocks that come again, as they do in a class set, give the very same flowable again.
        """
        return [self._known(joined) for joined in self._joined(blocks)]

    def _known(self, joined: tuple[Block, ...]) -> Painted:
        known = self.known.get(joined)
        if known is None:
            known = self.known[joined] = self._whole(joined)
        return known

    def anew(self, blocks: tuple[Block, ...]) -> list[Painted]:
        """Turn blocks into flowables of their own: none comes again, or another has less width."""
        return [self._whole(joined) for joined in self._joined(blocks)]

    def _joined(self, blocks: tuple[Block, ...]) -> list[tuple[Block, ...]]:
        """Put headings together with the block that follows them; at the end they stay alone."""
        result: list[tuple[Block, ...]] = []
        held: list[Block] = []
        for block in blocks:
            held.append(block)
            if not (isinstance(block, Paragraph) and self.sheet.text[block.style].holds_next):
                result.append(tuple(held))
                held = []
        return result + [(block,) for block in held]

    def _whole(self, joined: tuple[Block, ...]) -> Painted:
        flowables = [self.flowable(block) for block in joined]
        return flowables[0] if len(joined) == 1 else Column(flowables, self._after_mm(joined[-1]))

    def flowable(self, block: Block) -> Painted:
        """Turn one block into a flowable."""
        return self._function_for(type(block))(self, block)

    @singledispatchmethod
    def _of_its_kind(self, block: Block) -> Painted:
        raise TypeError(f"not a block: {block!r}")

    @_of_its_kind.register
    def _(self, block: Paragraph) -> Painted:
        tag = kinds.heading(block.level) if block.level else _cell_tag(block.role, 1) or kinds.PARAGRAPH
        return self._running(block.runs, self.sheet.text[block.style], tag)

    @_of_its_kind.register
    def _(self, block: Picture) -> Painted:
        recording = self.pictures(block.answer_name if self.answers else block.name)
        centred = block.style in self.sheet.centred_pictures
        words = block.words or say(recording.words, self.language)
        return PictureFlowable(recording, words, centred=centred)

    @_of_its_kind.register
    def _(self, block: WritingLines) -> Painted:
        answer = self._running(_bold(block.answer), self.sheet.text["written"])
        blank = say(BLANK, self.language)
        return RuledLines(block.lines, self.sheet.line_pitch_mm, answer, shown=self.answers, blank=blank)

    @_of_its_kind.register
    def _(self, block: Row) -> Painted:
        style = self.sheet.rows[block.style]
        if style.stacked:
            cells: list[Painted] = [Column([self._column(cell)], style.before_mm) for cell in block.cells]
            return Column(cells, style.after_mm)
        return self._row(block)

    @_of_its_kind.register
    def _(self, block: Together) -> Painted:
        column = Column(self.anew(block.blocks), self.sheet.together_after_mm, _cell_tag(block.role, 1))
        column.asks_above = block.style == ASKED_ABOVE
        return column

    @_of_its_kind.register
    def _(self, block: Columns) -> Painted:
        return InColumns([self._known(joined) for joined in self._joined(block.blocks)], self.sheet.columns)

    @_of_its_kind.register
    def _(self, block: CutLine) -> Painted:  # noqa: ARG002  as all blocks are set
        return CutAcross()

    @_of_its_kind.register
    def _(self, block: NewPage) -> Painted:
        return PageStart(soft=block.soft)

    # Asked for once: to find the function for a block takes less time than to ask for what finds it.
    _function_for = staticmethod(_of_its_kind.dispatcher.dispatch)

    def _row(self, row: Row) -> CellsInRow:
        """Set a row whose cells stand side by side."""
        cells = [(self.sheet.cells[cell.style], self._column(cell)) for cell in row.cells]
        return CellsInRow(cells, self.sheet.rows[row.style], self._repeated(row.heads), ROW_TAGS[row.role])

    def _repeated(self, heads: tuple[Row, ...]) -> tuple[Repeated, ...]:
        """Set the head of a table once for all of its rows, which have the very same."""
        if id(heads) not in self.heads:
            # It is kept with its rows, so that nothing else may get its identity.
            self.heads[id(heads)] = heads, tuple(Repeated(self._row(head)) for head in heads)
        return self.heads[id(heads)][1]

    def _column(self, cell: Cell) -> Column:
        return Column(self.anew(cell.blocks), tag=_cell_tag(cell.role, cell.columns))

    def _after_mm(self, block: Block) -> float:
        if isinstance(block, Paragraph):
            return self.sheet.text[block.style].after_mm
        if isinstance(block, Row):
            return self.sheet.rows[block.style].after_mm
        return 0.0

    def _running(self, runs: tuple[Run, ...], style: TextStyle, tag: Tag = kinds.PARAGRAPH) -> Running:
        known = self.settings.get(id(style))
        if known is None:
            known = self.settings[id(style)] = setting(style, self.sheet, self.language, answers=self.answers)
        return Running(clusters_of(runs, known), style, tag)


ROW_TAGS: dict[RowRole, tuple[Tag, ...]] = {
    RowRole.LAYOUT: (),
    RowRole.FIRST_OF_TABLE: (kinds.TABLE_BEGUN, kinds.TABLE_ROW),
    RowRole.OF_TABLE: (kinds.TABLE, kinds.TABLE_ROW),
    RowRole.OF_LIST: (kinds.LIST, kinds.LIST_ITEM),
}
"""The elements that hold a row, from the outermost."""


def _cell_tag(role: CellRole, columns: int) -> Tag | None:
    """Give the element that a cell is."""
    match role:
        case CellRole.NONE:
            return None
        case CellRole.CELL:
            return kinds.cell(columns)
        case CellRole.COLUMN_HEADER:
            return kinds.header_cell("Column", columns)
        case CellRole.ROW_HEADER:
            return kinds.header_cell("Row", columns)
        case CellRole.LABEL:
            return kinds.LABEL
        case CellRole.BODY:
            return kinds.LIST_BODY
    assert_never(role)


def _bold(runs: tuple[Run, ...]) -> tuple[Run, ...]:
    return tuple(Text(run.text, bold=True) if isinstance(run, Text) else run for run in runs)
