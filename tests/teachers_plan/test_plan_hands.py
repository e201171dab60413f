"""The plan says how true the folding comes out, and warns of what paper and hands can hardly do."""

import pytest
from conftest import LESSONS
from lessons_in_words import EIGHTHS, core_sheet, proved

from foldmath.making import proved_lesson
from foldmath.pages.markup.mathml import prose
from foldmath.teachers_plan.before import MOST_HARD
from foldmath.teachers_plan.plan import plan, plan_html
from foldmath.tolerance.assumed.stock import stock_named


def plan_of(*steps, **told):
    made = proved(*steps, **told)
    return plan(made, core_sheet(made), None)


def test_the_plan_says_in_one_line_how_far_off_the_worst_panel_may_be():
    made = plan_of(*EIGHTHS)
    assert str(made.before.true).startswith("the worst panel is about 3/16 in off")
    assert prose(str(made.before.true)) in plan_html(made)


def test_older_hands_are_thought_truer():
    worst = [str(plan_of(*EIGHTHS, grade=grade).before.true).partition(" off")[0] for grade in (3, 6)]
    assert worst == [f"the worst panel is about {inches} in" for inches in ("1/4", "1/8")]


def test_a_sheet_that_is_not_folded_is_not_said_to_be_off():
    made = plan_of("turn over")
    assert made.before.true is None
    assert "Accuracy:" not in plan_html(made)


@pytest.mark.parametrize(("stock", "warned"), [("copy 20 lb", False), ("110 lb index", True)])
def test_four_halvings_of_card_are_too_thick_and_of_copy_paper_are_not_said_to_be(stock, warned):
    made = plan_of(*EIGHTHS, "fold top edge to bottom edge", stock=stock_named(stock))
    assert any("mm thick" in str(words) for words in made.before.hard) == warned
    assert len(made.before.hard) <= MOST_HARD


def test_what_is_hard_names_the_step_by_its_number_on_the_plan():
    made = plan_of("fold left edge to right edge", "open", "fold at 1/30 moving left")
    assert [str(words).partition(":")[0] for words in made.before.hard] == ["step 2"]


BOOKLET = ("fold left edge to right edge", "gather into booklet")


def test_a_lesson_that_ends_in_a_booklet_says_what_else_to_print_and_that_it_takes_a_second_lesson():
    assert "Folding it is a second lesson." in plan_html(plan_of(*BOOKLET))
    assert "second lesson" not in plan_html(plan_of(*EIGHTHS))


@pytest.mark.parametrize(("name", "cuts"), [("fraction-diary", True), ("seed-trays", False)])
def test_scissors_are_brought_where_the_booklet_is_cut(name, cuts):
    made, _ = proved_lesson(LESSONS / f"{name}.toml")
    assert ("blunt scissors" in plan_html(plan(made, core_sheet(made), None))) == cuts


@pytest.mark.parametrize(("name", "told"), [("fraction-diary", True), ("seed-trays", False)])
def test_a_slit_that_is_cut_too_short_or_too_long_is_spoken_of_in_the_plan(name, told):
    """Half of the hinge of an end leaf, 2 3/4 in long on letter paper, may be cut."""
    made, _ = proved_lesson(LESSONS / f"{name}.toml")
    assert (
        prose("up to 1 3/8 in past it does no harm") in plan_html(plan(made, core_sheet(made), None))
    ) == told
