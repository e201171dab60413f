"""The plan says which edges to mark before the lesson, into how many parts, and for which of its steps."""

import pytest
from conftest import LESSONS
from lessons_in_words import EIGHTHS, core_sheet, proved

from foldmath.making import proved_lesson
from foldmath.paper.steps import Axis
from foldmath.teachers_plan.edge_marks import edge_marks, parts_marked
from foldmath.teachers_plan.plan import plan, plan_html
from foldmath.tolerance.accuracy import accuracy
from foldmath.tolerance.assumed.spread import default_spread

ACROSS, UP = Axis.WIDTH, Axis.HEIGHT


def marks(*steps):
    return [tuple(mark) for mark in edge_marks(proved(*steps).moments)]


def plan_of(made):
    return plan(made, core_sheet(made), None)


@pytest.mark.parametrize(
    ("lesson", "told"),
    [
        ("tile-panels", [(ACROSS, 3, (1,)), (UP, 5, (2,))]),
        ("sail-cloth", [(ACROSS, 3, (1,)), (UP, 4, (2,))]),
        ("seed-trays", []),
    ],
)
def test_every_fold_by_eye_is_marked_under_the_number_that_the_plan_gives_it(lesson, told):
    """The fan of the tile panels' height is the lesson's third step, and the plan's second."""
    made = plan_of(proved_lesson(LESSONS / f"{lesson}.toml")[0])
    assert [(mark.axis, mark.parts, numbers) for mark, numbers in made.before.marks] == told
    assert ("edge marks" in str(made.before.true)) == bool(told)
    assert ("Edge marks:" in plan_html(made)) == bool(told)


def test_the_plan_names_edges_parts_and_steps_in_words():
    html = plan_html(plan_of(proved("pleat width into 3", "open", "pleat height into 5", "open")))
    assert "step 1, the top and bottom edges in 3 parts; step 2, the left and right edges in 5 parts;" in html


def test_steps_that_need_the_same_marks_are_told_together():
    made = plan_of(
        proved("fold at 1/3 moving left", "open", "pleat height into 5", "fold at 2/3 moving right")
    )
    assert [numbers for _, numbers in made.before.marks] == [(1, 3), (2,)]
    assert "steps 1 and 3, the top and bottom edges in 3 parts" in plan_html(made)


def test_a_fold_that_brings_edges_and_creases_together_needs_no_mark():
    assert marks(*EIGHTHS) == []
    assert marks("fold left edge to right edge", "open", "fold left edge to middle") == []


def test_where_the_place_that_an_edge_is_brought_to_is_judged_by_eye_its_crease_is_marked():
    assert marks("fold left edge to 1/3") == [(ACROSS, 6, (0,))]


def test_a_crease_that_is_there_already_is_marked_once():
    assert marks("fold at 1/3 moving left", "open", "fold at 1/3 moving left") == [(ACROSS, 3, (0,))]


def test_marks_are_counted_on_the_opened_sheet_however_it_lies_when_it_is_folded():
    assert marks("fold left edge to right edge", "fold at 1/3 moving left") == [(ACROSS, 3, (1,))]
    assert marks("turn left", "pleat width into 5") == [(UP, 5, (1,))]


def test_a_slanted_fold_divides_no_edge_evenly_and_has_no_mark():
    assert marks("fold (0, 0) to (1, 1/3)") == []


def test_numbers_of_parts_are_told_once_and_the_fewest_first():
    folds = ("pleat width into 5", "open", "pleat height into 3", "open", "turn left", "pleat width into 5")
    assert parts_marked(edge_marks(proved(*folds).moments)) == (3, 5)


def test_the_accuracy_beside_the_marks_is_that_of_the_marked_folds():
    made = proved("pleat width into 3", "open", "pleat height into 5")
    spread = default_spread(made.lesson.grade, made.lesson.stock)
    marked = accuracy(made.moments, spread, ticks=(0, 2))
    assert 2.4 < marked.worst_mm < 4.0
    told = "the worst panel is about 1/4 in off; about 1/8 in with edge marks"
    assert str(plan_of(made).before.true) == told
