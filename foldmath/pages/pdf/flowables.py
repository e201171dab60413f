"""Platypus flowables for each block: lines of words and fractions, rows of cells, pictures, writing lines."""

from abc import ABC, abstractmethod
from itertools import pairwise
from typing import Any, NamedTuple

from reportlab.platypus.flowables import Flowable

from foldmath.drawing.rendering.recording import Recording
from foldmath.pages.pdf import fonts, spoken, styles
from foldmath.pages.pdf.forms import place
from foldmath.pages.pdf.inline import Cluster, in_one_go
from foldmath.pages.pdf.styles import CellStyle, RowStyle, TextStyle, points
from foldmath.pages.pdf.writing import write


class Painted(Flowable, ABC):
    """A flowable that is painted at a place, so that one inside another needs no coordinates of its own."""

    @abstractmethod
    def paint(self, canvas: Any, x: float, y: float) -> None:
        """Paint with the bottom left corner at (x, y), in points."""

    def draw(self) -> None:
        """Paint where Platypus has moved the origin to."""
        self.paint(self.canv, 0.0, 0.0)


class Line(NamedTuple):
    """A line of a paragraph: its clusters, how long they are, and what they need round the baseline."""

    clusters: list[Cluster]
    length: float
    ascent: float
    descent: float
    boxes: bool


class Running(Painted):
    """A paragraph of words, fractions and boxes; lines of words and small fractions are equally far apart."""

    def __init__(self, clusters: tuple[Cluster, ...], style: TextStyle) -> None:
        super().__init__()
        self.clusters = clusters
        self.style = style
        self.space = fonts.width_of(" ", fonts.font_name(style.bold), style.size)
        self.lines: list[Line] = []

    def getSpaceBefore(self) -> float:
        """Give the space above, in points."""
        return points(self.style.before_mm)

    def getSpaceAfter(self) -> float:
        """Give the space below, in points."""
        return points(self.style.after_mm)

    def wrap(self, aW: float, aH: float) -> tuple[float, float]:
        """Break the lines for a width, in points."""
        self.width = aW
        self.lines = []
        line: list[Cluster] = []
        length = 0.0
        for cluster in self.clusters:
            longer = length + (self.space if line else 0.0) + cluster.width
            if line and longer > aW:
                self.lines.append(self._line(line, length))
                line, longer = [], cluster.width
            line.append(cluster)
            length = longer
            if cluster.ends_line:
                self.lines.append(self._line(line, length))
                line, length = [], 0.0
        if line or not self.lines:
            self.lines.append(self._line(line, length))
        self.even = self._even_pitch()
        pitches = [self._pitch(one, other) for one, other in pairwise(self.lines)]
        self.height = self.lines[0].ascent + sum(pitches) + self.lines[-1].descent
        return aW, self.height

    def _line(self, clusters: list[Cluster], length: float) -> Line:
        """Measure a line, which is at least as high as words are; boxes that fill it share what is left."""
        filling = sum(cluster.fills for cluster in clusters)
        if filling:
            spare = (self.width - length) / filling
            clusters = [cluster.filled(spare) for cluster in clusters]
            length = self.width
        pieces = [piece for cluster in clusters for piece in cluster.pieces]
        ascent = max((piece.ascent for piece in pieces), default=0.0)
        descent = max((piece.descent for piece in pieces), default=0.0)
        size = self.style.size
        return Line(
            clusters,
            length,
            max(ascent, size * fonts.ASCENT),
            max(descent, size * fonts.DESCENT),
            any(piece.holds_box for piece in pieces),
        )

    def _pitch(self, above: Line, below: Line) -> float:
        """Give how far two baselines are apart: as all others without boxes are, and as far as boxes need."""
        gap = points(styles.BOX_GAP_MM) if above.boxes and below.boxes else styles.LINE_GAP_PT
        return max(self.even, above.descent + below.ascent + gap)

    def _even_pitch(self) -> float:
        """Give the pitch of all lines without boxes: the style's own, unless fractions need more."""
        plain = [line for line in self.lines if not line.boxes]
        high = max((line.ascent for line in plain), default=0.0)
        low = max((line.descent for line in plain), default=0.0)
        own, size = self.style.leading * self.style.size, self.style.size
        stacked = high > size * fonts.ASCENT or low > size * fonts.DESCENT
        gap = max(styles.LINE_GAP_PT, size * self.style.fraction * styles.LINE_GAP)
        return max(own, high + low + gap) if stacked else own

    def paint(self, canvas: Any, x: float, y: float) -> None:
        """Draw the lines."""
        baseline = y + self.height - self.lines[0].ascent
        last: Line | None = None
        for line in self.lines:
            baseline -= self._pitch(last, line) if last else 0.0
            last = line
            start = x + (self.width - line.length) / 2 if self.style.centred else x
            for piece in in_one_go(line.clusters, self.space):
                piece.draw(canvas, start, baseline)
                start += piece.width


