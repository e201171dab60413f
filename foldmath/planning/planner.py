"""The planner: takes a wish, a sheet and limits, gives fold sequences for hands, best first.

Plans are ordered by a stated cost, one figure after the other: folds made by hand, how far off the worst
panel may be (in whole millimetres), layers, the smallest panel, and sentences to say; for younger classes
what is measured and how many sentences there are come before (``ranking``). The list begins with the best
plan; every further one is the best so far in something: layers, trueness, sentences, panels.

Folds are parallel to the sides and lay the shorter part over; each makes a new crease, at k/n of the paper
as it lies with n up to 12, or edge onto edge or crease. The search for the fewest folds looks everywhere,
within limits that ``strip_search`` and the constants here state; ``Planned.complete`` says whether it did.
"""

from typing import NamedTuple

from foldmath.errors import FoldmathError
from foldmath.paper.sizes import ORIENTATIONS, PaperSize, all_papers, sheet
from foldmath.paper.state import Sheet
from foldmath.phrases import Said, phrase
from foldmath.plane.numbers import Exact, whole_part
from foldmath.planning.plans import Plan, plans_on, smallest_mm
from foldmath.planning.ranking import Priority, Ranked, ranked
from foldmath.planning.strip_search import MOST_FOLDS, MOST_STRIPS, Target, fewest_folds
from foldmath.planning.trials import Trials
from foldmath.planning.wanted import Grid, Wanted
from foldmath.planning.ways import Ways, ways_to
from foldmath.tolerance.assumed.spread import Spread
from foldmath.tolerance.assumed.stock import Stock
from foldmath.tolerance.assumed.stock_said import stock_said
from foldmath.values import frozen

MOST_LAYERS = 4096
"""Where no limit is asked for: more than any paper bears."""

FEWEST_LAYERS = 2
"""A fold lays paper on paper."""

MOST_GRIDS, MOST_MORE_FOLDS = 12, 1
"""So many grids are compared, those with the fewest folds and with up to so many more."""

MOST_STRIPS_COUNTED = MOST_STRIPS
"""Counting the folds of all grids begins no further grid past so many strips, and says so."""


class NoPlan(FoldmathError):
    """A wish that no folding fulfils within the limits."""


@frozen
class Limits:
    """What a class can do.

    Args:
        layers: the most layers.
        folds: the most folds; None for any number.
        least_mm: the least sides of a panel, the shorter first, in mm; a panel may lie either way.
    """

    layers: int = MOST_LAYERS
    folds: int | None = None
    least_mm: tuple[Exact, Exact] | None = None


@frozen
class Planned:
    """The list, best first, and whether the search for the fewest folds looked everywhere."""

    ranked: tuple[Ranked, ...]
    complete: bool


class Counted(NamedTuple):
    """Grids, each with its fewest folds, and whether the search looked everywhere for those left out."""

    grids: list[tuple[int, Grid]]
    complete: bool


def plan(
    wanted: Wanted,
    size: PaperSize,
    orientation: str,
    spread: Spread,
    stock: Stock,
    *,
    limits: Limits = Limits(),
    best: int = 5,
    priority: Priority = Priority.FOLDS,
) -> Planned:
    """Find fold sequences for a wish, those first that have fewest of what matters most.

    Raises:
        NoPlan: nothing fulfils it within the limits, or this paper cannot be folded so.
    """
    trials = Trials(sheet(size, orientation))
    grids = _wide_enough(wanted, size, orientation, limits)
    by_folds, all_counted = _counted(grids, limits)
    fewest = by_folds[0][0]
    most = fewest + MOST_MORE_FOLDS if limits.folds is None else min(limits.folds, fewest + MOST_MORE_FOLDS)
    kept = [grid for folds, grid in by_folds if folds <= most][:MOST_GRIDS]
    if not kept:
        raise NoPlan(
            phrase("this needs at least {fewest} folds by hand", fewest=fewest),
            f"--folds {fewest}",
        )
    plans, complete = _plans(kept, trials, spread, limits)
    all_counted = all_counted and sum(folds == fewest for folds, _ in by_folds) <= MOST_GRIDS
    listed = ranked(plans, trials, stock, best, priority)
    if not listed:
        raise NoPlan(
            phrase("{stock} is too thick to be folded so on this sheet", stock=stock_said(stock.name)),
            phrase("thinner or larger paper"),
        )
    return Planned(listed, complete and all_counted)


