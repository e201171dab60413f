"""The ways to fold a sheet into equal parts without a ruler, each done on the model and proved there."""

from dataclasses import replace
from enum import Enum

from foldmath.errors import Unreadable
from foldmath.paper.moments.moment import crease_places
from foldmath.paper.state import FoldedState, Sheet, open_sheet
from foldmath.paper.steps import Axis
from foldmath.phrases import phrase
from foldmath.plane.lines import Point
from foldmath.plane.numbers import ONE, ZERO, Exact, exact
from foldmath.planning.parts.crossing_diagonals import crossing_diagonals
from foldmath.planning.parts.direction import Direction
from foldmath.planning.parts.finishing import Known, finished
from foldmath.planning.parts.haga import corner_to_edge, squared
from foldmath.planning.parts.halving_errors import (
    GUESS_OFF_PARTS,
    cycle,
    errors,
    factor,
    neared,
    rounds_needed,
    worst_guess,
)
from foldmath.planning.parts.halvings import odd_part
from foldmath.planning.parts.instructions import Dot, Instruction, on_sheet
from foldmath.values import frozen

FEWEST_PARTS, MOST_PARTS = 3, 12
"""Halves need no way of their own; past twelve, parts of a sheet are narrower than a finger."""


class Kind(Enum):
    """The ways."""

    HALVINGS = "halvings"
    CROSSING = "crossing diagonals"
    CORNER = "corner to edge"
    ERRORS = "halving errors"


class NotProved(ValueError):
    """A way whose creases are not where they should be: a slip in this program."""


@frozen(kw_only=True)
class Nearness:
    """How near a way comes that does not end.

    Args:
        folds: in one round.
        factor: by which a round divides the error.
        rounds: how many are needed.
        errors_mm: at the guess at most, and after each round.
        wanted_mm: what the last of them may be.
    """

    folds: int
    factor: int
    rounds: int
    errors_mm: tuple[Exact, ...]
    wanted_mm: Exact


@frozen(kw_only=True)
class Way:
    """One way to fold equal parts.

    Args:
        kind: which way.
        parts: how many.
        direction: along which side.
        sheet: that is parted.
        squaring: the instructions that make a square of the paper first; its last crease is cut.
        finding: the instructions that find the landmark, or guess it and do one round.
        landmark: the part that is found; None where halvings are enough.
        finishing: the instructions that crease every part from there.
        creases: where the model has the creases of the parts, as fractions of the side, in order.
        nearness: None for an exact way.
    """

    kind: Kind
    parts: int
    direction: Direction
    sheet: Sheet
    squaring: tuple[Instruction, ...]
    finding: tuple[Instruction, ...]
    landmark: Dot | None
    finishing: tuple[Instruction, ...]
    creases: tuple[Exact, ...]
    nearness: Nearness | None = None

    @property
    def parted(self) -> FoldedState:
        """The sheet in the end, open."""
        return self.finishing[-1].after


def ways(sheet: Sheet, parts: int, axis: Axis, wanted_mm: Exact) -> tuple[Way, ...]:
    """Give every way that works on a sheet, the easiest to rely on first.

    Args:
        sheet: the paper.
        parts: how many equal parts.
        axis: the side that is parted.
        wanted_mm: how far off a crease may be where a way is not exact.

    Raises:
        Unreadable: so many parts are not folded here.
    """
    if not FEWEST_PARTS <= parts <= MOST_PARTS:
        nearest = FEWEST_PARTS if parts < FEWEST_PARTS else MOST_PARTS
        raise Unreadable(
            phrase(
                "{parts} parts: a side is folded into {fewest} to {most} parts",
                parts=parts,
                fewest=FEWEST_PARTS,
                most=MOST_PARTS,
            ),
            f"foldmath parts {nearest}",
        )
    direction = Direction(axis)
    if odd_part(parts) == 1:
        return (_by_halvings(sheet, parts, direction),)
    crossing, nearing = _by_crossing(sheet, parts, direction), _by_errors(sheet, parts, direction, wanted_mm)
    corner = _by_corner(sheet, parts, direction)
    return (corner, crossing, nearing) if not corner.squaring else (crossing, nearing, corner)


