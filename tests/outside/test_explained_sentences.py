"""Worked equations of curricula come out of foldings that show them, under the standard that prints them.

Sources: Common Core State Standards for Mathematics, NGA Center and CCSSO (2010), read in state adoptions of
it; Department for Education, Mathematics programmes of study: key stages 1 and 2, DFE-00180-2013, year 6,
read in a page-by-page copy; NCERT Mathematics class VII, chapter 2 (older edition), pages 37 and 38, read in
a copy.
"""

import pytest
from lessons_in_words import moments

from foldmath.statements.checking.claims import read_claim
from foldmath.statements.explaining import explanations
from foldmath.statements.sameness import same
from foldmath.statements.standards import Followed

THIRDS, FOURTHS_UP = "pleat width into 3", "pleat height into 4"
PRINTED = [
    # CCSSM (2010)
    (
        "3.NF.A.3",
        Followed.CCSS,
        ("fold left edge to right edge", "fold left edge to right edge"),
        "1/2 = 2/4",
    ),
    ("3.NF.A.3", Followed.CCSS, (THIRDS, "fold top edge to bottom edge"), "4/6 = 2/3"),
    ("5.NF.B.7", Followed.CCSS, (THIRDS, FOURTHS_UP), "1/3 ÷ 4 = 1/12"),
    ("5.NF.B.7", Followed.CCSS, ("pleat width into 4", "pleat height into 5"), "4 ÷ 1/5 = 20"),
    (
        "5.NF.B.4",
        Followed.CCSS,
        (THIRDS, "pleat height into 5", "open", "shade 2 of 3 across", "shade 4 of 5 up"),
        "2/3 × 4/5 = 8/15",
    ),
    # DFE-00180-2013, year 6
    ("Year 6", Followed.ENGLAND, ("fold left edge to right edge", FOURTHS_UP), "1/4 × 1/2 = 1/8"),
    ("Year 6", Followed.ENGLAND, (THIRDS, "fold top edge to bottom edge"), "1/3 ÷ 2 = 1/6"),
    # NCERT, class VII: a half is taken of a third by parting a third in two, and 1/4 of 1/4
    ("5.NF.B.4", Followed.CCSS, (THIRDS, "fold top edge to bottom edge"), "1/2 × 1/3 = 1/6"),
    ("5.NF.B.4", Followed.CCSS, ("pleat width into 4", FOURTHS_UP), "1/4 × 1/4 = 1/16"),
]


@pytest.mark.parametrize(("code", "followed", "steps", "printed"), PRINTED)
def test_the_folding_explains_the_equation_that_a_curriculum_prints(code, followed, steps, printed):
    folded = moments(*steps)
    told = explanations(folded, len(folded) - 1, grade=6, followed=followed)
    serving = [one for one in told if same(read_claim(printed), one.claim)]
    assert [one.standard.code for one in serving] == [code]
