"""A pattern is called one only on two answers; piles, items that all missed, and thin evidence are told."""

import pytest
from marking_a_class import PAGES, filled, marked

from foldmath.marking.evidence import FEW_PUPILS, Pile, evidence_of

# 2/3 × 4/5, 3/4 × 1/2, 3/4 × 4/5, 5/6 × 2/3 and 1/3 × 3/4: items 1, 2, 5, 6 and T2 of the core page.
ADDS = {"1": "22/15", "2": "5/4"}


def evidence(tmp_path, answers):
    return evidence_of(marked(tmp_path, filled(answers)))


def test_one_answer_is_no_pattern_and_two_are(tmp_path):
    found = evidence(tmp_path, {"Ann": ADDS, "Bo": {"1": "22/15"}})
    ann, bo = found.pupils
    assert [one.explanation.code for one in ann.patterns] == ["add"]
    assert [(one.explanation.code, one.pattern) for one in bo.thoughts] == [("add", False)]
    (thought,) = found.thoughts
    assert ([pupil.pupil.label for pupil in thought.surely], len(thought.perhaps)) == (["Ann"], 1)


def test_what_only_a_part_of_the_answers_shows_is_left_out(tmp_path):
    # 3/4 × 1/2 = 6/4 by a common denominator kept or by the second turned over; 36/12 is kept alone.
    (ann,) = evidence(tmp_path, {"Ann": {"2": "6/4", "T2": "36/12"}}).pupils
    assert [one.explanation.code for one in ann.patterns] == ["keep"]


@pytest.mark.parametrize(
    ("answers", "pile"),
    [
        ({}, Pile.GO_ON),
        ({"1": "22/15"}, Pile.GO_ON),
        (ADDS, Pile.SHADE),
        ({"F2 of": "4", "F3 of": "8"}, Pile.FOLD),
        ({"F1 panels": "5", "F2 panels": "7"}, Pile.FOLD),
        ({"1": "9/11", "2": "9/11", "4": "9/11"}, Pile.GO_ON),
        ({"1": "9/11", "2": "9/11", "4": "9/11", "5": "9/11"}, Pile.SHADE),
    ],
    ids=["all right", "one slip", "a rule", "a rule at folds", "a third of 6", "3 of 10", "4 of 10"],
)
def test_papers_go_on_three_piles(tmp_path, answers, pile):
    (ann,) = evidence(tmp_path, {"Ann": answers}).pupils
    assert ann.pile is pile


def names(count: int) -> list[str]:
    return [f"Pupil {number}" for number in range(count)]


@pytest.mark.parametrize(
    ("pupils", "missed_by", "told"),
    [(FEW_PUPILS, 6, True), (FEW_PUPILS, 5, False), (FEW_PUPILS - 1, FEW_PUPILS - 1, False)],
)
def test_an_item_that_three_in_four_missed_is_looked_at_first(tmp_path, pupils, missed_by, told):
    answers = {name: {"1": "9/11"} if place < missed_by else {} for place, name in enumerate(names(pupils))}
    found = evidence(tmp_path, answers)
    assert found.missed == ((("1", missed_by, pupils),) if told else ())


def test_cells_that_were_left_open_are_listed(tmp_path):
    found = evidence(tmp_path, {"Ann": {"1": "15-Aug", "2": "?"}})
    assert [answer.cell for _, answer in found.unread] == ["B4", "C4"]
    assert PAGES.of_class(found.pupils[0].marked.page.level) == found.pupils[0].marked.page
