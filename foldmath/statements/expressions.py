"""Sentences of arithmetic as values: what they are worth, how they are written, and when two are the same."""

from dataclasses import dataclass
from enum import Enum
from math import prod
from typing import TypeAlias

from foldmath.plane.numbers import ONE, ZERO, Exact, written
from foldmath.statements.ratios import Ratio


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


@dataclass(frozen=True)
class Operation:
    """Two expressions joined by a sign."""

    sign: Sign
    left: "Expression"
    right: "Expression"


@dataclass(frozen=True)
class Negative:
    """An expression with a minus sign before it."""

    inner: "Expression"


@dataclass(frozen=True)
class Power:
    """An expression multiplied by itself, as often as a small raised number says."""

    base: "Expression"
    exponent: int


Expression: TypeAlias = Ratio | Operation | Negative | Power

_RAISED = str.maketrans("0123456789", "⁰¹²³⁴⁵⁶⁷⁸⁹")


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

    @property
    def turned(self) -> "Comparison":
        """The same comparison, read from right to left."""
        return {
            Comparison.LESS: Comparison.GREATER,
            Comparison.GREATER: Comparison.LESS,
            Comparison.AT_MOST: Comparison.AT_LEAST,
            Comparison.AT_LEAST: Comparison.AT_MOST,
        }.get(self, self)


@dataclass(frozen=True)
class Claim:
    """A sentence: n + 1 sides with n comparisons between them."""

    sides: tuple[Expression, ...]
    comparisons: tuple[Comparison, ...]

    def __str__(self) -> str:
        said = show(self.sides[0])
        for comparison, side in zip(self.comparisons, self.sides[1:], strict=True):
            said += f" {comparison.value} {show(side)}"
        return said


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


def show(expression: Expression) -> str:
    """Write an expression with the trade's signs, and with no bracket that is not needed."""
    if isinstance(expression, Ratio):
        return expression.text
    if isinstance(expression, Negative):
        return f"−{_within(expression.inner, 2)}"
    if isinstance(expression, Power):
        return f"{_beside_bar(expression.base)}{raised(expression.exponent)}"
    tightness = _TIGHTNESS[expression.sign]
    if expression.sign is Sign.BAR:
        return f"{_beside_bar(expression.left)}/{_beside_bar(expression.right)}"
    left, right = _within(expression.left, tightness), _within(expression.right, tightness + 1)
    return f"{left} {expression.sign.value} {right}"


def raised(exponent: int) -> str:
    """Write a number small and high, as exponents are."""
    return str(exponent).translate(_RAISED)


def show_value(number: Exact) -> str:
    """Write a number in lowest terms, with the trade's minus sign."""
    return written(number) if number >= ZERO else f"−{written(-number)}"


def _within(expression: Expression, tightness: int) -> str:
    shown = show(expression)
    return shown if _tightness(expression) >= tightness else f"({shown})"


def _tightness(expression: Expression) -> int:
    if isinstance(expression, Ratio):
        return _NUMBER_TIGHTNESS
    if isinstance(expression, Power):
        return _TIGHTNESS[Sign.BAR]
    return _TIGHTNESS[expression.sign] if isinstance(expression, Operation) else _TIGHTNESS[Sign.MINUS]


def _beside_bar(expression: Expression) -> str:
    bare = isinstance(expression, Ratio) and expression.whole
    return show(expression) if bare else f"({show(expression)})"


def form(claim: Claim) -> str:
    """Give a text that two claims share if they differ only in the order of terms, factors and sides.

    ``of`` is read as ×, and ``a > b`` as ``b < a``. Numbers keep their terms: 2/4 is not 1/2 here.
    """
    sides = [_form(side) for side in claim.sides]
    signs = [comparison.value for comparison in claim.comparisons]
    if len(set(signs)) == 1 and signs[0] in "=≠":
        return f" {signs[0]} ".join(sorted(sides))
    turned = [comparison.turned.value for comparison in reversed(claim.comparisons)]
    return min(_joined(sides, signs), _joined(sides[::-1], turned))


def _joined(sides: list[str], signs: list[str]) -> str:
    return " ".join([sides[0], *(f"{sign} {side}" for sign, side in zip(signs, sides[1:], strict=True))])


def _form(expression: Expression) -> str:
    if isinstance(expression, Ratio):
        return f"{expression.numerator}/{expression.denominator}"
    if isinstance(expression, Negative):
        return f"(−{_form(expression.inner)})"
    if isinstance(expression, Power):
        return f"({_form(expression.base)}^{expression.exponent})"
    if expression.sign in (Sign.PLUS, Sign.MINUS):
        return f"({' '.join(sorted(_terms(expression)))})"
    return f"({' '.join(sorted(_factors(expression)))})"


def _terms(expression: Expression, sign: str = "+") -> list[str]:
    if isinstance(expression, Operation) and expression.sign in (Sign.PLUS, Sign.MINUS):
        other = sign if expression.sign is Sign.PLUS else {"+": "−", "−": "+"}[sign]
        return _terms(expression.left, sign) + _terms(expression.right, other)
    return [sign + _form(expression)]


def _factors(expression: Expression, sign: str = "×") -> list[str]:
    if isinstance(expression, Operation) and expression.sign not in (Sign.PLUS, Sign.MINUS):
        times = expression.sign in (Sign.TIMES, Sign.OF)
        other = sign if times else {"×": "÷", "÷": "×"}[sign]
        return _factors(expression.left, sign) + _factors(expression.right, other)
    return [sign + _form(expression)]
