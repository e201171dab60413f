"""Inline pieces, measured: words, stacked fractions and boxes, each with its size round the baseline."""

from abc import ABC, abstractmethod
from functools import lru_cache
from typing import Any

from foldmath.pages.lettering.shaping import stands_as_it_is
from foldmath.pages.markup.blocks import Box, Run, Stack, Text
from foldmath.pages.pdf import fonts, styles
from foldmath.pages.pdf.styles import StyleSheet, TextStyle, points
from foldmath.pages.pdf.writing import write, write_middle
from foldmath.pages.tags import spoken
from foldmath.phrases import phrase
from foldmath.values import frozen
from foldmath.words.saying import say

NO_BREAK_SPACE = "\u00a0"

BLANK = phrase("blank")
"""What an empty box, or an empty line to write on, is called by who reads a page aloud."""

OVER = phrase("{above} over {below}", above="{above}", below="{below}")
"""A fraction that is to be written, as it is read aloud."""

RAISED_FIGURE = 1.2
"""Times its usual size is a small figure beside brackets of a fraction's height."""

CLUSTERS_KEPT = 4096
"""Most paragraphs of a class's worksheets are the same; a paragraph is about a kilobyte."""


@frozen(eq=False, kw_only=True)
class Setting:
    """What inline pieces are set in.

    Args:
        style: of their paragraph.
        bold: whether all of it is.
        answers: whether answers show.
        sheet: the style sheet.
        language: in which boxes are read aloud.
    """

    style: TextStyle
    bold: bool
    answers: bool
    sheet: StyleSheet
    language: str

    @property
    def size(self) -> float:
        """Of words, in points."""
        return self.style.size


@lru_cache(maxsize=CLUSTERS_KEPT)
def setting(style: TextStyle, sheet: StyleSheet, language: str, *, answers: bool) -> Setting:
    """Give what paragraphs of a style are set in; asked again, the very same, which is quickly compared."""
    return Setting(style=style, bold=style.bold, answers=answers, sheet=sheet, language=language)


class Piece(ABC):
    """Something on a line; widths and heights in points, heights from the baseline."""

    width: float
    ascent: float
    descent: float
    holds_box = False

    @abstractmethod
    def draw(self, canvas: Any, x: float, y: float) -> None:
        """Draw it with its left end on the baseline at (x, y)."""


class Word(Piece):
    """Letters without a space; in which language, where it is another than the page's."""

    def __init__(self, text: str, font: str, size: float, language: str = "") -> None:
        self.text = text.replace(NO_BREAK_SPACE, " ")
        self.language = language
        self.font, self.size = font, size
        self.width = fonts.width_of(self.text, font, size)
        self.ascent, self.descent = size * fonts.ASCENT, size * fonts.DESCENT

    def draw(self, canvas: Any, x: float, y: float) -> None:
        """Draw the letters."""
        if not self.language:
            write(canvas, x, y, self.text, self.font, self.size)
            return
        with spoken.in_language(canvas, self.language):
            write(canvas, x, y, self.text, self.font, self.size)

    def continued(self, other: "Word", between: str) -> "Word | None":
        """Give both words as one, if they are drawn and spoken alike."""
        if (self.font, self.language) != (other.font, other.language):
            return None
        return word(self.text + between + other.text, other.font, other.size, other.language)

    def spaced(self, before: str, after: str, space: "Word") -> "Word | None":
        """Give the word with a space on it, if that is set as a space of its line is, and keeps its side."""
        alike = (self.font, self.size) == (space.font, space.size) and stands_as_it_is(self.text, self.font)
        return word(before + self.text + after, self.font, self.size, self.language) if alike else None


@lru_cache(maxsize=CLUSTERS_KEPT)
def word(text: str, font: str, size: float, language: str = "") -> Word:
    """Give a word, measured; the very same for the same."""
    return Word(text, font, size, language)


class BoxPiece(Piece):
    """A box, or a line to write on, centred on the axis of the line."""

    holds_box = True

    def __init__(self, box: Box, setting: Setting) -> None:
        style = setting.sheet.boxes[box.style]
        self.style = style
        self.answer = box.answer if setting.answers or box.given else ""
        self.words = "" if self.answer else say(BLANK, setting.language)
        self.width, self.height = points(style.width_mm), points(style.height_mm)
        axis = setting.size * fonts.AXIS
        if style.rule_only:
            self.ascent, self.descent = self.height - points(2), points(2)
        else:
            self.ascent, self.descent = axis + self.height / 2, self.height / 2 - axis

    def draw(self, canvas: Any, x: float, y: float) -> None:
        """Draw the box, and the answer in its middle where answers show."""
        bottom = y - self.descent
        with spoken.standing_for(canvas, self.words):
            canvas.setLineWidth(styles.BOX_LINE_PT)
            if self.style.rule_only:
                canvas.line(x, bottom, x + self.width, bottom)
            else:
                canvas.rect(x, bottom, self.width, self.height)
        if self.answer:
            size = self.style.answer_size
            room = self.width - points(1)
            size = min(size, size * room / fonts.width_of(self.answer, fonts.BOLD, size))
            baseline = bottom + (self.height - size * fonts.FIGURE_HEIGHT) / 2
            write_middle(canvas, x + self.width / 2, baseline, self.answer, fonts.BOLD, size)


