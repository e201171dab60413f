"""What an accuracy says: one plain line, and the figures behind it for those who ask."""

from collections.abc import Sequence
from dataclasses import dataclass

from foldmath.paper.moment import Moment
from foldmath.plane.numbers import ONE, written
from foldmath.tolerance.accuracy import Accuracy, CreaseError, Error, GapError, PartError, accuracy
from foldmath.tolerance.alternatives import MOST_SINGLY, Alternatives
from foldmath.tolerance.comparing import Mark, best_marks, singly
from foldmath.tolerance.simulating import simulated
from foldmath.tolerance.spread import Spread
from foldmath.tolerance.words import heads, said

SHEETS = 100_000
"""Sheets folded by chance: enough to tell a twentieth of them within 0.1 mm."""

LEAST_TOLD_MM = 0.5
"""A worst panel better than this is told as "less than half a millimetre"."""


@dataclass(frozen=True)
class Details:
    """The figures behind the plain line.

    Args:
        heads: of the columns.
        rows: what, meant size or place, mean shift, standard deviation, and how far it may be off.
        note: which hands these are, and that they are assumed.
    """

    heads: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]
    note: str


def in_one_line(made: Accuracy, marks: Sequence[Mark] = (), opened_mm: float | None = None) -> str:
    """Say how true a folding comes out: ``worst panel about 3 mm off; use ticks at step 1``.

    Args:
        made: how true it comes out.
        marks: where ticks help, if that was asked.
        opened_mm: how far off the worst panel would be if every crease was made singly on the open sheet.
    """
    if made.worst is None:
        told = [said("accuracy", "nothing")]
    elif made.worst_mm < LEAST_TOLD_MM:
        told = [said("accuracy", "half")]
    else:
        told = [said("accuracy", "worst", worst=_whole(made.worst_mm))]
    if marks:
        told.append(_ticks(sorted(mark.step + 1 for mark in marks)))
    elif opened_mm is not None and _whole(opened_mm) != _whole(made.worst_mm) and opened_mm < made.worst_mm:
        told.append(said("accuracy", "open_first", worst=_whole(opened_mm)))
    if made.left_out:
        told.append(said("accuracy", "left_out"))
    return said("accuracy", "joint").join(told)


def advised(moments: Sequence[Moment], made: Accuracy) -> str:
    """Say it in one line with advice: where ticks help, or whether to open the sheet between folds."""
    marks = best_marks(moments, made.spread)
    alone = singly(moments) if 0 < len(made.creases) <= MOST_SINGLY and not marks else ()
    return in_one_line(made, marks, accuracy(alone, made.spread).worst_mm if alone else None)


def _ticks(steps: list[int]) -> str:
    if len(steps) == 1:
        return said("accuracy", "ticks", step=str(steps[0]))
    others = said("accuracy", "comma").join(map(str, steps[:-1]))
    return said("accuracy", "ticks_at_steps", steps=others, last=str(steps[-1]))


def details(made: Accuracy) -> Details:
    """Give the figures as a small table: sizes, then creases, then the ends of slits."""
    rows = [_part(part) for part in made.parts if part.end - part.start != ONE]
    rows += (_crease(crease) for crease in made.creases)
    rows += (_gap(gap) for gap in made.gaps)
    return Details(heads("details"), tuple(rows), _note(made.spread))


def ways(made: Accuracy, others: Alternatives) -> Details:
    """Give how far off the worst panel may be as the folding is written, and made in other ways."""
    order = said("accuracy", "comma").join(str(step + 1) for step in others.order)
    ticks = _ticks([step + 1 for step in others.ticks]) if others.ticks else ""
    told = [
        (said("ways", "written"), made),
        (said("ways", "order", order=order), others.in_order),
        (said("ways", "singly"), others.singly),
        (said("ways", "ticks", ticks=ticks) if ticks else said("ways", "one_tick"), others.ticked),
    ]
    found = [(name, way.worst_mm) for name, way in told if way]
    truest, _ = min(found, key=lambda way: way[1])
    return Details(
        heads("ways"),
        tuple((name, _mm(worst)) for name, worst in found),
        said("ways", "note", truest=truest),
    )


def by_chance(made: Accuracy) -> str:
    """Say how far off the worst panel of a sheet is among sheets folded by chance, the same each time."""
    sheets = simulated(made.frozen, made.spread, SHEETS, seed=1)
    figures = {"half": _mm(sheets.worst_mm(0.5)), "most": _mm(sheets.worst_mm())}
    return said("ways", "by_chance", sheets=f"{SHEETS:,}", **figures)


def in_columns(told: Details) -> str:
    """Lay the figures out for a screen: what they are at the left, numbers flush right, the note below."""
    rows = [told.heads, *told.rows]
    widths = [max(len(row[column]) for row in rows) for column in range(len(told.heads))]
    lines = []
    for what, *figures in rows:
        cells = [figure.rjust(width) for figure, width in zip(figures, widths[1:], strict=True)]
        lines.append("  ".join([what.ljust(widths[0]), *cells]))
    return "\n".join([*lines, told.note])


def _part(part: PartError) -> tuple[str, ...]:
    key = f"between_{part.axis.value}"
    what = said("details", key, start=written(part.start), end=written(part.end))
    return (what, _mm(part.size_mm), *_figures(part.error))


def _crease(crease: CreaseError) -> tuple[str, ...]:
    where = said("details", crease.axis.value, at=written(crease.at))
    return (f"{said('details', 'creases')} {where}", _mm(crease.at_mm), *_figures(crease.error))


def _gap(gap: GapError) -> tuple[str, ...]:
    where = said("details", gap.axis.value, at=written(gap.at))
    return (f"{said('details', 'gaps')} {where}", _mm(0.0), *_figures(gap.error))


def _figures(error: Error) -> tuple[str, ...]:
    return (_signed(error.mean_mm), _mm(error.sd_mm), _mm(error.off_mm))


def _note(spread: Spread) -> str:
    figures = {name: _mm(getattr(spread, f"{name}_mm")) for name in ("edge", "eye", "tick", "cut")}
    thickness = f"{spread.thickness_mm:.3g}"
    return said("details", "assumed" if spread.assumed else "told", thickness=thickness, **figures)


def _whole(number: float) -> str:
    return f"{max(number, 1.0):.0f}"


def _mm(number: float) -> str:
    return f"{number:.1f}"


def _signed(number: float) -> str:
    rounded = f"{number:+.1f}"
    return "0.0" if rounded in ("+0.0", "-0.0") else rounded.replace("-", "−")
