"""Answers to a teacher's own words are marked and explained by the sum behind them."""

import pytest
from marking_a_class import PROVED
from own_words import BED, having, own

from foldmath.lesson.reading import lesson_in
from foldmath.lesson.roster import Pupil
from foldmath.marking.asking.lesson_pages import LessonPages
from foldmath.marking.evidence import evidence_of
from foldmath.marking.marked_class import mark_class
from foldmath.marking.next_lesson import next_lesson
from foldmath.marking.reading.sheet import blank_rows, read_sheet, written_csv
from foldmath.marking.reporting.notes import notes_to_pupils
from foldmath.statements.items import Level

ASKED = {
    BED: ("17/12", "add_instead"),
    own("How much?", "1/2 + 1/4"): ("2/6", "add_tops_and_bottoms"),
    own("How many?", "300 ÷ 1/4"): ("300/4", "take_part_of_number"),
    own("How much each?", "1/4 ÷ 300"): ("1/304", "add_denominators"),
    own("How much?", "(1/2)^3"): ("3/2", "times_exponent"),
    own("How much is left?", "3/4 − 1/8"): ("1/8", "copied"),
}


@pytest.fixture(scope="module")
def pages():
    return LessonPages(having(PROVED, *ASKED))


@pytest.fixture(scope="module")
def hers(pages):
    """Give what the page of a class asks in her words."""
    asked = [question for question in pages.of_class(Level.CORE).questions if question.column.isdigit()]
    return asked[-len(ASKED) :]


@pytest.fixture(scope="module")
def marked(pages, hers, tmp_path_factory):
    """Mark three pupils: one with the right answers and the units, two who follow the rules."""
    path = tmp_path_factory.mktemp("marks") / "answers.csv"
    pupils = [Pupil(name, Level.CORE) for name in ("Ada", "Bo", "Chi")]
    rows = blank_rows([(pupil.label, pages.of_class(Level.CORE)) for pupil in pupils], "en-US")
    columns = [rows[1].index(question.column) for question in hers]
    for row in rows:
        for column, (item, (wrong, _)) in zip(columns, ASKED.items(), strict=True):
            if row[0] == "Ada":
                row[column] = f"{item.answer} {item.unit}".strip()
            elif row[0] in ("Bo", "Chi"):
                row[column] = wrong
    path.write_bytes(written_csv(rows))
    return mark_class(read_sheet(path), pupils, pages, lambda _: 0, own=False)


def test_the_sheet_says_the_sum_of_each(hers):
    assert [str(question.asks) for question in hers] == [str(item.sum) for item in ASKED]


def test_right_answers_are_right_with_their_units_and_wrong_ones_are_explained(hers, marked):
    by_column = {question.column: rule for question, (_, rule) in zip(hers, ASKED.values(), strict=True)}
    ada, bo, _ = marked.pupils
    assert all(one.mark.verdict.good for one in ada.answers if one.question.column in by_column)
    explained = {one.question.column: one.mark.explanations for one in bo.answers}
    assert {column: [one.name for one in explained[column]][:1] for column in by_column} == {
        column: [rule] for column, rule in by_column.items()
    }


def test_notes_and_the_next_lesson_are_made_and_her_story_is_told_only_once(marked, pages, tmp_path):
    evidence = evidence_of(marked)
    assert len(notes_to_pupils(evidence, pages, ()).notes) == 3
    coming = next_lesson(evidence, pages, tmp_path)
    assert not lesson_in(coming.text, "next.toml").items
    assert "2/3 × 3/4" not in [product.text for product in coming.products]
