"""A whole, a part of it and a part of that part: the sentences that three things of different size make.

Every ratio of two of the things is a number that can be seen: how many panels the sheet has, what fraction
of the sheet a panel is, how many parts a panel was cut into. Ratios that meet in one thing multiply
(a : b times b : c is a : c), so the sentences are all those of the form x × y = z and z ÷ x = y that the
things allow, and no others that happen to come out right.
"""

from collections.abc import Iterator
from enum import IntEnum
from itertools import product
from typing import NamedTuple

from foldmath.plane.numbers import ONE, Exact
from foldmath.statements.composing import divided, equation, part_of, times
from foldmath.statements.explaining.found import Family, Found
from foldmath.statements.ratios import lowest_terms


class Thing(IntEnum):
    """Which of the three, the largest first."""

    WHOLE = 0
    PART = 1
    SMALLER_PART = 2


class Nested(NamedTuple):
    """Three things, by the fraction of the whole that a part is, and a smaller part.

    Args:
        part: the fraction of the whole.
        smaller: the fraction of the whole; less than ``part``.
        counted: whether the whole is covered by such parts, and by such smaller parts, so that how many
            they are may be said.
    """

    part: Exact
    smaller: Exact
    counted: bool

    def ratio(self, of: Thing, to: Thing) -> Exact:
        """Say how large one thing is, the other taken as one."""
        sizes = (ONE, self.part, self.smaller)
        return sizes[of] / sizes[to]

    def seen(self, of: Thing, to: Thing) -> bool:
        """Tell whether a ratio can be seen: a share always, how many there are only where they cover."""
        return of > to or self.counted


def sentences_between(things: Nested) -> Iterator[Found]:
    """Give every product of two ratios that meet in a thing, and the two quotients that undo it."""
    # The smaller part is what the fold has just made: what it is told of comes first.
    for b, a, c in product(reversed(Thing), Thing, Thing):
        if b not in (a, c) and all(things.seen(*pair) for pair in ((a, b), (b, c), (a, c))):
            yield _multiplied(things, a, b, c)
            first, second, answer = things.ratio(a, b), things.ratio(b, c), things.ratio(a, c)
            yield Found(Family.QUOTIENT, equation(divided(answer, first), second))
            yield Found(Family.QUOTIENT, equation(divided(answer, second), first))


def _multiplied(things: Nested, a: Thing, b: Thing, c: Thing) -> Found:
    """Say that (a to b) × (b to c) = (a to c)."""
    first, second, answer = (lowest_terms(things.ratio(*pair)) for pair in ((a, b), (b, c), (a, c)))
    of = equation(part_of(first, second), answer) if a > b else None
    if a == c:
        return Found(Family.WHOLE, equation(times(first, second), answer), of)
    if (a, b, c) == tuple(Thing):
        return Found(Family.COUNT, equation(times(first, second), answer))
    if (c, b, a) == tuple(Thing):
        return Found(Family.SIZE, equation(times(second, first), answer), of)
    return Found(Family.PRODUCT, equation(times(first, second), answer), of)
