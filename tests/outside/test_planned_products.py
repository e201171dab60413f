"""Products that curricula print, planned, folded, shaded and counted: every plan shows the printed answer."""

import pytest

from foldmath.lesson.proving import prove
from foldmath.lesson.reading import lesson_in
from foldmath.paper.sizes import paper_named
from foldmath.plane.numbers import exact
from foldmath.planning.plan_lesson import Class, lesson_text
from foldmath.planning.planner import plan
from foldmath.planning.wanted import wanted_product
from foldmath.tolerance.assumed.spread import default_spread
from foldmath.tolerance.assumed.stock import DEFAULT_STOCK
from foldmath.words.languages import DEFAULT

CCSS = "Common Core State Standards for Mathematics (2010), 5.NF.B.4.a"
ENGLAND = "Department for Education, Mathematics programmes of study: key stages 1 and 2 (2013), Year 6"
NCERT = "NCERT, Mathematics, class VII, chapter 2 (older edition), pages 37-38"

LETTER, GRADE_FIVE = paper_named("letter"), default_spread(5)


@pytest.mark.parametrize(
    ("product", "shown", "panels", "_source"),
    [
        ("2/3 × 4/5", 8, 15, CCSS),
        ("1/4 × 1/2", 1, 8, ENGLAND),
        ("1/2 × 1/3", 1, 6, NCERT),
        ("1/3 × 4/5", 4, 15, NCERT),
        ("2/3 × 1/5", 2, 15, NCERT),
        ("1/4 of 3/5", 3, 20, NCERT),
        ("1/4 of 1/4", 1, 16, NCERT),
    ],
)
def test_the_printed_product_is_what_panels_shaded_twice_are_of_all(product, shown, panels, _source):
    wanted = wanted_product(product)
    ranked = plan(wanted, LETTER, "landscape", GRADE_FIVE, DEFAULT_STOCK, best=3).ranked
    assert ranked
    for one in ranked:
        made_for = Class(grade=5, size=LETTER, orientation="landscape", spread=GRADE_FIVE)
        text = lesson_text(wanted, one, made_for, DEFAULT)
        folded = prove(lesson_in(text, "planned.toml")).states[-1].panels
        assert len(folded) == panels
        assert {panel.area for panel in folded} == {exact(1, panels)}
        assert sum(panel.shaded == 2 for panel in folded) == shown
