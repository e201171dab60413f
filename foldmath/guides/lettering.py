"""Words and numbers as marks: lines of a text that fit a width, stacked fractions, numbers in circles."""

from collections.abc import Iterator
from dataclasses import dataclass

from foldmath.drawing.layout import POINT_MM
from foldmath.drawing.look import BAR_OVERHANG, DIGIT_HEIGHT, DIGIT_WIDTH, FIGURE_GAP
from foldmath.drawing.scenes import Meaning, Spot, Stroke
from foldmath.guides.marks import Place
from foldmath.pages.pdf import fonts
from foldmath.pages.pdf.exact import Anchor, Disc, ExactMark, Words

LEADING = 1.32
"""From one baseline to the next, of the em."""

FOLD_NUMBER_PT, FOLD_NUMBER_RADIUS_MM = 12.0, 3.6
SMALL_NUMBER_PT, SMALL_NUMBER_RADIUS_MM = 8.0, 2.4


@dataclass(frozen=True)
class Note:
    """A sentence or two to set in lines."""

    text: str
    size_pt: float = 9.0
    bold: bool = False


def width_mm(text: str, size_pt: float, bold: bool = False) -> float:
    """Give a text's width."""
    return fonts.width_of(text, fonts.font_name(bold), size_pt) * POINT_MM


def in_lines(note: Note, width: float) -> list[str]:
    """Part a text into lines no wider than ``width`` mm; a longer word has a line of its own."""
    lines = [""]
    for word in note.text.split():
        longer = f"{lines[-1]} {word}".strip()
        if lines[-1] and width_mm(longer, note.size_pt, note.bold) > width:
            lines.append(word)
        else:
            lines[-1] = longer
    return lines


@dataclass(frozen=True)
class Block:
    """Lines of words, one below the other.

    Args:
        lines: the words of each, with their size in points and whether they are bold.
        width_mm, height_mm: the room it takes.
    """

    lines: tuple[Note, ...]
    width_mm: float
    height_mm: float

    def marks(self, place: Place) -> Iterator[Words]:
        """Give the words in their place."""
        baseline = place.top
        for line in self.lines:
            baseline -= line.size_pt * LEADING * POINT_MM
            rise = (LEADING - fonts.ASCENT) / 2 * line.size_pt * POINT_MM
            yield Words(Spot(place.left, baseline + rise), line.text, line.size_pt, line.bold)


def block(notes: tuple[Note, ...], width: float) -> Block:
    """Set notes one below the other, no wider than ``width`` mm."""
    lines = tuple(
        Note(line, note.size_pt, note.bold) for note in notes for line in in_lines(note, width) if line
    )
    widest = max((width_mm(line.text, line.size_pt, line.bold) for line in lines), default=0.0)
    height = sum(line.size_pt * LEADING * POINT_MM for line in lines)
    return Block(lines, widest, height)


def number_in_circle(middle: Spot, number: int, size_pt: float, radius: float) -> Iterator[ExactMark]:
    """Give a number in a circle."""
    yield Disc(middle, radius)
    baseline = middle.y - DIGIT_HEIGHT * size_pt * POINT_MM / 2
    yield Words(Spot(middle.x, baseline), str(number), size_pt, bold=True, anchor=Anchor.MIDDLE)


def fraction_width_mm(numerator: int, denominator: int, size_pt: float) -> float:
    """Give the width of a stacked fraction, its bar included."""
    digits = max(len(str(numerator)), len(str(denominator)))
    return (digits * DIGIT_WIDTH + 2 * BAR_OVERHANG) * size_pt * POINT_MM


def stacked_fraction(middle: Spot, numerator: int, denominator: int, size_pt: float) -> Iterator[ExactMark]:
    """Give a stacked fraction, the middle of its bar at a spot."""
    em = size_pt * POINT_MM
    half = fraction_width_mm(numerator, denominator, size_pt) / 2
    yield Words(Spot(middle.x, middle.y + FIGURE_GAP * em), str(numerator), size_pt, anchor=Anchor.MIDDLE)
    yield Stroke((Spot(middle.x - half, middle.y), Spot(middle.x + half, middle.y)), Meaning.TICK)
    below = middle.y - (FIGURE_GAP + DIGIT_HEIGHT) * em
    yield Words(Spot(middle.x, below), str(denominator), size_pt, anchor=Anchor.MIDDLE)
