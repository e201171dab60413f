"""From blocks to flowables: one small function for each kind of block."""

from collections.abc import Callable
from functools import singledispatchmethod

from foldmath.documents.blocks import (
    Block,
    Cell,
    NewPage,
    Paragraph,
    Picture,
    Row,
    Run,
    Text,
    Together,
    WritingLines,
)
from foldmath.documents.print import styles
from foldmath.documents.print.flowables import (
    CellsInRow,
    Column,
    Painted,
    PictureFlowable,
    RuledLines,
    Running,
)
from foldmath.documents.print.inline import Setting, clusters_of
from foldmath.documents.print.styles import TextStyle
from foldmath.drawing.recording import Recording

ANSWER_ON_LINES = TextStyle(12, after_mm=0)


class PageStart(Painted):
    """Asks for a new page; a soft one stays on a page that has little on it yet."""

    def __init__(self, *, soft: bool) -> None:
        super().__init__()
        self.soft = soft


class Compositor:
    """Turns blocks into flowables, with answers hidden or shown.

    Args:
        pictures: gives the recording of a picture by its name.
        answers: whether answers show; either way every box keeps its size.
    """

    def __init__(self, pictures: Callable[[str], Recording], *, answers: bool) -> None:
        self.pictures = pictures
        self.answers = answers

    def flowables(self, blocks: tuple[Block, ...]) -> list[Painted]:
        """Turn blocks into flowables, in order; a heading is joined to the block that follows it."""
        result: list[Painted] = []
        held: list[Painted] = []
        for block in blocks:
            held.append(self.flowable(block))
            if not (isinstance(block, Paragraph) and styles.TEXT[block.style].holds_next):
                result.append(held[0] if len(held) == 1 else Column(held, _after_mm(block)))
                held = []
        return result + held

    @singledispatchmethod
    def flowable(self, block: Block) -> Painted:
        """Turn one block into a flowable."""
        raise TypeError(f"not a block: {block!r}")

    @flowable.register
    def _(self, block: Paragraph) -> Painted:
        return self._running(block.runs, styles.TEXT[block.style])

    @flowable.register
    def _(self, block: Picture) -> Painted:
        recording = self.pictures(block.answer_name if self.answers else block.name)
        return PictureFlowable(recording, centred=block.style in styles.CENTRED_PICTURES)

    @flowable.register
    def _(self, block: WritingLines) -> Painted:
        answer = self._running(_bold(block.answer), ANSWER_ON_LINES) if self.answers else None
        return RuledLines(block.lines, answer)

    @flowable.register
    def _(self, block: Row) -> Painted:
        return self._row(block)

    @flowable.register
    def _(self, block: Together) -> Painted:
        return Column(self.flowables(block.blocks), styles.TOGETHER_AFTER_MM)

    @flowable.register
    def _(self, block: NewPage) -> Painted:
        return PageStart(soft=block.soft)

    def _row(self, row: Row) -> CellsInRow:
        cells = [(styles.CELLS[cell.style], self._column(cell)) for cell in row.cells]
        return CellsInRow(cells, styles.ROWS[row.style], tuple(self._row(head) for head in row.heads))

    def _column(self, cell: Cell) -> Column:
        return Column(self.flowables(cell.blocks))

    def _running(self, runs: tuple[Run, ...], style: TextStyle) -> Running:
        setting = Setting(style.size, style.bold, self.answers)
        return Running(clusters_of(runs, setting), style)


def _bold(runs: tuple[Run, ...]) -> tuple[Run, ...]:
    return tuple(Text(run.text, bold=True) if isinstance(run, Text) else run for run in runs)


def _after_mm(block: Block) -> float:
    if isinstance(block, Paragraph):
        return styles.TEXT[block.style].after_mm
    if isinstance(block, Row):
        return styles.ROWS[block.style].after_mm
    return 0.0
