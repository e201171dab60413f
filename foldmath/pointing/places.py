"""Places on the paper as it lies that a hand finds: simple fractions of its sides, and lines that are seen.

All places are shares of the paper's box, from the left and from the bottom.
"""

from collections import defaultdict
from typing import TypeAlias

from foldmath.lesson.grammar.numerals import LARGEST_NUMBER
from foldmath.paper.steps import MOST_PLEATS, Axis
from foldmath.plane.lines import Line, Point, line_through
from foldmath.plane.numbers import ONE, ZERO, Exact, denominator, exact, numerator
from foldmath.plane.polygons import Box
from foldmath.pointing.foresight import Foresight

Slant: TypeAlias = tuple[Point, Point]
"""Two places of a slanted line."""

SIMPLE = tuple(
    sorted({exact(part, parts) for parts in range(1, MOST_PLEATS + 1) for part in range(parts + 1)})
)
"""Parts of a side, its ends among them, up to twelfths."""

BOX_CORNERS = tuple(Point(across, up) for across in (ZERO, ONE) for up in (ZERO, ONE))

DIAGONALS: tuple[Slant, Slant] = (
    (Point(ZERO, ZERO), Point(ONE, ONE)),
    (Point(ZERO, ONE), Point(ONE, ZERO)),
)
"""From corner to corner of the box."""

EDGE, MIDDLE = 1, 2
"""How plain the plainest places are: an edge or corner, then the middle. A larger number is less plain."""


def _crossings(parts: int) -> set[Point]:
    shares = [share for share in SIMPLE if denominator(share) in (1, 2, parts)]
    return {Point(across, up) for across in shares for up in shares}


COARSE = tuple(sorted(_crossings(3) | _crossings(4)))
"""Where lines at halves and thirds of the sides cross, or at halves and fourths: where a corner may go."""


def plainness(share: Exact) -> int:
    """Tell how plain a place of a side is: edges, the middle, then by its denominator."""
    return denominator(share)


def plainness_seen(share: Exact) -> int:
    """Tell how plain a place is where a line is seen: as plain as a fraction of half its denominator."""
    return EDGE if share in (ZERO, ONE) else max(MIDDLE, (denominator(share) + 1) // 2)


def share_of(point: Point, box: Box) -> Point:
    """Give a point of the table as shares of a box."""
    return Point((point.x - box.left) / box.width, (point.y - box.bottom) / box.height)


def is_sayable(*shares: Exact) -> bool:
    """Tell whether a step can name shares: their numbers are no larger than a sentence may have."""
    return all(max(abs(numerator(share)), denominator(share)) <= LARGEST_NUMBER for share in shares)


class Seen:
    """What is seen on the paper as it lies, as far as a step can name it.

    Args:
        lines: for WIDTH, where lines run from top to bottom; for HEIGHT, from side to side.
        crossings: the corners of panels.
        slants: the slanted creases and edges, each by its two plainest places.
    """

    def __init__(self, foresight: Foresight) -> None:
        lines: dict[Axis, set[Exact]] = {axis: set() for axis in Axis}
        slanted: dict[Line, set[Point]] = defaultdict(set)
        shares = {
            corner: share_of(corner, foresight.box) for lying in foresight.footprints for corner in lying
        }
        for lying in foresight.footprints:
            corners = [shares[corner] for corner in lying]
            for start, end in zip(corners, (*corners[1:], corners[0]), strict=True):
                if start.x == end.x:
                    lines[Axis.WIDTH].add(start.x)
                elif start.y == end.y:
                    lines[Axis.HEIGHT].add(start.y)
                else:
                    slanted[_scaled(line_through(start, end))] |= {start, end}
        self.lines = {axis: sorted(filter(is_sayable, found)) for axis, found in lines.items()}
        self.crossings = sorted({place for place in shares.values() if is_sayable(*place)})
        self.slants: list[Slant] = sorted(filter(None, map(_plainest_two, slanted.values())))


def _scaled(line: Line) -> Line:
    """Give a slanted line in the one form that all its multiples share."""
    return Line(ONE, line.b / line.a, line.c / line.a)


def _plainest_two(places: set[Point]) -> Slant | None:
    plain = sorted((place for place in places if is_sayable(*place)), key=_numbers)[:2]
    return (min(plain), max(plain)) if len(plain) > 1 else None


def _numbers(place: Point) -> tuple[int, Point]:
    return max(denominator(place.x), denominator(place.y)), place
