"""Explain: a true sentence, and why it is so; a frame helps to begin the answer."""

from dataclasses import dataclass
from enum import Enum
from functools import cache
from typing import ClassVar

from foldmath.plane.numbers import ONE, ZERO
from foldmath.statements.answers import Working, working
from foldmath.statements.composing import compared, equation, part_of, times
from foldmath.statements.expressions import Claim, Comparison
from foldmath.statements.items.item import Difficulty, Item, ItemKind, NoSuchItem, figures_in
from foldmath.statements.products import Product
from foldmath.statements.ratios import Ratio, fraction, whole_number


class Frame(Enum):
    """How the answer may begin; the words are the template's."""

    MORE_PANELS = "more-panels"
    """More panels, so each is smaller: ``1/8 < 1/4``."""
    PART_OF_PART = "part-of-part"
    """Only a part of it is taken, so the product is less: ``2/3 of 4/5 < 4/5``."""
    SEVERAL_OF_IT = "several-of-it"
    """It is taken several times, so the product is more: ``3 × 2/5 > 2/5``."""
    SAME_SHADED = "same-shaded"
    """The same paper is shaded, in smaller panels: ``1/2 = 2/4``."""
    FEWER_PANELS = "fewer-panels"
    """Panels of one size, fewer of them: ``3/8 < 5/8``."""
    ALL_PANELS = "all-panels"
    """All panels are the whole: ``6/6 = 1``."""
    ALL_OF_IT = "all-of-it"
    """All parts of it are taken: ``5/5 × 2/3 = 2/3``."""


@dataclass(frozen=True, kw_only=True)
class ExplainItem(Item):
    """A true statement to explain in words; ``answer`` and ``working`` are the reason in figures.

    Args:
        statement: as ``2/3 of 4/5 < 4/5``.
        frame: how the answer may begin.
        first: the number on which the reason turns: ``2/3``; of two sizes the new one.
        second: the number that it is compared with, ``4/5``.
    """

    kind: ClassVar[ItemKind] = ItemKind.EXPLAIN

    answer: Working
    statement: Claim
    frame: Frame
    first: Ratio
    second: Ratio


@cache
def make_explain_less(product: Product) -> ExplainItem:
    """Explain why a product is less than its second factor, or more: its first factor decides.

    Raises:
        NoSuchItem: the product equals its second factor.
    """
    first, second = product.first, product.second
    if first.value in (ZERO, ONE) or second.value == ZERO:
        raise NoSuchItem(f"{product.text} has nothing to explain")
    less = first.value < ONE
    sign = Comparison.LESS if less else Comparison.GREATER
    said = part_of(first, second) if less else times(first, second)
    return _explained(
        compared(said, sign, second),
        Frame.PART_OF_PART if less else Frame.SEVERAL_OF_IT,
        first,
        second,
        compared(first, sign, 1),
    )


@cache
def make_explain_more_panels(before: int, parts: int) -> ExplainItem:
    """Explain why a panel is smaller after a fold that cuts each of ``before`` panels into ``parts``.

    Raises:
        NoSuchItem: nothing was cut.
    """
    if before < 2 or parts < 2:
        raise NoSuchItem("there are no smaller panels to explain")
    now, was = fraction(1, before * parts), fraction(1, before)
    reason = compared(before * parts, Comparison.GREATER, before)
    return _explained(compared(now, Comparison.LESS, was), Frame.MORE_PANELS, now, was, reason)


@cache
def make_explain_same(given: Ratio, parts: int) -> ExplainItem:
    """Explain why a fraction equals the one with ``parts`` times as many panels, all and shaded.

    Raises:
        NoSuchItem: nothing was cut, or no part of a sheet is meant.
    """
    if parts < 2 or not ZERO < given.value < ONE:
        raise NoSuchItem(f"{given} has no other name by {parts} parts a panel")
    above, below = given.numerator * parts, given.denominator * parts
    same = fraction(above, below)
    reason = equation(times(given.numerator, parts), above), equation(times(given.denominator, parts), below)
    return _explained(equation(given, same), Frame.SAME_SHADED, same, given, *reason)


@cache
def make_explain_fewer_panels(below: int, few: int, many: int) -> ExplainItem:
    """Explain why ``few`` of ``below`` panels are less than ``many`` of them.

    Raises:
        NoSuchItem: there are no more of the others, or more than the whole.
    """
    if not 0 < few < many < below:
        raise NoSuchItem(f"{few} and {many} of {below} panels are not less and more of one sheet")
    less, more = fraction(few, below), fraction(many, below)
    reason = compared(few, Comparison.LESS, many)
    return _explained(compared(less, Comparison.LESS, more), Frame.FEWER_PANELS, less, more, reason)


@cache
def make_explain_all_panels(parts: int) -> ExplainItem:
    """Explain why all panels of a sheet are 1.

    Raises:
        NoSuchItem: there is one panel.
    """
    if parts < 2:
        raise NoSuchItem("one panel is the sheet as it came")
    every, sheet = fraction(parts, parts), whole_number(1)
    return _explained(equation(every, 1), Frame.ALL_PANELS, every, sheet, equation(times(1, parts), parts))


@cache
def make_explain_all_of_it(parts: int, second: Ratio) -> ExplainItem:
    """Explain why ``parts`` of ``parts`` parts of a fraction are as much as the fraction.

    Raises:
        NoSuchItem: there are no parts, or nothing is taken.
    """
    if parts < 2 or second.value == ZERO:
        raise NoSuchItem(f"{parts} parts of {second} have nothing to explain")
    every = fraction(parts, parts)
    statement = equation(times(every, second), second)
    return _explained(statement, Frame.ALL_OF_IT, every, second, equation(every, 1))


def _explained(statement: Claim, frame: Frame, first: Ratio, second: Ratio, *reason: Claim) -> ExplainItem:
    # Panels of one size are counted, whatever their size.
    turns_on = (first,) if frame is Frame.FEWER_PANELS else (first, second)
    return ExplainItem(
        asks=f"explain {statement}",
        difficulty=Difficulty.EXPLAIN.of(*turns_on),
        answer=working(*reason),
        working=working(*reason),
        accepted=(),
        problem=None,
        wrong=(),
        shown=figures_in(statement),
        statement=statement,
        frame=frame,
        first=first,
        second=second,
    )
