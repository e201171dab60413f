"""What an accuracy says: one plain line, and the figures behind it for those who ask."""

from collections.abc import Sequence

from foldmath.measured import as_float
from foldmath.paper.lengths import MILLIMETRES, SIXTEENTHS
from foldmath.paper.measures import length_said, share_said
from foldmath.paper.moments.moment import Moment
from foldmath.phrases import Phrase, Said, joined, listed
from foldmath.plane.numbers import ONE, exact
from foldmath.tolerance.accuracy import Accuracy, CreaseError, Error, GapError, PartError, accuracy
from foldmath.tolerance.alternatives import MOST_SINGLY, Alternatives
from foldmath.tolerance.assumed.spread import Spread
from foldmath.tolerance.comparing import Mark, best_marks, singly
from foldmath.tolerance.simulating import simulated
from foldmath.tolerance.words import heads, worded
from foldmath.values import frozen

SHEETS = 100_000
"""Sheets folded by chance: enough to tell a twentieth of them within 0.1 mm."""

LEAST_TOLD_MM = 0.5
"""A worst panel better than this is told as "less than half a millimetre"."""


@frozen
class Details:
    """The figures behind the plain line.

    Args:
        heads: of the columns.
        rows: what, meant size or place, mean shift, standard deviation, and how far it may be off.
        note: which hands these are, and that they are assumed.
    """

    heads: tuple[Phrase, ...]
    rows: tuple[tuple[Said, ...], ...]
    note: Phrase


def in_one_line(
    made: Accuracy,
    marks: Sequence[Mark] = (),
    *,
    marked_mm: float | None = None,
    opened_mm: float | None = None,
) -> Phrase:
    """Say how true a folding comes out: ``the worst panel is about 3 mm off; give edge marks at step 1``.

    Lengths are told by the ruler that goes with the paper, in inches or millimetres.

    Args:
        made: how true it comes out.
        marks: where ticks help, if that was asked.
        marked_mm: how far off the worst panel would be with the edge marks that are told beside it.
        opened_mm: how far off the worst panel would be if every crease was made singly on the open sheet.
    """
    unit = made.frozen.unit
    if made.worst is None:
        told = [worded("accuracy", "nothing")]
    elif made.worst_mm < LEAST_TOLD_MM:
        told = [worded("accuracy", "half_inch" if unit == "in" else "half")]
    else:
        told = [worded("accuracy", "worst", worst=about(made.worst_mm, unit))]
    if marks:
        told.append(_ticks(sorted(mark.step + 1 for mark in marks)))
    elif marked_mm is not None and _is_better(marked_mm, made, unit):
        told.append(worded("accuracy", "marked", worst=about(marked_mm, unit)))
    elif opened_mm is not None and _is_better(opened_mm, made, unit):
        told.append(worded("accuracy", "open_first", worst=about(opened_mm, unit)))
    if made.left_out:
        told.append(worded("accuracy", "left_out"))
    return joined("; ", told)


def advised(moments: Sequence[Moment], made: Accuracy) -> Phrase:
    """Say it in one line with advice: where ticks help, or whether to open the sheet between folds."""
    marks = best_marks(moments, made.spread)
    return in_one_line(made, marks) if marks else in_one_line(made, opened_mm=_opened_mm(moments, made))


def advised_beside_marks(moments: Sequence[Moment], made: Accuracy, marked: Sequence[int]) -> Phrase:
    """Say it in one line beside a list of edge marks: how true it comes out with those.

    Args:
        moments: what each step did, from the open sheet.
        made: how true it comes out without any mark.
        marked: the steps that have marks, counted from 0; where there are none, the other advice is given.
    """
    if not marked:
        return in_one_line(made, opened_mm=_opened_mm(moments, made))
    return in_one_line(made, marked_mm=accuracy(moments, made.spread, ticks=marked).worst_mm)


def _opened_mm(moments: Sequence[Moment], made: Accuracy) -> float | None:
    """Give how far off the worst panel is if the sheet is opened before each fold; None past few creases."""
    alone = singly(moments) if 0 < len(made.creases) <= MOST_SINGLY else ()
    return accuracy(alone, made.spread).worst_mm if alone else None


