"""Thickness and weight of papers against the public standards that give them."""

import pytest

from foldmath.plane.numbers import denominator, exact, numerator
from foldmath.tolerance.assumed.stock import grammage_of_pounds, stock_named


def as_float(number) -> float:
    return numerator(number) / denominator(number)


class TestGovernmentPaperSpecificationStandards:
    """US Government Publishing Office, JCP sheets (public domain): thickness with its tolerance, in mm.

    D10 writing and K10 index 1999 (gpo.gov/customers/text/vol11/068.htm), O-63 copier 2007 (mils).
    """

    @pytest.mark.parametrize(
        ("name", "thickness_mm", "tolerance_mm"),
        [
            ("writing 16 lb", 0.075, 0.011),
            ("writing 20 lb", 0.095, 0.011),
            ("90 lb index", 0.190, 0.013),
            ("110 lb index", 0.230, 0.013),
            ("140 lb index", 0.290, 0.013),
            ("170 lb index", 0.350, 0.020),
        ],
    )
    def test_a_named_paper_has_the_thickness_of_its_standard(self, name, thickness_mm, tolerance_mm):
        caliper = as_float(stock_named(name).caliper_mm)
        assert caliper == pytest.approx(thickness_mm)
        assert tolerance_mm < caliper

    @pytest.mark.parametrize(("name", "mils"), [("copy 24 lb", 4.1), ("copy 28 lb", 4.7)])
    def test_copier_papers_are_given_in_mils(self, name, mils):
        assert as_float(stock_named(name).caliper_mm) == pytest.approx(mils * 0.0254)

    @pytest.mark.parametrize(("grams", "thickness_mm"), [(170, 0.20), (245, 0.28), (270, 0.35)])
    def test_interpolated_thickness_is_near_another_series(self, grams, thickness_mm):
        """JCP P20 folder stock, tolerance 0.025 mm, is another paper: within twice that."""
        caliper = as_float(stock_named(f"{grams} gsm").caliper_mm)
        assert caliper == pytest.approx(thickness_mm, abs=0.05)


class TestPoundsOfAReam:
    """g/m² for one pound: 500 sheets of the basis size, 1 lb = 453.59237 g, 1 in = 25.4 mm (computed)."""

    @pytest.mark.parametrize(
        ("kind", "factor"),
        [("bond", 3.7597), ("cover", 2.7041), ("index", 1.8080), ("text", 1.4801), ("tag", 1.6275)],
    )
    def test_one_pound(self, kind, factor):
        assert as_float(grammage_of_pounds(exact(1), kind)) == pytest.approx(factor, abs=5e-5)

    @pytest.mark.parametrize(("pounds", "grammage"), [(76, 123.7), (50, 81.4)])
    def test_construction_paper_is_weighed_in_the_size_of_tag(self, pounds, grammage):
        assert as_float(grammage_of_pounds(exact(pounds), "tag")) == pytest.approx(grammage, abs=0.05)

    @pytest.mark.parametrize(
        ("pounds", "kind", "grammage"),
        [(20, "bond", 75), (65, "cover", 176), (80, "cover", 216), (110, "index", 199)],
    )
    def test_a_printer_makers_table_of_equivalents_agrees(self, pounds, kind, grammage):
        """HP's table of paper weights."""
        assert as_float(grammage_of_pounds(exact(pounds), kind)) == pytest.approx(grammage, abs=0.6)


@pytest.mark.parametrize(
    ("name", "grammage"),
    [("90 lb index", 165), ("110 lb index", 200), ("140 lb index", 255), ("170 lb index", 305)],
)
def test_the_standards_own_pairs_of_pounds_and_grams_agree(name, grammage):
    """JCP K10 gives both, rounded to 5 g/m²."""
    stock = stock_named(name)
    pounds = exact(int(name.split()[0]))
    assert stock.grammage == grammage
    assert as_float(grammage_of_pounds(pounds, "index")) == pytest.approx(grammage, abs=3)
