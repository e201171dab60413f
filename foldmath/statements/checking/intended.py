"""The true sentences that a false one was probably meant to be: small edits, each proved exactly.

An edit changes one thing that a writer easily gets wrong: a number is written for its reciprocal (a count
for a size), one sign for another, or the two numbers of ÷ or − in the wrong order. Fewer edits come first,
and likelier edits among equally many. Two edits are tried only where both mix count and size up, since
``4 × 2 = 8`` and ``1/4 × 1/2 = 1/8`` describe one fold; any other pair is a different sentence.
[The order of likelihood is common practice, no source.]
"""

from collections.abc import Callable, Iterator
from dataclasses import replace
from enum import IntEnum
from functools import partial
from itertools import combinations, pairwise
from typing import TypeAlias

from foldmath.plane.numbers import Exact
from foldmath.statements.checking.run_on import steps_in_one
from foldmath.statements.composing import equation, expression
from foldmath.statements.expressions import (
    Claim,
    Comparison,
    Expression,
    Negative,
    Operation,
    Power,
    Sign,
    is_bare,
    is_true,
    value,
)
from foldmath.statements.ratios import Form, Ratio, fraction, whole_number
from foldmath.statements.sameness import form
from foldmath.values import frozen

MOST_MEANT = 4
"""No more sentences than this are offered."""


class Slip(IntEnum):
    """What an edit mends, likeliest slip first."""

    ORDER = 0
    COUNT_FOR_SIZE = 1
    TIMES_FOR_DIVIDE = 2
    ANOTHER_SIGN = 3
    RECIPROCAL = 4


Path: TypeAlias = tuple[int, ...]
"""The way to a part of a claim: the side, then 0 for left and 1 for right at each sign."""


@frozen
class Edit:
    """A change to one part of a claim."""

    path: Path
    change: Callable[[Expression], Expression]
    slip: Slip


def intended(claim: Claim) -> tuple[Claim, ...]:
    """Give the true sentences that a false claim was probably meant to be, best first.

    Returns:
        One to ``MOST_MEANT`` sentences, each proved; where no small edit makes the claim true, the claim
        with its answer corrected; where numbers are only compared, the right comparison; where equals signs
        run on, all steps in one.
    """
    if set(claim.comparisons) != {Comparison.EQUAL} or all(map(is_bare, claim.sides)):
        return (rightly_compared(claim),)
    if whole := steps_in_one(claim):
        in_one = equation(whole, claim.answer)
        return (in_one,) if is_true(in_one) else intended(in_one)
    found: dict[str, Claim] = {}
    mended: list[Edit] = []
    for edits in _likeliest_first(claim):
        if any(edit in mended for edit in edits):
            continue
        edited = _edited(claim, edits)
        if is_true(edited):
            found.setdefault(form(edited), edited)
            mended += edits if len(edits) == 1 else ()
    return tuple(found.values())[:MOST_MEANT] or (rightly_answered(claim),)


def rightly_compared(claim: Claim) -> Claim:
    """Write a claim with the right comparison wherever one fails."""
    values = [value(side) for side in claim.sides]
    pairs = zip(claim.comparisons, pairwise(values), strict=True)
    right = tuple(
        comparison if comparison.holds(before, after) else _comparison(before, after, comparison)
        for comparison, (before, after) in pairs
    )
    return replace(claim, comparisons=right)


def _comparison(left: Exact, right: Exact, failed: Comparison) -> Comparison:
    if failed in (Comparison.AT_MOST, Comparison.AT_LEAST):
        return failed.turned
    if left == right:
        return Comparison.EQUAL
    return Comparison.LESS if left < right else Comparison.GREATER


def rightly_answered(claim: Claim) -> Claim:
    """Write a claim with what its first worked side really is in place of every side that differs."""
    answer = value(next(side for side in claim.sides if not is_bare(side)))
    sides = (side if value(side) == answer else expression(answer) for side in claim.sides)
    return equation(*dict.fromkeys(sides))