class PictureFlowable(Painted):
    """A recorded picture, placed as a form in the middle of its width, or at the left, and what it shows."""

    def __init__(self, recording: Recording, words: str, *, centred: bool) -> None:
        super().__init__()
        self.recording = recording
        self.words = words
        self.centred = centred

    def wrap(self, aW: float, aH: float) -> tuple[float, float]:
        """Keep the picture's own size."""
        self.width, self.height = aW, self.recording.height
        return aW, self.height

    def paint(self, canvas: Any, x: float, y: float) -> None:
        """Place it."""
        spare = self.width - self.recording.width
        with spoken.described(canvas, self.words):
            place(canvas, self.recording, x + spare / 2 if self.centred else x, y)


class RuledLines(Painted):
    """Lines to write on, so far apart, with an answer written on them where answers show.

    They take the room that the answer needs, whether it shows or not, so that key and worksheet lie alike.
    """

    def __init__(self, lines: int, pitch_mm: float, answer: Running, *, shown: bool) -> None:
        super().__init__()
        self.shown = shown
        self.lines = lines
        self.pitch = points(pitch_mm)
        self.answer = answer

    def wrap(self, aW: float, aH: float) -> tuple[float, float]:
        """Take the whole width."""
        self.width = aW
        self.height = max(self.lines * self.pitch, self.answer.wrap(aW, aH)[1] + points(1))
        return aW, self.height

    def paint(self, canvas: Any, x: float, y: float) -> None:
        """Rule the lines, or write the answer."""
        if self.shown:
            self.answer.paint(canvas, x, y + self.height - self.answer.height)
            return
        canvas.setLineWidth(styles.RULE_PT)
        for line in range(self.lines):
            rule = y + line * self.pitch + points(1)
            canvas.line(x, rule, x + self.width, rule)


class Column(Painted):
    """Flowables one above the other, never parted."""

    def __init__(self, flowables: list[Painted], after_mm: float = 0.0) -> None:
        super().__init__()
        self.flowables = flowables
        self.after = points(after_mm)

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
        for flowable, top in zip(self.flowables, self.tops, strict=True):
            flowable.paint(canvas, x, y + self.height - top)


class CellsInRow(Painted):
    """Cells side by side, and the rows that head them on a new page."""

    def __init__(
        self, cells: list[tuple[CellStyle, Column]], style: RowStyle, heads: "tuple[CellsInRow, ...]" = ()
    ) -> None:
        super().__init__()
        self.heads = heads
        self.cells = cells
        self.style = style

    def getSpaceBefore(self) -> float:
        """Give the space above, in points."""
        return points(self.style.before_mm)

    def getSpaceAfter(self) -> float:
        """Give the space below, in points."""
        return points(self.style.after_mm)

    def wrap(self, aW: float, aH: float) -> tuple[float, float]:
        """Make the row as high as its highest cell."""
        self.height = points(self.style.height_mm)
        for style, column in self.cells:
            padding = points(style.padding_mm)
            height = column.wrap(points(style.width_mm) - 2 * padding, aH)[1]
            self.height = max(self.height, height + 2 * padding + points(style.top_mm))
        self.width = aW
        return aW, self.height

    def paint(self, canvas: Any, x: float, y: float) -> None:
        """Draw the cells, and the lines round or under them."""
        left = x
        for style, column in self.cells:
            width, padding = points(style.width_mm), points(style.padding_mm)
            spare = self.height - 2 * padding - points(style.top_mm) - column.height
            foot = y + padding + (spare / 2 if style.middle else spare)
            if self.style.ruled:
                canvas.setLineWidth(styles.RULE_PT)
                canvas.rect(x, y, width, self.height)
            column.paint(canvas, x + padding, foot)
            x += width
        if self.style.line_mm:
            canvas.setLineWidth(points(self.style.line_mm))
            canvas.line(left, y, x, y)


class InColumns(Painted):
    """Flowables for the columns of a page: whoever fills the page places each by itself."""

    def __init__(self, flowables: list[Painted], columns: int) -> None:
        super().__init__()
        self.flowables, self.columns = flowables, columns

    def paint(self, canvas: Any, x: float, y: float) -> None:
        """Leave no ink of its own."""


class CutAcross(Painted):
    """A dashed line from edge to edge, with scissors at its beginning."""

    def wrap(self, aW: float, aH: float) -> tuple[float, float]:
        """Take the whole width; what is cut needs no room of its own."""
        self.width, self.height = aW, points(styles.CUT_ROOM_MM)
        return aW, self.height

    def paint(self, canvas: Any, x: float, y: float) -> None:
        """Draw the scissors, and the line behind them."""
        middle, size = y + self.height / 2, styles.SCISSORS_PT
        write(canvas, x, middle - size * styles.SCISSORS_MIDDLE, styles.SCISSORS, fonts.REGULAR, size)
        canvas.saveState()
        canvas.setLineWidth(points(styles.CUT_LINE_MM))
        canvas.setDash([points(dash) for dash in styles.CUT_DASHES_MM])
        canvas.line(x + fonts.width_of(styles.SCISSORS, fonts.REGULAR, size), middle, x + self.width, middle)
        canvas.restoreState()
