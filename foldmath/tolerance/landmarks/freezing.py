"""Freezing a lesson's folding: takes what each step did, gives the tape of its errors."""

from collections.abc import Collection, Iterable, Sequence
from copy import copy
from dataclasses import replace
from typing import NamedTuple, assert_never

from foldmath.paper.folding.folding import Turn, fold
from foldmath.paper.moments.moment import Moment
from foldmath.paper.moments.performing import FoldLine, fold_lines
from foldmath.paper.state import FoldedState, Sheet
from foldmath.paper.steps import (
    FEWEST_PLEATS,
    Axis,
    Edge,
    FoldAlong,
    FoldAt,
    FoldBothEdges,
    FoldEdge,
    FoldPoint,
    FoldStep,
    Gather,
    Open,
    OpenLast,
    Pleat,
    Shade,
    Slit,
    TurnOver,
    TurnQuarter,
)
from foldmath.plane.lines import Line
from foldmath.plane.numbers import HALF, ZERO, Exact
from foldmath.tolerance.assumed.spread import Placing
from foldmath.tolerance.landmarks import landmarks
from foldmath.tolerance.landmarks.frozen import Frozen, FrozenCrease, FrozenGap, Landmarks, Tape
from foldmath.tolerance.landmarks.landmarks import Guide, View
from foldmath.tolerance.landmarks.strips import Lie, Strip, strips


class Bend(NamedTuple):
    """One fold under way: where the line is on its strip's table axis, to which hand paper moves, by what."""

    place: Exact
    upward: bool
    guide: Guide
    layers: int


def freeze(moments: Sequence[Moment], ticks: Collection[int] = ()) -> Frozen:
    """Freeze a folding.

    Args:
        moments: what each step did, from the open sheet.
        ticks: the steps, counted from 0, whose creases are laid on printed ticks.
    """
    freezing = Freezing(moments[0].before.sheet, frozenset(ticks))
    for step, moment in enumerate(moments):
        freezing.take(step, moment)
    return freezing.done()


