"""Explain, of panels: true sentences about fractions of a sheet, and the counts and sizes that say why."""

from functools import cache

from foldmath.plane.numbers import ONE, ZERO
from foldmath.statements.composing import compared, equation, times
from foldmath.statements.expressions import Comparison
from foldmath.statements.items.explain import ExplainItem, Frame, explained
from foldmath.statements.items.item import NoSuchItem
from foldmath.statements.ratios import Ratio, fraction, whole_number


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
    return explained(compared(now, Comparison.LESS, was), Frame.MORE_PANELS, now, was, reason)


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
    return explained(equation(given, same), Frame.SAME_SHADED, same, given, *reason)


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
    return explained(compared(less, Comparison.LESS, more), Frame.FEWER_PANELS, less, more, reason)


@cache
def make_explain_all_panels(parts: int) -> ExplainItem:
    """Explain why all panels of a sheet are 1.

    Raises:
        NoSuchItem: there is one panel.
    """
    if parts < 2:
        raise NoSuchItem("one panel is the sheet as it came")
    every, sheet = fraction(parts, parts), whole_number(1)
    return explained(equation(every, 1), Frame.ALL_PANELS, every, sheet, equation(times(1, parts), parts))


@cache
def make_explain_bigger_panels(few: int, below: int, more: int) -> ExplainItem:
    """Explain why ``few`` of ``below`` panels are more than as many of ``more`` panels.

    Raises:
        NoSuchItem: the panels are not bigger, or not part of a sheet.
    """
    if not 0 < few < below < more:
        raise NoSuchItem(f"{few} panels of 1/{below} are no part of a sheet that is more than 1/{more} each")
    bigger, smaller = fraction(few, below), fraction(few, more)
    reason = compared(fraction(1, below), Comparison.GREATER, fraction(1, more))
    return explained(
        compared(bigger, Comparison.GREATER, smaller), Frame.BIGGER_PANELS, bigger, smaller, reason
    )


@cache
def make_explain_half_of_panels(given: Ratio) -> ExplainItem:
    """Explain why a fraction is less than one half, or more.

    Raises:
        NoSuchItem: its panels have no half, or it is one half itself.
    """
    half, odd = divmod(given.denominator, 2)
    if odd or given.numerator == half or not 0 < given.numerator < given.denominator:
        raise NoSuchItem(f"{given} is no more and no less than half of an even number of panels")
    sign = Comparison.LESS if given.numerator < half else Comparison.GREATER
    one_half = fraction(1, 2)
    return explained(
        compared(given, sign, one_half),
        Frame.HALF_OF_PANELS,
        given,
        one_half,
        compared(given.numerator, sign, half),
        equation(one_half, fraction(half, given.denominator)),
    )


@cache
def make_explain_round_half(less: Ratio, more: Ratio) -> ExplainItem:
    """Explain why a fraction of less than one half is less than one of more.

    Raises:
        NoSuchItem: one half is not between them, or they are not parts of a sheet.
    """
    half = fraction(1, 2)
    if not ZERO < less.value < half.value < more.value < ONE:
        raise NoSuchItem(f"one half is not between {less} and {more}")
    return explained(
        compared(less, Comparison.LESS, more),
        Frame.ROUND_HALF,
        less,
        more,
        compared(less, Comparison.LESS, half),
        compared(more, Comparison.GREATER, half),
    )


@cache
def make_explain_one_missing(few: int, many: int) -> ExplainItem:
    """Explain why all panels of ``few`` but one are less than all of ``many`` but one.

    Raises:
        NoSuchItem: there are no more of the others, or one panel missing leaves nothing.
    """
    if not 2 <= few < many:
        raise NoSuchItem(f"one panel missing of {few} is no more than one missing of {many}")
    less, more = fraction(few - 1, few), fraction(many - 1, many)
    reason = compared(fraction(1, few), Comparison.GREATER, fraction(1, many))
    return explained(compared(less, Comparison.LESS, more), Frame.ONE_MISSING, less, more, reason)


@cache
def make_explain_more_than_all(many: int, below: int) -> ExplainItem:
    """Explain why more panels than a sheet has are more than 1.

    Raises:
        NoSuchItem: there are no more of them.
    """
    if not 2 <= below < many:
        raise NoSuchItem(f"{many} panels of 1/{below} are no more than a sheet")
    given, sheet = fraction(many, below), whole_number(1)
    return explained(
        compared(given, Comparison.GREATER, sheet),
        Frame.MORE_THAN_ALL,
        given,
        sheet,
        compared(many, Comparison.GREATER, below),
        equation(fraction(below, below), sheet),
    )


@cache
def make_explain_sheets_filled(sheets: int, parts: int) -> ExplainItem:
    """Explain why so many panels are whole sheets.

    Raises:
        NoSuchItem: there is one sheet, or one panel to a sheet.
    """
    if sheets < 2 or parts < 2:
        raise NoSuchItem(f"{sheets} sheets of {parts} panels have nothing to explain")
    given, filled = fraction(sheets * parts, parts), whole_number(sheets)
    reason = equation(times(sheets, parts), sheets * parts)
    return explained(equation(given, filled), Frame.SHEETS_FILLED, given, filled, reason)
