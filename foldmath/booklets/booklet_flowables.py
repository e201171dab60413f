"""What stretches on a booklet page: lines and frames that take what is left, pictures of many sizes."""

# ruff: noqa: ARG002, N802, N803 (Platypus's own names)

from abc import abstractmethod
from collections.abc import Callable, Iterable, Mapping
from math import inf
from typing import Any

from foldmath.drawing.rendering.recording import Recording
from foldmath.pages.markup.blocks import Block, Paragraph, Picture, Row, WritingLines
from foldmath.pages.pdf.flowables import Painted, RuledLines, Running, rule_lines
from foldmath.pages.pdf.forms import place
from foldmath.pages.pdf.inline import BLANK, BoxPiece, StackPiece
from foldmath.pages.pdf.rows import CellsInRow, Column
from foldmath.pages.pdf.setting import Compositor
from foldmath.pages.pdf.styles import StyleSheet, points
from foldmath.pages.tags.kinds import figure, paragraph_standing_for
from foldmath.pages.tags.marking import Place
from foldmath.phrases import phrase
from foldmath.values import frozen
from foldmath.words.saying import say

FEWEST_LINES = 2
"""A page that lets pupils write as much as there is room for has room for this many lines."""

LEAST_FRAME_MM = 24.0
BETWEEN_MM = 2.0
FRAME_LINE_PT = 0.9
FRAME = "frame"
"""The class of pictures that pupils draw themselves."""

ANSWER = "answer"
"""The style of words that stand in the key alone."""

GROWING = "table-row"
"""The class of rows that may grow."""

ROW_GROWTH = 2.2
"""A row to write in is at most so many times as high as it need be."""

RULE_RISE_PT = 1.0
"""The lowest line stands this high over the foot of its lines."""

HAIR_PT = 0.01


@frozen
class Bounds:
    """How high a picture is at least and at most, in mm, as wide as its page."""

    least_mm: float
    most_mm: float


class Stretching(Painted):
    """A flowable that may be higher or lower.

    Args:
        least, most: its height in points.
        fills: whether it takes all the room that is left, after pictures have taken theirs.
        names: of the pictures that are as high as it is.
    """

    def __init__(self, least: float, most: float, *, fills: bool, names: tuple[str, ...] = ()) -> None:
        super().__init__()
        self.names = names
        self.least, self.most, self.fills = least, most, fills
        self.height = least

    def getSpaceBefore(self) -> float:
        """Give the space above, in points."""
        return points(BETWEEN_MM)

    def getSpaceAfter(self) -> float:
        """Give the space below, in points."""
        return points(BETWEEN_MM)

    def stretch(self, height: float) -> None:
        """Take a height, in points."""
        self.height = height

    def wrap(self, aW: float, aH: float) -> tuple[float, float]:
        """Take the whole width, and the height that was given."""
        self.width = aW
        return aW, self.height

    @abstractmethod
    def paint(self, canvas: Any, x: float, y: float) -> None:
        """Paint with the bottom left corner at (x, y), in points."""


