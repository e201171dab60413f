"""Lengths are said as the rulers of their unit have them."""

import pytest

from foldmath.paper.measures import length_said, share_said, sides_by_ruler, sides_said
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


@pytest.mark.parametrize(
    ("width", "told"),
    [
        (exact(22, 3), "7 1/3 by 8 1/2 in"),
        (exact(705, 64), "11 1/64 by 8 1/2 in"),
        (exact(716, 65), "about 11 by 8 1/2 in"),
        (exact(132869, 10345), "about 12 7/8 by 8 1/2 in"),
    ],
)
def test_paper_lies_to_the_sixteenth_where_it_has_parts_that_no_ruler_shows(width, told):
    assert str(sides_by_ruler(width, exact(17, 2), "in")) == told


def test_in_millimetres_paper_lies_to_the_hundredth():
    assert str(sides_by_ruler(exact(716, 65), exact(17, 2), "mm")) == "11.02 by 8.5 mm"


@pytest.mark.parametrize(
    ("share", "said"),
    [
        (exact(55, 99), "5/9"),
        (exact(98, 99), "98/99"),
        (exact(51, 100), "about 0.51"),
        (exact(1, 4096), "1/4096"),
        (exact(3, 4096), "about 0.00073"),
        (exact(773, 4624), "about 0.17"),
        (exact(101, 1000), "about 0.1"),
        (exact(199, 2000), "about 0.1"),
        (exact(94, 1001), "about 0.094"),
        (exact(1999, 2000), "about 0.9995"),
        (exact(864418801, 3073593600), "about 0.28"),
    ],
)
def test_a_share_is_exact_while_it_says_its_size_else_a_decimal_of_two_digits_never_1(share, said):
    assert str(share_said(share)) == said


def test_a_near_share_is_said_in_spanish():
    assert say(share_said(exact(773, 4624)), "es") == "aprox. 0.17"
