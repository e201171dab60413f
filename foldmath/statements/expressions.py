"""Sentences of arithmetic as values: what they are worth, and the numbers and signs that stand in them."""

from collections.abc import Iterator
from enum import Enum
from itertools import pairwise
from math import prod
from typing import TypeAlias

from foldmath.plane.numbers import ONE, Exact
from foldmath.statements.ratios import Ratio
from foldmath.values import frozen


class Sign(Enum):
    """What joins two numbers, as the trade writes it; ``OF`` is read as ``TIMES`` and binds tighter."""

    PLUS = "+"
    MINUS = "−"
    TIMES = "×"
    DIVIDE = "÷"
    OF = "of"
    BAR = "/"


_TIGHTNESS = {Sign.PLUS: 1, Sign.MINUS: 1, Sign.TIMES: 2, Sign.DIVIDE: 2, Sign.OF: 3, Sign.BAR: 4}
_NUMBER_TIGHTNESS = 5


@frozen
class Operation:
    """Two expressions joined by a sign."""

    sign: Sign
    left: "Expression"
    right: "Expression"

    def __str__(self) -> str:
        return _text(_written_out(self))


@frozen
class Negative:
    """An expression with a minus sign before it."""

    inner: "Expression"

    def __str__(self) -> str:
        return _text(_written_out(self))


@frozen
class Power:
    """An expression multiplied by itself, as often as a small raised number says."""

    base: "Expression"
    exponent: int

    def __str__(self) -> str:
        return _text(_written_out(self))


Expression: TypeAlias = Ratio | Operation | Negative | Power

_RAISED = str.maketrans("0123456789", "⁰¹²³⁴⁵⁶⁷⁸⁹")


def is_bare(expression: Expression) -> bool:
    """Tell whether there is nothing to work out: a number alone, or one below zero."""
    return isinstance(expression.inner if isinstance(expression, Negative) else expression, Ratio)


class Comparison(Enum):
    """How one side of a sentence stands to the next."""

    EQUAL = "="
    UNEQUAL = "≠"
    LESS = "<"
    GREATER = ">"
    AT_MOST = "≤"
    AT_LEAST = "≥"

    def holds(self, left: Exact, right: Exact) -> bool:
        """Tell whether two numbers stand so."""
        return {
            Comparison.EQUAL: left == right,
            Comparison.UNEQUAL: left != right,
            Comparison.LESS: left < right,
            Comparison.GREATER: left > right,
            Comparison.AT_MOST: left <= right,
            Comparison.AT_LEAST: left >= right,
        }[self]

    def __str__(self) -> str:
        return self.value

    @property
    def turned(self) -> "Comparison":
        """The same comparison, read from right to left."""
        return {
            Comparison.LESS: Comparison.GREATER,
            Comparison.GREATER: Comparison.LESS,
            Comparison.AT_MOST: Comparison.AT_LEAST,
            Comparison.AT_LEAST: Comparison.AT_MOST,
        }.get(self, self)


@frozen
class Claim:
    """A sentence: n + 1 sides with n comparisons between them."""

    sides: tuple[Expression, ...]
    comparisons: tuple[Comparison, ...]

    @property
    def asked(self) -> Expression:
        """The side that stands first, which is worked out."""
        return self.sides[0]

    @property
    def answer(self) -> Expression:
        """The side that stands last, to which the others come."""
        return self.sides[-1]

    def __str__(self) -> str:
        return _text(written_out(self))


def terms(expression: Expression) -> tuple[Expression, ...]:
    """Give what an expression adds up, from the left; itself where it is no sum."""
    found: list[Expression] = []
    while isinstance(expression, Operation) and expression.sign is Sign.PLUS:
        found.append(expression.right)
        expression = expression.left
    return (expression, *reversed(found))


Figures: TypeAlias = Claim | Expression
"""A whole sentence, or what may be a side of one."""


def addends(claim: Claim) -> tuple[Claim, ...]:
    """Give the terms that a sentence adds, each by itself, the last one with what they make.

    ``2 × 1/4 + 1 × 1/2 = 1`` gives ``2 × 1/4`` and ``1 × 1/2 = 1``: where a long sum may be broken.
    """
    *first, last = terms(claim.asked)
    return (*(Claim((term,), ()) for term in first), Claim((last, *claim.sides[1:]), claim.comparisons))


def factors(expression: Expression) -> tuple[Expression, ...]:
    """Give what an expression multiplies, from the left; itself where it is no product."""
    if isinstance(expression, Operation) and expression.sign in (Sign.TIMES, Sign.OF):
        return (*factors(expression.left), *factors(expression.right))
    return (expression,)