class Freezing:
    """The strips of a sheet, followed step by step.

    ``slanted`` is how many folds were folded when a slanted one came; until that is opened, nothing is
    followed.
    """

    def __init__(self, sheet: Sheet, ticks: frozenset[int] = frozenset()) -> None:
        self.sheet = sheet
        self.strips = strips(sheet.width, sheet.height)
        self.ticks = ticks
        self.tape = Tape()
        self.gaps: list[FrozenGap] = []
        self.landmarks: list[Landmarks] = []
        self.left_out: list[int] = []
        self.made_in: dict[tuple[Axis, Exact], int] = {}
        self.slanted: int | None = None

    def take(self, step: int, moment: Moment) -> None:
        """Take one step."""
        match moment.step:
            case Open() | OpenLast():
                self._open(moment.after.folds)
            case TurnOver():
                self._turn(moment, quarter=None)
            case TurnQuarter(left):
                self._turn(moment, quarter=left)
            case FoldEdge() | FoldBothEdges() | FoldAt() | FoldPoint() | FoldAlong() | Pleat() as folding:
                self._fold(step, folding, moment.before)
            case Slit() as cutting:
                self._slit(step, cutting, moment.before)
            case Shade() | Gather():
                pass
            case never:
                assert_never(never)

    def after(self, step: int, moment: Moment) -> "Freezing":
        """Give the freezing one step on; this one stays as it is, for other steps to follow it."""
        later = copy(self)
        later.strips, later.made_in, later.tape = {**self.strips}, {**self.made_in}, self.tape.copy()
        later.gaps, later.landmarks, later.left_out = [*self.gaps], [*self.landmarks], [*self.left_out]
        later.take(step, moment)
        return later

    def done(self) -> Frozen:
        """Give what is frozen so far."""
        return Frozen(
            tape=tuple(self.tape.entries),
            sources=tuple(self.tape.sources),
            creases=tuple(self._creases()),
            gaps=tuple(self.gaps),
            landmarks=tuple(self.landmarks),
            left_out=tuple(self.left_out),
            lengths=((Axis.WIDTH, self.sheet.width), (Axis.HEIGHT, self.sheet.height)),
            unit=self.sheet.unit,
        )

    def _creases(self) -> list[FrozenCrease]:
        return [
            FrozenCrease(axis, at, error, self.made_in[axis, at])
            for axis, strip in self.strips.items()
            for at, error in zip(strip.cuts[1:-1], strip.errors[1:-1], strict=True)
        ]

    def _open(self, folds: int) -> None:
        if self.slanted is not None and folds <= self.slanted:
            self.slanted = None
        self.strips = {axis: strip.opened(folds) for axis, strip in self.strips.items()}

    def _turn(self, moment: Moment, quarter: bool | None) -> None:
        """Turn both strips, with every fold they remember; which way up is all that matters to errors."""
        box = moment.before.table.box
        middle = (box.left + box.right) * HALF, (box.bottom + box.top) * HALF
        for axis, strip in self.strips.items():
            if quarter is None:
                if strip.level:
                    self._carry(axis, -1, 2 * middle[0])
            elif strip.level:
                self._carry(axis, *((1, middle[1] - middle[0]) if quarter else (-1, middle[0] + middle[1])))
            else:
                self._carry(axis, *((-1, middle[0] + middle[1]) if quarter else (1, middle[0] - middle[1])))
        if quarter is not None:
            self.strips = {axis: replace(strip, level=not strip.level) for axis, strip in self.strips.items()}

    def _carry(self, axis: Axis, sign: int, shift: Exact) -> None:
        self._relay(
            axis,
            (
                tuple(
                    Lie(sign * lie.sign, sign * lie.offset + shift, self.tape.sum_of((sign, lie.error)))
                    for lie in lies
                )
                for lies in self.strips[axis].pieces
            ),
        )

    def _relay(self, axis: Axis, pieces: Iterable[tuple[Lie, ...]]) -> None:
        """Lay the pieces of a strip down otherwise."""
        self.strips[axis] = replace(self.strips[axis], pieces=tuple(pieces))

    def _axis(self, level: bool) -> Axis:
        return next(axis for axis, strip in self.strips.items() if strip.level == level)

    def _view(self, state: FoldedState, axis: Axis, behind: bool, step: int) -> View:
        return landmarks.view(state, self.strips, axis, behind=behind, tape=self.tape, step=step)

    def _fold(self, step: int, folding: FoldStep, before: FoldedState) -> None:
        lines = fold_lines(folding, before)
        if self.slanted is not None or any(line.a and line.b for line, _ in lines):
            self.left_out.append(step)
            if self.slanted is None:
                self.slanted = before.folds
            return
        axis = self._axis(level=not lines[0].line.b)
        if isinstance(folding, Pleat):
            for bend in [self._bend(step, folding, axis, line, before) for line in lines]:
                self._make(step, axis, bend)
            self.strips = {axis: strip.joined(before.folds) for axis, strip in self.strips.items()}
            return
        state = before
        for index, line in enumerate(lines):
            self._make(step, axis, self._bend(step, _single(folding, index), axis, line, state))
            if index + 1 < len(lines):
                state = fold(state, *line)

    def _bend(
        self, step: int, folding: FoldStep, axis: Axis, fold_line: FoldLine, state: FoldedState
    ) -> Bend:
        line, turn = fold_line
        strip = self.strips[axis]
        place, upward = _place(line)
        seen = self._view(state, axis, turn is Turn.BEHIND, step)
        guide = landmarks.laid_on_tick(seen, place) if step in self.ticks else _guide(folding, seen, place)
        layers = strip.layers_beside(place) * self._other(axis).most_layers()
        return Bend(place, upward, guide, layers)

    def _other(self, axis: Axis) -> Strip:
        return self.strips[Axis.HEIGHT if axis is Axis.WIDTH else Axis.WIDTH]

    def _make(self, step: int, axis: Axis, bend: Bend) -> None:
        """Make a fold: crease the pieces that the line crosses, and carry over what moves."""
        strip, guide = self.strips[axis], bend.guide
        error = guide.error
        if guide.placing is not None:
            hand = 1 if bend.upward else -1
            error = (*error, (1, self.tape.source(step, guide.placing, bend.layers, hand)))
            self.landmarks.append(
                Landmarks(step=step, axis=axis, moving=guide.moving, onto=guide.onto, placing=guide.placing)
            )
        line = self.tape.sum_of(*error)
        for piece in reversed(strip.across(bend.place)):
            lie = strip.pieces[piece][-1]
            at = lie.sign * (bend.place - lie.offset)
            strip = strip.split(piece, at, self.tape.sum_of((lie.sign, line), (-lie.sign, lie.error)))
            self.made_in[axis, at] = step
        self.strips[axis] = strip
        self._relay(
            axis,
            [
                (*lies, self._carried(lies[-1], line, bend) if _moves(low, high, bend) else lies[-1])
                for lies, (low, high) in zip(strip.pieces, strip.ends, strict=True)
            ],
        )
        other = self._other(axis)
        self._relay(other.axis, [(*lies, lies[-1]) for lies in other.pieces])

    def _carried(self, lie: Lie, line: int, bend: Bend) -> Lie:
        error = self.tape.sum_of((2, line), (-1, lie.error))
        return Lie(-lie.sign, 2 * bend.place - lie.offset, error)

    def _slit(self, step: int, cutting: Slit, before: FoldedState) -> None:
        """Cut from crease to crease as the nearest layer shows them; the layers below are cut there too."""
        if self.slanted is not None:
            return
        axis = self._axis(level=cutting.axis is Axis.HEIGHT)
        strip, across = self.strips[axis], self._other(axis)
        low, high = strip.box
        line = across.box[0] + cutting.at * (across.box[1] - across.box[0])
        rows = {side.piece for side in across.sides_at(line)}
        seen = self._view(before, axis, behind=False, step=step)
        for share, out in ((cutting.start, -1), (cutting.end, 1)):
            place = low + share * (high - low)
            mark = seen.seen(place, rows) if low < place < high and rows else None
            if mark is None:
                continue
            end = self.tape.sum_of(*mark.error, (1, self.tape.source(step, Placing.CUT)))
            for side in {side.cut: side for side in strip.sides_at(place)}.values():
                crease = self.tape.sum_of(*seen.error_of(side))
                gap = self.tape.sum_of((out, end), (-out, crease))
                self.gaps.append(FrozenGap(axis, strip.cuts[side.cut], gap, step))


