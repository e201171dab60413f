"""What paper can be folded, against Gallivan's limits, their integer sequence and the record.

B. C. Gallivan, How to Fold Paper in Half Twelve Times, Historical Society of Pomona Valley, 2002, as told and
proved at http://www-personal.umich.edu/~rsc/Resources/paper-folding.html (one direction) and
https://web.math.princeton.edu/~wwong/blog/blog200511170411.shtml (alternate directions).
"""

from math import pi

import pytest
from lessons_in_words import moments

from foldmath.paper.state import Sheet
from foldmath.plane.numbers import Exact, exact
from foldmath.tolerance.assumed.stock import Stock, stock_named
from foldmath.tolerance.limits import Severity, alternate_directions_mm, judged

LEFT, TOP = "fold left edge to right edge", "fold top edge to bottom edge"
TENTH = stock_named("0.1 mm")
A4_SHORT_MM = exact(210)

A076024 = (0, 1, 4, 14, 50, 186, 714, 2794, 11050, 43946, 175274, 700074, 2798250)
"""OEIS A076024, a(0) to a(12): (2^n + 4)(2^n - 1)/6, the length lost to n folds in units of π t."""


@pytest.mark.parametrize(
    ("folds", "side_mm"),
    [(1, 0.31), (2, 0.89), (3, 2.51), (4, 7.11), (5, 20.11), (6, 56.87), (7, 160.85), (8, 454.95)],
)
def test_alternate_directions_for_paper_of_a_tenth_of_a_millimetre(folds, side_mm):
    """Computed from the rule at 0.1 mm, rounded as given."""
    assert alternate_directions_mm(folds, 0.1) == pytest.approx(side_mm, abs=0.005)


def most_folds(width_mm: Exact, height_mm: Exact, steps: list[str], stock: Stock = TENTH) -> int:
    """Give how many folds the program lets paper do."""
    sheet = Sheet(width_mm, height_mm, "mm")
    found = judged(moments(*steps, sheet=sheet), stock)
    refused = [judgement.step for judgement in found if judgement.severity is Severity.IMPOSSIBLE]
    return refused[0] - 1 if refused else len(steps)


@pytest.mark.parametrize(("folds", "units"), list(enumerate(A076024[:10]))[1:])
def test_one_direction_asks_for_the_integer_sequence_times_pi_and_thickness(folds, units):
    """A thousandth of a millimetre below the length that is lost to so many folds, and above it."""
    lost_um = int(pi * 0.1 * units * 1000)
    assert most_folds(exact(lost_um, 1000), A4_SHORT_MM, [LEFT] * folds) == folds - 1
    assert most_folds(exact(lost_um + 1, 1000), A4_SHORT_MM, [LEFT] * folds) == folds


def test_the_record_of_twelve_folds_needs_tissue():
    """January 2002: 4,000 ft, about 1,200 m; the rule then asks for 0.1387 mm or thinner."""
    record_mm = exact(4000) * exact(3048, 10)
    most = [
        most_folds(record_mm, A4_SHORT_MM, [LEFT] * 12, stock_named(thick))
        for thick in ("0.13865 mm", "0.13875 mm")
    ]
    assert most == [12, 11]


@pytest.mark.parametrize(("width_mm", "most"), [(297, 6), (224, 5), (225, 6), (877, 6), (878, 7)])
def test_paper_is_refused_the_first_fold_in_one_direction_past_the_limit(width_mm, most):
    """A4's long side, 297 mm: at most 6; and just below and above the limits of 6 and 7 folds."""
    assert most_folds(exact(width_mm), A4_SHORT_MM, [LEFT] * 9) == most


@pytest.mark.parametrize(
    ("side_mm", "most"), [(210, 7), (160, 6), (161, 7), (56, 5), (57, 6), (20, 4), (21, 5)]
)
def test_a_square_is_refused_the_first_fold_past_the_limit_of_alternate_directions(side_mm, most):
    """A square of 210 mm: at most 7; and just below and above the limits of 5, 6 and 7 folds."""
    assert most_folds(exact(side_mm), exact(side_mm), [LEFT, TOP] * 5) == most
