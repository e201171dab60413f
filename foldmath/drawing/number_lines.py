"""An edge of the sheet as a number line from 0 to 1: every crease a mark, with a fraction to write at it."""

from collections.abc import Callable, Iterator, Sequence
from itertools import pairwise

from foldmath.drawing.fractions_to_write import (
    BOX_WIDTH_MM,
    FIGURE_MM,
    HEIGHT_MM,
    OVERHANG_MM,
    empty_fraction,
    written_fraction,
)
from foldmath.drawing.scenes import Figure, Mark, Meaning, Scene, Spot, Star, Stroke
from foldmath.drawing.stars import PICTURE_STAR_MM
from foldmath.measured import as_float
from foldmath.phrases import Phrase, counted, joined, phrase
from foldmath.plane.numbers import ONE, ZERO, Exact
from foldmath.statements.ratios import Ratio

END_MM = 6.5
"""At each end of the line, for 0 and 1."""

MARK_MM = 2.2
"""How far the mark of a crease reaches past the line, up and down."""

NEAR_MM = 3.0
"""From the line to the nearest fractions."""

BETWEEN_MM = 1.0
"""Between two fractions beside each other, and between two rows of them."""

STAR_BELOW_MM = 6.0

ROWS = (1, 2, 4)
"""Rows of fractions: above the line; above and below it; two above and two below.

With three, the line from a crease to its fraction would cross the fraction of another.
"""


def blank_line(creases: Sequence[Exact], width_mm: float) -> Scene:
    """Draw the line with an empty fraction at every crease, in the order of the creases."""
    return _scene(creases, width_mm, [empty_fraction] * len(creases), _words_of_blank(len(creases)))


def named_line(creases: Sequence[Exact], names: Sequence[Ratio], width_mm: float) -> Scene:
    """Draw the same with the names of the creases written in."""

    def written(name: Ratio) -> "_Fraction":
        return lambda bar: written_fraction(bar, str(name.above), str(name.denominator))

    words = phrase(
        "A number line from 0 to 1. Its creases are {names}.", names=joined(", ", list(map(str, names)))
    )
    return _scene(creases, width_mm, list(map(written, names)), words)


def line_height_mm(creases: Sequence[Exact], width_mm: float) -> float:
    """Tell how high the picture is that is so wide."""
    rows = _rows(creases, width_mm)
    above, below = -(-rows // 2), rows // 2
    return _reach(above) + max(_reach(below), STAR_BELOW_MM + PICTURE_STAR_MM)


_Fraction = Callable[[Spot], list[Mark]]


def _scene(creases: Sequence[Exact], width_mm: float, fractions: "list[_Fraction]", words: Phrase) -> Scene:
    rows = _rows(creases, width_mm)
    height = line_height_mm(creases, width_mm)
    level = height - _reach(-(-rows // 2))
    start, end = Spot(END_MM, level), Spot(width_mm - END_MM, level)
    marks: list[Mark] = [Stroke((start, end), Meaning.OUTLINE)]
    marks += [_mark(place, MARK_MM) for place in (start, end)]
    marks += [
        Figure(Spot(FIGURE_MM / 2, level), "0", "", FIGURE_MM),
        Figure(Spot(width_mm - FIGURE_MM / 2, level), "1", "", FIGURE_MM),
        Star(Spot(FIGURE_MM / 2, level - STAR_BELOW_MM), PICTURE_STAR_MM),
    ]
    for number, (crease, fraction) in enumerate(zip(creases, fractions, strict=True)):
        place = Spot(END_MM + as_float(crease) * (width_mm - 2 * END_MM), level)
        marks += _at(place, number % rows, fraction)
    return Scene(width_mm=width_mm, height_mm=height, marks=tuple(marks), words=words)


def _at(place: Spot, row: int, fraction: "_Fraction") -> Iterator[Mark]:
    """Draw the mark of a crease and its fraction: even rows stand above the line, the nearest first."""
    up, out = (1 if row % 2 == 0 else -1), row // 2
    yield _mark(place, MARK_MM)
    near = _reach(out) if out else NEAR_MM
    if out:
        yield Stroke((place, Spot(place.x, place.y + up * near)), Meaning.TICK)
    yield from fraction(Spot(place.x, place.y + up * (near + HEIGHT_MM / 2)))


def _mark(place: Spot, reach: float) -> Stroke:
    return Stroke((Spot(place.x, place.y - reach), Spot(place.x, place.y + reach)), Meaning.OUTLINE)


def _rows(creases: Sequence[Exact], width_mm: float) -> int:
    """Give how many rows let no two fractions of one row touch."""
    gaps = [as_float(other - one) for one, other in pairwise([ZERO, *creases, ONE])]
    apart = min(gaps) * (width_mm - 2 * END_MM)
    needed = BOX_WIDTH_MM + 2 * OVERHANG_MM + BETWEEN_MM
    return next((rows for rows in ROWS if rows * apart >= needed), ROWS[-1])


def _reach(rows: int) -> float:
    """Give how far so many rows of fractions reach from the line."""
    return NEAR_MM + rows * HEIGHT_MM + max(rows - 1, 0) * BETWEEN_MM if rows else MARK_MM


def _words_of_blank(creases: int) -> Phrase:
    return counted(
        "A number line from 0 to 1, with {count} crease and a box for its name.",
        "A number line from 0 to 1, with {count} creases and a box for the name of each.",
        creases,
    )
