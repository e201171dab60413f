"""Wishes are read into grids of creases, or refused with a remedy."""

import pytest

from foldmath.errors import Unreadable
from foldmath.planning.wanted import (
    WantRefused,
    wanted_panels,
    wanted_product,
    wanted_sizes,
)


def shapes(wanted):
    return {(len(grid.across.creases) + 1, len(grid.up.creases) + 1) for grid in wanted.grids}


def test_a_product_may_lie_either_way_on_the_sheet():
    assert shapes(wanted_product("2/3 × 4/5")) == {(3, 5), (5, 3)}


def test_a_product_of_equal_denominators_lies_one_way_only():
    assert shapes(wanted_product("1/3 x 2/3")) == {(3, 3)}


def test_a_factor_that_is_not_in_lowest_terms_keeps_its_parts():
    assert shapes(wanted_product("2/4 of 1/2")) == {(4, 2), (2, 4)}


def test_equal_panels_lie_in_all_rows_and_columns_up_to_twelve():
    assert shapes(wanted_panels(24)) == {(2, 12), (3, 8), (4, 6), (6, 4), (8, 3), (12, 2)}


def test_decimals_are_folded_as_the_fractions_that_they_are():
    assert str(wanted_product("0.5 × 0.25").said) == "1/2 × 1/4"
    assert shapes(wanted_product("0.5 × 0.25")) == {(2, 4), (4, 2)}
    assert str(wanted_product("2/4 × 0.5").said) == "2/4 × 1/2"


@pytest.mark.parametrize("text", ["1/6 1/6 2/3", "1/6; 1/6; 2/3", "1/6,1/6,2/3,"])
def test_sizes_may_be_divided_by_spaces_commas_or_semicolons(text):
    assert wanted_sizes(text) == wanted_sizes("1/6, 1/6, 2/3")


def test_sizes_in_a_row_may_lie_in_every_order_but_mirror_images():
    columns = [grid for grid in wanted_sizes("1/6, 1/6, 2/3").grids if not grid.up.creases]
    assert {grid.across.creases for grid in columns} == {frozenset({1, 2}), frozenset({1, 5})}


def test_sizes_are_also_explained_by_rows_and_columns():
    assert (2, 2) in shapes(wanted_sizes("1/12, 1/4, 1/6, 1/2"))
    assert (2, 2) not in shapes(wanted_sizes("1/7, 1/7, 2/7, 3/7"))


@pytest.mark.parametrize(
    ("text", "hint"),
    [
        ("5/4 × 2/3", "plan 1 × 2/3 and fold it on 1 sheet, and 1/4 × 2/3 on one more"),
        ("2/5 × 3", "plan 1 × 2/5 and fold it on 3 sheets"),
        ("1 1/2 × 1/2", "plan 1 × 1/2 and fold it on 1 sheet, and 1/2 × 1/2 on one more"),
    ],
)
def test_more_than_one_whole_is_refused_and_told_how_many_sheets(text, hint):
    with pytest.raises(WantRefused, match="more than one whole") as refused:
        wanted_product(text)
    assert str(refused.value.hint) == hint


@pytest.mark.parametrize(
    ("wish", "given", "message"),
    [
        (wanted_product, "2/3 × 4/13", "hands can fold 12 at most"),
        (wanted_product, "1 × 3/3 + 1", "a product is two numbers"),
        (wanted_product, "1 × 1", "nothing to fold"),
        (wanted_panels, 1, "2 panels at least"),
        (wanted_panels, 26, "make 26 equal panels"),
        (wanted_panels, 10**9, "equal panels"),
        (wanted_sizes, "1/6, 1/6", "add up to 1/3"),
        (wanted_sizes, "5/6, 5/6", "add up to 5/3"),
        (wanted_sizes, "1", "at least two|two or more"),
        (wanted_sizes, "1/2, 1/2, 0", "above 0"),
        (wanted_sizes, "1/2, a half", "is not a number"),
        (wanted_sizes, ", ".join(["1/13"] * 13), "no rows and columns"),
        (wanted_sizes, "1/999983, 999982/999983", "too many panels to fold, or too small"),
    ],
)
def test_what_cannot_be_folded_is_refused_with_a_remedy(wish, given, message):
    with pytest.raises(Unreadable, match=message) as refused:
        wish(given)
    assert refused.value.hint


def test_a_number_of_panels_that_does_not_go_is_answered_with_the_nearest_that_does():
    with pytest.raises(WantRefused) as refused:
        wanted_panels(26)
    assert str(refused.value.hint) == "25 panels"
