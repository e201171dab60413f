"""Motion arrows: how a fold line lies on the paper, and the arrow that says which way the paper travels.

Valley folds get an open V head, mountain folds a hollow half-head, pleats a zigzag shaft
(Yoshizawa-Randlett; the zigzag is from memory).
"""

from math import hypot, sqrt
from typing import assert_never

from foldmath.drawing.layout import View
from foldmath.drawing.look import ARROW_HEAD_MM
from foldmath.drawing.scenes import Mark, Meaning, Spot, Stroke
from foldmath.paper.folding.folding import Turn
from foldmath.paper.moments.performing import FoldLine, fold_lines
from foldmath.paper.state import CUT, FoldedState
from foldmath.paper.steps import (
    FoldAlong,
    FoldAt,
    FoldBothEdges,
    FoldEdge,
    FoldPoint,
    FoldStep,
    Pleat,
)
from foldmath.plane.lines import Line, Point
from foldmath.plane.motions import reflection
from foldmath.plane.numbers import HALF, ZERO, exact
from foldmath.plane.polygons import Polygon, between, cut

REACH = exact(41, 50)
"""How far out on the moving part an arrow starts, as a share of the way from the crease to its far edge."""

BESIDE_FLAP = exact(3, 4)
"""Where an arrow crosses its fold line if a flap ends at the middle, as a share of the line's run."""

BULGE = 0.3
"""How high an arrow's arc rises, as a share of its span."""

LINE_OVERHANG_MM = 1.2
"""How far a fold line to come goes past the paper."""

EDGE_MM = 0.5
"""How far an arc keeps from the edge of its picture."""

SAME_MM = 0.5
"""Closer than this, two distances count as one."""

ZIGZAG_MM = 1.6
ZIGZAG_SPOTS, ZIGZAG_SHARE = 5, exact(1, 5)
"""How many corners the zigzag has, and how much of the paper lies between two: ten parts are all crossed."""

ZIGZAG_AT = exact(3, 4)
"""Where across the pleats the zigzag runs, clear of the middle."""

HEAD_SPREAD = 0.5
"""Half the width of an arrow head, as a share of its length."""

SHAFTS = {Turn.OVER: Meaning.ARROW, Turn.BEHIND: Meaning.ARROW_BEHIND}
"""Paper that goes behind is not seen on its way: its arrow is broken, as a hidden edge is."""

STYLES = {Turn.OVER: Meaning.VALLEY, Turn.BEHIND: Meaning.MOUNTAIN}


def fold_to_come(step: FoldStep, state: FoldedState, view: View) -> list[Mark]:
    """Draw where a step will fold the paper as it lies, and how the paper will travel."""
    lines = fold_lines(step, state)
    marks: list[Mark] = [_fold_line(line, state, view) for line in lines]
    if isinstance(step, Pleat):
        return marks + _zigzag(lines, state, view)
    for line in lines:
        start = _start(step, line, state)
        marks += _arc(view.spot(start), view.spot(reflection(line.line).carry(start)), line.turn, view)
    return marks


def landing(step: FoldStep, state: FoldedState) -> Polygon:
    """Give corners of the paper that a step will move, where they will land."""
    return tuple(
        reflection(line).carry(corner)
        for line, _ in fold_lines(step, state)
        for cover in state.table.covers
        for corner in cut(cover.polygon, line)[0]
    )


def _chord(line: Line, state: FoldedState) -> tuple[Point, Point]:
    """Give the two ends of a line's run over the paper."""
    meetings: list[Point] = []
    for cover in state.table.covers:
        corners = cover.polygon
        for index, corner in enumerate(corners):
            before = corners[index - 1]
            side, side_before = line.side(corner), line.side(before)
            if side == ZERO:
                meetings.append(corner)
            elif side * side_before < ZERO:
                meetings.append(between(before, corner, side_before / (side_before - side)))
    return min(meetings), max(meetings)


def _fold_line(fold_line: FoldLine, state: FoldedState, view: View) -> Stroke:
    start, end = view.spots(_chord(fold_line.line, state))
    length = hypot(end.x - start.x, end.y - start.y)
    dx, dy = (end.x - start.x) / length * LINE_OVERHANG_MM, (end.y - start.y) / length * LINE_OVERHANG_MM
    spots = (Spot(start.x - dx, start.y - dy), Spot(end.x + dx, end.y + dy))
    return Stroke(spots, STYLES[fold_line.turn])


def _start(step: FoldStep, fold_line: FoldLine, state: FoldedState) -> Point:
    """Choose the place on the moving paper from which the arrow sets out."""
    match step:
        case FoldPoint(point):
            return state.table.box.at(*point)
        case FoldAlong():
            return _across_middle(fold_line.line, state)
        case FoldEdge() | FoldBothEdges() | FoldAt() | Pleat():
            return _beside_middle(fold_line.line, state)
        case _:
            assert_never(step)


def _farthest(line: Line, state: FoldedState) -> Point:
    """Give the corner of the moving paper that is farthest from the line."""
    return max((corner for cover in state.table.covers for corner in cover.polygon), key=line.side)