def _likeliest_first(claim: Claim) -> Iterator[tuple[Edit, ...]]:
    singles = sorted(_edits(claim), key=lambda edit: edit.slip)
    yield from ((edit,) for edit in singles)
    count_and_size = [edit for edit in singles if edit.slip in (Slip.COUNT_FOR_SIZE, Slip.TIMES_FOR_DIVIDE)]
    yield from sorted(combinations(count_and_size, 2), key=lambda pair: pair[0].slip + pair[1].slip)


def _edits(claim: Claim) -> Iterator[Edit]:
    for index, side in enumerate(claim.sides):
        yield from _edits_within(side, (index,))


def _edits_within(expression: Expression, path: Path) -> Iterator[Edit]:
    if isinstance(expression, Ratio):
        yield from _edits_of_number(expression, path)
    elif isinstance(expression, Negative):
        yield from _edits_within(expression.inner, (*path, 0))
    elif isinstance(expression, Power):
        yield from _edits_within(expression.base, (*path, 0))
    elif expression.sign is not Sign.BAR:
        yield from _edits_of_sign(expression.sign, path)
        yield from _edits_within(expression.left, (*path, 0))
        yield from _edits_within(expression.right, (*path, 1))


def _edits_of_number(number: Ratio, path: Path) -> Iterator[Edit]:
    above, below = number.numerator, number.denominator
    if above in (0, below) or number.form is Form.DECIMAL:
        return
    reciprocal = whole_number(below) if above == 1 else fraction(below, above)
    slip = Slip.COUNT_FOR_SIZE if 1 in (above, below) else Slip.RECIPROCAL
    yield Edit(path, lambda _: reciprocal, slip)


def _edits_of_sign(sign: Sign, path: Path) -> Iterator[Edit]:
    others = {
        Sign.PLUS: (Sign.MINUS, Sign.TIMES),
        Sign.MINUS: (Sign.PLUS,),
        Sign.TIMES: (Sign.DIVIDE, Sign.PLUS, Sign.MINUS),
        Sign.OF: (Sign.DIVIDE, Sign.PLUS),
        Sign.DIVIDE: (Sign.TIMES,),
    }
    for other in others[sign]:
        slip = Slip.TIMES_FOR_DIVIDE if Sign.DIVIDE in (sign, other) else Slip.ANOTHER_SIGN
        yield Edit(path, partial(_with_sign, sign=other), slip)
    if sign in (Sign.MINUS, Sign.DIVIDE):
        yield Edit(path, _turned_round, Slip.ORDER)


def _with_sign(part: Expression, sign: Sign) -> Expression:
    """Put another sign; ``a of b`` with ÷ is ``b ÷ a``, as half of 4 is taken for 4 ÷ 1/2."""
    if not isinstance(part, Operation):
        return part
    if part.sign is Sign.OF and sign is Sign.DIVIDE:
        return Operation(sign, part.right, part.left)
    return replace(part, sign=sign)


def _turned_round(part: Expression) -> Expression:
    return replace(part, left=part.right, right=part.left) if isinstance(part, Operation) else part


def _edited(claim: Claim, edits: tuple[Edit, ...]) -> Claim:
    """Make the edits, the innermost first."""
    sides = list(claim.sides)
    for edit in sorted(edits, key=lambda edit: -len(edit.path)):
        side, *inward = edit.path
        sides[side] = _changed(sides[side], inward, edit.change)
    return replace(claim, sides=tuple(sides))


def _changed(part: Expression, inward: list[int], change: Callable[[Expression], Expression]) -> Expression:
    if not inward:
        return change(part)
    step, *further = inward
    if isinstance(part, Operation):
        if step:
            return replace(part, right=_changed(part.right, further, change))
        left = _changed(part.left, further, change)
        return replace(part, left=left, sign=_said_as(part.sign, left))
    if isinstance(part, Power):
        return replace(part, base=_changed(part.base, further, change))
    return Negative(_changed(part.inner, further, change)) if isinstance(part, Negative) else part


def _said_as(sign: Sign, left: Expression) -> Sign:
    """Say ``2 × 4``, where the edit would make it ``2 of 4``."""
    a_part = not isinstance(left, Ratio) or left.numerator < left.denominator
    return sign if sign is not Sign.OF or a_part else Sign.TIMES
