"""Dates that spreadsheets make of fractions: 8/15 becomes 15-Aug. Takes a cell, gives what it may have been.

How spreadsheets write such dates: common practice, no source. ISO 8601 is what a file in OpenDocument holds.
"""

import re
from collections.abc import Callable
from datetime import date, timedelta
from functools import cache

from foldmath.marking.reading.words import each_language
from foldmath.statements.ratios import Ratio, fraction

FIRST_DAY = date(1899, 12, 30)
"""Day 0 of spreadsheets (OpenDocument 1.3, part 4, section 3.4: the usual base date)."""

DAYS = range(40_000, 60_001)
"""Numbers that are dates from 2009 to 2064, and far larger than any answer of a worksheet."""

FIRST_OWN_CENTURY = 2000
"""Spreadsheets take years of two figures that are no days, 32 to 99, for years before this one."""

_ISO = re.compile(r"(\d{4})-(\d{1,2})-(\d{1,2})(?:[t ][\d:.]+)?")
_FIGURES = re.compile(r"(\d{1,2})[/.](\d{1,2})[/.](?:\d{4}|\d{2})")
_ZERO_FIRST = re.compile(r"(0\d)/(\d{1,2})|(\d{1,2})/(0\d)")
_DAY_MONTH = re.compile(r"(\d{1,2})\.?[-/ ]?([^\W\d_]+)\.?(?:[-/, ]+(?:\d{4}|\d{2}))?")
_MONTH_DAY = re.compile(r"([^\W\d_]+)\.?[-/ ]?(\d{1,2})(?:[-/, ]+(?:\d{4}|\d{2}))?")
_COUNTED_DAYS = re.compile(r"\d{5}")


def fractions_behind(text: str) -> tuple[Ratio, ...]:
    """Give the fractions of which a spreadsheet may have made this date; none if it is no date.

    ``15-Aug`` may have been 8/15, or 15/8 where days come first; neither is likelier.
    """
    plain = text.strip().casefold()
    for shape, numbers in _SHAPES:
        found = shape.fullmatch(plain)
        pairs = numbers(found) if found else ()
        kept = dict.fromkeys(fraction(*pair) for pair in pairs if all(pair))
        if kept:
            return tuple(kept)
    return ()


_Pairs = tuple[tuple[int, int], ...]


def _of_iso(found: re.Match[str]) -> _Pairs:
    year, month, day = map(int, found.groups())
    # "Mar-32" is kept as the first of March 1932, since no month has 32 days.
    second = year % 100 if day == 1 and year < FIRST_OWN_CENTURY else day
    return (month, second), (second, month)


def _of_figures(found: re.Match[str]) -> _Pairs:
    first, second = (int(number) for number in found.groups() if number)
    return (first, second), (second, first)


def _of_day_month(found: re.Match[str]) -> _Pairs:
    month, day = _months().get(found[2], 0), int(found[1])
    return (month, day), (day, month)


def _of_month_day(found: re.Match[str]) -> _Pairs:
    month, day = _months().get(found[1], 0), int(found[2])
    return (month, day), (day, month)


def _of_days(found: re.Match[str]) -> _Pairs:
    if int(found[0]) not in DAYS:
        return ()
    day = FIRST_DAY + timedelta(days=int(found[0]))
    return (day.month, day.day), (day.day, day.month)


_SHAPES: tuple[tuple[re.Pattern[str], Callable[[re.Match[str]], _Pairs]], ...] = (
    (_ISO, _of_iso),
    (_FIGURES, _of_figures),
    (_ZERO_FIRST, _of_figures),
    (_DAY_MONTH, _of_day_month),
    (_MONTH_DAY, _of_month_day),
    (_COUNTED_DAYS, _of_days),
)


@cache
def _months() -> dict[str, int]:
    return {
        name: int(month)
        for _, written in each_language()
        for month, names in written["months"].items()
        for name in names
    }
