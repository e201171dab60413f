"""Lengths and sheets as a person reads them: inches as mixed numbers, millimetres as decimals."""

from typing import assert_never

from foldmath.paper.lengths import MILLIMETRES, Length, nearest_sixteenth
from foldmath.paper.state import Sheet
from foldmath.paper.steps import Edge
from foldmath.phrases import Phrase, Said, joined, phrase
from foldmath.plane.lines import Point
from foldmath.plane.numbers import (
    ONE,
    Exact,
    denominator,
    exact,
    mixed,
    nearest_whole,
    numerator,
    whole_part,
    written,
)

RULER_PARTS = 8
"""Into so many parts a classroom ruler divides an inch at least (common practice, no source)."""

FINEST_PART = 64
"""Rulers in inches show sixty-fourths at the finest (common practice, no source)."""

MOST_PARTS_TOLD = 99
"""A share in more parts tells nobody how large it is; one part of many does: 1/128 is seven halvings."""

TENFOLD = 10


def length_said(length: Exact, unit: str) -> Phrase:
    """Say a length, such as ``8 1/2 in``."""
    number = _number(length, unit)
    match unit:
        case "in":
            return _inches(length, number)
        case "cm":
            return phrase("{number} cm", number=number)
        case "mm":
            return phrase("{number} mm", number=number)
    raise ValueError(f"not a unit: {unit!r}")


def _inches(length: Exact, number: str) -> Phrase:
    """Say inches: a part of one, one, and more are three phrases, since languages say them differently."""
    if 0 < length < ONE:
        return phrase("{part} in", part=number)
    return phrase("{one} in", one=number) if length == ONE else phrase("{number} in", number=number)


def ruler_length(millimetres: Exact, unit: str) -> Length:
    """Give a length as a ruler of a unit shows it, rounded down: in eighths of an inch, or whole mm."""
    part_mm, part, shown = _ruler_part(unit)
    return Length(whole_part(millimetres / part_mm) * part, shown)


def ruler_length_for(millimetres: Exact, unit: str) -> Length:
    """Give the same, rounded up: room for so much."""
    part_mm, part, shown = _ruler_part(unit)
    return Length(-whole_part(-millimetres / part_mm) * part, shown)


def _ruler_part(unit: str) -> tuple[Exact, Exact, str]:
    """Give the least part that a ruler of a unit shows, in mm and in the ruler's own unit, and that unit."""
    if unit != "in":
        return ONE, ONE, "mm"
    return MILLIMETRES["in"] / RULER_PARTS, exact(1, RULER_PARTS), "in"


def sides_said(width: Exact, height: Exact, unit: str) -> Phrase:
    """Say how wide and how high something is, such as ``11 by 8 1/2 in``."""
    return phrase("{width} by {length}", width=_number(width, unit), length=length_said(height, unit))


def sides_by_ruler(width: Exact, height: Exact, unit: str) -> Phrase:
    """Say how wide and how high paper lies; to the sixteenth of an inch where no ruler shows its parts."""
    if unit != "in" or max(denominator(width), denominator(height)) <= FINEST_PART:
        return sides_said(width, height, unit)
    across, up = (nearest_sixteenth(side * MILLIMETRES[unit]) for side in (width, height))
    return phrase("about {sides}", sides=sides_said(across, up, unit))


def is_plain(share: Exact) -> bool:
    """Tell whether a fraction says by itself how large it is: one part, or parts that are not too many."""
    return numerator(share) == 1 or denominator(share) <= MOST_PARTS_TOLD


def share_said(share: Exact) -> Said:
    """Say a share between 0 and 1: exact where that is plain, else ``about 0.28``."""
    return written(share) if is_plain(share) else phrase("about {share}", share=_two_digits(share))


def _two_digits(share: Exact) -> str:
    """Write a share as a decimal with two digits that count, or as many as keep it from 1."""
    below = TENFOLD**2
    while not TENFOLD <= nearest_whole(share * below) < below:
        below *= TENFOLD
    digits = str(nearest_whole(share * below)).zfill(len(str(below)) - 1)
    return f"0.{digits}".rstrip("0")


def measures_said(sheet: Sheet) -> Phrase:
    """Say how large a sheet is as it is printed: ``11 × 8 1/2 in``."""
    return phrase(
        "{width} × {length}",
        width=_number(sheet.width, sheet.unit),
        length=length_said(sheet.height, sheet.unit),
    )


def _number(length: Exact, unit: str) -> str:
    """Write a length as rulers have it: ``8 1/2`` in inches, ``74.25`` in millimetres, to a hundredth."""
    if unit == "in":
        return mixed(length)
    above, below = numerator(length), denominator(length)
    wholes, rest = divmod((200 * above + below) // (2 * below), 100)
    return f"{wholes}.{rest:02}".rstrip("0").rstrip(".")


CONSTRUCTION, CHART = phrase("construction paper"), phrase("chart paper")

NAMED = {
    "letter": phrase("letter"),
    "half-letter": phrase("half-letter"),
    "legal": phrase("legal"),
    "tabloid": phrase("tabloid"),
    "construction 6 x 9": joined(" ", (CONSTRUCTION, "6 × 9")),
    "construction 9 x 12": joined(" ", (CONSTRUCTION, "9 × 12")),
    "construction 12 x 18": joined(" ", (CONSTRUCTION, "12 × 18")),
    "construction 18 x 24": joined(" ", (CONSTRUCTION, "18 × 24")),
    "construction 24 x 36": joined(" ", (CONSTRUCTION, "24 × 36")),
    "flip pad": phrase("flip pad"),
    "chart 24 x 32": joined(" ", (CHART, "24 × 32")),
    "chart 16 x 24": joined(" ", (CHART, "16 × 24")),
    "easel pad": phrase("easel pad"),
    "poster board": phrase("poster board"),
    "half poster board": phrase("half poster board"),
    "origami 6 in": joined(" ", (phrase("origami paper"), phrase("{number} in", number="6"))),
    "origami 15 cm": joined(" ", (phrase("origami paper"), phrase("{number} cm", number="15"))),
}
"""Papers whose names are words; those of the standards are the same in every language."""


def paper_said(name: str) -> Said:
    """Say what a paper is called that a lesson file names."""
    return NAMED.get(name, name)


def edge_said(edge: Edge) -> Phrase:
    """Say which edge is meant, with its article."""
    match edge:
        case Edge.LEFT:
            return phrase("the left edge")
        case Edge.RIGHT:
            return phrase("the right edge")
        case Edge.TOP:
            return phrase("the top edge")
        case Edge.BOTTOM:
            return phrase("the bottom edge")
        case _:
            assert_never(edge)


def place_said(place: Point) -> str:
    """Write a place by its two numbers."""
    return f"({written(place.x)}, {written(place.y)})"


def orientation_said(orientation: str) -> Phrase:
    """Say how a sheet lies."""
    return phrase("landscape") if orientation == "landscape" else phrase("portrait")
