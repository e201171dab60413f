"""Flowables: lines of words and fractions, pictures, lines to write on and to cut along."""

from abc import ABC, abstractmethod
from collections.abc import Iterable
from itertools import pairwise
from typing import Any, NamedTuple

from foldmath.drawing.look import PENS
from foldmath.drawing.rendering.recording import Recording
from foldmath.drawing.scenes import Meaning
from foldmath.pages.pdf import fonts, styles
from foldmath.pages.pdf.clusters import Cluster
from foldmath.pages.pdf.forms import place
from foldmath.pages.pdf.inline import Piece, Word, word
from foldmath.pages.pdf.pens import take_pen
from foldmath.pages.pdf.press import Imprint, PressCanvas
from foldmath.pages.pdf.styles import TextStyle, points
from foldmath.pages.pdf.writing import write
from foldmath.pages.tags import kinds
from foldmath.pages.tags.kinds import Tag
from foldmath.pages.tags.marking import Place


class Painted(ABC):
    """A flowable that is painted at a place, so that one inside another needs no coordinates of its own.

    It is asked as Platypus asks its flowables, whose own class would take a tenth of a lesson's imports.
    """

    width = height = 0.0
    common = False
    """Whether other pages have it too, most of them at the same place."""

    heads: "tuple[Painted, ...]" = ()
    """What stands again above it where it begins a page."""

    asks_above = False
    """Whether it asks about what stands right above it, and takes that along where it begins a page."""

    wrapped_for = printed_for = -1.0
    """The width that ``high`` asked for last, and the one that its imprint was made for."""

    def high(self, width: float, room: float) -> float:
        """Give how high it is in a width, in points; a class's pages ask again and again for the same."""
        if width != self.wrapped_for:
            self.wrap(width, room)
            self.wrapped_for = width
        return float(self.height)

    def imprint(self, canvas: PressCanvas) -> Imprint:
        """Give what it leaves on any page, as wide as ``high`` was asked for last."""
        if self.printed_for != self.wrapped_for:
            self._imprint = canvas.imprint(lambda: self.paint(canvas, 0.0, 0.0))
            self.printed_for = self.wrapped_for
        return self._imprint

    def getSpaceBefore(self) -> float:
        """Give the space above, in points: none, if nothing is said."""
        return 0.0

    def getSpaceAfter(self) -> float:
        """Give the space below, in points: none, if nothing is said."""
        return 0.0

    def wrap(self, aW: float, aH: float) -> tuple[float, float]:
        """Take a width, in points, and give the width and the height that are filled: none of it."""
        return self.width, self.height

    @abstractmethod
    def paint(self, canvas: Any, x: float, y: float) -> None:
        """Paint with the bottom left corner at (x, y), in points."""


class Line(NamedTuple):
    """A line of a paragraph: its clusters, how long they are, and what they need round the baseline."""

    clusters: list[Cluster]
    length: float
    ascent: float
    descent: float
    boxes: bool


class Running(Painted):
    """A paragraph of words, fractions and boxes; lines of words and small fractions are equally far apart."""

    def __init__(self, clusters: tuple[Cluster, ...], style: TextStyle, tag: Tag = kinds.PARAGRAPH) -> None:
        super().__init__()
        self.clusters = clusters
        self.style = style
        self.tag = tag
        self.space = word(" ", fonts.font_name(style.bold), style.size)
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
            longer = length + (self.space.width if line else 0.0) + cluster.width
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
        ascent, descent, boxes = self.style.size * fonts.ASCENT, self.style.size * fonts.DESCENT, False
        for cluster in clusters:
            ascent, descent = max(ascent, cluster.ascent), max(descent, cluster.descent)
            boxes |= cluster.holds_box
        return Line(clusters, length, ascent, descent, boxes)

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
        with canvas.tags.leaf(self.tag):
            canvas.again(self.clusters, self.width, lambda: self._draw_lines(canvas), x, y)

    def _draw_lines(self, canvas: Any) -> None:
        baseline = self.height - self.lines[0].ascent
        last: Line | None = None
        for line in self.lines:
            baseline -= self._pitch(last, line) if last else 0.0
            last = line
            start = (self.width - line.length) / 2 if self.style.centred else 0.0
            for piece in in_one_go(line.clusters, self.space, goes_on=line is not self.lines[-1]):
                piece.draw(canvas, start, baseline)
                start += piece.width


