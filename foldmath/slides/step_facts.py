"""What a step does to the paper, as facts for templates to word: where it folds and cuts, what it gathers."""

from foldmath.paper.booklet.gathering import booklet
from foldmath.paper.folding.folding import Turn
from foldmath.paper.moments.moment import Moment
from foldmath.paper.moments.performing import fold_lines
from foldmath.paper.state import FoldedState
from foldmath.paper.steps import Axis, FoldStep, Gather, Slit
from foldmath.plane.lines import Line, Point, line_through
from foldmath.plane.numbers import ONE, ZERO, Exact, written
from foldmath.statements.ratios import Ratio, lowest_terms
from foldmath.values import frozen


@frozen
class FoldFacts:
    """A line to fold along.

    Args:
        upright: whether it runs from top to bottom; None for a slanted one.
        at: its place, as a fraction of the paper's width from the left or height from the bottom; or empty.
        over: whether the moving part comes over the top.
    """

    upright: bool | None
    at: str
    over: bool


@frozen(kw_only=True)
class CutFacts:
    """Where a cut begins and ends.

    Args:
        begins: ``fold`` at a folded edge, ``edge`` at another edge of the paper, ``inside`` in the middle.
        first_crease: whether it ends at the first crease that it meets.
        across: whether its places count from the left, or else from the bottom.
        start, end: its places, as fractions of the width or height; ``start`` is where the cutting begins.
    """

    begins: str
    first_crease: bool
    across: bool
    start: Ratio
    end: Ratio


def fold_facts(moment: Moment) -> tuple[FoldFacts, ...]:
    """Tell the lines of a step that folds; none for other steps."""
    if not isinstance(moment.step, FoldStep):
        return ()
    lines = fold_lines(moment.step, moment.before)
    return tuple(_facts_of(line, turn, moment.before) for line, turn in lines)


def _facts_of(line: Line, turn: Turn, state: FoldedState) -> FoldFacts:
    bounds, over = state.table.box, turn is Turn.OVER
    if line.b == ZERO:
        return FoldFacts(True, written((-line.c / line.a - bounds.left) / bounds.width), over)
    if line.a == ZERO:
        return FoldFacts(False, written((-line.c / line.b - bounds.bottom) / bounds.height), over)
    return FoldFacts(None, "", over)


def cut_facts(moment: Moment) -> CutFacts | None:
    """Tell where the cut of a step begins and ends; None for other steps."""
    step, state = moment.step, moment.before
    if not isinstance(step, Slit):
        return None
    start, end = (step.end, step.start) if step.end == ONE else (step.start, step.end)
    begins = "inside"
    if start in (ZERO, ONE):
        begins = "fold" if _on_fold(state, _place(step, start, state)) else "edge"
    ends = _place(step, end, state)
    between = [
        crossing for crossing in _crossings(step, state) if min(start, end) < crossing < max(start, end)
    ]
    at_crease = any(ends in panel.lying for panel in state.panels)
    return CutFacts(
        begins=begins,
        first_crease=at_crease and not between,
        across=step.axis is Axis.HEIGHT,
        start=lowest_terms(start),
        end=lowest_terms(end),
    )


def _place(step: Slit, share: Exact, state: FoldedState) -> Point:
    return state.table.box.at(*((step.at, share) if step.axis is Axis.WIDTH else (share, step.at)))


def _on_fold(state: FoldedState, point: Point) -> bool:
    """Tell whether a point lies on an edge along which the paper is folded now."""
    for panel in state.panels:
        ends = zip(panel.lying, (*panel.lying[1:], panel.lying[0]), panel.edges, strict=True)
        for start, end, crease in ends:
            if crease and crease.fold and line_through(start, end).side(point) == ZERO:
                return True
    return False


def _crossings(step: Slit, state: FoldedState) -> set[Exact]:
    """Give where creases meet the line of a cut, as fractions of the box's width or height."""
    bounds, found = state.table.box, set()
    level = _place(step, ZERO, state)
    for panel in state.panels:
        for x, y in panel.lying:
            if step.axis is Axis.WIDTH and x == level.x:
                found.add((y - bounds.bottom) / bounds.height)
            elif step.axis is Axis.HEIGHT and y == level.y:
                found.add((x - bounds.left) / bounds.width)
    return found


def pages_made(moment: Moment) -> int:
    """Count the pages of the booklet that a step gathers; 0 for other steps."""
    if not isinstance(moment.step, Gather):
        return 0
    return len(booklet(moment.before, moment.step.column).pages)
