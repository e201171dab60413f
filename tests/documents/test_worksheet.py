"""A worksheet says what the folds show, as far as pupils can follow, and checks every claim it makes."""

import re

import pytest
from lessons_in_words import EIGHTHS, proved

from foldmath.documents.picture_book import CELL_MM, LARGEST_MODEL_MM, diagrams, page_pictures
from foldmath.documents.version_code import ALPHABET, LENGTH, version_code
from foldmath.documents.worksheet import worksheet
from foldmath.statements.claims import check_claim

HALVING = proved(*EIGHTHS, "open", practice=("2/3 × 4/5", "3 × 2/5"))


def sheet_of(*steps, **told):
    return worksheet(proved(*steps, **told))


def test_every_fold_has_a_row_with_what_came_before_it_and_what_it_shows():
    sheet = sheet_of(
        "fold left edge to right edge", "open", "turn over", "fold top edge to bottom edge", "open"
    )
    assert [(row.number, row.step, row.before) for row in sheet.rows] == [
        (1, "fold left edge to right edge", ()),
        (2, "fold top edge to bottom edge", ("open", "turn over")),
    ]
    assert sheet.afterwards == ("open",)
    assert [(row.panels, row.count, row.sizes) for row in sheet.rows] == [
        (2, "1 × 2 = 2", ("1/2 of 1 = 1/2",)),
        (4, "2 × 2 = 4", ("1/2 of 1/2 = 1/4",)),
    ]


def test_a_lesson_without_folds_has_no_rows_and_no_slip():
    sheet = sheet_of("turn over", "turn left")
    assert (sheet.rows, sheet.slip, sheet.whole, sheet.legend) == ((), None, "", ())


def test_more_than_two_kinds_of_cut_are_told_as_a_tally():
    row = sheet_of("fold at 1/3 moving left", "fold at 1/4 moving bottom").rows[1]
    assert row.sizes == ()
    assert row.tally == ((1, "1/12"), (1, "1/6"), (1, "1/4"), (1, "1/2"))


def test_sizes_too_small_for_pupils_are_not_asked():
    """No pupil sentence with a denominator above 24 [common practice, no source]."""
    row = sheet_of("pleat width into 5", "open", "pleat height into 6").rows[1]
    assert (row.count, row.sizes, row.tally) == ("5 × 6 = 30", (), ())


def test_a_fold_along_an_old_crease_cuts_nothing():
    row = sheet_of("fold left edge to right edge", "open", "fold right edge to left edge").rows[1]
    assert (row.cut, row.count, row.panels) == (False, "", 2)


def test_the_slip_is_a_false_claim_and_its_mending_is_two_true_ones():
    """Counting written as size, 4 × 1/2 = 8, is the common slip [common practice, no source]."""
    slip = worksheet(HALVING).slip
    assert slip.claim == "4 × 1/2 = 8"
    assert not check_claim(slip.claim).true
    assert (slip.count, slip.size) == ("4 × 2 = 8", "1/2 of 1/4 = 1/8")
    assert check_claim(slip.count).true
    assert check_claim(slip.size).true


@pytest.mark.parametrize(
    ("steps", "legend"),
    [
        (EIGHTHS, ("valley",)),
        (("fold left edge to right edge, behind",), ("mountain",)),
        (("pleat width into 3", "open", "fold top edge to bottom edge"), ("valley", "mountain", "crease")),
        (("pleat width into 2",), ("valley",)),
    ],
)
def test_the_legend_names_the_lines_that_the_pictures_have_and_no_other(steps, legend):
    assert sheet_of(*steps).legend == legend


def test_panels_shaded_twice_are_asked_for_only_where_there_are_some():
    thirds = ("pleat width into 3", "open", "pleat height into 5", "open", "shade 4 of 5 up")
    assert sheet_of(*thirds).shaded == ""
    assert sheet_of(*thirds, "shade 2 of 3 across").shaded == "8/15"


def test_a_product_that_one_sheet_shows_has_a_model_and_any_other_has_none():
    shown, not_shown = worksheet(HALVING).items
    assert (shown.answer, shown.shown.counted) == ("8/15", 8)
    assert (not_shown.answer, not_shown.shown) == ("6/5", None)
    assert "1 1/5" in not_shown.accepted


def test_no_wrong_answer_equals_the_right_one():
    for item in worksheet(proved(*EIGHTHS, practice=("2/3 × 4/5", "3/5 × 1/5", "3/4 × 1/2"))).items:
        assert len(item.wrong) == 3
        assert all(wrong.answer.value != item.product.value for wrong in item.wrong)


# Pictures.


def test_every_row_and_every_model_has_its_pictures():
    sheet = worksheet(HALVING)
    assert {f"before-{row.moment}" for row in sheet.rows} | {"model-1", "model-1-shaded", "whole"} <= set(
        page_pictures(HALVING, sheet)
    )


def test_every_step_has_a_picture_before_it_and_its_creases_and_the_last_one_after_it():
    drawn = diagrams(HALVING, worksheet(HALVING))
    for step in range(1, 5):
        assert f"step-{step:02}-before" in drawn
        assert f"step-{step:02}-creases" in drawn
    assert "step-04-after" in drawn
    assert "product-1" in drawn
    assert "product-2" not in drawn


@pytest.mark.parametrize("columns", range(2, 13))
@pytest.mark.parametrize("rows", [2, 5, 12])
def test_no_cell_of_a_model_is_under_8_mm_where_the_page_allows(columns, rows):
    """A child must be able to shade it [common practice, no source]."""
    made = proved(*EIGHTHS, practice=(f"1/{columns} × 1/{rows}",))
    model = page_pictures(made, worksheet(made))["model-1"]
    assert CELL_MM == 8
    for side, cells, most in zip(
        (model.width_mm, model.height_mm), (columns, rows), LARGEST_MODEL_MM, strict=True
    ):
        assert (side - 1) / cells >= CELL_MM or side == most


# The version code.


def test_a_code_is_five_signs_that_no_hand_confuses():
    code = version_code(HALVING.lesson)
    assert re.fullmatch(f"[{ALPHABET}]{{{LENGTH}}}", code)
    assert not set("0O1I5S8B2Z") & set(ALPHABET)


def test_a_code_is_the_same_for_the_same_lesson_and_another_for_any_other():
    lessons = [
        proved(*EIGHTHS),
        proved(*EIGHTHS, "open"),
        proved(*EIGHTHS, practice=("1/2 × 1/2",)),
        proved(*EIGHTHS, practice=("1/2 × 1/3",)),
        proved(*EIGHTHS, title="Seed beds"),
        proved(*EIGHTHS, grade=6),
        proved(*EIGHTHS, paper="A4"),
        proved(*EIGHTHS, language="en-GB"),
    ]
    codes = [version_code(made.lesson) for made in lessons]
    assert len(set(codes)) == len(codes)
    assert version_code(proved(*EIGHTHS).lesson) == codes[0]
