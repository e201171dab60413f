"""Checking a claim: takes a sentence of arithmetic, says whether it is true and what was probably meant."""

from foldmath.plane.numbers import Exact, written
from foldmath.statements.checking.intended import intended, rightly_compared
from foldmath.statements.checking.run_on import steps_in_one
from foldmath.statements.checking.units_behind import apart, misplaced
from foldmath.statements.claim_grammar import parse_comparison, with_nearest
from foldmath.statements.composing import equation
from foldmath.statements.expressions import (
    Claim,
    Comparison,
    Expression,
    Operation,
    Power,
    Sign,
    factors,
    is_bare,
    is_true,
    value,
)
from foldmath.statements.products import Product
from foldmath.statements.ratios import Ratio
from foldmath.statements.refusals import SentenceRefused
from foldmath.statements.rules import Rule
from foldmath.statements.rules.problems import InSteps, PartsOfParts, Problem, Raised, Sum
from foldmath.statements.rules.wrong_answers import rule_behind
from foldmath.values import frozen


@frozen(kw_only=True)
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


def read_claim(text: str) -> Claim:
    """Read a sentence with at least one comparison, with what it counts or measures behind it or without.

    Raises:
        SentenceRefused: it cannot be read; the hint is the nearest true sentence that can, if one is near.
    """
    sentence, words, kind, column = apart(text)
    try:
        claim = parse_comparison(sentence)
    except SentenceRefused as refusal:
        raise with_nearest(refusal, sentence, lambda near: str(_made_true(parse_comparison(near)))) from None
    if why := misplaced(kind, claim):
        raise SentenceRefused(column, why, words, str(_made_true(claim)))
    return claim


def _made_true(near: Claim) -> Claim:
    """Give a sentence that may be tried: itself, or the true one that it was probably meant to be."""
    return near if is_true(near) else intended(near)[0]


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
        slip=_slip(claim, failing),
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
    worked = next((side for side in failing.sides if not is_bare(side)), None)
    if worked is None or failing.comparisons[0] is not Comparison.EQUAL:
        return rightly_compared(failing)
    return equation(worked, value(worked))


def _slip(claim: Claim, failing: Claim) -> Rule | None:
    """Find the wrong-answer rule behind a false sentence, or behind the answer in it that is wrong."""
    if whole := steps_in_one(claim):
        return rule_behind(InSteps(claim, whole), claim)
    if failing.comparisons[0] is not Comparison.EQUAL:
        return None
    for asked, answer in (failing.sides, failing.sides[::-1]):
        if isinstance(answer, Ratio) and (problem := _problem(asked)):
            return rule_behind(problem, answer)
    return None


def _problem(asked: Expression) -> Problem | None:
    """Give what a side asks for, if pupils' ways to a wrong answer are known."""
    if isinstance(asked, Power) and isinstance(asked.base, Ratio):
        return Raised(asked.base, asked.exponent)
    if not isinstance(asked, Operation):
        return None
    numbers = [part for part in factors(asked) if isinstance(part, Ratio)]
    if len(numbers) > 2 and len(numbers) == len(factors(asked)):
        return PartsOfParts(tuple(numbers))
    if not (isinstance(asked.left, Ratio) and isinstance(asked.right, Ratio)):
        return None
    if asked.sign is Sign.PLUS:
        return Sum(asked.left, asked.right)
    return Product(asked.left, asked.right, asked.sign) if asked.sign in (Sign.TIMES, Sign.OF) else None
