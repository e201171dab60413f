"""Lengths are said as the rulers of their unit have them."""

import pytest

from foldmath.paper.measures import length_said, sides_said
from foldmath.plane.numbers import exact
from foldmath.words.saying import say


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


@pytest.mark.parametrize(
    ("length", "said"),
    [
        (exact(15, 16), "15/16 de pulgada"),
        (exact(1), "1 pulgada"),
        (exact(17, 16), "1 1/16 pulgadas"),
        (exact(0), "0 pulgadas"),
    ],
)
def test_an_inch_its_part_and_several_are_said_in_spanish_each_in_its_own_form(length, said):
    assert say(length_said(length, "in"), "es") == said
