"""The cells that an item's picture shades are the panels that folding and shading a real sheet gives."""

from fractions import Fraction
from itertools import product

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from foldmath.paper.moments.performing import perform
from foldmath.paper.state import Sheet, open_sheet
from foldmath.paper.steps import Axis, Open, Pleat, Shade
from foldmath.plane.numbers import exact
from foldmath.statements.items import sheets_of
from foldmath.statements.products import parse_product

LETTER = Sheet(exact(11), exact(17, 2), "in")
TWICE = 2

parts_of_a_whole = st.integers(2, 6).flatmap(
    lambda parts: st.tuples(st.integers(1, parts - 1), st.just(parts)).map("{0[0]}/{0[1]}".format)
)


def shadings_after_folding(first: str, second: str) -> dict[tuple[int, int], int]:
    """Fold a sheet into rows of the second factor and columns of the first, and shade both.

    Give how often each panel is shaded, by its column from the left and its row from the bottom.
    """
    (across, columns), (up, rows) = (tuple(map(int, factor.split("/"))) for factor in (first, second))
    state = open_sheet(LETTER)
    for step in (
        Pleat(Axis.HEIGHT, rows),
        Open(),
        Shade(up, rows, Axis.HEIGHT),
        Pleat(Axis.WIDTH, columns),
        Open(),
        Shade(across, columns, Axis.WIDTH),
    ):
        state = perform(step, state)
    places = {}
    for panel in state.panels:
        x, y = min(corner.x for corner in panel.corners), min(corner.y for corner in panel.corners)
        place = (x * columns / LETTER.width, y * rows / LETTER.height)
        places[tuple(int(number) for number in place)] = panel.shaded
    return places


def assert_shown_as_folded(first: str, second: str) -> None:
    (sheet,) = sheets_of(parse_product(f"{first} × {second}")).sheets
    folded = shadings_after_folding(first, second)
    assert set(folded) == set(product(range(sheet.columns), range(sheet.rows)))
    assert sheet.twice == {place for place, times in folded.items() if times == TWICE}
    assert Fraction(len(sheet.twice), len(folded)) == Fraction(first) * Fraction(second)


@settings(max_examples=25, deadline=None)
@given(parts_of_a_whole, parts_of_a_whole)
def test_the_cells_shaded_twice_are_the_panels_that_folding_shades_twice(first, second):
    assert_shown_as_folded(first, second)


@pytest.mark.parametrize(("first", "second"), [("2/3", "4/5"), ("11/12", "7/12")])
def test_a_picture_is_what_folding_gives_up_to_twelfths_by_twelfths(first, second):
    """2/3 × 4/5 = 8/15: Common Core State Standards for Mathematics (2010), 5.NF.B.4.a."""
    assert_shown_as_folded(first, second)


def test_of_and_times_are_shaded_alike():
    assert sheets_of(parse_product("2/3 of 4/5")) == sheets_of(parse_product("2/3 × 4/5"))
