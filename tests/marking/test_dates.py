"""Dates that spreadsheets make of fractions are noticed, with what they may have been."""

import pytest

from foldmath.marking.reading.answers import DateMade, Number
from foldmath.marking.reading.cells import read_cell
from foldmath.marking.reading.dates import DAYS, fractions_behind


@pytest.mark.parametrize(
    ("date", "readings"),
    [
        # How programs show what was typed as 8/15, 3/8, 3/25, 12/5 or 3/32: common practice, no source.
        ("15-Aug", ["8/15", "15/8"]),
        ("Aug-15", ["8/15", "15/8"]),
        ("15. Aug", ["8/15", "15/8"]),
        ("August 15, 2026", ["8/15", "15/8"]),
        ("15 ago 2026", ["8/15", "15/8"]),
        ("8-Mar", ["3/8", "8/3"]),
        ("03/08/26", ["3/8", "8/3"]),
        ("3/8/2026", ["3/8", "8/3"]),
        ("08.03.2026", ["8/3", "3/8"]),
        ("03/08", ["3/8", "8/3"]),
        ("2026-03-08", ["3/8", "8/3"]),
        ("2026-03-08T00:00:00", ["3/8", "8/3"]),
        ("25-Mar", ["3/25", "25/3"]),
        ("2026-12-05", ["12/5", "5/12"]),
        ("Mar-32", ["3/32", "32/3"]),
        ("1932-03-01", ["3/32", "32/3"]),
        # Day 46249 after 30 December 1899, by datetime.date.
        ("46249", ["8/15", "15/8"]),
        ("5-May", ["5/5"]),
    ],
)
def test_a_date_may_have_been_either_fraction(date, readings):
    assert [ratio.text for ratio in fractions_behind(date)] == readings
    answer = read_cell(date)
    assert isinstance(answer, DateMade)
    assert [ratio.text for ratio in answer.readings] == readings


@pytest.mark.parametrize("number", ["8/15", "12/25", "31/12", "1/2", "12", "1999", "0/8"])
def test_a_fraction_that_is_still_one_is_no_date(number):
    assert isinstance(read_cell(number), Number)


def test_a_number_is_a_date_only_where_no_answer_is_as_large():
    assert not fractions_behind(str(DAYS.start - 1))
    assert fractions_behind(str(DAYS.start))
    assert not fractions_behind(str(DAYS.stop))
