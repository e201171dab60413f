"""Corners as SVG writes them: numbers in mm, lists of points, and paths in the fewest signs.

A sheet of 1,024 panels has 2,000 creases, so each command of a path is written in its shortest way. What
counts on from the corner before is a difference of corners as they are written: no error adds up.

Source:
    Scalable Vector Graphics 2 (W3C), 9.3: path data.
"""

from collections.abc import Iterable
from itertools import pairwise
from typing import NamedTuple

from foldmath.drawing.scenes import Spot, Stroke

DECIMALS = 3
"""A thousandth of a millimetre in a picture of 60 mm."""

UNITS = 10**DECIMALS


class _Corner(NamedTuple):
    """A corner as it is written, in units of the last decimal."""

    x: int
    y: int


def mm(number: float) -> str:
    """Write a number of mm, without zeros that say nothing."""
    said = f"{number:.{DECIMALS}f}".rstrip("0").rstrip(".")
    return "0" if said == "-0" else said


def points(spots: Iterable[Spot]) -> str:
    """Write spots as SVG's lists of points: ``0,0 30,0``."""
    return " ".join(f"{mm(x)},{mm(y)}" for x, y in spots)


def path(lines: Iterable[tuple[Spot, Spot]]) -> str:
    """Write straight lines as one path."""
    text, at = "", None
    for start, end in lines:
        first, last = _written(start), _written(end)
        text += _shortest("M", first, at) + _shortest("L", last, first)
        at = last
    return text


def loops(outlines: Iterable[Iterable[Spot]]) -> str:
    """Write closed outlines as one path; each closing goes back to where its outline began."""
    text, at = "", None
    for outline in outlines:
        corners = [_written(spot) for spot in outline]
        text += _shortest("M", corners[0], at)
        text += "".join(_shortest("L", to, corner) for corner, to in pairwise(corners)) + "Z"
        at = corners[0]
    return text


def stroke_path(stroke: Stroke) -> str:
    """Write a stroke: a line, a closed outline, or one curve through a control point."""
    first, *rest = (f"{mm(x)} {mm(y)}" for x, y in stroke.spots)
    return f"M{first}{'Q' if stroke.bends else 'L'}{' '.join(rest)}{'Z' if stroke.closed else ''}"


def _written(spot: Spot) -> _Corner:
    return _Corner(round(spot.x * UNITS), round(spot.y * UNITS))


def _shortest(command: str, to: _Corner, at: _Corner | None) -> str:
    """Give the command that goes to a corner: counted from the picture's own zero, or from where it is."""
    ways = [command + _pair(to.x, to.y)]
    if at:
        across, down = to.x - at.x, to.y - at.y
        ways.append(command.lower() + _pair(across, down))
        if command == "L" and not down:
            ways += [f"H{_short(to.x)}", f"h{_short(across)}"]
        elif command == "L" and not across:
            ways += [f"V{_short(to.y)}", f"v{_short(down)}"]
    return min(ways, key=len)


def _pair(x: int, y: int) -> str:
    """Write two numbers; a minus parts them as well as a space does."""
    return _short(x) + (" " if y >= 0 else "") + _short(y)


def _short(units: int) -> str:
    """Write a number without the zero before its point."""
    said = mm(units / UNITS)
    return said.replace("0.", ".", 1) if abs(units) < UNITS else said
