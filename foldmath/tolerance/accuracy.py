"""How true a folding comes out: mean and standard deviation of every crease, panel size and slit end."""

from collections.abc import Collection, Sequence
from functools import cached_property
from itertools import pairwise
from math import pi, sqrt
from operator import mul, sub
from typing import TypeAlias

from foldmath.measured import millimetres
from foldmath.paper.moments.moment import Moment
from foldmath.paper.steps import Axis
from foldmath.plane.numbers import Exact
from foldmath.tolerance.assumed.spread import Spread
from foldmath.tolerance.landmarks.freezing import freeze
from foldmath.tolerance.landmarks.frozen import Frozen, Landmarks, Source
from foldmath.tolerance.landmarks.strips import UNERRING
from foldmath.values import frozen

OUTER = 2.0
"""How many standard deviations are counted as "off by": about 19 sheets in 20 stay within (normal errors)."""

Row: TypeAlias = tuple[float, ...]
"""One row of the Jacobian: how much of each independent error an error takes."""


@frozen
class Error:
    """An error that is about normal, in mm.

    Args:
        mean_mm: what thickness shifts it by on average.
        sd_mm: its standard deviation.
    """

    mean_mm: float
    sd_mm: float

    @property
    def off_mm(self) -> float:
        """How far off it may well be: the mean shift and ``OUTER`` standard deviations."""
        return abs(self.mean_mm) + OUTER * self.sd_mm


@frozen(kw_only=True)
class CreaseError:
    """A crease on the opened sheet, and how far it may lie off towards higher coordinates.

    Args:
        axis: WIDTH for an upright crease, HEIGHT for a level one.
        at: where it is meant to be, as a fraction of the sheet along the axis.
        at_mm: the same, in mm.
        error: of its place.
        step: the step that made it, counted from 0.
    """

    axis: Axis
    at: Exact
    at_mm: float
    error: Error
    step: int


@frozen(kw_only=True)
class PartError:
    """A column (WIDTH) or a row (HEIGHT) of panels between neighbouring creases, and its size's error.

    Args:
        axis: along which its size counts.
        start, end: where it is meant to be, as fractions of the sheet.
        size_mm: how wide, or high, it is meant to be.
        error: of that size.
    """

    axis: Axis
    start: Exact
    end: Exact
    size_mm: float
    error: Error


@frozen
class GapError:
    """An end of a slit at a crease that crosses it: how far it runs past the crease; under 0 it is too short.

    Args:
        axis: along which the slit runs.
        at: where the crease is meant to be, as a fraction of the sheet along the axis.
        error: of the gap, which is meant to be 0.
    """

    axis: Axis
    at: Exact
    error: Error


@frozen
class Accuracy:
    """How true a folding comes out, by covariance: J Σ Jᵀ, row by row.

    Only folds parallel to the sides of the sheet are counted; slanted ones, and those made while one of them
    is folded, are ``left_out`` (steps, counted from 0). Skew is left out too: creases are taken as square.

    Args:
        frozen: the folding.
        spread: of the hands; the errors are independent, so Σ is diagonal.
    """

    frozen: Frozen
    spread: Spread

    @property
    def landmarks(self) -> tuple[Landmarks, ...]:
        """What each fold brings onto what."""
        return self.frozen.landmarks

    @property
    def left_out(self) -> tuple[int, ...]:
        """The steps that say nothing here."""
        return self.frozen.left_out

    @cached_property
    def creases(self) -> tuple[CreaseError, ...]:
        """Every crease, with its error."""
        return tuple(
            CreaseError(
                axis=crease.axis,
                at=crease.at / self._lengths[crease.axis],
                at_mm=millimetres(crease.at, self.frozen.unit),
                error=self._error(self._rows[crease.error]),
                step=crease.step,
            )
            for crease in self.frozen.creases
        )

    @cached_property
    def parts(self) -> tuple[PartError, ...]:
        """Every column and row, with the error of its size."""
        return tuple(
            PartError(
                axis=axis,
                start=start / length,
                end=end / length,
                size_mm=millimetres(end - start, self.frozen.unit),
                error=self._error(tuple(map(sub, self._rows[high], self._rows[low]))),
            )
            for axis, length in self.frozen.lengths
            for (start, low), (end, high) in pairwise(edges_of_parts(self.frozen, axis))
        )

    @cached_property
    def gaps(self) -> tuple[GapError, ...]:
        """Every end of a slit at a crease, with its error."""
        return tuple(
            GapError(gap.axis, gap.at / self._lengths[gap.axis], self._error(self._rows[gap.error]))
            for gap in self.frozen.gaps
        )

    @cached_property
    def worst(self) -> PartError | None:
        """The column or row whose size may be furthest off; None if no crease was counted."""
        return max(self.parts, key=lambda part: part.error.off_mm) if self.frozen.creases else None

    @property
    def worst_mm(self) -> float:
        """How far off the worst panel may well be: its mean shift and about two standard deviations."""
        return self.worst.error.off_mm if self.worst else 0.0

    @cached_property
    def _lengths(self) -> dict[Axis, Exact]:
        return dict(self.frozen.lengths)

    @cached_property
    def _rows(self) -> list[Row]:
        return jacobian(self.frozen)

    @cached_property
    def _means_and_variances(self) -> tuple[list[float], list[float]]:
        sources = self.frozen.sources
        means = [mean_mm(source, self.spread) for source in sources]
        return means, [self.spread.of(source.placing) ** 2 for source in sources]

    def _error(self, row: Row) -> Error:
        means, variances = self._means_and_variances
        return Error(sum(map(mul, row, means)), sqrt(sum(map(mul, map(mul, row, row), variances))))


def accuracy(moments: Sequence[Moment], spread: Spread, ticks: Collection[int] = ()) -> Accuracy:
    """Work out how true a folding comes out.

    Args:
        moments: what each step did, from the open sheet.
        spread: of the hands.
        ticks: the steps, counted from 0, whose creases are laid on printed ticks.
    """
    if not moments:
        raise ValueError("a folding has at least one step")
    return Accuracy(freeze(moments, ticks), spread)


def edges_of_parts(frozen: Frozen, axis: Axis) -> list[tuple[Exact, int]]:
    """Give where the parts along an axis begin and end, in sheet units, each with its error on the tape."""
    length = dict(frozen.lengths)[axis]
    inner = [(crease.at, crease.error) for crease in frozen.creases if crease.axis is axis]
    return [(length - length, UNERRING), *inner, (length, UNERRING)]


def jacobian(frozen: Frozen) -> list[Row]:
    """Give for each entry of the tape how much of each source it takes; a last row of 0 for ``UNERRING``."""
    number = {source.entry: index for index, source in enumerate(frozen.sources)}
    count = len(number)
    rows: list[Row] = []
    for entry, terms in enumerate(frozen.tape):
        row = [0.0] * count
        if entry in number:
            row[number[entry]] = 1.0
        for factor, earlier in terms:
            for index, value in enumerate(rows[earlier]):
                row[index] += factor * value
        rows.append(tuple(row))
    rows.append((0.0,) * count)
    return rows


def mean_mm(source: Source, spread: Spread) -> float:
    """Give the mean shift of a crease: in rolling round, n layers t thick take up π t n / 2 on average.

    Source: layer j bends round an arc of π t (j - 1/2), whose mean over n layers is π t n / 2; the arcs are
    those of B. C. Gallivan, How to Fold Paper in Half Twelve Times, 2002.
    """
    return source.towards * pi * spread.thickness_mm * source.layers / 2
