"""Fractions that are written into a picture: two boxes and a bar, or a box over a number that is given."""

from foldmath.drawing.scenes import Figure, Mark, Meaning, Spot, Stroke

BOX_WIDTH_MM, BOX_HEIGHT_MM = 9.0, 8.0
"""Boxes hold two figures of a child's hand."""

GAP_MM, OVERHANG_MM = 1.0, 0.6
FIGURE_MM = 6.4
"""The em of 18 points: nothing in large print is smaller."""

GIVEN_HEIGHT_MM = 5.0
HEIGHT_MM = 2 * (BOX_HEIGHT_MM + GAP_MM)
HEIGHT_OVER_GIVEN_MM = BOX_HEIGHT_MM + 2 * GAP_MM + GIVEN_HEIGHT_MM


def empty_fraction(bar: Spot) -> list[Mark]:
    """Draw a box above and a box below a bar whose middle stands at a spot."""
    return [_bar(bar), _box(_above(bar)), _box(_below(bar))]


def written_fraction(bar: Spot, above: str, below: str) -> list[Mark]:
    """Draw the same with its numbers written in."""
    return [*empty_fraction(bar), _figure(_above(bar), above), _figure(_below(bar), below)]


def empty_over(bar: Spot, below: str) -> list[Mark]:
    """Draw a box above a bar, and a number below that is given."""
    given = Spot(bar.x, bar.y - GAP_MM - GIVEN_HEIGHT_MM / 2)
    return [_bar(bar), _box(_above(bar)), _figure(given, below)]


def written_over(bar: Spot, above: str, below: str) -> list[Mark]:
    """Draw the same with the number above written in."""
    return [*empty_over(bar, below), _figure(_above(bar), above)]


def _above(bar: Spot) -> Spot:
    return Spot(bar.x, bar.y + GAP_MM + BOX_HEIGHT_MM / 2)


def _below(bar: Spot) -> Spot:
    return Spot(bar.x, bar.y - GAP_MM - BOX_HEIGHT_MM / 2)


def _bar(middle: Spot) -> Stroke:
    half = BOX_WIDTH_MM / 2 + OVERHANG_MM
    return Stroke((Spot(middle.x - half, middle.y), Spot(middle.x + half, middle.y)), Meaning.OUTLINE)


def _box(middle: Spot) -> Stroke:
    left, right = middle.x - BOX_WIDTH_MM / 2, middle.x + BOX_WIDTH_MM / 2
    low, high = middle.y - BOX_HEIGHT_MM / 2, middle.y + BOX_HEIGHT_MM / 2
    corners = (Spot(left, low), Spot(right, low), Spot(right, high), Spot(left, high))
    return Stroke(corners, Meaning.GRID, closed=True)


def _figure(middle: Spot, digits: str) -> Figure:
    return Figure(middle, digits, "", FIGURE_MM)