def in_one_go(line: list[Cluster], space: Word, *, goes_on: bool) -> list[Piece]:
    """Give the pieces of a line with its spaces, words of one font joined so that each run is drawn once.

    Spaces are letters of the words beside them wherever they can be, and are written in any case, as is one
    after a line that is not the last: so words stay apart when they are read aloud.
    """
    pieces: list[Piece] = []
    for number, cluster in enumerate(line):
        for order, piece in enumerate(cluster.pieces):
            spaced = number > 0 and not order
            last = pieces[-1] if pieces else None
            if (
                isinstance(piece, Word)
                and isinstance(last, Word)
                and (both := last.continued(piece, " " if spaced else ""))
            ):
                pieces[-1] = both
            elif not spaced:
                pieces.append(piece)
            elif isinstance(piece, Word) and (longer := piece.spaced(" ", "", space)):
                pieces.append(longer)
            else:
                pieces[-1:] = [*_with_space(pieces[-1], space), piece]
    return pieces[:-1] + _with_space(pieces[-1], space) if goes_on and pieces else pieces


def _with_space(piece: Piece, space: Word) -> list[Piece]:
    """Give a piece with a space after it."""
    longer = piece.spaced("", " ", space) if isinstance(piece, Word) else None
    return [longer] if longer else [piece, space]


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
        left = x + spare / 2 if self.centred else x
        bounds = Place(left, y, self.recording.width, self.recording.height)
        with canvas.tags.leaf(kinds.figure(self.words), bounds):
            place(canvas, self.recording, left, y)


class RuledLines(Painted):
    """Lines to write on, so far apart, with an answer written on them where answers show.

    They take the room that the answer needs, whether it shows or not, so that key and worksheet lie alike.
    ``blank`` is what they are called when they are read aloud.
    """

    def __init__(self, lines: int, pitch_mm: float, answer: Running, *, shown: bool, blank: str) -> None:
        super().__init__()
        self.shown = shown
        self.blank = blank
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
        rises = (y + line * self.pitch + points(1) for line in range(self.lines))
        rule_lines(canvas, x, self.width, rises, self.blank)


def rule_lines(canvas: Any, x: float, width: float, rises: Iterable[float], blank: str) -> None:
    """Rule lines to write on, each so high, in points; read aloud, they are one blank of that name."""
    with canvas.tags.leaf(kinds.paragraph_standing_for(blank)):
        canvas.setLineWidth(styles.RULE_PT)
        for rise in rises:
            canvas.line(x, rise, x + width, rise)


class CutAcross(Painted):
    """A dashed line from edge to edge, with scissors at its beginning."""

    def wrap(self, aW: float, aH: float) -> tuple[float, float]:
        """Take the whole width; what is cut needs no room of its own."""
        self.width, self.height = aW, points(styles.CUT_ROOM_MM)
        return aW, self.height

    def paint(self, canvas: Any, x: float, y: float) -> None:
        """Draw the scissors, and the line behind them."""
        with canvas.tags.artifact():
            self._draw(canvas, x, y)

    def _draw(self, canvas: Any, x: float, y: float) -> None:
        middle, size = y + self.height / 2, styles.SCISSORS_PT
        write(canvas, x, middle - size * styles.SCISSORS_MIDDLE, styles.SCISSORS, fonts.REGULAR, size)
        canvas.saveState()
        take_pen(canvas, PENS[Meaning.CUT_ACROSS])
        canvas.line(x + fonts.width_of(styles.SCISSORS, fonts.REGULAR, size), middle, x + self.width, middle)
        canvas.restoreState()