def _beside_middle(line: Line, state: FoldedState) -> Point:
    """Give a point of the moving paper beside the middle of the line's run, but not on the edge of a flap.

    There an arrow would not be seen apart from the edge.
    """
    start, end = _chord(line, state)
    middle = between(start, end, HALF)
    place = between(start, end, BESIDE_FLAP) if _along_edge(line, middle, state) else middle
    distance = line.side(_farthest(line, state)) / (line.a * line.a + line.b * line.b)
    return Point(place.x + line.a * distance * REACH, place.y + line.b * distance * REACH)


def _along_edge(line: Line, place: Point, state: FoldedState) -> bool:
    """Tell whether an edge of paper lies where an arrow would cross a line at a place."""
    across = Line(line.b, -line.a, line.a * place.y - line.b * place.x)
    return any(
        across.side(start) == across.side(end) == ZERO
        for panel in state.panels
        for start, end, crease in zip(
            panel.lying, panel.lying[1:] + panel.lying[:1], panel.edges, strict=True
        )
        if crease is None or crease == CUT or crease.fold
    )


def _across_middle(line: Line, state: FoldedState) -> Point:
    """Give a point of the moving paper beside the middle of a slanted line that lands on the paper again."""
    middle, box = between(*_chord(line, state), HALF), state.table.box
    across = min(middle.x - box.left, box.right - middle.x)
    up = min(middle.y - box.bottom, box.top - middle.y)
    distance = min(room / abs(part) for room, part in ((across, line.a), (up, line.b)) if part != ZERO)
    return Point(middle.x + line.a * distance * REACH, middle.y + line.b * distance * REACH)


def _arc(start: Spot, end: Spot, turn: Turn, view: View) -> list[Mark]:
    """Bend the arrow towards the middle of the picture; where both ways are alike, up, or right."""
    dx, dy = end.x - start.x, end.y - start.y
    chord = Spot((start.x + end.x) / 2, (start.y + end.y) / 2)
    up = (dx < 0) or (dx == 0 and dy > 0)
    rise = Spot(dy * 2 * BULGE, -dx * 2 * BULGE) if up else Spot(-dy * 2 * BULGE, dx * 2 * BULGE)
    first, second = (Spot(chord.x + sign * rise.x, chord.y + sign * rise.y) for sign in (1, -1))
    centre = Spot(view.width_mm / 2, view.height_mm / 2)
    nearer = (
        hypot(second.x - centre.x, second.y - centre.y)
        < hypot(first.x - centre.x, first.y - centre.y) - SAME_MM
    )
    control = _inside_picture(start, end, second if nearer else first, view)
    shaft = Stroke((start, control, end), SHAFTS[turn], bends=True)
    return [shaft, _head(control, end, turn)]


def _inside_picture(start: Spot, end: Spot, control: Spot, view: View) -> Spot:
    """Flatten an arc that would leave a narrow picture.

    Along one axis, with ends h before and behind their middle and the control r off it, an arc reaches
    r/2 + h²/2r off the middle; so r is at most R + √(R² - h²) where the edge is R off.
    """
    share = 1.0
    for one, other, bend, size in zip(start, end, control, (view.width_mm, view.height_mm), strict=True):
        chord, half = (one + other) / 2, (other - one) / 2
        room = (size - EDGE_MM - chord) if bend > chord else (chord - EDGE_MM)
        if room > abs(half) and bend != chord:
            share = min(share, (room + sqrt(room * room - half * half)) / abs(bend - chord))
    x, y = (start.x + end.x) / 2, (start.y + end.y) / 2
    return control if share == 1 else Spot(x + share * (control.x - x), y + share * (control.y - y))


def swept(spots: tuple[Spot, ...]) -> tuple[Mark, ...]:
    """Draw an arrow along spots, as paper sweeps round."""
    return Stroke(spots, Meaning.ARROW), _head(spots[-2], spots[-1], Turn.OVER)


def _head(towards: Spot, tip: Spot, turn: Turn) -> Stroke:
    dx, dy = tip.x - towards.x, tip.y - towards.y
    length = hypot(dx, dy)
    dx, dy = dx / length * ARROW_HEAD_MM, dy / length * ARROW_HEAD_MM
    back = Spot(tip.x - dx, tip.y - dy)
    left = Spot(back.x - dy * HEAD_SPREAD, back.y + dx * HEAD_SPREAD)
    right = Spot(back.x + dy * HEAD_SPREAD, back.y - dx * HEAD_SPREAD)
    if turn is Turn.BEHIND:
        return Stroke((tip, left, back), Meaning.ARROW, closed=True)
    return Stroke((left, tip, right), Meaning.ARROW)


def _zigzag(lines: tuple[FoldLine, ...], state: FoldedState, view: View) -> list[Mark]:
    """Draw the to and fro of a pleat across the paper, from the first part that moves."""
    box = state.table.box
    across = lines[0].line.a != ZERO
    spots = []
    for number in range(ZIGZAG_SPOTS):
        at = ZIGZAG_SHARE * (number + HALF)
        sway = ZIGZAG_MM if number % 2 else -ZIGZAG_MM
        on_paper = view.spot(box.at(at, ZIGZAG_AT) if across else box.at(ZIGZAG_AT, at))
        spots.append(Spot(on_paper.x, on_paper.y + sway) if across else Spot(on_paper.x + sway, on_paper.y))
    return [Stroke(tuple(spots), Meaning.ARROW), _head(spots[-2], spots[-1], Turn.OVER)]