class OpenLines(Stretching):
    """As many ruled lines as there is room for."""

    def __init__(self, pitch_mm: float, answer: Running, *, shown: bool, blank: str) -> None:
        self.pitch = points(pitch_mm)
        self.blank = blank
        self.answer, self.shown = answer, shown
        super().__init__(FEWEST_LINES * self.pitch, inf, fills=True)

    @property
    def lines(self) -> int:
        """How many lines its height has room for."""
        return int((self.height + HAIR_PT) // self.pitch)

    def wrap(self, aW: float, aH: float) -> tuple[float, float]:
        """Take the whole width, and at least the height that the answer needs."""
        self.least = max(self.least, self.answer.wrap(aW, aH)[1])
        self.height = max(self.height, self.least)
        return super().wrap(aW, aH)

    def paint(self, canvas: Any, x: float, y: float) -> None:
        """Rule the lines from the top, or write the answer there."""
        if self.shown:
            self.answer.paint(canvas, x, y + self.height - self.answer.height)
            return
        top = y + self.height + RULE_RISE_PT
        rises = (top - line * self.pitch for line in range(1, self.lines + 1))
        rule_lines(canvas, x, self.width, rises, self.blank)


class PlacedPicture(Stretching):
    """A picture in the middle of the page's width, and in which language it tells what it shows."""

    def __init__(
        self, picture: Callable[[], Recording], language: str, bounds: Bounds, names: tuple[str, ...]
    ) -> None:
        self.picture, self.language = picture, language
        super().__init__(points(bounds.least_mm), points(bounds.most_mm), fills=False, names=names)

    def paint(self, canvas: Any, x: float, y: float) -> None:
        """Place it in the middle."""
        picture = self.picture()
        left, bottom = x + (self.width - picture.width) / 2, y + (self.height - picture.height) / 2
        bounds = Place(left, bottom, picture.width, picture.height)
        with canvas.tags.leaf(figure(say(picture.words, self.language)), bounds):
            place(canvas, picture, left, bottom)


class TableRow(Stretching):
    """A row of a table to fill in, which may be higher than it need be."""

    def __init__(self, row: CellsInRow) -> None:
        self.row = row
        least = row.wrap(0.0, 0.0)[1]
        super().__init__(least, ROW_GROWTH * least, fills=False)

    def getSpaceBefore(self) -> float:
        """Keep rows together."""
        return 0.0

    def getSpaceAfter(self) -> float:
        """Keep rows together."""
        return 0.0

    def paint(self, canvas: Any, x: float, y: float) -> None:
        """Draw its cells."""
        self.row.height = self.height
        self.row.paint(canvas, x, y)


class DrawingFrame(Stretching):
    """A frame to draw in, and what it is called when it is read aloud."""

    def __init__(self, words: str) -> None:
        self.words = words
        super().__init__(points(LEAST_FRAME_MM), inf, fills=True)

    def paint(self, canvas: Any, x: float, y: float) -> None:
        """Draw the frame."""
        with canvas.tags.leaf(figure(self.words), Place(x, y, self.width, self.height)):
            canvas.setLineWidth(FRAME_LINE_PT)
            canvas.rect(x, y, self.width, self.height)


class UnderKey(Painted):
    """Words that stand in the key alone; pupils write where they would stand."""

    def __init__(self, words: Painted, blank: str) -> None:
        super().__init__()
        self.words, self.blank = words, blank

    def getSpaceBefore(self) -> float:
        """Give the space above, in points."""
        return float(self.words.getSpaceBefore())

    def getSpaceAfter(self) -> float:
        """Give the space below, in points."""
        return float(self.words.getSpaceAfter())

    def wrap(self, aW: float, aH: float) -> tuple[float, float]:
        """Take the room that the words need, so that key and booklet lie alike."""
        self.width, self.height = self.words.wrap(aW, aH)
        return self.width, self.height

    def paint(self, canvas: Any, x: float, y: float) -> None:
        """Leave no ink, but a place that is read aloud."""
        with canvas.tags.leaf(paragraph_standing_for(self.blank)):
            pass


class BookletCompositor(Compositor):
    """Turns the blocks of a booklet page into flowables, those that stretch among them.

    Args:
        pictures: gives the recording of a picture by its name; asked only when it is painted.
        sheet: the styles of the page.
        language: in which pictures and boxes are read aloud.
        bounds: of the height of every picture, by its name.
        answers: whether answers show.
    """

    def __init__(
        self,
        pictures: Callable[[str], Recording],
        sheet: StyleSheet,
        language: str,
        bounds: Mapping[str, Bounds],
        *,
        answers: bool,
    ) -> None:
        super().__init__(pictures, sheet, language, answers=answers)
        self.bounds = bounds

    def flowable(self, block: Block) -> Painted:
        """Turn one block into a flowable."""
        if isinstance(block, WritingLines):
            return self._lines(block)
        if isinstance(block, Picture):
            return self._picture(block)
        if isinstance(block, Row) and block.style == GROWING:
            return TableRow(self._row(block))
        words = super().flowable(block)
        if isinstance(block, Paragraph) and block.style == ANSWER and not self.answers:
            return UnderKey(words, say(BLANK, self.language))
        return words

    def _lines(self, block: WritingLines) -> Painted:
        answer = self._running(block.answer, self.sheet.text["written"])
        shown = self.answers and bool(block.answer)
        blank = say(BLANK, self.language)
        if not block.lines:
            return OpenLines(self.sheet.line_pitch_mm, answer, shown=shown, blank=blank)
        return RuledLines(block.lines, self.sheet.line_pitch_mm, answer, shown=shown, blank=blank)

    def _picture(self, block: Picture) -> Painted:
        if block.style != FRAME:
            name = block.answer_name if self.answers else block.name
            names = (block.name, block.answer_name)
            return PlacedPicture(lambda: self.pictures(name), self.language, self.bounds[block.name], names)
        return DrawingFrame(say(phrase("An empty frame to draw in."), self.language))


def begins_anew(before: Painted, flowable: Painted) -> bool:
    """Tell whether a block says something new after the one before it, so that more room stands between.

    Words belong to what follows them, and what has no space of its own above to what stands there.
    """
    words = isinstance(before, Running) and not any(
        isinstance(piece, BoxPiece | StackPiece) for cluster in before.clusters for piece in cluster.pieces
    )
    return not words and flowable.getSpaceBefore() > 0


def ruled_lines(flowables: Iterable[Painted]) -> int:
    """Count the ruled lines of flowables that have their heights."""
    return sum(flowable.lines for flowable in flowables if isinstance(flowable, OpenLines | RuledLines))


def picture_heights(flowables: Iterable[Painted]) -> tuple[tuple[str, float], ...]:
    """Give how high the pictures of flowables that have their heights may be, in points, by their names."""
    stretching = (flowable for flowable in flowables if isinstance(flowable, Stretching))
    return tuple((name, flowable.height) for flowable in stretching for name in flowable.names)


def too_wide(flowable: Painted, width: float) -> bool:
    """Tell whether a word, a fraction or a row is wider than a width in points; it must have been wrapped."""
    if isinstance(flowable, Running):
        return any(line.length > width + HAIR_PT for line in flowable.lines)
    if isinstance(flowable, RuledLines | OpenLines):
        return too_wide(flowable.answer, width)
    if isinstance(flowable, UnderKey):
        return too_wide(flowable.words, width)
    if isinstance(flowable, TableRow):
        return too_wide(flowable.row, width)
    if isinstance(flowable, Column):
        return any(too_wide(part, width) for part in flowable.flowables)
    if isinstance(flowable, CellsInRow):
        rooms = [points(style.width_mm) - 2 * points(style.padding_mm) for style, _ in flowable.cells]
        whole = sum(points(style.width_mm) for style, _ in flowable.cells)
        cells = zip(flowable.cells, rooms, strict=True)
        return whole > width + HAIR_PT or any(too_wide(column, room) for (_, column), room in cells)
    return False
