"""Checking a claim: takes a sentence of arithmetic, says whether it is true and what was probably meant."""

from dataclasses import dataclass

from foldmath.plane.numbers import Exact, written
from foldmath.statements.checking.intended import intended, rightly_compared
from foldmath.statements.claim_grammar import read_claim
from foldmath.statements.composing import equation
from foldmath.statements.expressions import (
    Claim,
    Comparison,
    Expression,
    Operation,
    Sign,
    value,
)
from foldmath.statements.products import Product
from foldmath.statements.ratios import Ratio
from foldmath.statements.rules import Rule
from foldmath.statements.rules.problems import Sum
from foldmath.statements.rules.wrong_answers import rule_behind


@dataclass(frozen=True, kw_only=True)
class Verdict:
    """What can be said about a claim.

    Args:
        claim: the claim itself.
        true: whether every comparison in it holds.
        values: what each side is worth.
        fails: the first comparison that fails, counted from 0; None in a true claim.
        really: a true sentence about the side that was worked out, ``4 × 1/2 = 2``; a true claim itself.
        meant: the true sentences that were probably meant, best first; none for a true claim.
        slip: the wrong-answer rule that gives this answer, or None.
    """

    claim: Claim
    true: bool
    values: tuple[Exact, ...]
    fails: int | None
    really: Claim
    meant: tuple[Claim, ...]
    slip: Rule | None

    @property
    def left(self) -> Exact:
        """The value on the left of the comparison that fails; of the first side in a true claim."""
        return self.values[self.fails or 0]

    @property
    def right(self) -> Exact:
        """The value on the right of the comparison that fails; of the last side in a true claim."""
        return self.values[-1 if self.fails is None else self.fails + 1]


def check_claim(text: str) -> Verdict:
    """Read a claim and check it exactly.

    Raises:
        SentenceRefused: it cannot be read.
    """
    claim = read_claim(text)
    values = tuple(value(side) for side in claim.sides)
    fails = next(
        (
            index
            for index, comparison in enumerate(claim.comparisons)
            if not comparison.holds(values[index], values[index + 1])
        ),
        None,
    )
    if fails is None:
        return Verdict(claim=claim, true=True, values=values, fails=None, really=claim, meant=(), slip=None)
    failing = Claim(claim.sides[fails : fails + 2], (claim.comparisons[fails],))
    return Verdict(
        claim=claim,
        true=False,
        values=values,
        fails=fails,
        really=really(failing),
        meant=intended(claim),
        slip=_slip(failing),
    )


def verdict_json(verdict: Verdict) -> dict[str, object]:
    """Give a verdict as JSON has it: numbers are strings, exact, in lowest terms."""
    return {
        "claim": str(verdict.claim),
        "true": verdict.true,
        "left": written(verdict.left),
        "right": written(verdict.right),
        "really": str(verdict.really),
        "meant": [str(claim) for claim in verdict.meant],
        "slip": verdict.slip.name if verdict.slip else None,
    }


def really(failing: Claim) -> Claim:
    """Say what the side that is worked out really is, ``4 × 1/2 = 2``; bare numbers are compared rightly.

    Args:
        failing: a false sentence of two sides.
    """
    worked = next((side for side in failing.sides if not isinstance(side, Ratio)), None)
    if worked is None or failing.comparisons[0] is not Comparison.EQUAL:
        return rightly_compared(failing)
    return equation(worked, value(worked))


def _slip(failing: Claim) -> Rule | None:
    """Find the wrong-answer rule behind an answer to one product or sum."""
    if failing.comparisons[0] is not Comparison.EQUAL:
        return None
    for asked, answer in (failing.sides, failing.sides[::-1]):
        if isinstance(answer, Ratio) and (factors := _two_numbers(asked)):
            sign, first, second = factors
            asks = Sum(first, second) if sign is Sign.PLUS else Product(first, second, sign)
            return rule_behind(asks, answer)
    return None


def _two_numbers(expression: Expression) -> tuple[Sign, Ratio, Ratio] | None:
    if not isinstance(expression, Operation) or expression.sign not in (Sign.TIMES, Sign.OF, Sign.PLUS):
        return None
    if isinstance(expression.left, Ratio) and isinstance(expression.right, Ratio):
        return expression.sign, expression.left, expression.right
    return None
