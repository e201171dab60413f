"""Lengths are said as the rulers of their unit have them."""

import pytest

from foldmath.paper.measures import length_said, sides_said
from foldmath.plane.numbers import exact


@pytest.mark.parametrize(
    ("length", "unit", "said"),
    [
        (exact(17, 2), "in", "8 1/2 in"),
        (exact(1, 16), "in", "1/16 in"),
        (exact(297, 4), "mm", "74.25 mm"),
        (exact(210), "mm", "210 mm"),
        (exact(297, 7), "mm", "42.43 mm"),
        (exact(1, 200), "cm", "0.01 cm"),
        (exact(199, 2000), "cm", "0.1 cm"),
    ],
)
def test_inches_are_mixed_numbers_and_metric_lengths_decimals(length, unit, said):
    assert str(length_said(length, unit)) == said


def test_both_sides_of_a_sheet_are_said_alike():
    assert str(sides_said(exact(297, 4), exact(105), "mm")) == "74.25 by 105 mm"
