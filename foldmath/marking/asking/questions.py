"""What a page asks, question by question, as far as marking must know it."""

from functools import cached_property
from typing import TypeAlias

from foldmath.phrases import Said
from foldmath.plane.numbers import Exact
from foldmath.statements.expressions import Claim, Comparison
from foldmath.statements.items import Level
from foldmath.statements.ratios import Ratio, lowest_terms, mixed_form
from foldmath.statements.rules.problems import Problem
from foldmath.statements.sentences import About
from foldmath.values import frozen


@frozen(kw_only=True)
class Question:
    """One column of the answers sheet.

    Args:
        column: its name: ``3``, ``F1 panels``.
        asks: what it asks, as the sheet says below its name.
        head: what stands above it where a teacher reads along; empty where that is its name.
        problem: what is worked out, on which wrong-answer rules act; None where they cannot.
        fold: the number of the page's fold that it is about; None for items and the exit ticket.
    """

    column: str
    asks: Said
    head: Said = ""
    problem: Problem | None = None
    fold: int | None = None


@frozen(kw_only=True)
class NumberQuestion(Question):
    """A question whose answer is one number.

    Args:
        answer: as the key has it.
        shown: the numbers that the pupil sees and may copy.
        over: the denominator that stands on the page already, so that only the numerator is written; else 0.
    """

    answer: Ratio
    shown: tuple[Ratio, ...] = ()
    over: int = 0

    @property
    def forms(self) -> frozenset[str]:
        """The answer as the key has it, in lowest terms, and mixed: all of them plainly right."""
        value = self.answer.value
        return frozenset((self.answer.text, lowest_terms(value).text, mixed_form(value).text))


@frozen(kw_only=True)
class NumbersQuestion(Question):
    """Several numbers: the sizes of unequal panels, or how many there are of each.

    Args:
        answers: in the order of the page.
        in_order: whether each belongs to a place; the sizes may come in any order.
    """

    answers: tuple[Ratio, ...]
    in_order: bool


@frozen(kw_only=True)
class SignQuestion(Question):
    """``<``, ``>`` or ``=``."""

    sign: Comparison


@frozen(kw_only=True)
class TicksQuestion(Question):
    """Sentences to be sorted into those of count and those of size."""

    about: tuple[About, ...]


@frozen(kw_only=True)
class TruthQuestion(Question):
    """A sentence to be called true or false.

    Args:
        true: whether it is true.
    """

    true: bool


@frozen(kw_only=True)
class SentenceQuestion(Question):
    """A false sentence to be put right.

    Args:
        answer: the sentence expected.
        values: what right sentences are worth.
        alone: a number that says enough by itself, since the rest of the sentence stands; else None.
    """

    answer: Claim
    values: frozenset[Exact]
    alone: Ratio | None


@frozen(kw_only=True)
class FoldingQuestion(Question):
    """Steps that make panels of given sizes.

    Args:
        answer: steps that do.
        sizes: how many panels have which area, smallest first.
    """

    answer: str
    sizes: tuple[tuple[int, Exact], ...]


@frozen(kw_only=True)
class ReasonQuestion(Question):
    """A reason in words, which only a teacher can judge."""


AnyQuestion: TypeAlias = (
    NumberQuestion
    | NumbersQuestion
    | SignQuestion
    | TicksQuestion
    | TruthQuestion
    | SentenceQuestion
    | FoldingQuestion
    | ReasonQuestion
)


@frozen(kw_only=True)
class Page:
    """All that one pupil's papers ask.

    Args:
        code: at the foot.
        level: of support.
        own: whether its numbers are a pupil's own.
        questions: in the order of the columns.
        talked: the number of the item that a class talks about, and nobody marks; None without.
    """

    code: str
    level: Level
    own: bool
    questions: tuple[AnyQuestion, ...]
    talked: int | None = None

    @cached_property
    def by_column(self) -> dict[str, AnyQuestion]:
        """The questions by the names of their columns."""
        return {question.column: question for question in self.questions}
