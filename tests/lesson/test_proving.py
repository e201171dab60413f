"""A lesson is proved by folding it; a step that fails is answered by one that works there and then."""

from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from foldmath.errors import LessonRefused
from foldmath.lesson import remedies
from foldmath.lesson.grammar.refusals import StepUnreadable
from foldmath.lesson.grammar.sentences import parse_step
from foldmath.lesson.grammar.step_parser import step_in
from foldmath.lesson.lesson import Lesson
from foldmath.lesson.proving import prove
from foldmath.lesson.reading import read_lesson
from foldmath.lesson.remedies import remedy
from foldmath.paper.moments.performing import perform
from foldmath.paper.refusals import StepRefused, TooManyPanels
from foldmath.paper.state import FoldedState, Sheet, open_sheet
from foldmath.plane.numbers import ONE, ZERO, exact, written
from foldmath.words.steps import WrittenStep

DIAGONAL = (
    "fold along the line from the bottom left corner to the top right corner, moving the top left corner"
)

FIRST_GRADE_TO_MULTIPLY = 4
"""Common Core State Standards for Mathematics (2010), 4.NF.B.4: multiply a fraction by a whole number."""
LESSONS = Path(__file__).parents[2] / "lessons"
LETTER = Sheet(exact(11), exact(17, 2), "in")


def sizes(state: FoldedState) -> list[str]:
    return sorted(written(panel.area) for panel in state.panels)


def lesson_of(*sentences: str) -> Lesson:
    steps = tuple(WrittenStep(text=text, step=parse_step(text), line=4, column=10) for text in sentences)
    return Lesson(
        file="x.toml",
        title="Seed trays",
        grade=5,
        paper="letter",
        sheet=LETTER,
        orientation="landscape",
        steps=steps,
    )


@pytest.mark.parametrize("file", sorted(LESSONS.glob("*.toml")), ids=lambda file: file.stem)
def test_every_lesson_that_comes_along_can_be_folded_and_ends_open_or_as_a_booklet(file):
    proved = prove(read_lesson(file))
    assert len(proved.states) == len(proved.lesson.steps) + 1
    assert all(sum((panel.area for panel in state.panels), ZERO) == ONE for state in proved.states)
    assert proved.states[-1].folds == 0 or proved.states[-1].gathered
    assert proved.lesson.practice or proved.lesson.grade < FIRST_GRADE_TO_MULTIPLY
    assert proved.lesson.vocabulary
    assert proved.lesson.notes


def test_seed_trays_are_eighths():
    assert sizes(prove(read_lesson(LESSONS / "seed-trays.toml")).states[-1]) == ["1/8"] * 8


def test_tile_panels_show_two_thirds_of_four_fifths():
    panels = prove(read_lesson(LESSONS / "tile-panels.toml")).states[-1].panels
    assert (len(panels), sum(panel.shaded == 2 for panel in panels)) == (15, 8)


def test_sail_cloth_has_panels_of_several_sizes():
    assert sizes(prove(read_lesson(LESSONS / "sail-cloth.toml")).states[-1]) == [
        "1/24", "1/24", "1/3", "1/4", "1/6", "1/6",
    ]  # fmt: skip


def test_a_lesson_begins_with_the_open_sheet():
    proved = prove(lesson_of("turn over"))
    assert proved.states[0] == open_sheet(LETTER)


def test_a_step_that_fails_is_reported_where_it_stands():
    with pytest.raises(LessonRefused) as caught:
        prove(lesson_of("open"))
    (problem,) = caught.value.problems
    assert (problem.file, problem.line, problem.column, problem.words) == ("x.toml", 4, 10, "open")


@pytest.mark.parametrize(
    ("before", "step", "offer"),
    [
        (
            [],
            "shade 2 of 3 across",
            "put these steps before this one: "
            '"fold the width like a fan, into 3 equal parts", "open the sheet"',
        ),
        (["pleat width into 3", "open"], "shade 2 of 4 across", "shade 2 of the 3 columns"),
        (["pleat height into 4", "open"], "shade 4 of 5 up", "shade 3 of the 4 rows"),
        (["pleat width into 3"], "shade 2 of 3 across", 'put the step "open the sheet" before this one'),
        (
            ["pleat width into 3"],
            "shade 2 of 3 up",
            'put these steps before this one: "open the sheet", '
            '"fold the height like a fan, into 3 equal parts", "open the sheet"',
        ),
        (["pleat width into 4", "open"], "shade 3 of 6 across", "shade 2 of the 4 columns"),
        ([], "fold at 1 moving left", "fold the left part over at the middle"),
        ([], "fold (0, 0) to (2, 1)", "fold the bottom left corner to the top right corner"),
        ([], "fold along (0, 0) (1, 1) moving (1/3, 1/3)", DIAGONAL),
    ],
)
def test_what_is_offered_is_near_to_what_was_asked(before, step, offer):
    with pytest.raises(LessonRefused) as caught:
        prove(lesson_of(*before, step))
    assert str(caught.value.problems[0].hint) == offer


SENTENCES = st.sampled_from(
    [
        "fold left edge to right edge",
        "fold top edge to 1/3",
        "fold bottom left corner to (1/2, 1/2)",
        "fold (0, 0) to (1, 1/2)",
        "fold (1, 1) to (2/3, 3/2)",
        "fold along (0, 1/8) (1/8, 0) moving (0, 0)",
        "fold at 1 moving top",
        "fold left edge to 0",
        "pleat height into 4",
        "open",
        "open last",
        "turn left",
        "shade 1 of 4 up",
        "shade 2 of 6 across",
    ]
)


@settings(max_examples=60, deadline=None)
@given(st.lists(SENTENCES, min_size=2, max_size=5))
def test_a_sentence_offered_for_a_step_that_fails_works_at_that_moment(sentences):
    state = open_sheet(LETTER)
    for sentence in sentences:
        step = parse_step(sentence)
        try:
            state = perform(step, state)
        except StepRefused as refusal:
            hint = remedy(step, refusal, state)
            assert hint
            try:
                offered = step_in(str(hint))
            except StepUnreadable:
                continue
            state = perform(offered, state)


def test_remedies_are_tried_on_so_many_panels_and_no_more(monkeypatch):
    """A fan that would cut too finely is offered with fewer parts, each of them tried, on fine paper few."""
    tried = []

    def refuse(step, state):
        tried.append((step, len(state.panels)))
        raise StepRefused("not this one")

    state = open_sheet(LETTER)
    for sentence in ("pleat width into 4", "open"):
        state = perform(parse_step(sentence), state)
    monkeypatch.setattr(remedies, "perform", refuse)
    for most, trials in ((36, 9), (39, 9), (7, 1), (3, 0), (10**9, 10)):
        tried.clear()
        monkeypatch.setattr(remedies, "MOST_TRIED_PANELS", most)
        remedy(parse_step("pleat width into 12"), TooManyPanels("too many"), state)
        assert [panels for _, panels in tried] == [4] * trials
