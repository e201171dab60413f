"""A nominal folding, frozen: which error comes from which, as a tape of sums that never need the paper again.

Parallel to the sides of the sheet errors stay linear: a crease lies at half the sum of its landmarks'
errors plus its own placing error, a layer that was carried over lies off by twice the crease's error
less its own, and a crease through several layers leaves a different error in each. So every error is a
sum of earlier ones, and a number is never asked for while folding.
"""

from dataclasses import dataclass, field
from typing import NamedTuple, TypeAlias

from foldmath.paper.steps import Axis
from foldmath.plane.numbers import Exact
from foldmath.tolerance.assumed.spread import Placing
from foldmath.tolerance.landmarks.strips import UNERRING
from foldmath.values import frozen

Terms: TypeAlias = tuple[tuple[float, int], ...]
"""A sum: factors, each of an earlier entry of the tape."""


class Source(NamedTuple):
    """One independent error.

    Args:
        entry: its place on the tape.
        step: of the lesson, counted from 0.
        placing: what guided the hand.
        layers: how many layers a fold went through there; 0 for a cut or a guess at a place.
        towards: the sign of the table's axis towards which the fold takes paper up in rolling round.
    """

    entry: int
    step: int
    placing: Placing
    layers: int = 0
    towards: int = 0


class FrozenCrease(NamedTuple):
    """A crease: where it is meant to be, in sheet units on an axis of the opened sheet, and its error."""

    axis: Axis
    at: Exact
    error: int
    step: int


class FrozenGap(NamedTuple):
    """An end of a slit and a crease that crosses it there: how far the slit runs past it.

    Args:
        axis: along which the slit runs.
        at: the crease, in sheet units.
        error: the gap, on the tape; positive if the slit is too long.
        step: of the lesson, counted from 0.
    """

    axis: Axis
    at: Exact
    error: int
    step: int


@frozen(kw_only=True)
class Landmarks:
    """What one fold brings together, each named by the layer it is on: its place on the opened sheet.

    Args:
        step: of the lesson, counted from 0.
        axis: of the opened sheet, across which it folds.
        moving: what travels, as a fraction of the sheet: 0 and 1 are its edges, others are creases; None
            if the crease is placed by itself, or from a place that was judged by eye.
        onto: what it is laid on; None likewise.
        placing: what guided the hand.
    """

    step: int
    axis: Axis
    moving: Exact | None
    onto: Exact | None
    placing: Placing


@frozen(kw_only=True)
class Frozen:
    """A frozen folding.

    Args:
        tape: each entry a sum of earlier ones; a source's sum is empty.
        sources: the independent errors.
        creases: on both axes, by place.
        gaps: at the ends of slits.
        landmarks: one for each fold that made a crease.
        left_out: the steps (from 0) that are slanted, or folded while a slanted fold was still folded.
        lengths: of the sheet along each axis, in sheet units.
        unit: of the sheet.
    """

    tape: tuple[Terms, ...]
    sources: tuple[Source, ...]
    creases: tuple[FrozenCrease, ...]
    gaps: tuple[FrozenGap, ...]
    landmarks: tuple[Landmarks, ...]
    left_out: tuple[int, ...]
    lengths: tuple[tuple[Axis, Exact], ...]
    unit: str


@dataclass
class Tape:
    """A tape being written."""

    entries: list[Terms] = field(default_factory=list)
    sources: list[Source] = field(default_factory=list)
    written: dict[Terms, int] = field(default_factory=dict)

    def copy(self) -> "Tape":
        """Give another that may be written on."""
        return Tape([*self.entries], [*self.sources], {**self.written})

    def sum_of(self, *terms: tuple[float, int]) -> int:
        """Write a sum and give its place; a single unchanged entry needs none, and no error none at all."""
        kept = tuple((factor, entry) for factor, entry in terms if entry != UNERRING and factor)
        if not kept:
            return UNERRING
        if len(kept) == 1 and kept[0][0] == 1:
            return kept[0][1]
        if kept not in self.written:
            self.written[kept] = len(self.entries)
            self.entries.append(kept)
        return self.written[kept]

    def source(self, step: int, placing: Placing, layers: int = 0, towards: int = 0) -> int:
        """Write a new independent error and give its place."""
        self.entries.append(())
        self.sources.append(Source(len(self.entries) - 1, step, placing, layers, towards))
        return len(self.entries) - 1
