"""The marking page: a wrong answer is found by its number, its rule read at the left."""

from dataclasses import replace

import pytest
from lessons_in_words import EIGHTHS, proved, sheet_at, written

from foldmath.statements.answers import Folds
from foldmath.statements.items import Level, make_count_or_size, make_mend, make_shade, make_which_fold
from foldmath.statements.items.item import Reach
from foldmath.statements.products import parse_product
from foldmath.statements.rules import named
from foldmath.worksheets.exit_ticket import ExitTicket
from foldmath.worksheets.marking_page import MOST_COLUMNS, marking_page
from foldmath.worksheets.worksheet import PlacedItem

LESSON = proved(*EIGHTHS)


def page(*items, level=Level.CORE):
    sheet = sheet_at(level, LESSON)
    return marking_page(replace(sheet, items=tuple(PlacedItem(item, None) for item in items)))


def shade(text):
    return make_shade(parse_product(text))


def found(table) -> dict[str, list[list[str]]]:
    return {row.rule.name: [[str(one.answer) for one in cell] for cell in row.cells] for row in table.rows}


def test_items_stand_across_and_rules_down_with_the_wrong_answer_in_the_cell():
    (table,) = page(shade("2/3 × 4/5"), shade("3/4 × 1/2")).tables
    assert table.numbers == (1, 2)
    assert found(table)["add_instead"] == [["22/15"], ["5/4"]]
    assert found(table)["part_for_whole"] == [["8/12"], []]


def test_what_a_picture_leads_to_is_there_first_for_who_shades_inside_the_first_part():
    (table,) = page(shade("2/3 × 4/5"), shade("3/4 × 1/2")).tables
    assert found(table)["all_shaded"] == [["12/15", "14/15"], ["4/8", "7/8"]]


@pytest.mark.parametrize(
    ("product", "answer"),
    [("2/3 × 4/5", "6/8"), ("1/2 × 3/5", "4/7"), ("2/3 × 3/5", "5/8"), ("1/2 × 1/4", "2/6")],
)
def test_tops_and_bottoms_added_are_found_in_every_product_of_two_fractions(product, answer):
    (table,) = page(shade(product)).tables
    assert found(table)["add_tops_and_bottoms"] == [[answer]]


def test_one_of_two_denominators_kept_is_too_rare_for_the_room_of_a_cell():
    (table,) = page(shade("2/3 × 4/5"), shade("2/5 × 3/5")).tables
    assert found(table)["keep_common_denominator"] == [["120/15"], ["6/5"]]


def test_no_tops_and_bottoms_are_added_where_one_factor_has_no_bottom():
    (table,) = page(shade("3 × 2/5")).tables
    assert "add_tops_and_bottoms" not in found(table)


def test_an_answer_of_two_rules_is_named_by_both_the_likelier_first():
    added = make_mend(parse_product("3/4 × 2/3"), named("add_tops_and_bottoms"))
    (table,) = page(shade("3/4 × 1/2"), added, added).tables
    assert found(table)["invert_first"][0] == found(table)["add_tops_and_bottoms"][0] == ["4/6"]
    rules = list(found(table))
    assert rules.index("add_tops_and_bottoms") < rules.index("invert_first")


def test_the_product_of_the_ticket_has_the_last_column_and_counts_no_panels():
    ticket = ExitTicket(None, parse_product("1/2 × 1/4"), 4)
    sheet = replace(sheet_at(Level.CORE, LESSON), items=(PlacedItem(shade("2/3 × 4/5"), None),))
    (table,) = marking_page(sheet, ticket).tables
    assert table.numbers == (1, None)
    assert found(table)["add_tops_and_bottoms"] == [["6/8"], ["2/6"]]
    assert not {"count_for_size", "all_shaded"} & {row.rule.name for row in table.rows if row.cells[1]}


def test_a_ticket_without_a_product_has_no_column():
    sheet = sheet_at(Level.CORE, LESSON)
    assert marking_page(sheet, ExitTicket(None, None, 4)) == marking_page(sheet)


def test_an_example_that_is_solved_is_not_explained():
    sheet = sheet_at(Level.GUIDED, proved(*EIGHTHS, practice=("2/3 × 4/5", "3/4 × 1/2")))
    assert sheet.example
    assert marking_page(sheet) == marking_page(replace(sheet, example=None))


def test_what_fits_no_cell_stands_beside_with_its_items_number():
    made = page(shade("2/3 × 4/5"), make_count_or_size(3, 2, Reach.PAIRS))
    assert [table.numbers for table in made.tables] == [(1,)]
    assert {one.number for one in made.beside} == {2}


def test_two_wrong_answers_of_one_rule_stand_before_its_words_once():
    answer, *slips = (
        Folds(tuple(step.step for step in written(*steps)))
        for steps in (("fold at 1/3 moving left",), ("pleat width into 3",), ("pleat width into 2",))
    )
    rule = named("add_instead")
    (one,) = page(make_which_fold(answer, (), tuple((rule, slip) for slip in slips))).beside
    assert (one.number, one.rule, one.answers) == (1, rule, tuple(slips))


@pytest.mark.parametrize(("count", "tables"), [(MOST_COLUMNS, 1), (MOST_COLUMNS + 1, 2)])
def test_a_table_has_seven_items_and_no_more(count, tables):
    items = [shade(f"2/3 × 1/{below}") for below in range(2, 2 + count)]
    made = page(*items)
    assert len(made.tables) == tables
    assert sum(len(table.numbers) for table in made.tables) == count


def test_a_share_is_named_with_its_source_only_where_a_study_asked_the_very_item():
    assert page(shade("3/5 × 1/4")).sources
    assert page(shade("1/4 × 3/5")).sources == []


def test_an_answer_that_several_rules_lead_to_is_marked_to_be_asked_about_and_no_other():
    """3/4 × 1/2 = 4/6, by tops and bottoms added, and by the first fraction turned upside down."""
    made = page(shade("3/4 × 1/2"), shade("2/3 × 4/5"))
    (table,) = made.tables
    shared = {
        str(one.answer)
        for row in table.rows
        for column, cell in enumerate(row.cells)
        for one in cell
        if table.is_shared(column, one.answer)
    }
    assert shared == {"4/6"}
    assert made.shares
    assert not page(shade("2/3 × 4/5")).shares
