"""What a shading shows: the shaded part by two names, and where two shadings cross, their product."""

from collections.abc import Iterator, Sequence
from math import lcm

from foldmath.paper.moments.moment import Moment
from foldmath.paper.steps import Shade
from foldmath.plane.numbers import denominator
from foldmath.statements.composing import equation, less, part_of, times
from foldmath.statements.explaining.found import Family, Found
from foldmath.statements.explaining.parts_of_parts import Nested, sentences_between
from foldmath.statements.explaining.renaming import product_and_factor, renamed
from foldmath.statements.ratios import LARGEST_DENOMINATOR, fraction, lowest_terms


def shading_sentences(moments: Sequence[Moment]) -> Iterator[Found]:
    """Give what the last step, a shading, shows; with an earlier one across it, their product.

    Args:
        moments: from the open sheet to the shading.
    """
    shadings = [moment.step for moment in moments if isinstance(moment.step, Shade)]
    *earlier, now = shadings
    panels = len(moments[-1].after.panels)
    taken = fraction(now.taken, now.parts)
    if len(moments[-1].sizes) == 1 and panels <= LARGEST_DENOMINATOR and panels % now.parts == 0:
        if panels > now.parts:
            yield renamed(taken, panels)
        if taken != lowest_terms(taken.value):
            yield Found(Family.EQUIVALENT, equation(taken, taken.value))
    if now.taken < now.parts:
        yield Found(Family.COMPARISON, less(taken, 1))
    across = [shading for shading in earlier if shading.axis is not now.axis]
    if len(shadings) == 2 and across:
        yield from _crossing(across[0], now, panels)


def _crossing(first: Shade, second: Shade, panels: int) -> Iterator[Found]:
    """Two shadings cross: the panels shaded twice are the product, read from either side."""
    one, other = fraction(first.taken, first.parts), fraction(second.taken, second.parts)
    both = fraction(first.taken * second.taken, first.parts * second.parts)
    of = equation(part_of(other, one), both)
    yield Found(Family.SIZE, equation(times(one, other), both), of)
    yield Found(Family.COUNT, equation(times(first.taken, second.taken), both.numerator))
    yield Found(Family.COUNT, equation(times(first.parts, second.parts), both.denominator))
    if both.denominator < panels <= LARGEST_DENOMINATOR and panels % both.denominator == 0:
        yield renamed(both, panels)
    if denominator(both.value) < both.denominator <= LARGEST_DENOMINATOR:
        yield Found(Family.EQUIVALENT, equation(both, both.value))
    for factor, share in ((one, other), (other, one)):
        yield from sentences_between(Nested(factor.value, both.value, counted=False))
        if share.value < 1:
            yield product_and_factor(factor.value, share.value)
    if one.value != other.value:
        smaller, larger = sorted((one, other), key=lambda part: part.value)
        yield Found(Family.COMPARISON, less(smaller, larger))
    common = lcm(one.denominator, other.denominator)
    if common <= LARGEST_DENOMINATOR:
        yield from (renamed(part, common) for part in (one, other) if part.denominator < common)
