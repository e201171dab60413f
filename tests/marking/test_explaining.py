"""A wrong answer is explained by the simplest that leads to it, and by all that are as simple."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from foldmath.marking.asking.item_questions import question_of
from foldmath.marking.asking.questions import NumberQuestion
from foldmath.marking.judging.explaining import explain
from foldmath.marking.judging.explanations import LEAST, Way
from foldmath.marking.judging.judging import judge
from foldmath.marking.judging.marks import Verdict
from foldmath.marking.judging.workings import Act, Step, right_working, rule_workings
from foldmath.marking.reading.answers import Number
from foldmath.statements.claim_grammar import parse
from foldmath.statements.items import make_mend_doubling
from foldmath.statements.products import Product, parse_product
from foldmath.statements.ratios import fraction, whole_number
from foldmath.statements.rules import RULES
from foldmath.statements.rules.problems import PanelCut, PanelsMade, PartsOfParts, SheetsCut

proper = st.integers(2, 12).flatmap(lambda below: st.integers(1, below - 1).map(lambda n: fraction(n, below)))
products = st.builds(Product, proper, proper)


def ratio(text):
    return parse(text).asked


def question(problem, answer=None) -> NumberQuestion:
    if isinstance(problem, str):
        problem = parse_product(problem)
    shown = (problem.first, problem.second) if isinstance(problem, Product) else ()
    return NumberQuestion(
        column="2", asks="", problem=problem, answer=answer or problem.unreduced, shown=shown
    )


def names(problem, answer, elsewhere=None, right=None) -> list[str]:
    return [one.name for one in explain(question(problem, right), ratio(answer), elsewhere)]


@pytest.mark.parametrize(
    ("item", "answer", "named"),
    [
        ("3/5 × 1/5", "3/5", ["keep_common_denominator", "copied"]),
        # 75/25 by the one, 15/5 by the other; 3 of 120 pupils wrote it in the study of 2013.
        ("3/5 × 1/5", "3/1", ["keep_common_denominator", "invert_second"]),
        ("3/5 × 1/4", "60/20", ["keep_common_denominator"]),
        ("3/5 × 1/4", "17/20", ["add_instead"]),
        ("3/5 × 1/4", "5/12", ["invert_first"]),
        ("3/5 × 1/4", "4/20", ["add_numerators"]),
        ("3/4 × 1/2", "4/6", ["add_tops_and_bottoms", "invert_first"]),
        ("3/5 × 1/4", "2/7", []),
        ("1/4 × 1/2", "8", ["count_for_size"]),
        ("3/4 × 2/3", "7/11", []),
        ("3 × 2/5", "6/15", ["multiply_both_by_whole"]),
        ("3 × 2/5", "6", ["drop_denominator"]),
        ("2/3 × 4/5", "8/12", ["part_for_whole"]),
        ("2/3 × 4/5", "12/15", ["all_shaded"]),
        ("2/3 × 4/5", "14/15", ["all_shaded"]),
        ("2/3 × 4/5", "4/5", ["copied"]),
        ("2/3 × 4/5", "8/5", ["keep_common_denominator"]),
        ("2/3 × 4/5", "8/3", ["keep_common_denominator"]),
        # 3/6 × 4/6 over the common denominator, and 1 × 2 over one of the two.
        ("1/2 × 2/3", "12/6", ["keep_common_denominator"]),
        ("1/2 × 2/3", "2/2", ["keep_common_denominator"]),
    ],
)
def test_a_rule_that_leads_to_an_answer_is_named(item, answer, named):
    assert names(item, answer) == named


def test_a_slip_in_a_times_table_is_told_with_its_step():
    (one,) = explain(question("7/8 × 2/3"), ratio("14/21"))
    assert (one.way, one.slip.step.text, one.slip.written) == (Way.SLIP, "8 × 3", 21)


def test_a_rule_and_a_slip_come_after_a_rule_alone():
    (one,) = explain(question("4/7 × 5/7"), ratio("25/7"))
    assert (one.way, one.rule.name, one.slip.step.text) == (
        Way.RULE_AND_SLIP,
        "keep_common_denominator",
        "4 × 5",
    )
    assert names("4/7 × 5/7", "20/7") == ["keep_common_denominator"]


def test_the_answer_as_it_stands_comes_before_another_form_of_it():
    # 6/10 is denominators added, or 6 of the 10 panels shaded first; 3/5 is copied, or that, reduced.
    assert names("3/5 × 2/5", "6/10") == ["add_denominators", "part_for_whole"]
    assert names("3/5 × 2/5", "3/5") == ["copied"]


def test_a_form_that_is_neither_simpler_nor_doubled_explains_nothing():
    assert names("3/5 × 2/5", "10/20") == ["add_tops_and_bottoms"]
    assert names("3/5 × 2/5", "15/30") == []


def test_an_answer_that_belongs_to_another_question_is_found_only_where_nothing_is_plainer():
    assert names("2/3 × 4/5", "3/7", {(3, 7): "5"}) == ["elsewhere"]
    assert names("2/3 × 4/5", "3/7", {(3, 7): "2"}) == [], "the question itself"
    crowd = {(3, 7): "5", **{(1, below): f"{below}" for below in range(10, 40)}}
    assert names("2/3 × 4/5", "3/7", crowd) == [], "one of thirty is met by chance"


def test_a_rounded_decimal_is_the_right_answer_rounded():
    assert names("2/3 × 1/2", "0.33") == ["rounded"]
    assert names("2/3 × 1/2", "0.34") == []


def test_where_studies_asked_nothing_the_rule_that_a_teacher_meets_comes_first():
    assert names("1/2 × 1", "2")[0] == "count_for_size"


@pytest.mark.parametrize(
    ("problem", "right", "answer", "named"),
    [
        (PanelsMade(4, 2), whole_number(8), "6", ["add_folds"]),
        (PanelsMade(4, 2), whole_number(8), "1/8", ["swap_count_and_size"]),
        (PanelsMade(4, 2), whole_number(8), "4", ["stop_one_fold_early"]),
        (PanelCut(4, 3), fraction(1, 12), "3/4", ["multiply_for_divide"]),
        (PanelCut(4, 3), fraction(1, 12), "1/16", ["slip"]),
        (SheetsCut(3, 4), whole_number(12), "7", ["add_numbers"]),
        (PartsOfParts((fraction(1, 2),) * 3), fraction(1, 8), "1/6", ["add_folds"]),
    ],
)
def test_other_kinds_of_problem_have_their_own_rules_and_slips(problem, right, answer, named):
    assert names(problem, answer, right=right) == named


@given(products)
def test_the_first_way_to_follow_a_rule_gives_the_answer_of_the_rule(product):
    seen = set()
    for rule, working in rule_workings(product):
        answers = [(answer.numerator, answer.denominator) for answer in rule.answers(product)]
        if rule not in seen and answers:
            assert working.written == answers[0]
        seen.add(rule)
    assert seen <= set(RULES)


@given(products)
def test_nothing_right_is_explained_away_and_nothing_unlikely_named(product):
    asked = question(product)
    assert right_working(product).written == (asked.answer.numerator, asked.answer.denominator)
    for above in range(1, 13):
        for one in explain(asked, fraction(above, product.unreduced.denominator)):
            assert one.per_mille >= LEAST


@pytest.mark.parametrize(
    ("step", "slips"),
    [
        (Step(Act.TIMES, 6, 7), {36, 42 - 7, 48, 49, 67, 76} - {42}),
        (Step(Act.TIMES, 1, 7), {17, 71}),
        (Step(Act.PLUS, 3, 4), {6, 8, 34, 43}),
        (Step(Act.KEEP, 5), set()),
    ],
)
def test_one_slip_lands_beside_the_right_entry(step, slips):
    assert step.slips == slips


@pytest.mark.parametrize(
    ("answer", "named"),
    [("8", []), ("4", ["stop_one_fold_early"]), ("16", ["begin_with_two"]), ("6", [])],
)
def test_a_number_that_corrects_twos_added_is_marked_by_itself_and_explained(answer, named):
    """2 × 2 × 2 = 6 is to be corrected; 6 once more tells no more than that it was not."""
    mark = judge(question_of(make_mend_doubling(3), "4"), Number(ratio(answer)), {})
    assert mark.verdict is (Verdict.RIGHT if answer == "8" else Verdict.WRONG)
    assert [one.rule.name for one in mark.explanations] == named
