"""The plain line on accuracy, and the figures behind it."""

import re

from lessons_in_words import EIGHTHS, moments
from tolerance.square_foldings import BOOKLET, ONE_MM

from foldmath.tolerance.accuracy import accuracy
from foldmath.tolerance.accuracy_in_words import advised, by_chance, details, in_one_line
from foldmath.tolerance.assumed.spread import Spread, default_spread

FIFTEENTHS = ("pleat width into 3", "open", "pleat height into 5", "open")


def line(*steps, spread=ONE_MM):
    done = moments(*steps)
    return str(advised(done, accuracy(done, spread)))


def test_one_line_says_how_far_off_the_worst_panel_is():
    assert str(in_one_line(accuracy(moments(*EIGHTHS), ONE_MM))) == "the worst panel is about 1/8 in off"


def test_one_line_says_where_to_give_edge_marks():
    assert (
        line("pleat width into 3", "open")
        == "the worst panel is about 5/16 in off; give edge marks at step 1"
    )
    assert line(*FIFTEENTHS) == "the worst panel is about 5/16 in off; give edge marks at steps 1 and 3"


def test_one_line_says_what_opening_the_sheet_would_gain():
    assert line(*EIGHTHS, spread=default_spread(5)) == (
        "the worst panel is about 3/16 in off; about 1/8 in if the sheet is opened before each fold"
    )


def test_nobody_is_told_to_make_sixty_three_creases_one_by_one():
    halvings = ("fold left edge to right edge",) * 6
    assert "is opened before" in line(*halvings[:5])
    assert "is opened before" not in line(*halvings)


def test_one_line_says_that_slanted_folds_are_not_counted():
    assert line("fold bottom left corner to top right corner") == (
        "no panel's size can be told here; slanted folds are not counted"
    )


def test_steady_hands_are_less_than_a_small_part_of_an_inch_off():
    steady = Spread(edge_mm=0.1, eye_mm=0.1, tick_mm=0.1, cut_mm=0.1, thickness_mm=0.0)
    said = line("fold left edge to right edge", spread=steady)
    assert said == "the worst panel is less than 1/32 in off"


def test_details_tell_sizes_creases_and_ends_of_slits_in_millimetres():
    told = details(accuracy(moments(*BOOKLET), ONE_MM))
    assert [str(row[0]) for row in told.rows] == [
        "column 0 to 1/4",
        "column 1/4 to 1/2",
        "column 1/2 to 3/4",
        "column 3/4 to 1",
        "row 0 to 1/2",
        "row 1/2 to 1",
        "crease at 1/4 of the width",
        "crease at 1/2 of the width",
        "crease at 3/4 of the width",
        "crease at 1/2 of the height",
        "slit end at 1/4 of the width",
        "slit end at 3/4 of the width",
    ]
    assert told.rows[0][1:] == ("69.8", "0.0", "1.1", "2.2")
    assert {len(row) for row in told.rows} == {len(told.heads)}


def test_of_sheets_folded_by_chance_half_and_19_in_20_are_within_what_the_normal_law_says():
    """One halving has one normal error of 1 mm: half within 0.674, 95 % within 1.960 (normal tables)."""
    told = by_chance(accuracy(moments("fold left edge to right edge"), ONE_MM))
    assert re.findall(r"(\d\.\d) mm", str(told)) == ["0.7", "2.0"]


def test_details_say_that_the_hands_are_assumed_unless_they_were_given():
    note = str(details(accuracy(moments(*EIGHTHS), default_spread(5))).note)
    assert note.startswith("Assumed for the grade")
    assert "paper 0.095 mm thick" in note
    assert "Assumed" not in str(details(accuracy(moments(*EIGHTHS), ONE_MM)).note)


def test_a_direction_that_is_not_folded_is_not_told():
    told = details(accuracy(moments("fold left edge to right edge"), ONE_MM))
    assert [str(row[0]) for row in told.rows] == [
        "column 0 to 1/2",
        "column 1/2 to 1",
        "crease at 1/2 of the width",
    ]