def numbers_in(expression: Expression) -> tuple[Ratio, ...]:
    """Give the numbers of an expression, from the left."""
    if isinstance(expression, Ratio):
        return (expression,)
    if isinstance(expression, Operation):
        return (*numbers_in(expression.left), *numbers_in(expression.right))
    return numbers_in(expression.base if isinstance(expression, Power) else expression.inner)


def value(expression: Expression) -> Exact:
    """Work an expression out, exactly.

    Raises:
        ZeroDivisionError: it divides by zero.
    """
    if isinstance(expression, Ratio):
        return expression.value
    if isinstance(expression, Negative):
        return -value(expression.inner)
    if isinstance(expression, Power):
        return prod([value(expression.base)] * expression.exponent, start=ONE)
    left, right = value(expression.left), value(expression.right)
    if expression.sign is Sign.PLUS:
        return left + right
    if expression.sign is Sign.MINUS:
        return left - right
    if expression.sign in (Sign.TIMES, Sign.OF):
        return left * right
    return left / right


def is_true(claim: Claim) -> bool:
    """Work every side out and tell whether every comparison holds; dividing by zero makes none true."""
    try:
        values = [value(side) for side in claim.sides]
    except ZeroDivisionError:
        return False
    pairs = zip(claim.comparisons, pairwise(values), strict=True)
    return all(comparison.holds(left, right) for comparison, (left, right) in pairs)


Written: TypeAlias = Ratio | Sign | Comparison | str
"""One thing that stands in a sentence: a number, a sign, or a bracket or small figure that touches one."""


def written_out(said: Figures) -> Iterator[Written]:
    """Give what stands in a sentence, from left to right, with no bracket that is not needed.

    Whoever shows sentences, in text, in a document or aloud, decides how numbers and signs look.
    """
    if not isinstance(said, Claim):
        yield from _written_out(said)
        return
    yield from _written_out(said.asked)
    for comparison, side in zip(said.comparisons, said.sides[1:], strict=True):
        yield comparison
        yield from _written_out(side)


def with_of(figures: Figures, of: str) -> str:
    """Give a sentence as text, with the word that a language has between a part and its whole."""
    return _text(written_out(figures), of)


def _text(written: Iterator[Written], of: str = Sign.OF.value) -> str:
    return "".join(_in_text(part, of) for part in written)


def _in_text(part: Written, of: str) -> str:
    if isinstance(part, Ratio):
        return part.text
    if isinstance(part, str):
        return part
    if part is Sign.OF:
        return f" {of} "
    return part.value if part is Sign.BAR else f" {part.value} "


def _written_out(expression: Expression) -> Iterator[Written]:
    """Walk to the leftmost number and back: a sum of all panels may be thousands of terms deep."""
    open_to_the_left: list[Operation] = []
    while isinstance(expression, Operation) and not _begins_with_bracket(expression):
        open_to_the_left.append(expression)
        expression = expression.left
    yield from _beginning(expression)
    for operation in reversed(open_to_the_left):
        yield operation.sign
        yield from _within(operation.right, _TIGHTNESS[operation.sign] + 1)


def _begins_with_bracket(operation: Operation) -> bool:
    return operation.sign is Sign.BAR or _tightness(operation.left) < _TIGHTNESS[operation.sign]


def _beginning(expression: Expression) -> Iterator[Written]:
    if isinstance(expression, Ratio):
        yield expression
    elif isinstance(expression, Negative):
        yield Sign.MINUS.value
        yield from _within(expression.inner, 2)
    elif isinstance(expression, Power):
        yield from _beside_bar(expression.base)
        yield raised(expression.exponent)
    elif expression.sign is Sign.BAR:
        yield from _beside_bar(expression.left)
        yield Sign.BAR
        yield from _beside_bar(expression.right)
    else:
        yield from _bracketed(expression.left, bare=False)
        yield expression.sign
        yield from _within(expression.right, _TIGHTNESS[expression.sign] + 1)


def raised(exponent: int) -> str:
    """Write a number small and high, as exponents are."""
    return str(exponent).translate(_RAISED)


def _within(expression: Expression, tightness: int) -> Iterator[Written]:
    return _bracketed(expression, bare=_tightness(expression) >= tightness)


def _beside_bar(expression: Expression) -> Iterator[Written]:
    return _bracketed(expression, bare=isinstance(expression, Ratio) and expression.whole)


def _bracketed(expression: Expression, *, bare: bool) -> Iterator[Written]:
    if not bare:
        yield "("
    yield from _written_out(expression)
    if not bare:
        yield ")"


def _tightness(expression: Expression) -> int:
    if isinstance(expression, Ratio):
        return _NUMBER_TIGHTNESS
    if isinstance(expression, Power):
        return _TIGHTNESS[Sign.BAR]
    return _TIGHTNESS[expression.sign] if isinstance(expression, Operation) else _TIGHTNESS[Sign.MINUS]
