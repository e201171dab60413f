"""The rules give the wrong answers that pupils really wrote.

Source: R. S. Siegler and A. A. Pyke, Developmental Psychology 49 (2013) 1994-2004, 120 pupils; and
R. S. Siegler, C. A. Thompson and M. Schneider, Cognitive Psychology 62 (2011) 273-296, 48 pupils. Counted
from the open data in github.com/baixiwei/UMA_PR02, commit d20f3a4.
"""

import pytest

from foldmath.statements.checking.claims import check_claim
from foldmath.statements.products import parse_product
from foldmath.statements.rules.wrong_answers import likely_wrong_answers, published

MOST_COMMON = [
    ("3/5 × 1/5", "3/5", 44, 120),
    ("4/5 × 3/5", "12/5", 44, 120),
    ("3/5 × 1/4", "60/20", 22, 120),
    ("2/3 × 3/5", "90/15", 22, 120),
    ("3/5 × 2/5", "6/5", 8, 48),
    ("3/5 × 1/2", "30/10", 3, 48),
]

ALSO_WRITTEN = [
    ("3/5 × 1/5", "4/5", "add_instead", 8),
    ("3/5 × 1/5", "5/15", "invert_first", 3),
    ("4/5 × 3/5", "15/20", "invert_first", 5),
    ("4/5 × 3/5", "20/15", "invert_second", 4),
    ("3/5 × 1/4", "5/12", "invert_first", 6),
    ("3/5 × 1/4", "17/20", "add_instead", 5),
    ("2/3 × 3/5", "9/10", "invert_first", 6),
    ("2/3 × 3/5", "19/15", "add_instead", 5),
    ("3/5 × 2/5", "6/10", "add_denominators", 5),
    ("3/5 × 1/2", "5/6", "invert_first", 2),
]


@pytest.mark.parametrize(("item", "answer", "count", "pupils"), MOST_COMMON)
def test_the_likeliest_wrong_answer_is_the_one_that_most_pupils_wrote(item, answer, count, pupils):
    likeliest, *_ = likely_wrong_answers(parse_product(item))
    assert (str(likeliest.answer), likeliest.rule.name) == (answer, "keep_common_denominator")
    assert likeliest.published is not None
    assert (likeliest.published.count, likeliest.published.pupils) == (count, pupils)


@pytest.mark.parametrize(("item", "answer", "rule", "count"), ALSO_WRITTEN)
def test_a_rarer_answer_is_given_by_its_rule_and_comes_in_order_of_its_count(item, answer, rule, count):
    given = likely_wrong_answers(parse_product(item), most=9)
    wrong = next(wrong for wrong in given if str(wrong.answer) == answer)
    assert (wrong.rule.name, wrong.published and wrong.published.count) == (rule, count)
    counts = [other.published.count if other.published else 0 for other in given]
    assert counts == sorted(counts, reverse=True)


@pytest.mark.parametrize(
    ("item", "answer", "count"),
    [("3/5 + 1/4", "4/9", 35), ("2/3 + 3/5", "5/8", 28), ("4/5 + 3/5", "7/10", 21)],
)
def test_the_commonest_wrong_sums_add_tops_and_bottoms(item, answer, count):
    assert check_claim(f"{item} = {answer}").slip.name == "add_tops_and_bottoms"
    found = published(item, answer)
    assert found is not None
    assert (found.count, found.pupils) == (count, 120)


@pytest.mark.parametrize("claim", ["2/4 + 5/4 = 7/8", "2/5 + 1/2 = 3/7"])
def test_the_sums_warned_of_in_print_add_tops_and_bottoms(claim):
    """First: IES practice guide NCEE 2010-4039 as quoted on ernweb.com. Second: CCSSM (2010) 5.NF.A.2."""
    verdict = check_claim(claim)
    assert (verdict.true, verdict.slip.name) == (False, "add_tops_and_bottoms")