class StackPiece(Piece):
    """A stacked fraction; what it says is kept in the page as ``1/4``."""

    _ink: Any = None

    def __init__(self, stack: Stack, setting: Setting, *, mixed: bool = False) -> None:
        self.size = setting.size * setting.style.fraction
        self.axis = setting.size * fonts.AXIS
        self.above = _level(stack.above, self.size, setting)
        self.below = _level(stack.below, self.size, setting)
        self.holds_box = any(piece.holds_box for piece in (*self.above, *self.below))
        if self.holds_box:
            self.gap, self.thick = points(styles.STACK_GAP_MM), points(styles.STACK_BAR_MM)
            over = points(styles.STACK_OVERHANG_MM)
        else:
            self.gap, self.thick = self.size * styles.FRACTION_GAP, self.size * styles.BAR_WIDTH
            over = self.size * styles.BAR_OVERHANG
        self.bar = max(_width(self.above), _width(self.below)) + 2 * over
        self.width = self.bar + self.size * styles.BAR_OVERHANG
        self.ascent = self.axis + self.gap + self._height(self.above)
        self.descent = self.gap + self._height(self.below) - self.axis
        # Where a whole number stands before it, "4" and "1/6" are not to be read as "41/6".
        figures = f"{' ' if mixed else ''}{_text(self.above)}/{_text(self.below)}"
        self.words = "" if self.holds_box else figures
        self.bar_words = self._bar_spoken(setting.language) if self.holds_box else ""

    def _bar_spoken(self, language: str) -> str:
        """Say the bar between boxes, which speak for themselves: "over" while one is empty."""
        boxes = (piece for piece in (*self.above, *self.below) if isinstance(piece, BoxPiece))
        return "/" if all(box.answer for box in boxes) else say(OVER, language).format(above="", below="")

    def _height(self, level: list[Piece]) -> float:
        boxes = [piece.ascent + piece.descent for piece in level if isinstance(piece, BoxPiece)]
        return max(boxes, default=self.size * fonts.FIGURE_HEIGHT)

    def draw(self, canvas: Any, x: float, y: float) -> None:
        """Draw it; the same fraction comes again and again, and its ink is found once."""
        if self._ink is None:
            self._ink = canvas.imprint(lambda: self._draw(canvas, 0.0, 0.0))
        canvas.stamp(self._ink, x, y)

    def _draw(self, canvas: Any, x: float, y: float) -> None:
        """Draw the bar, and what stands above and below it, in the order in which it is read."""
        bar = y + self.axis
        left = x + self.size * styles.BAR_OVERHANG / 2
        middle = left + self.bar / 2
        above, below = bar + self.gap, bar - self.gap - self._height(self.below)
        with spoken.standing_for(canvas, self.words):
            self._draw_level(canvas, self.above, middle, above + _foot(self.above))
            with spoken.standing_for(canvas, self.bar_words):
                canvas.setLineWidth(self.thick)
                canvas.line(left, bar, left + self.bar, bar)
            self._draw_level(canvas, self.below, middle, below + _foot(self.below))

    def _draw_level(self, canvas: Any, level: list[Piece], middle: float, baseline: float) -> None:
        x = middle - _width(level) / 2
        for piece in level:
            piece.draw(canvas, x, baseline)
            x += piece.width


@lru_cache(maxsize=CLUSTERS_KEPT)
def stacked(stack: Stack, setting: Setting, *, mixed: bool) -> StackPiece:
    """Give a fraction, measured; the very same for the same."""
    return StackPiece(stack, setting, mixed=mixed)


def _level(runs: tuple[Run, ...], size: float, setting: Setting) -> list[Piece]:
    """Measure the part of a fraction above or below its bar."""
    font = fonts.font_name(setting.bold)
    return [
        word(run.text, font, size) if isinstance(run, Text) else BoxPiece(run, setting)
        for run in runs
        if isinstance(run, Text | Box)
    ]


def _foot(level: list[Piece]) -> float:
    """Give how far boxes reach below the baseline; figures alone stand on it."""
    return max((piece.descent for piece in level if isinstance(piece, BoxPiece)), default=0.0)


def _width(pieces: list[Piece]) -> float:
    return sum(piece.width for piece in pieces)


def _text(pieces: list[Piece]) -> str:
    return "".join(piece.text for piece in pieces if isinstance(piece, Word))


class Bracket(Piece):
    """A bracket as high as the fraction that it embraces, and the small figure that touches its top."""

    def __init__(self, bracket: str, figure: str, stack: StackPiece, word: Word) -> None:
        self.bracket, self.font, self.size = Word(bracket, word.font, word.size), word.font, word.size
        self.figure = Word(figure, word.font, word.size * RAISED_FIGURE)
        self.width = self.bracket.width + self.figure.width
        self.ascent, self.descent = stack.ascent, stack.descent
        self.stretch = (stack.ascent + stack.descent) / (self.size * (fonts.BRACKET_TOP + fonts.BRACKET_FOOT))

    def draw(self, canvas: Any, x: float, y: float) -> None:
        """Draw the bracket from foot to top of its fraction, and the figure as high up."""
        with spoken.standing_for(canvas, self.bracket.text + self.figure.text):
            canvas.saveState()
            canvas.translate(x, y - self.descent + self.size * fonts.BRACKET_FOOT * self.stretch)
            canvas.scale(1, self.stretch)
            self.bracket.draw(canvas, 0, 0)
            canvas.restoreState()
            if self.figure.text:
                raised = y + self.ascent - self.figure.size * fonts.FIGURE_HEIGHT
                self.figure.draw(canvas, x + self.bracket.width, raised)
