"""Rigid motions of the plane with rational coefficients: how a panel lies on the table."""

from typing import NamedTuple

from foldmath.plane.lines import Line, Point
from foldmath.plane.numbers import ONE, ZERO, Exact
from foldmath.values import made


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
        c, s, x, y, upright = self
        if not s:
            # As nearly all paper lies, its edges along the table's: half of the work.
            return Point(c * px + x, (c if upright else -c) * py + y)
        if upright:
            return Point(c * px - s * py + x, s * px + c * py + y)
        return Point(c * px + s * py + x, s * px - c * py + y)

    def carry_back(self, point: Point) -> Point:
        """Give the point that this motion carries onto ``point``; the transpose undoes the turning."""
        px, py = point.x - self.x, point.y - self.y
        if self.upright:
            return Point(self.c * px + self.s * py, self.c * py - self.s * px)
        return Point(self.c * px + self.s * py, self.s * px - self.c * py)

    def then(self, later: "Motion") -> "Motion":
        """Give the motion that does this one first and ``later`` second."""
        own_c, own_s, own_x, own_y, own_upright = self
        c, s, x, y, upright = later
        up = c if upright else -c
        if not s:
            # Most folds are level or upright: then one of the two coordinates stays as it was.
            if c == ONE and not x:
                return Motion(own_c, up * own_s, own_x, up * own_y + y, own_upright == upright)
            if up == ONE and not y:
                return Motion(c * own_c, own_s, c * own_x + x, own_y, own_upright == upright)
            return Motion(c * own_c, up * own_s, c * own_x + x, up * own_y + y, own_upright == upright)
        side = -s if upright else s
        return Motion(
            c * own_c + side * own_s,
            s * own_c + up * own_s,
            c * own_x + side * own_y + x,
            s * own_x + up * own_y + y,
            own_upright == upright,
        )


class Mirrored:
    """Motions that one reflection follows, as it follows those of all panels that a fold moves.

    In a grid of panels those of a column lie at one x, those of a row at one y: each number is worked out
    once, and kept by its identity. So a motion must be kept alive as long as this is.
    """

    def __init__(self, mirror: Motion) -> None:
        self.mirror = mirror
        self._upright = mirror.c != ONE
        self._turned: dict[int, Exact] = {}
        self._moved: dict[int, Exact] = {}

    def after(self, motion: Motion) -> Motion:
        """Give the motion that does a motion first and the reflection second."""
        if self.mirror.s:
            return motion.then(self.mirror)
        c, s, x, y, upright = motion
        # Where the mirror is level or upright, one coordinate stays. What is kept as 0 is worked out anew.
        if self._upright:
            c = c and (self._turned.get(id(c)) or self._turn(c))
            x = self._moved.get(id(x)) or self._move(x, self.mirror.x)
        else:
            s = s and (self._turned.get(id(s)) or self._turn(s))
            y = self._moved.get(id(y)) or self._move(y, self.mirror.y)
        return made(Motion, (c, s, x, y, not upright))

    def _turn(self, number: Exact) -> Exact:
        self._turned[id(number)] = turned = -number
        return turned

    def _move(self, number: Exact, to: Exact) -> Exact:
        self._moved[id(number)] = moved = to - number
        return moved


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
