"""Answers as values: numbers, signs, sentences, sorted sentences and steps, until somebody says them."""

from dataclasses import dataclass
from typing import TypeAlias

from foldmath.paper.steps import Step
from foldmath.plane.numbers import Exact
from foldmath.statements.expressions import Claim, Comparison
from foldmath.statements.ratios import Ratio
from foldmath.statements.sentences import About


@dataclass(frozen=True)
class Working:
    """True sentences of figures, one after the other, that lead to an answer or give its reason."""

    claims: tuple[Claim, ...]

    def __str__(self) -> str:
        return ", ".join(map(str, self.claims))


@dataclass(frozen=True)
class Sorting:
    """What sentences are about, in the order in which they stand."""

    abouts: tuple[About, ...]

    def __str__(self) -> str:
        return ", ".join(about.value for about in self.abouts)


@dataclass(frozen=True)
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