def _is_better(other_mm: float, made: Accuracy, unit: str) -> bool:
    """Tell whether the worst panel is better, and reads so."""
    return other_mm < made.worst_mm and about(other_mm, unit) != about(made.worst_mm, unit)


def _ticks(steps: list[int]) -> Phrase:
    if len(steps) == 1:
        return worded("accuracy", "mark", step=str(steps[0]))
    return worded("accuracy", "marks", steps=listed([str(step) for step in steps]))


def details(made: Accuracy) -> Details:
    """Give the figures as a small table: sizes, then creases, then the ends of slits."""
    rows = [_part(part) for part in made.parts if part.end - part.start != ONE]
    rows += (_crease(crease) for crease in made.creases)
    rows += (_gap(gap) for gap in made.gaps)
    return Details(heads("details"), tuple(rows), _note(made.spread))


def ways(made: Accuracy, others: Alternatives) -> Details:
    """Give how far off the worst panel may be as the folding is written, and made in other ways."""
    order = ", ".join(str(step + 1) for step in others.order)
    marks = _ticks([step + 1 for step in others.ticks]) if others.ticks else None
    told = [
        (worded("ways", "written"), made),
        (worded("ways", "order", order=order), others.in_order),
        (worded("ways", "singly"), others.singly),
        (worded("ways", "marks", marks=marks) if marks else worded("ways", "one_mark"), others.ticked),
    ]
    found = [(name, way.worst_mm) for name, way in told if way]
    best, _ = min(found, key=lambda way: way[1])
    return Details(
        heads("ways"),
        tuple((name, _mm(worst)) for name, worst in found),
        worded("ways", "note", best=best),
    )


def by_chance(made: Accuracy) -> Phrase:
    """Say how far off the worst panel of a sheet is among sheets folded by chance, the same each time."""
    sheets = simulated(made.frozen, made.spread, SHEETS, seed=1)
    figures = {"half": _mm(sheets.worst_mm(0.5)), "most": _mm(sheets.worst_mm())}
    return worded("ways", "by_chance", sheets=f"{SHEETS:,}", **figures)


def _part(part: PartError) -> tuple[Said, ...]:
    key = f"between_{part.axis.value}"
    what = worded("details", key, start=share_said(part.start), end=share_said(part.end))
    return (what, _mm(part.size_mm), *_figures(part.error))


def _crease(crease: CreaseError) -> tuple[Said, ...]:
    where = worded("details", crease.axis.value, at=share_said(crease.at))
    return (worded("details", "crease", where=where), _mm(crease.at_mm), *_figures(crease.error))


def _gap(gap: GapError) -> tuple[Said, ...]:
    where = worded("details", gap.axis.value, at=share_said(gap.at))
    return (worded("details", "slit_end", where=where), _mm(0.0), *_figures(gap.error))


def _figures(error: Error) -> tuple[Said, ...]:
    return (_signed(error.mean_mm), _mm(error.sd_mm), _mm(error.off_mm))


def _note(spread: Spread) -> Phrase:
    figures = {name: _mm(getattr(spread, f"{name}_mm")) for name in ("edge", "eye", "tick", "cut")}
    thickness = f"{spread.thickness_mm:.3g}"
    return worded("details", "assumed" if spread.assumed else "told", thickness=thickness, **figures)


def about(millimetres: float, unit: str) -> Phrase:
    """Say how far off it is, to the nearest sixteenth of an inch or millimetre, and at least one of them."""
    if unit == "in":
        parts = max(round(millimetres / as_float(MILLIMETRES["in"]) * SIXTEENTHS), 1)
        return length_said(exact(parts, SIXTEENTHS), "in")
    return length_said(exact(max(round(millimetres), 1)), "mm")


def _mm(number: float) -> str:
    return f"{number:.1f}"


def _signed(number: float) -> str:
    rounded = f"{number:+.1f}"
    return "0.0" if rounded in ("+0.0", "-0.0") else rounded.replace("-", "−")
