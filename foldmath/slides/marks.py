"""Marks as SVG writes them: numbers in mm, lists of points, and paths."""

from collections.abc import Iterable

from foldmath.drawing.look import CREASE_STOPS_SHORT_MM, INK, PENS, STAR_RADIUS_MM, Pen, on_screen
from foldmath.drawing.scenes import Meaning, Spot, Stroke
from foldmath.drawing.stars import star_outline
from foldmath.slides.flaps import MOST_EDGES_PEEPING, Flap

DECIMALS = 3
"""A thousandth of a millimetre in a picture of 60 mm."""

LINES = {
    "whole": PENS[Meaning.WHOLE],
    "edge": PENS[Meaning.SHEET_EDGE],
    "outline": PENS[Meaning.OUTLINE],
    "under": PENS[Meaning.CREASE],
    "old": PENS[Meaning.CREASE],
    "valley": PENS[Meaning.VALLEY],
    "mountain": PENS[Meaning.MOUNTAIN],
    "cut": PENS[Meaning.CUT],
    "grid": PENS[Meaning.GRID],
    "hatch": PENS[Meaning.HATCH],
    "arrow": PENS[Meaning.ARROW],
    "star.hollow": INK,
}
"""What each class of lines is drawn with; layers that peep out are as thin as old creases."""

PEEP_MM = 0.65
LONGEST_SHARE = 0.3
"""An old crease of which more than this would be left out at each end is not drawn."""


def line_styles() -> str:
    """Write how thick the lines of each class are, and how dashed, as CSS, in mm of their picture."""
    return "".join(f".{name} {{ {_style(on_screen(pen))} }}\n" for name, pen in LINES.items())


def _style(pen: Pen) -> str:
    style = f"stroke-width: {mm(pen.width_mm)}px;"
    if pen.dashes_mm:
        style += f" stroke-dasharray: {' '.join(f'{mm(dash)}px' for dash in pen.dashes_mm)};"
    return style


def mm(number: float) -> str:
    """Write a number of mm, without zeros that say nothing."""
    said = f"{number:.{DECIMALS}f}".rstrip("0").rstrip(".")
    return "0" if said == "-0" else said


def points(spots: Iterable[Spot]) -> str:
    """Write spots as SVG's lists of points: ``0,0 30,0``."""
    return " ".join(f"{mm(x)},{mm(y)}" for x, y in spots)


def path(lines: Iterable[tuple[Spot, Spot]]) -> str:
    """Write straight lines as one path."""
    return "".join(f"M{mm(start.x)} {mm(start.y)}L{mm(end.x)} {mm(end.y)}" for start, end in lines)


def stroke_path(stroke: Stroke) -> str:
    """Write a stroke: a line, a closed outline, or one curve through a control point."""
    first, *rest = (f"{mm(x)} {mm(y)}" for x, y in stroke.spots)
    return f"M{first}{'Q' if stroke.bends else 'L'}{' '.join(rest)}{'Z' if stroke.closed else ''}"


def edges(flap: Flap, firm: bool) -> list[tuple[Spot, Spot]]:
    """Give the edges of a flap, or its old creases, which stop short of its edges."""
    ends = zip(flap.start, (*flap.start[1:], flap.start[0]), flap.firm, strict=True)
    lines = [(start, end) for start, end, is_firm in ends if is_firm is firm]
    return lines if firm else [line for start, end in lines for line in _short(start, end)]


def _short(start: Spot, end: Spot) -> list[tuple[Spot, Spot]]:
    across, down = end.x - start.x, end.y - start.y
    share = CREASE_STOPS_SHORT_MM / (across * across + down * down) ** 0.5
    if share > LONGEST_SHARE:
        return []
    across, down = across * share, down * share
    return [(Spot(start.x + across, start.y + down), Spot(end.x - across, end.y - down))]


def peeping(flaps: Iterable[Flap]) -> list[tuple[Spot, ...]]:
    """Give where the layers under the topmost of each stack peep out, the lowest of all first."""
    return [
        tuple(Spot(x + below * PEEP_MM, y + below * PEEP_MM) for x, y in flap.start)
        for below in range(MOST_EDGES_PEEPING, 0, -1)
        for flap in flaps
        if flap.layers > below
    ]


def star_points(middle: Spot, radius: float = STAR_RADIUS_MM) -> tuple[Spot, ...]:
    """Give the corners of a star that points up, where heights count from the top."""
    return tuple(Spot(x, 2 * middle.y - y) for x, y in star_outline(middle, radius))


def star_at(x: float, y: float, radius: float = STAR_RADIUS_MM) -> tuple[Spot, ...]:
    """Give the corners of a star by its middle, counted from the top left."""
    return star_points(Spot(x, y), radius)
