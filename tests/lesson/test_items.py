"""A practice product is folded, shaded and counted before its answer is printed."""

from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from foldmath.lesson import items
from foldmath.lesson.items import AnswerNotShown, shaded_product
from foldmath.statements.products import parse_product

parts_of_a_whole = st.integers(2, 6).flatmap(
    lambda parts: st.tuples(st.integers(1, parts), st.just(parts)).map("{0[0]}/{0[1]}".format)
)


@given(parts_of_a_whole, parts_of_a_whole)
@settings(max_examples=25, deadline=None)
def test_the_panels_shaded_twice_are_the_product(first, second):
    shown = shaded_product(parse_product(f"{first} × {second}"))
    assert Fraction(shown.counted, shown.panels) == Fraction(first) * Fraction(second)
    assert shown.counted == shown.across * shown.up


def test_the_first_factor_takes_columns_and_the_second_rows():
    """2/3 × 4/5 = 8/15: Common Core State Standards for Mathematics (2010), 5.NF.B.4.a."""
    shown = shaded_product(parse_product("2/3 × 4/5"))
    assert (shown.columns, shown.across) == (3, 2)
    assert (shown.rows, shown.up) == (5, 4)
    assert (shown.counted, shown.panels) == (8, 15)


def test_a_product_read_with_of_is_shaded_alike():
    of, times = (shaded_product(parse_product(f"2/3 {sign} 4/5")) for sign in ("of", "×"))
    assert (of.columns, of.rows, of.counted) == (times.columns, times.rows, times.counted)


@pytest.mark.parametrize("product", ["3 × 2/5", "4/3 × 1/2", "1 1/2 × 2/3", "1/13 × 1/2", "2 × 3"])
def test_factors_that_no_one_sheet_shows_have_no_model(product):
    assert shaded_product(parse_product(product)) is None


def test_twelfths_by_twelfths_are_the_finest_model():
    shown = shaded_product(parse_product("11/12 × 7/12"))
    assert (shown.counted, shown.panels) == (77, 144)


def test_an_answer_that_the_model_does_not_count_is_never_printed(monkeypatch):
    def do_nothing(step, state):
        return state

    monkeypatch.setattr(items, "perform", do_nothing)
    with pytest.raises(AnswerNotShown, match="folding shows 0 of 1 panels for 5/6 × 5/6"):
        items.shaded_product.__wrapped__(parse_product("5/6 × 5/6"))
