"""The codes on a teacher's plan are codes of the standards, and the standards' own examples touch them.

Sources: Common Core State Standards for Mathematics, NGA Center and CCSSO (2010), read in state adoptions of
it; Department for Education, Mathematics programmes of study: key stages 1 and 2, DFE-00180-2013, read in the
copy at ncetm.org.uk/in-the-classroom/national-curriculum-resource-tool.
"""

import re

import pytest
from lessons_in_words import moments

from foldmath.statements.products import parse_product
from foldmath.statements.standards import GRADE_3_DENOMINATORS, Followed, all_standards, standards_of

FRACTION_CODES = {
    *("3.G.A.2", "3.NF.A.1", "3.NF.A.3", "4.NF.A.1", "4.NF.B.3", "4.NF.B.4", "5.NF.A.1", "5.NF.A.2"),
    *("5.NF.B.3", "5.NF.B.4", "5.NF.B.5", "5.NF.B.6", "5.NF.B.7", "6.NS.A.1", "6.EE.A.1"),
}
"""The standards of grades 3 to 6 about parts of a whole, their products and quotients; CCSSM (2010)."""

CODE = re.compile(r"(?P<grade>[3-6])\.(G|NF|NS|EE)\.[AB]\.\d")
"""Grade, domain, cluster and number, as CCSSM (2010) writes its codes."""

AMERICAN = [standard for standard in all_standards() if standard.curriculum.followed is Followed.CCSS]
ENGLISH = [standard for standard in all_standards() if standard.curriculum.followed is Followed.ENGLAND]


def codes(steps=(), practice=(), followed=Followed.CCSS):
    folded = moments(*steps) if steps else ()
    products = [parse_product(text) for text in practice]
    touched = standards_of(folded, products, frozenset(), grade=6, followed=followed)
    return {standard.code for standard in touched}


@pytest.mark.parametrize("standard", AMERICAN, ids=lambda standard: standard.code)
def test_an_american_code_stands_in_the_document_under_its_grade(standard):
    assert standard.code in FRACTION_CODES
    assert int(CODE.fullmatch(standard.code)["grade"]) == standard.grade


@pytest.mark.parametrize("standard", ENGLISH, ids=lambda standard: standard.words)
def test_an_english_line_is_known_by_its_year_since_the_programmes_have_no_codes(standard):
    assert standard.code == f"Year {standard.grade}"


def test_four_equal_parts_of_a_quarter_each_touch_geometry_of_grade_3():
    """CCSSM (2010), 3.G.A.2: a shape parted into 4 parts of equal area, each 1/4 of it."""
    assert "3.G.A.2" in codes(["pleat width into 4"])


@pytest.mark.parametrize(
    ("product", "code"),
    [
        ("5 × 1/4", "4.NF.B.4"),  # CCSSM (2010), 4.NF.B.4.a
        ("3 × 2/5", "4.NF.B.4"),  # 4.NF.B.4.b
        ("2/3 × 4/5", "5.NF.B.4"),  # 5.NF.B.4.a
    ],
)
def test_the_products_that_a_standard_prints_touch_it(product, code):
    assert codes(practice=[product]) == {code}


@pytest.mark.parametrize(
    ("product", "year"),
    [
        ("1/4 × 1/2", "Year 6"),  # DFE-00180-2013, year 6, statutory example
        ("2 × 3/4", "Year 5"),  # year 5: proper fractions by whole numbers
        ("3 × 1 1/2", "Year 5"),  # year 5: mixed numbers by whole numbers
    ],
)
def test_the_products_of_an_english_year_touch_that_year(product, year):
    assert codes(practice=[product], followed=Followed.ENGLAND) == {year}


def test_the_denominators_of_grade_3_are_those_of_the_footnote():
    """CCSSM (2010), footnote to grade 3: denominators 2, 3, 4, 6, 8."""
    assert sorted(GRADE_3_DENOMINATORS) == [2, 3, 4, 6, 8]
    for parts in range(2, 13):
        assert ("3.NF.A.1" in codes([f"pleat width into {parts}"])) == (parts in (2, 3, 4, 6, 8))


def test_the_american_notice_is_the_one_that_the_licence_asks_for():
    """CCSS Public License (thecorestandards.org/public-license), "Copyright Notice"; read in a copy."""
    assert {standard.curriculum.notice for standard in AMERICAN} == {
        "© Copyright 2010. National Governors Association Center for Best Practices and "
        "Council of Chief State School Officers. All rights reserved."
    }


def test_the_english_notice_is_the_attribution_of_the_open_government_licence():
    """Open Government Licence v3.0, "You must ... acknowledge the source"; wording from memory."""
    assert {standard.curriculum.notice for standard in ENGLISH} == {
        "Contains public sector information licensed under the Open Government Licence v3.0."
    }
