"""The step that folds along a line, chosen as a teacher would say it."""

from foldmath.lesson.grammar.numerals import LARGEST_NUMBER
from foldmath.paper.folding.folding import Turn
from foldmath.paper.moments.performing import fold_lines
from foldmath.paper.refusals import StepRefused
from foldmath.paper.state import FoldedState
from foldmath.paper.steps import Axis, Edge, FoldAlong, FoldAt, FoldEdge, FoldPoint, FoldStep
from foldmath.plane.lines import Line, Point
from foldmath.plane.motions import reflection
from foldmath.plane.numbers import HALF, ONE, ZERO, Exact, denominator, exact, numerator
from foldmath.plane.polygons import Box

MARKS = tuple(sorted({exact(part, parts) for parts in range(1, 7) for part in range(parts + 1)}))
"""Places along a side that a class can find."""

EASY = 12
"""A crease through points with numbers up to this is told by them."""

CORNERS = (Point(ZERO, ZERO), Point(ONE, ZERO), Point(ZERO, ONE), Point(ONE, ONE))
GRID = tuple(Point(across, up) for across in MARKS for up in MARKS)
"""Corners and other places in the box, as fractions of it."""


def step_for(line: Line, turn: Turn, state: FoldedState) -> FoldStep | None:
    """Give the step that folds the paper on the positive hand of a line, which crosses the paper.

    Args:
        line: in table coordinates.
        turn: over or behind.
        state: the paper as it lies.

    Returns:
        The step, or None if it would take numbers larger than a step may have.
    """
    box, behind = state.table.box, turn is Turn.BEHIND
    if line.b == ZERO:
        place = (-line.c / line.a - box.left) / box.width
        return _level_or_upright(Axis.WIDTH, place, behind, forward=line.a > ZERO)
    if line.a == ZERO:
        place = (-line.c / line.b - box.bottom) / box.height
        return _level_or_upright(Axis.HEIGHT, place, behind, forward=line.b > ZERO)
    onto_corner = _point_onto_point(line, behind, state, CORNERS)
    if onto_corner is not None:
        return onto_corner
    along = _along(line, behind, box)
    if along is not None and _largest(along.start, along.end) <= EASY:
        return along
    return _point_onto_point(line, behind, state, GRID) or along


def _largest(*points: Point) -> int:
    """Give the largest number that is written in points."""
    return max(max(numerator(number), denominator(number)) for point in points for number in point)


def _level_or_upright(axis: Axis, at: Exact, behind: bool, *, forward: bool) -> FoldStep | None:
    if _largest(Point(at, at)) > LARGEST_NUMBER:
        return None
    edge = {
        (Axis.WIDTH, True): Edge.RIGHT,
        (Axis.WIDTH, False): Edge.LEFT,
        (Axis.HEIGHT, True): Edge.TOP,
        (Axis.HEIGHT, False): Edge.BOTTOM,
    }[axis, forward]
    lands = at + at - edge.position
    if lands in (edge.opposite.position, HALF):
        return FoldEdge(edge, lands, behind)
    return FoldAt(at, edge, behind)


def _point_onto_point(
    line: Line, behind: bool, state: FoldedState, places: tuple[Point, ...]
) -> FoldPoint | None:
    """Find the two plainest of some places, one of which the line carries onto the other, on the paper."""
    box, mirror = state.table.box, reflection(line)
    lying = {box.at(*place): place for place in places}
    steps = []
    for point, place in lying.items():
        landing = lying.get(mirror.carry(point)) if line.side(point) > ZERO else None
        if landing is not None:
            steps.append(FoldPoint(place, landing, behind))
    for step in sorted(steps, key=lambda step: _largest(step.point, step.to)):
        try:
            fold_lines(step, state)
        except StepRefused:
            continue
        return step
    return None


def _along(line: Line, behind: bool, box: Box) -> FoldAlong | None:
    """Name two points of a slanted line in the box, and the corner that is deepest in the moving paper."""
    corner = line.side(Point(box.left, box.bottom))
    across, up = line.a * box.width, line.b * box.height
    places = [Point(at, -(corner + at * across) / up) for at in MARKS]
    places += [Point(-(corner + at * up) / across, at) for at in MARKS]
    inside = {place for place in places if ZERO <= place.x <= ONE and ZERO <= place.y <= ONE}
    plain = sorted(inside, key=lambda place: (_largest(place), place))[:2]
    if len(plain) < 2 or _largest(*plain) > LARGEST_NUMBER:
        return None
    moving = max(CORNERS, key=lambda corner: line.side(box.at(*corner)))
    return FoldAlong(min(plain), max(plain), moving, behind)
