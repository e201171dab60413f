"""What a pupil is told at once: a fold with its dot, done on the model, and opened where that is told."""

from enum import Enum

from foldmath.paper.moments.performing import perform
from foldmath.paper.state import FoldedState
from foldmath.paper.steps import Edge, FoldStep, Open, Step
from foldmath.plane.lines import Point
from foldmath.plane.numbers import Exact
from foldmath.values import frozen


class Doing(Enum):
    """What a pupil does; the templates put it into words."""

    HALVE = "an edge to the edge across"
    EDGE_TO_DOT = "an edge to the dot"
    EDGE_AGAIN = "the same edge to the same dot"
    CORNER_TO_CORNER = "a crease from corner to corner"
    CORNER_AND_DOT = "a crease through a corner and the dot"
    CORNER_TO_DOT = "a corner to the dot"
    CORNER_OVER = "the corner beyond the moved edge over it"
    EDGE_BESIDE = "an edge onto the edge beside it"
    REST_BEHIND = "the rest beyond the moved edge behind"
    GUESS = "a crease at a guess"


@frozen
class Dot:
    """A place that an instruction speaks of.

    Args:
        at: on the opened sheet, in its unit.
        fraction: how far along its side of the sheet it is, or is meant to be where it is only near.
    """

    at: Point
    fraction: Exact


@frozen(kw_only=True)
class Instruction:
    """One instruction, done.

    Args:
        doing: what is done.
        steps: the fold, then what opens it.
        before, after: the paper.
        edge: the edge that travels; None where none does.
        dot: the place that is folded to or through; None if there is none.
    """

    doing: Doing
    steps: tuple[Step, ...]
    before: FoldedState
    after: FoldedState
    edge: Edge | None = None
    dot: Dot | None = None

    @property
    def fold(self) -> Step:
        """The fold itself."""
        return self.steps[0]

    @property
    def opens(self) -> bool:
        """Whether the sheet is opened flat at its end."""
        return isinstance(self.steps[-1], Open)


def instructed(
    doing: Doing,
    before: FoldedState,
    fold: FoldStep,
    *,
    opens: bool = True,
    edge: Edge | None = None,
    dot: Dot | None = None,
) -> Instruction:
    """Do what an instruction says.

    Raises:
        StepRefused: the fold cannot be done on this paper.
    """
    after = perform(fold, before)
    if not opens:
        return Instruction(doing=doing, steps=(fold,), before=before, after=after, edge=edge, dot=dot)
    return Instruction(
        doing=doing, steps=(fold, Open()), before=before, after=perform(Open(), after), edge=edge, dot=dot
    )


def on_sheet(state: FoldedState, fractions: Point) -> Point:
    """Turn fractions of the sheet's width and height into a point of the opened sheet."""
    return Point(fractions.x * state.sheet.width, fractions.y * state.sheet.height)


def vertices(state: FoldedState) -> set[Point]:
    """Give every point of the opened sheet where a crease ends or creases cross."""
    return {end for crease in state.creases for end in (crease.start, crease.end)}
