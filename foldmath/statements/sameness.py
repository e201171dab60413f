"""When two sentences are the same: but for the order of their terms, factors and sides."""

from foldmath.statements.expressions import Claim, Expression, Negative, Operation, Power, Sign
from foldmath.statements.ratios import Ratio


def same(a: Claim, b: Claim) -> bool:
    """Tell whether two sentences say the same, but for the order of their terms, factors and sides.

    ``of`` is read as ×. Terms are not reduced: ``1/2 of 2/3 = 2/6`` and ``1/2 of 2/3 = 1/3`` differ.
    """
    return form(a) == form(b)


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
    found = []
    # The left side is walked, not called into: a sum of all panels may be thousands of terms deep.
    while isinstance(expression, Operation) and expression.sign in (Sign.PLUS, Sign.MINUS):
        other = sign if expression.sign is Sign.PLUS else {"+": "−", "−": "+"}[sign]
        found += _terms(expression.right, other)
        expression = expression.left
    return [*found, sign + _form(expression)]


def _factors(expression: Expression, sign: str = "×") -> list[str]:
    if isinstance(expression, Operation) and expression.sign not in (Sign.PLUS, Sign.MINUS):
        times = expression.sign in (Sign.TIMES, Sign.OF)
        other = sign if times else {"×": "÷", "÷": "×"}[sign]
        return _factors(expression.left, sign) + _factors(expression.right, other)
    return [sign + _form(expression)]