def _by_halvings(sheet: Sheet, parts: int, direction: Direction) -> Way:
    done = finished(parts, (), direction, open_sheet(sheet))
    return _proved(
        Way(
            kind=Kind.HALVINGS,
            parts=parts,
            direction=direction,
            sheet=sheet,
            squaring=(),
            finding=(),
            landmark=None,
            finishing=done,
            creases=(),
        )
    )


def _by_crossing(sheet: Sheet, parts: int, direction: Direction) -> Way:
    found, landmark = crossing_diagonals(odd_part(parts), direction, open_sheet(sheet))
    return _from_landmark(Kind.CROSSING, parts, direction, (), found, landmark)


def _by_corner(sheet: Sheet, parts: int, direction: Direction) -> Way:
    squaring, square = squared(sheet)
    found, landmark = corner_to_edge(odd_part(parts), direction, open_sheet(square))
    return _from_landmark(Kind.CORNER, parts, direction, squaring, found, landmark)


def _from_landmark(
    kind: Kind,
    parts: int,
    direction: Direction,
    squaring: tuple[Instruction, ...],
    found: tuple[Instruction, ...],
    landmark: Point,
) -> Way:
    """Finish an exact way from the landmark that its folds have made."""
    state = found[-1].after
    along = direction.along(landmark) / _side(state.sheet, direction)
    known = Known(_part(along, parts), landmark, along)
    done = finished(parts, (known,), direction, state)
    way = Way(
        kind=kind,
        parts=parts,
        direction=direction,
        sheet=state.sheet,
        squaring=squaring,
        finding=found,
        landmark=Dot(landmark, along),
        finishing=done,
        creases=(),
    )
    return _proved(way)


def _by_errors(sheet: Sheet, parts: int, direction: Direction, wanted_mm: Exact) -> Way:
    odd = odd_part(parts)
    side_mm = _side(sheet, direction) * sheet.unit_mm
    first = side_mm * GUESS_OFF_PARTS / exact(odd)
    rounds = max(1, rounds_needed(first, wanted_mm, odd))
    nearness = Nearness(
        folds=len(cycle(odd)),
        factor=factor(odd),
        rounds=rounds,
        errors_mm=errors(first, odd, rounds),
        wanted_mm=wanted_mm,
    )
    near = neared(worst_guess(odd), odd, rounds, direction, sheet)
    dot = Dot(on_sheet(near.after, direction.point(near.last, ONE)), exact(1, odd))
    known = Known(parts // odd, dot.at, near.last)
    done = finished(parts, (known,), direction, near.after)
    found = (near.guess, *near.round)
    return _proved(
        Way(
            kind=Kind.ERRORS,
            parts=parts,
            direction=direction,
            sheet=sheet,
            squaring=(),
            finding=found,
            landmark=dot,
            finishing=done,
            creases=(),
            nearness=nearness,
        )
    )


def _side(sheet: Sheet, direction: Direction) -> Exact:
    return direction.along(Point(sheet.width, sheet.height))


def _part(along: Exact, parts: int) -> int:
    """Give which part a place is at.

    Raises:
        NotProved: it is at none.
    """
    for part in range(parts + 1):
        if along == exact(part, parts):
            return part
    raise NotProved(f"the landmark is at none of {parts} parts")


def _proved(way: Way) -> Way:
    """Read the creases of all parts off the model.

    Raises:
        NotProved: one is missing, or farther off than the way allows.
    """
    made = [
        place.at
        for place in crease_places(way.parted)
        if place.axis is way.direction.axis
        and place.at is not None
        and {way.direction.across.along(place.start), way.direction.across.along(place.end)} == {ZERO, ONE}
    ]
    allowed = ZERO
    if way.nearness:
        allowed = way.nearness.errors_mm[-1] / (_side(way.sheet, way.direction) * way.sheet.unit_mm)
    nearest = []
    for part in range(1, way.parts):
        true = exact(part, way.parts)
        crease = min(made, key=lambda place: abs(place - true))
        if abs(crease - true) > allowed:
            raise NotProved(f"no crease at {part}/{way.parts}")
        nearest.append(crease)
    return replace(way, creases=tuple(nearest))
