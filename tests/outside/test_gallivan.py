"""What paper can be folded, against Gallivan's limits, their integer sequence and the record.

B. C. Gallivan, How to Fold Paper in Half Twelve Times, Historical Society of Pomona Valley, 2002, as told and
proved at http://www-personal.umich.edu/~rsc/Resources/paper-folding.html (one direction) and
https://web.math.princeton.edu/~wwong/blog/blog200511170411.shtml (alternate directions).
"""

from math import pi

import pytest
from lessons_in_words import moments

from foldmath.paper.state import Sheet
from foldmath.plane.numbers import exact
from foldmath.tolerance.assumed.stock import Stock, stock_named
from foldmath.tolerance.limits import Severity, alternate_directions_mm, judged, one_direction_mm

LEFT, TOP = "fold left edge to right edge", "fold top edge to bottom edge"
TENTH = stock_named("0.1 mm")

A076024 = (0, 1, 4, 14, 50, 186, 714, 2794, 11050, 43946, 175274, 700074, 2798250)
"""OEIS A076024, a(0) to a(12): (2^n + 4)(2^n - 1)/6, the length lost to n folds in units of π t."""


@pytest.mark.parametrize(("folds", "units"), list(enumerate(A076024)))
def test_one_direction_is_the_integer_sequence_times_pi_and_thickness(folds, units):
    assert one_direction_mm(folds, 0.1) == pytest.approx(pi * 0.1 * units)


@pytest.mark.parametrize(
    ("folds", "length_mm"),
    [(1, 0.31), (2, 1.26), (3, 4.40), (4, 15.71), (5, 58.43), (6, 224.31), (7, 877.76), (8, 3471.5)],
)
def test_one_direction_for_paper_of_a_tenth_of_a_millimetre(folds, length_mm):
    """Computed from the rule at 0.1 mm, rounded as given."""
    assert one_direction_mm(folds, 0.1) == pytest.approx(length_mm, abs=0.05 if folds == 8 else 0.005)


@pytest.mark.parametrize(
    ("folds", "side_mm"),
    [(1, 0.31), (2, 0.89), (3, 2.51), (4, 7.11), (5, 20.11), (6, 56.87), (7, 160.85), (8, 454.95)],
)
def test_alternate_directions_for_paper_of_a_tenth_of_a_millimetre(folds, side_mm):
    """Computed from the rule at 0.1 mm, rounded as given."""
    assert alternate_directions_mm(folds, 0.1) == pytest.approx(side_mm, abs=0.005)


def test_the_record_of_twelve_folds_needs_tissue():
    """January 2002: 4,000 ft, about 1,200 m; the rule then asks for 0.1387 mm or thinner."""
    assert one_direction_mm(12, 0.13865) < 4000 * 304.8 < one_direction_mm(12, 0.13875)
    assert one_direction_mm(12, 0.1387) == pytest.approx(1_200_000, rel=0.02)


def most_folds(width_mm: int, height_mm: int, steps: list[str], stock: Stock = TENTH) -> int:
    """Give how many folds the program lets paper do."""
    sheet = Sheet(exact(width_mm), exact(height_mm), "mm")
    found = judged(moments(*steps, sheet=sheet), stock)
    refused = [judgement.step for judgement in found if judgement.severity is Severity.IMPOSSIBLE]
    return refused[0] - 1 if refused else len(steps)


@pytest.mark.parametrize(("width_mm", "most"), [(297, 6), (224, 5), (225, 6), (877, 6), (878, 7)])
def test_paper_is_refused_the_first_fold_in_one_direction_past_the_limit(width_mm, most):
    """A4's long side, 297 mm: at most 6; and just below and above the limits of 6 and 7 folds."""
    assert most_folds(width_mm, 210, [LEFT] * 9) == most


@pytest.mark.parametrize(
    ("side_mm", "most"), [(210, 7), (160, 6), (161, 7), (56, 5), (57, 6), (20, 4), (21, 5)]
)
def test_a_square_is_refused_the_first_fold_past_the_limit_of_alternate_directions(side_mm, most):
    """A square of 210 mm: at most 7; and just below and above the limits of 5, 6 and 7 folds."""
    assert most_folds(side_mm, side_mm, [LEFT, TOP] * 5) == most
