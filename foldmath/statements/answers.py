"""Answers as values: numbers, signs, sentences, sorted sentences and steps, until somebody says them."""

from collections import Counter
from functools import cached_property
from typing import TypeAlias

from foldmath.paper.steps import Step
from foldmath.plane.numbers import Exact
from foldmath.statements.expressions import Claim, Comparison, Expression, factors
from foldmath.statements.ratios import Ratio
from foldmath.statements.sentences import About
from foldmath.values import frozen

Worked: TypeAlias = Claim | frozenset[tuple[Expression, int]]
"""What is worked out: a comparison, or factors and how often each stands there."""


@frozen
class Working:
    """True sentences of figures, one after the other, that lead to an answer or give its reason."""

    claims: tuple[Claim, ...]

    def __str__(self) -> str:
        return ", ".join(map(str, self.claims))

    @cached_property
    def worked(self) -> Worked:
        """Give the factors that it begins with: 2/3 × 1/2 is 1/2 × 2/3; a comparison is a whole."""
        first = self.claims[0]
        if first.comparisons[0] is not Comparison.EQUAL:
            return first
        return frozenset(Counter(factors(first.asked)).items())


@frozen
class Sorting:
    """What sentences are about, in the order in which they stand."""

    abouts: tuple[About, ...]

    def __str__(self) -> str:
        return ", ".join(about.value for about in self.abouts)


@frozen
class Folds:
    """Steps to do one after the other on an open sheet."""

    steps: tuple[Step, ...]


Answer: TypeAlias = Ratio | Comparison | Claim | Working | Sorting | Folds
"""As a pupil would write it, not reduced."""

Worth: TypeAlias = Exact | Comparison | Claim | Working | Sorting | Folds


def worth(answer: Answer) -> Worth:
    """Say what an answer is worth: the value of a number; any other is worth what it says."""
    return answer.value if isinstance(answer, Ratio) else answer


def working(*claims: Claim) -> Working:
    """Put the sentences of a working in order."""
    return Working(claims)
