"""Rigid motions of the plane with rational coefficients: how a panel lies on the table."""

from typing import NamedTuple

from foldmath.plane.lines import Line, Point
from foldmath.plane.numbers import ONE, ZERO, Exact


class Motion(NamedTuple):
    """A rotation (``upright``) or a reflection, then a shift.

    A point (px, py) goes to (c px - s py + x, s px + c py + y) if ``upright`` and to
    (c px + s py + x, s px - c py + y) if not; c² + s² = 1, both rational.
    """

    c: Exact
    s: Exact
    x: Exact
    y: Exact
    upright: bool

    def carry(self, point: Point) -> Point:
        """Carry a point."""
        px, py = point
        if self.upright:
            return Point(self.c * px - self.s * py + self.x, self.s * px + self.c * py + self.y)
        return Point(self.c * px + self.s * py + self.x, self.s * px - self.c * py + self.y)

    def carry_back(self, point: Point) -> Point:
        """Give the point that this motion carries onto ``point``; the transpose undoes the turning."""
        px, py = point.x - self.x, point.y - self.y
        if self.upright:
            return Point(self.c * px + self.s * py, self.c * py - self.s * px)
        return Point(self.c * px + self.s * py, self.s * px - self.c * py)

    def then(self, later: "Motion") -> "Motion":
        """Give the motion that does this one first and ``later`` second."""
        c, s, x, y, upright = later
        if upright:
            turned = (c * self.c - s * self.s, s * self.c + c * self.s)
            shift = (c * self.x - s * self.y + x, s * self.x + c * self.y + y)
        else:
            turned = (c * self.c + s * self.s, s * self.c - c * self.s)
            shift = (c * self.x + s * self.y + x, s * self.x - c * self.y + y)
        return Motion(*turned, *shift, self.upright == upright)


AT_REST = Motion(ONE, ZERO, ZERO, ZERO, True)


def shift(x: Exact, y: Exact) -> Motion:
    """Give the motion that only shifts."""
    return Motion(ONE, ZERO, x, y, True)


def reflection(line: Line) -> Motion:
    """Give the reflection in a line: p goes to p - 2 (n·p + c) / (n·n) n, n the line's normal (a, b)."""
    a, b, c = line
    scale = -2 / (a * a + b * b)
    return Motion(ONE + scale * a * a, scale * a * b, scale * c * a, scale * c * b, False)


def quarter_turn(centre: Point) -> Motion:
    """Give the counter-clockwise quarter turn about a point."""
    return Motion(ZERO, ONE, centre.x + centre.y, centre.y - centre.x, True)


def three_quarter_turn(centre: Point) -> Motion:
    """Give the clockwise quarter turn about a point."""
    return Motion(ZERO, -ONE, centre.x - centre.y, centre.x + centre.y, True)
