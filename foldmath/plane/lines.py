"""Points and lines with rational coordinates."""

from typing import NamedTuple

from foldmath.plane.numbers import HALF, Exact


class Point(NamedTuple):
    """A point of the plane.

    Points, lines and the other small values of the kernel are named tuples: they are made by the
    thousand, and a frozen dataclass costs three times as much to make.
    """

    x: Exact
    y: Exact


class Line(NamedTuple):
    """The line ``a x + b y + c = 0``; its positive hand is where the left side is positive."""

    a: Exact
    b: Exact
    c: Exact

    def side(self, point: Point) -> Exact:
        """Give a number whose sign tells the hand of the line that a point lies on; zero on the line."""
        return self.a * point.x + self.b * point.y + self.c

    def reversed(self) -> "Line":
        """Give the same line with its hands changed over."""
        return Line(-self.a, -self.b, -self.c)

    def with_positive(self, point: Point) -> "Line":
        """Give the same line, turned so that ``point`` is on its positive hand or on the line."""
        return self if self.side(point) >= 0 else self.reversed()


def line_through(start: Point, end: Point) -> Line:
    """Give the line through two different points."""
    a, b = start.y - end.y, end.x - start.x
    return Line(a, b, -(a * start.x + b * start.y))


def bisector(start: Point, end: Point) -> Line:
    """Give the line that reflects ``start`` onto ``end``, with ``start`` on its positive hand."""
    a, b = start.x - end.x, start.y - end.y
    middle = Point((start.x + end.x) * HALF, (start.y + end.y) * HALF)
    return Line(a, b, -(a * middle.x + b * middle.y))
