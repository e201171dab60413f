"""Products that curricula print, each obtained by folding and shading a sheet and counting its panels."""

from fractions import Fraction

import pytest
from strategies import folded

from foldmath.paper.moments.performing import perform
from foldmath.paper.state import FoldedState, Sheet, open_sheet
from foldmath.paper.steps import Axis, Edge, FoldEdge, Open, Pleat, Shade
from foldmath.plane.numbers import ONE, ZERO, exact

SHEET = Sheet(exact(11), exact(17, 2), "in")
RIBBON = Sheet(exact(9), exact(1), "cm")


def shaded_twice(first: str, second: str) -> tuple[int, int]:
    """Shade ``second`` of the sheet in columns and ``first`` in rows; count panels shaded twice, and all.

    All panels are equal, so that the two counts are the numerator and denominator of the first of the second.
    """
    rows, columns = (tuple(map(int, said.split("/"))) for said in (first, second))
    state = open_sheet(SHEET)
    for (taken, parts), axis in ((columns, Axis.WIDTH), (rows, Axis.HEIGHT)):
        for step in (Pleat(axis, parts), Open(), Shade(taken, parts, axis)):
            state = perform(step, state)
    assert len({panel.area for panel in state.panels}) == 1
    return sum(panel.shaded == 2 for panel in state.panels), len(state.panels)


def sizes(state: FoldedState) -> set[str]:
    return {str(panel.area) for panel in state.panels}


class TestCommonCore:
    """Source: National Governors Association Center for Best Practices and Council of Chief State School
    Officers, Common Core State Standards for Mathematics, 2010; the standard's code is in each name.
    """

    def test_5_nf_b_4_a_two_thirds_of_four_fifths_is_eight_fifteenths(self):
        assert shaded_twice("2/3", "4/5") == (8, 15)

    def test_3_g_a_2_four_parts_of_equal_area_are_a_fourth_each(self):
        assert [str(panel.area) for panel in folded(SHEET, [Pleat(Axis.WIDTH, 4)]).panels] == ["1/4"] * 4

    def test_3_nf_a_3_b_the_same_shading_counts_as_one_half_and_as_two_fourths(self):
        halves = folded(SHEET, [FoldEdge(Edge.LEFT, ONE), Open(), Shade(1, 2, Axis.WIDTH)])
        fourths = folded(SHEET, [FoldEdge(Edge.LEFT, ONE)] * 2 + [Open(), Shade(2, 4, Axis.WIDTH)])
        for state, counts in ((halves, (1, 2)), (fourths, (2, 4))):
            assert (sum(panel.shaded for panel in state.panels), len(state.panels)) == counts
            assert sum((panel.area for panel in state.panels if panel.shaded), ZERO) == exact(1, 2)

    def test_4_nf_b_4_b_three_sheets_with_two_fifths_shaded_show_six_fifths(self):
        sheets = [folded(SHEET, [Pleat(Axis.WIDTH, 5), Open(), Shade(2, 5, Axis.WIDTH)]) for _ in range(3)]
        shaded = [panel for sheet in sheets for panel in sheet.panels if panel.shaded]
        assert len(shaded) == 6
        assert sum((panel.area for panel in shaded), ZERO) == exact(6, 5)

    def test_5_nf_b_7_a_a_third_folded_in_four_is_four_twelfths(self):
        """(1/3) ÷ 4 = 1/12, because (1/12) × 4 = 1/3."""
        state = folded(SHEET, [Pleat(Axis.WIDTH, 3), Pleat(Axis.HEIGHT, 4), Open()])
        third = [panel.area for panel in state.panels if max(panel.corners).x <= SHEET.width / 3]
        assert third == [exact(1, 12)] * 4
        assert sum(third, ZERO) == exact(1, 3)

    def test_5_nf_b_7_b_four_sheets_hold_twenty_fifths(self):
        """4 ÷ (1/5) = 20, because 20 × (1/5) = 4."""
        panels = [panel for _ in range(4) for panel in folded(SHEET, [Pleat(Axis.WIDTH, 5)]).panels]
        assert len(panels) == 20
        assert sum((panel.area for panel in panels), ZERO) == 4


class TestEngland:
    """Source: Department for Education, Mathematics programmes of study: key stages 1 and 2,
    DFE-00180-2013, 2013; year 6, statutory.
    """

    def test_a_quarter_of_a_half_is_an_eighth(self):
        assert shaded_twice("1/4", "1/2") == (1, 8)

    def test_a_third_divided_by_two_is_a_sixth(self):
        state = folded(SHEET, [Pleat(Axis.WIDTH, 3), FoldEdge(Edge.TOP, ZERO)])
        assert sizes(state) == {"1/6"}


class TestIndia:
    """Source: NCERT, Mathematics, class VII, chapter 2 (older edition), pages 37-38."""

    def test_a_ribbon_of_9_cm_folded_twice_has_four_parts_of_9_4_cm(self):
        state = folded(RIBBON, [FoldEdge(Edge.LEFT, ONE)] * 2)
        assert len(state.panels) == 4
        assert state.table.box.width == exact(9, 4)

    def test_one_part_folded_once_more_is_half_of_9_4_cm(self):
        state = folded(RIBBON, [FoldEdge(Edge.LEFT, ONE)] * 3)
        assert state.table.box.width == exact(9, 8)
        assert state.table.box.width + state.table.box.width == exact(9, 4)

    def test_a_third_divided_in_two_is_a_sixth(self):
        assert shaded_twice("1/2", "1/3") == (1, 6)

    @pytest.mark.parametrize(
        ("first", "second", "product"),
        [
            ("1/3", "4/5", "4/15"),
            ("2/3", "1/5", "2/15"),
            ("1/4", "1/4", "1/16"),
            ("1/4", "3/5", "3/20"),
            ("1/7", "2/9", "2/63"),
            ("1/7", "3/10", "3/70"),
        ],
    )
    def test_exercises_with_proper_fractions(self, first, second, product):
        """Those with 4/3 and 6/5 need more than one sheet."""
        assert Fraction(*shaded_twice(first, second)) == Fraction(product)

    def test_a_quarter_of_four_thirds_is_a_third(self):
        """Two sheets in thirds, four thirds shaded in all, and a quarter of each: 4 panels of 1/12."""
        steps = [Pleat(Axis.WIDTH, 3), Open(), Pleat(Axis.HEIGHT, 4), Open(), Shade(1, 4, Axis.HEIGHT)]
        sheets = [folded(SHEET, [*steps, Shade(taken, 3, Axis.WIDTH)]) for taken in (3, 1)]
        twice = [panel.area for sheet in sheets for panel in sheet.panels if panel.shaded == 2]
        assert twice == [exact(1, 12)] * 4
        assert sum(twice, ZERO) == exact(1, 3)
