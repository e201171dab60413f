"""What every item of practice has: what it asks, its answer, its likely slips, and what a page shows."""

from dataclasses import field
from enum import Enum, IntEnum
from typing import ClassVar

from foldmath.errors import FoldmathError
from foldmath.statements.answers import Answer, Working
from foldmath.statements.expressions import Claim, Figures, numbers_in
from foldmath.statements.products import Product
from foldmath.statements.ratios import LARGEST_DENOMINATOR, Ratio, fraction
from foldmath.statements.rules.problems import Problem
from foldmath.statements.rules.wrong_answers import WrongAnswer
from foldmath.values import frozen


class NoSuchItem(FoldmathError):
    """Numbers of which no sensible item can be made."""


class ItemKind(Enum):
    """The kinds of item, those that are chosen as lesson files name them."""

    SHADE = "shade"
    COUNT_OR_SIZE = "count-or-size"
    MISSING_FACTOR = "missing-factor"
    SAME_SIZE = "same-size"
    BIGGER_OR_SMALLER = "bigger-or-smaller"
    HOW_MANY_PIECES = "how-many-pieces"
    REPEATED_HALVING = "repeated-halving"
    WHICH_FOLD = "which-fold"
    STORY = "story"
    MEND = "mend"
    EXPLAIN = "explain"
    OWN = "own"
    """A teacher's own words; the one kind that is written and never chosen."""


class Level(Enum):
    """How much support a page gives."""

    GUIDED = "guided"
    CORE = "core"
    STRETCH = "stretch"


class Reach(IntEnum):
    """How far a class has come in multiplying fractions; a later stage has all that an earlier one has."""

    NAMING = 0
    """Fractions are named and compared, and none is multiplied."""
    BY_WHOLES = 1
    """Fractions are multiplied by whole numbers."""
    PAIRS = 2
    """Fractions are multiplied by fractions."""


@frozen(kw_only=True)
class Item:
    """One thing asked of a pupil, with its answer.

    Args:
        asks: what it asks; two items that ask the same have the same text here.
        difficulty: the larger, the harder; items of all kinds are ordered by it.
        answer: the expected answer, as ``8/15``, ``3``, ``>`` or ``4 × 2 = 8``.
        working: true sentences of figures that lead to the answer.
        accepted: other ways to write the answer; may be empty.
        problem: what is worked out, on which wrong-answer rules act; None where words or steps are asked.
        wrong: the likeliest wrong answers, likeliest first; all different, and none right.
        shown: every number, and every expression and sentence, that the pupil sees in the item.
    """

    kind: ClassVar[ItemKind]

    # What it asks tells it from nearly all others, and is quickly looked up, where the rest is deep.
    asks: str
    difficulty: int
    answer: Answer = field(hash=False)
    working: Working = field(hash=False)
    accepted: tuple[Answer, ...] = field(hash=False)
    problem: Problem | None = field(hash=False)
    wrong: tuple[WrongAnswer, ...] = field(hash=False)
    shown: frozenset[Figures] = field(hash=False)


class Difficulty(IntEnum):
    """Kinds of item and their forms, easy to hard; what is asked of all pupils comes in one order."""

    COUNT_OR_SIZE = 1
    COUNT_PIECES = 2
    SAME_SIZE = 3
    FOLDS_REPEATED = 4
    SHADE = 5
    DIVIDE = 6
    SEVERAL_FACTORS = 7
    STORY = 8
    MEND = 9
    MISSING_FACTOR = 10
    COMPARE = 11
    WHICH_FOLD = 12
    EXPLAIN = 13

    def of(self, *numbers: Ratio, more: int = 0) -> int:
        """Tell how hard an item of this kind and form is: first by that, then by its numbers.

        Args:
            numbers: those that it is worked out with.
            more: what else makes it hard, in steps of its numbers.
        """
        return STEPS_OF_NUMBERS * self + min(weight(*numbers) + more, STEPS_OF_NUMBERS - 1)


STEPS_OF_NUMBERS = 16
"""So many steps numbers make between one kind of item and the next; none is as hard as the next kind."""


def weight(*numbers: Ratio) -> int:
    """Tell how hard numbers are to work with: unit fractions are easy, and so are small denominators."""
    return sum(
        number.denominator // 4 + (not number.unit_fraction and not number.whole) * 2 for number in numbers
    )


BOX = "□"
"""Stands in a sentence of figures where the pupil writes."""


def figures_in(*figures: Figures) -> frozenset[Figures]:
    """Give sentences themselves, and every number in them: ``2/3 × 4/5``, ``2/3`` and ``4/5``."""
    sides = (side for one in figures for side in (one.sides if isinstance(one, Claim) else (one,)))
    return frozenset(figures).union(*map(numbers_in, sides))


def other_forms(number: Ratio, *forms: Ratio) -> tuple[Ratio, ...]:
    """Give the forms of a number that are written unlike it, each once."""
    return tuple(dict.fromkeys(form for form in forms if form != number))


def equal_forms(answer: Ratio, product: Product | None) -> tuple[Ratio, ...]:
    """Give other ways to write the answer of a word problem, the product as multiplied first."""
    above, below = answer.numerator, answer.denominator
    forms = [] if answer.whole else [fraction(n * above, n * below) for n in (1, 2, 3)]
    if product and product.accepts(answer):
        forms.insert(0, product.unreduced)
    return other_forms(answer, *(form for form in forms if form.denominator <= LARGEST_DENOMINATOR))
