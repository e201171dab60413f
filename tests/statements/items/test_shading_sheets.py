"""A product is shaded on as many whole sheets as it needs, and its cells are counted."""

from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from foldmath.statements.items import ModelSheet, make_shade, sheets_of
from foldmath.statements.products import Product, parse_product
from foldmath.statements.ratios import fraction, mixed_number, whole_number

fractions = st.builds(fraction, st.integers(1, 15), st.integers(2, 12))
wholes = st.builds(whole_number, st.integers(1, 4))
mixed = st.integers(2, 12).flatmap(
    lambda below: st.builds(mixed_number, st.integers(1, 2), st.integers(1, below - 1), st.just(below))
)
factors = st.one_of(fractions, wholes, mixed)


def shaded(product: str) -> list[tuple[int, int]]:
    """Give for every sheet how many cells are shaded once, and how many twice."""
    return [(len(sheet.once), len(sheet.twice)) for sheet in sheets_of(parse_product(product)).sheets]


@settings(max_examples=150, deadline=None)
@given(factors, factors)
def test_the_cells_counted_are_worth_the_product(first, second):
    sheets = sheets_of(Product(first, second))
    if sheets is None:
        return
    cells = [cell for sheet in sheets.sheets for cell in (sheet.twice if sheets.times == 2 else sheet.once)]
    product = Fraction(first.numerator, first.denominator) * Fraction(second.numerator, second.denominator)
    assert Fraction(len(cells), sheets.columns * sheets.rows) == product


@settings(max_examples=80, deadline=None)
@given(factors, factors)
def test_sheets_are_cut_alike_and_no_cell_lies_outside_or_is_shaded_in_two_ways(first, second):
    sheets = sheets_of(Product(first, second))
    for sheet in sheets.sheets if sheets else ():
        assert (sheet.columns, sheet.rows) == (sheets.columns, sheets.rows)
        assert not sheet.once & sheet.twice
        for column, row in sheet.once | sheet.twice:
            assert 0 <= column < sheet.columns
            assert 0 <= row < sheet.rows


def test_two_thirds_of_four_fifths_shade_four_rows_and_two_columns_of_them_again():
    """2/3 × 4/5 = 8/15: Common Core State Standards for Mathematics (2010), 5.NF.B.4.a."""
    assert sheets_of(parse_product("2/3 × 4/5")).sheets == (ModelSheet(3, 5, 2, 4),)
    assert shaded("2/3 × 4/5") == [(4, 8)]


def test_three_times_two_fifths_is_three_sheets_with_two_fifths_each():
    """3 × 2/5 = 6/5: Common Core State Standards for Mathematics (2010), 4.NF.B.4.b."""
    sheets = sheets_of(parse_product("3 × 2/5"))
    assert (sheets.times, sheets.beside) == (1, 3)
    assert shaded("3 × 2/5") == [(2, 0)] * 3


def test_two_fifths_of_three_is_another_picture():
    sheets = sheets_of(parse_product("2/5 of 3"))
    assert sheets.times == 2
    assert shaded("2/5 of 3") == [(3, 2)] * 3
    assert sheets != sheets_of(parse_product("3 × 2/5"))


@pytest.mark.parametrize(
    ("product", "cells"),
    [
        ("4/3 × 1/2", [(0, 3), (2, 1)]),
        ("1 1/2 × 2/3", [(0, 4), (2, 2)]),
        ("1/2 × 4/3", [(3, 3), (1, 1)]),
        ("4/3 × 5/4", [(0, 12), (8, 4), (0, 3), (2, 1)]),
    ],
)
def test_a_factor_of_more_than_one_whole_needs_more_than_one_sheet(product, cells):
    assert shaded(product) == cells


@pytest.mark.parametrize("product", ["2 × 3", "1/13 × 1/2", "7 × 2/5", "1/2 × 20/3"])
def test_a_product_for_which_a_page_has_no_room_is_asked_in_figures_only(product):
    item = make_shade(parse_product(product))
    assert item.sheets is None
    assert item.answer == item.product.unreduced


def test_the_answer_is_as_multiplied_and_other_forms_are_accepted():
    item = make_shade(parse_product("3/4 × 2/3"))
    assert str(item.answer) == "6/12"
    assert str(item.working) == "3/4 × 2/3 = 6/12 = 1/2"
    assert "1/2" in map(str, item.accepted)
    assert str(make_shade(parse_product("3 × 2/5")).working) == "3 × 2/5 = 6/5 = 1 1/5"
