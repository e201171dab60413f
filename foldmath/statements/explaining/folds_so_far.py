"""The folds so far as one product: 1/2 × 1/2 × 1/2 = 1/8, and, where all are alike, as a power."""

from collections.abc import Iterator, Sequence

from foldmath.paper.moments.moment import Moment
from foldmath.plane.numbers import ONE, denominator
from foldmath.statements.claim_grammar import LARGEST_POWER
from foldmath.statements.composing import equation, times
from foldmath.statements.explaining.found import Family, Found
from foldmath.statements.expressions import Power
from foldmath.statements.ratios import fraction, whole_number


def equal_parts(moment: Moment) -> int:
    """Say into how many equal parts every panel was cut; 1 if none was, 0 if not all were alike."""
    parts = set(moment.parts)
    if parts == {1}:
        return 1
    return parts.pop() if len(parts) == len(moment.cuts) == 1 and len(moment.sizes) == 1 else 0


def products_of_folds(moments: Sequence[Moment]) -> Iterator[Found]:
    """Multiply the shares, and the numbers of parts, of all folds so far.

    Args:
        moments: from the open sheet to the step in question.

    Returns:
        Nothing where some fold did not cut every panel alike, or the step itself cut none.
    """
    cuts = [equal_parts(moment) for moment in moments]
    parts = [number for number in cuts if number > 1]
    if not moments or 0 in cuts or cuts[-1] == 1 or not 2 <= len(parts) <= LARGEST_POWER:
        return
    state = moments[-1].after
    panels, size = whole_number(len(state.panels)), fraction(1, denominator(ONE / len(state.panels)))
    shares = [fraction(1, number) for number in parts]
    yield Found(Family.PRODUCT, equation(times(*shares), size))
    yield Found(Family.PRODUCT, equation(times(*parts), panels))
    if len(set(parts)) == 1:
        yield Found(Family.POWER, equation(Power(shares[0], len(parts)), size))
        yield Found(Family.POWER, equation(Power(whole_number(parts[0]), len(parts)), panels))
