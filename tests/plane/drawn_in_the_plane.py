"""Points, lines, motions and convex polygons drawn at random."""

from hypothesis import assume
from hypothesis import strategies as st

from foldmath.plane.lines import Line, Point, line_through
from foldmath.plane.motions import Motion, quarter_turn, reflection
from foldmath.plane.numbers import ZERO, exact
from foldmath.plane.polygons import Polygon

numbers = st.builds(exact, st.integers(-40, 40), st.integers(1, 6))
points = st.builds(Point, numbers, numbers)


@st.composite
def lines(draw: st.DrawFn) -> Line:
    """Draw a line through two different points."""
    start, end = draw(points), draw(points)
    assume(start != end)
    return line_through(start, end)


reflections = lines().map(reflection)


@st.composite
def motions(draw: st.DrawFn) -> Motion:
    """Draw a few reflections and quarter turns, one after another."""
    motion, *later = draw(
        st.lists(st.one_of(reflections, st.builds(quarter_turn, points)), min_size=1, max_size=4)
    )
    for next_motion in later:
        motion = motion.then(next_motion)
    return motion


@st.composite
def polygons(draw: st.DrawFn) -> Polygon:
    """Draw the convex hull of a few points, counter-clockwise, with no corner on a straight edge."""
    scattered = sorted(set(draw(st.lists(points, min_size=3, max_size=9))))
    lower, upper = _chain(scattered), _chain(scattered[::-1])
    hull = (*lower[:-1], *upper[:-1])
    assume(len(hull) > 2)
    return hull


def _chain(scattered: list[Point]) -> list[Point]:
    """Give the lower hull of points in order from left to right."""
    chain: list[Point] = []
    for point in scattered:
        while len(chain) > 1 and _turning(chain[-2], chain[-1], point) <= ZERO:
            chain.pop()
        chain.append(point)
    return chain


def _turning(start: Point, end: Point, point: Point):
    return (end.x - start.x) * (point.y - start.y) - (end.y - start.y) * (point.x - start.x)
