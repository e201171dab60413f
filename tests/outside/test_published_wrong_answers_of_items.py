"""Items of a study, worked wrongly by a rule, show what most of its pupils wrote.

Source: R. S. Siegler and A. A. Pyke, Developmental Psychology 49 (2013) 1994-2004, 120 pupils; and
R. S. Siegler, C. A. Thompson and M. Schneider, Cognitive Psychology 62 (2011) 273-296, 48 pupils. Counted
from the open data in github.com/baixiwei/UMA_PR02, commit d20f3a4.
"""

import pytest

from foldmath.statements.checking.claims import check_claim
from foldmath.statements.items import make_mend, make_shade
from foldmath.statements.products import parse_product
from foldmath.statements.rules import named

WRITTEN = [
    ("3/5 × 1/5", "keep_common_denominator", "3/5", 44, 120),
    ("4/5 × 3/5", "keep_common_denominator", "12/5", 44, 120),
    ("3/5 × 1/4", "keep_common_denominator", "60/20", 22, 120),
    ("2/3 × 3/5", "keep_common_denominator", "90/15", 22, 120),
    ("3/5 × 2/5", "keep_common_denominator", "6/5", 8, 48),
    ("3/5 × 1/4", "add_instead", "17/20", 5, 120),
    ("2/3 × 3/5", "add_instead", "19/15", 5, 120),
    ("3/5 × 1/4", "invert_first", "5/12", 6, 120),
    ("4/5 × 3/5", "invert_second", "20/15", 4, 120),
]


@pytest.mark.parametrize(("item", "rule", "answer", "count", "pupils"), WRITTEN)
def test_a_slip_to_mend_is_what_pupils_wrote(item, rule, answer, count, pupils):
    mend = make_mend(parse_product(item), named(rule))
    assert tuple(map(str, (mend.claim, mend.given, mend.lines[-1]))) == (f"{item} = {answer}", answer, answer)
    assert not check_claim(str(mend.claim)).true
    assert (mend.study.count, mend.study.pupils) == (count, pupils)


@pytest.mark.parametrize(("item", "answer"), [(item, answer) for item, _, answer, *_ in WRITTEN[:5]])
def test_the_likeliest_wrong_answer_of_a_shaded_product_is_what_most_pupils_wrote(item, answer):
    likeliest, *_ = make_shade(parse_product(item)).wrong
    assert str(likeliest.answer) == answer


def test_an_item_that_nobody_asked_has_no_share():
    assert make_mend(parse_product("1/5 × 3/5"), named("keep_common_denominator")).study is None
