"""Explain: a true sentence, and why it is so; a frame helps to begin the answer."""

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
from foldmath.values import frozen


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
    PART_OF_LESS = "part-of-less"
    """The part is taken of less than a sheet: ``2/3 of 4/5 < 2/3``."""
    PART_OF_PANELS = "part-of-panels"
    """The part takes whole panels: ``2/3 of 3/5 = 2/5``."""
    SHEET_TURNED = "sheet-turned"
    """The same panels are shaded twice, only the sheet is turned: ``2/3 × 4/5 = 4/5 × 2/3``."""
    EQUAL_GROUPS = "equal-groups"
    """Panels of one size, several times as many: ``3 × 2/8 = 6/8``."""
    AS_MANY_IN_ALL = "as-many-in-all"
    """As many panels of one size: ``4 × 3/5 = 3 × 4/5``."""
    BIGGER_PANELS = "bigger-panels"
    """As many panels, each of them bigger: ``3/4 > 3/8``."""
    HALF_OF_PANELS = "half-of-panels"
    """More or fewer than half of all panels: ``3/8 < 1/2``, ``5/8 > 1/2``."""
    ROUND_HALF = "round-half"
    """One is less than half a sheet, the other more: ``2/5 < 5/8``."""
    ONE_MISSING = "one-missing"
    """One panel is missing from each sheet: ``3/4 < 7/8``."""
    MORE_THAN_ALL = "more-than-all"
    """More panels than the sheet has: ``5/4 > 1``."""
    SHEETS_FILLED = "sheets-filled"
    """So many panels fill whole sheets: ``6/3 = 2``."""


@frozen(kw_only=True)
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
    return explained(
        compared(said, sign, second),
        Frame.PART_OF_PART if less else Frame.SEVERAL_OF_IT,
        first,
        second,
        compared(first, sign, 1),
    )


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
    return explained(statement, Frame.ALL_OF_IT, every, second, equation(every, 1))


@cache
def make_explain_part_of_less(first: Ratio, second: Ratio) -> ExplainItem:
    """Explain why a part of a part is less than the same part of a whole sheet.

    Raises:
        NoSuchItem: one of them is no part of a sheet.
    """
    _refuse_unless_parts(first, second)
    said = compared(part_of(first, second), Comparison.LESS, first)
    return explained(said, Frame.PART_OF_LESS, second, first, compared(second, Comparison.LESS, 1))


@cache
def make_explain_part_of_panels(few: int, many: int, below: int) -> ExplainItem:
    """Explain why ``few/many`` of ``many`` panels of ``below`` are ``few`` of them.

    Raises:
        NoSuchItem: no part is taken, or of all panels.
    """
    if not 1 <= few < many < below:
        raise NoSuchItem(f"{few} of {many} of {below} panels are no part of a part")
    share, given = fraction(few, many), fraction(many, below)
    said = equation(part_of(share, given), fraction(few, below))
    return explained(said, Frame.PART_OF_PANELS, share, given, equation(part_of(share, many), few))


@cache
def make_explain_sheet_turned(first: Ratio, second: Ratio) -> ExplainItem:
    """Explain why a part of a part is as much the other way round.

    Raises:
        NoSuchItem: one of them is no part of a sheet, or both are alike.
    """
    _refuse_unless_parts(first, second)
    if first == second:
        raise NoSuchItem(f"{first} × {second} is the same the other way round, and nothing to explain")
    reason = (
        equation(times(one, other), times(other, one))
        for one, other in (
            (first.numerator, second.numerator),
            (first.denominator, second.denominator),
        )
        if one != other
    )
    said = equation(times(first, second), times(second, first))
    return explained(said, Frame.SHEET_TURNED, first, second, *reason)


@cache
def make_explain_equal_groups(number: int, given: Ratio) -> ExplainItem:
    """Explain why several times a fraction is a fraction of panels of the same size.

    Raises:
        NoSuchItem: nothing is taken several times.
    """
    if number < 2 or given.value == ZERO or given.whole:
        raise NoSuchItem(f"{number} times {given} has nothing to explain")
    above = number * given.numerator
    said = equation(times(number, given), fraction(above, given.denominator))
    return explained(
        said, Frame.EQUAL_GROUPS, whole_number(number), given, equation(times(number, given.numerator), above)
    )


@cache
def make_explain_as_many_in_all(number: int, given: Ratio) -> ExplainItem:
    """Explain why ``4 × 3/5`` is ``3 × 4/5``.

    Raises:
        NoSuchItem: both sides would be alike, or one of them is not several times a part of a sheet.
    """
    above = given.numerator
    if number < 2 or above < 2 or number == above or max(number, above) >= given.denominator:
        raise NoSuchItem(f"{number} times {given} has nothing to explain")
    said = equation(times(number, given), times(above, fraction(number, given.denominator)))
    return explained(
        said,
        Frame.AS_MANY_IN_ALL,
        whole_number(number),
        given,
        equation(times(number, above), times(above, number)),
    )


def _refuse_unless_parts(*numbers: Ratio) -> None:
    if not all(ZERO < number.value < ONE for number in numbers):
        raise NoSuchItem(f"{' and '.join(map(str, numbers))} are not both parts of a sheet")


def explained(statement: Claim, frame: Frame, first: Ratio, second: Ratio, *reason: Claim) -> ExplainItem:
    """Put a true statement and the reason in figures together."""
    # Panels of one size are counted, whatever their size; 1/2 and whole sheets cost no thought.
    turns_on: tuple[Ratio, ...] = (first, second)
    if frame in (Frame.FEWER_PANELS, Frame.ALL_PANELS, Frame.MORE_THAN_ALL):
        turns_on = (first,)
    elif frame is Frame.EQUAL_GROUPS:
        turns_on = (second,)
    elif frame in (Frame.HALF_OF_PANELS, Frame.SHEETS_FILLED):
        turns_on = (first, first)
    elif frame is Frame.AS_MANY_IN_ALL:
        turns_on = (second, second)
    elif frame is Frame.SAME_SHADED:
        turns_on = (second, second, second)
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
