"""Names of one size and the order of sizes: equal fractions, comparisons, and parts added up."""

from collections.abc import Iterator
from itertools import combinations, pairwise

from foldmath.paper.moments.moment import Moment
from foldmath.plane.numbers import ONE, Exact, denominator
from foldmath.statements.composing import equation, less, plus, times
from foldmath.statements.explaining.found import Family, Found
from foldmath.statements.ratios import LARGEST_DENOMINATOR, Ratio, fraction, whole_number

MOST_TERMS = 6
"""More numbers than this are not added up in one sentence."""

MOST_SIZES = 6
"""Of more sizes than this, only neighbours are compared."""


def equal_fractions(before: int, after: int) -> Iterator[Found]:
    """Name the same parts by the panels before and after a cut that made all panels alike: 3/4 = 6/8."""
    if before < after <= LARGEST_DENOMINATOR:
        for parts in range(1, before + 1):
            yield renamed(fraction(parts, before) if before > 1 else whole_number(1), after)


def renamed(number: Ratio, parts: int) -> Found:
    """Write a number over another denominator that its own one divides."""
    other = fraction(number.numerator * (parts // number.denominator), parts)
    return Found(Family.EQUIVALENT, equation(number, other))


def sizes_compared(moment: Moment) -> Iterator[Found]:
    """Say which panels are smaller: among the sizes now, and each part against the panel it came from."""
    sizes = list(moment.sizes)
    pairs = combinations(sizes, 2) if len(sizes) <= MOST_SIZES else pairwise(sizes)
    for smaller, larger in (*pairs, *((part, panel) for panel, part in moment.cuts)):
        yield Found(Family.COMPARISON, less(smaller, larger))
    before, after = len(moment.before.panels), len(moment.after.panels)
    if before < after:
        yield Found(Family.COMPARISON, less(before, after))


def product_and_factor(factor: Exact, share: Exact) -> Found:
    """Say that a part of a part is less than the part, without working it out: 1/4 × 1/2 < 1/4."""
    return Found(Family.COMPARISON, less(times(factor, share), factor))


def parts_added(moment: Moment) -> Iterator[Found]:
    """Add the parts of each different panel that was cut up to the panel, and all panels to the sheet."""
    parts_of: dict[int, list[Exact]] = {}
    for panel, parent in zip(moment.after.panels, moment.after.parents, strict=True):
        parts_of.setdefault(parent, []).append(panel.area)
    whole = [panel.area for panel in moment.after.panels]
    groups = {(moment.before.panels[parent].area, *sorted(parts)) for parent, parts in parts_of.items()}
    for total, *parts in sorted({*groups, (ONE, *sorted(whole))}):
        if 1 < len(parts) <= MOST_TERMS and max(map(denominator, parts)) <= LARGEST_DENOMINATOR:
            yield Found(Family.SUM, equation(plus(*parts), total))