def _plans(grids: list[Grid], trials: Trials, spread: Spread, limits: Limits) -> tuple[list[Plan], bool]:
    known: dict[Target, Ways] = {}
    plans: list[Plan] = []
    for grid in grids:
        for target in (grid.across, grid.up):
            if target not in known:
                known[target] = ways_to(target, trials, spread, limits.layers)
        ways = known[grid.across], known[grid.up]
        plans += plans_on(grid, *ways, trials, spread, limits.layers)
    if limits.folds is not None:
        plans = [plan for plan in plans if plan.folds <= limits.folds]
    return plans, all(ways.complete for ways in known.values())


def _counted(grids: list[Grid], limits: Limits) -> Counted:
    """Give the grids that can be folded within the layers, each with its fewest folds, the fewest first."""
    by_folds = _with_folds(grids, limits.layers)
    if by_folds.grids:
        return by_folds
    finest = max(target.length for grid in grids for target in (grid.across, grid.up))
    for layers in range(max(limits.layers + 1, FEWEST_LAYERS), 2 * finest):
        thicker = _with_folds(grids, layers)
        if thicker.grids:
            raise NoPlan(
                phrase("no folding found that keeps within {layers} layers", layers=limits.layers),
                f"--max-layers {layers}",
            )
        if not thicker.complete:
            break
    raise NoPlan(
        phrase("no folding found at simple parts of the paper"), phrase("sizes with smaller denominators")
    )


def _with_folds(grids: list[Grid], layers: int) -> Counted:
    """Count folds; grids that need many more than one before them are left out."""
    most, complete = 2 * MOST_FOLDS, True
    found: list[tuple[int, Grid]] = []
    looked_at: dict[Target, int] = {}
    for grid in grids:
        if sum(looked_at.values()) > MOST_STRIPS_COUNTED:
            complete = False
            break
        easier, harder = sorted((grid.across, grid.up), key=lambda target: len(target.creases))
        one = fewest_folds(easier, layers, min(most, MOST_FOLDS))
        other = fewest_folds(harder, layers, min(most - (one.folds or 0), MOST_FOLDS))
        looked_at |= {easier: one.strips, harder: other.strips}
        if one.folds is not None and other.folds is not None:
            folds = one.folds + other.folds
            most = min(most, folds + MOST_MORE_FOLDS)
            found.append((folds, grid))
        else:
            complete = complete and one.complete and other.complete
    return Counted(sorted(found, key=lambda pair: pair[0]), complete)


def _wide_enough(wanted: Wanted, size: PaperSize, orientation: str, limits: Limits) -> list[Grid]:
    """Give the grids whose smallest panel is as large as asked for."""
    if limits.least_mm is None:
        return list(wanted.grids)
    lying = sheet(size, orientation)
    grids = [grid for grid in wanted.grids if _fits(grid, lying, limits.least_mm)]
    if not grids:
        least, largest = (
            " × ".join(f"{whole_part(side)}" for side in sides)
            for sides in (limits.least_mm, _largest(wanted, lying))
        )
        raise NoPlan(
            phrase(
                "no folding of {said} keeps panels at least {least} mm on {size}; the largest is "
                "{largest} mm",
                said=wanted.said,
                least=least,
                size=size.name,
                largest=largest,
            ),
            _larger_paper(wanted, size, orientation, limits.least_mm),
        )
    return grids


def _fits(grid: Grid, lying: Sheet, least_mm: tuple[Exact, Exact]) -> bool:
    short, long = sorted(smallest_mm(grid, lying))
    return least_mm[0] <= short and least_mm[1] <= long


def _largest(wanted: Wanted, lying: Sheet) -> tuple[Exact, Exact]:
    """Give the sides of the smallest panel on the grid where its shorter side is longest."""
    short, long = max(tuple(sorted(smallest_mm(grid, lying))) for grid in wanted.grids)
    return short, long


def _larger_paper(wanted: Wanted, size: PaperSize, orientation: str, least_mm: tuple[Exact, Exact]) -> Said:
    """Name the same paper turned, or the smallest one of its series or else of its unit that would do."""

    def fits(paper: PaperSize, lying: str) -> bool:
        return any(_fits(grid, sheet(paper, lying), least_mm) for grid in wanted.grids)

    for turned in ORIENTATIONS:
        if fits(size, turned):
            return f"--orientation {turned}"
    papers = [paper for paper in all_papers() if paper.unit == size.unit and fits(paper, orientation)]
    if not papers:
        return phrase("smaller panels; no paper with a name is large enough")
    best = min(papers, key=lambda paper: (paper.series != size.series, paper.width * paper.height))
    return f'--paper "{best.name}"'