def _moves(low: Exact, high: Exact, bend: Bend) -> bool:
    """Tell whether a piece lies on the hand of a line that is carried over."""
    return low >= bend.place if bend.upward else high <= bend.place


def _place(line: Line) -> tuple[Exact, bool]:
    """Give where a line parallel to an axis is, and whether the paper above it is what moves."""
    factor = line.a or line.b
    return -line.c / factor, factor > ZERO


def _single(folding: FoldStep, index: int) -> FoldStep:
    """Give one fold of a gate as the fold of one edge."""
    if not isinstance(folding, FoldBothEdges):
        return folding
    edges = (Edge.LEFT, Edge.RIGHT) if folding.axis is Axis.WIDTH else (Edge.TOP, Edge.BOTTOM)
    return FoldEdge(edges[index], HALF, folding.behind)


def _guide(folding: FoldStep, seen: View, line: Exact) -> Guide:
    """Name what a fold brings onto what, from its sentence and what can be seen."""
    low, high = seen.strip.box
    length = high - low
    match folding:
        case FoldEdge(edge):
            start = low + edge.position * length
            return landmarks.brought(seen, start, 2 * line - start)
        case FoldPoint(point):
            start = low + (point.x if seen.strip.level else point.y) * length
            return landmarks.brought(seen, start, 2 * line - start)
        case Pleat(parts=parts):
            fanned = parts > FEWEST_PLEATS
            return landmarks.fanned(seen, line) if fanned else landmarks.placed(seen, line)
        case FoldBothEdges() | FoldAt() | FoldAlong():
            return landmarks.placed(seen, line)
        case _:
            assert_never(folding)
