"""A wrong-answer rule as a value: its name, its code, and what a pupil who follows it makes of a problem."""

from collections.abc import Callable
from dataclasses import field
from typing import Any, Generic, TypeVar, overload

from foldmath.statements.answers import Answer, Folds
from foldmath.statements.ratios import Ratio, fraction, whole_number
from foldmath.statements.rules.problems import FoldsAsked, Problem
from foldmath.values import frozen

Asked = TypeVar("Asked")


@frozen
class Act(Generic[Asked]):
    """What a rule makes of one kind of problem.

    Args:
        on: the kind.
        answer: gives what is written; None where the rule gives nothing that a pupil would leave standing.
    """

    on: type[Asked]
    answer: Callable[[Asked], Answer | None]


@frozen(kw_only=True)
class Rule:
    """A way to a wrong answer that pupils follow; two rules of one name are one rule.

    Args:
        name: by which its words are found, and JSON tells it.
        code: one word of at most five letters, for the head of a narrow column.
        acts: on the kinds of problem where it leads somewhere; two acts on one kind are two answers, and none
            where only the teacher hears of it.
        rare: further acts, on answers that marks explain, and for which a key has no room.
        at_folds: whether it is a slip at folding and saying what a fold did, so that folding again helps.
        per_mille: its share of the answers in the studies, in a thousand; None where no study asked.
    """

    name: str
    code: str = field(compare=False)
    acts: tuple[Act[Any], ...] = field(compare=False)
    rare: tuple[Act[Any], ...] = field(default=(), compare=False)
    at_folds: bool = field(default=False, compare=False)
    per_mille: int | None = field(default=None, compare=False)

    def acts_on(self, kind: type[Problem | FoldsAsked]) -> bool:
        """Tell whether the rule makes anything of a kind of problem."""
        return any(act.on is kind for act in self.acts)

    @overload
    def answers(self, problem: Problem) -> tuple[Answer, ...]: ...

    @overload
    def answers(self, problem: FoldsAsked) -> tuple[Folds, ...]: ...

    def answers(self, problem: Problem | FoldsAsked) -> tuple[Any, ...]:
        """Give what a pupil who follows the rule writes; it may happen to be right."""
        return _given(self.acts, problem)

    def rare_answers(self, problem: Problem | FoldsAsked) -> tuple[Any, ...]:
        """Give what few of those who follow the rule write."""
        return _given(self.rare, problem)


def _given(acts: tuple[Act[Any], ...], problem: Problem | FoldsAsked) -> tuple[Any, ...]:
    given = [act.answer(problem) for act in acts if act.on is type(problem)]
    return tuple(answer for answer in given if answer is not None)


def number(above: int, below: int) -> Ratio | None:
    """Write an answer, unless it is no number or none that a pupil would leave standing."""
    if above <= 0 or below <= 0:
        return None
    return whole_number(above) if below == 1 else fraction(above, below)
