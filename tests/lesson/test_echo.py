"""Every step is echoed in fractions of the whole sheet, and a common fold just missed is asked about."""

import pytest
from lessons_in_words import EIGHTHS, proved

from foldmath.lesson.echo import did_you_mean, echo_of, places_in_words, sizes_in_words
from foldmath.lesson.grammar.sentences import parse_step
from foldmath.words.languages import DEFAULT
from foldmath.words.saying import say
from foldmath.words.steps import step_sentence


def echoes(*steps):
    return [str(echo_of(moment)) for moment in proved(*steps).moments]


def questions(*steps):
    made = proved(*steps)
    return [
        say(did_you_mean(made.lesson.steps, made.moments, index), DEFAULT)
        for index in range(len(made.moments))
    ]


def test_creases_are_told_as_fractions_of_the_whole_sheet_not_of_the_folded_one():
    assert echoes(*EIGHTHS) == [
        "crease at 1/2 of the width; 2 panels of 1/2",
        "crease at 1/2 of the height; 4 panels of 1/4",
        "creases at 1/4 and 3/4 of the width; 8 panels of 1/8",
    ]


def test_unequal_panels_are_told_as_a_tally():
    (moment,) = proved("fold at 1/3 moving left").moments
    assert str(sizes_in_words(moment)) == "1 panel of 1/3 and 1 panel of 2/3"


def test_a_slanted_crease_is_told_by_its_ends():
    (moment,) = proved("fold along (0, 0) (1, 1) moving (0, 1)").moments
    told = "a slanted crease from the bottom left corner to the top right corner"
    assert say(places_in_words(moment), "en-US") == told


def test_slanted_folds_are_told_in_near_values_where_no_fraction_tells_a_size():
    """By hand: 0.7093 up the left edge and 0.8471 along the bottom edge bound half their product, 0.3004."""
    (moment,) = proved("fold bottom left corner to the middle of the top edge").moments
    assert say(echo_of(moment), "en-US") == (
        "a slanted crease from the point about 0.29 down the left edge to the point about 0.15 along the "
        "bottom edge from the right; 1 panel of about 0.3 and 1 panel of about 0.7"
    )


def test_a_slanted_crease_whose_ends_are_plain_is_told_exactly():
    (moment,) = proved("fold along (0, 1/5) (1, 29/96) moving (0, 1)").moments
    told = "a slanted crease from the point 1/5 up the left edge to the point 29/96 up the right edge"
    assert say(places_in_words(moment), "en-US") == told


def test_paper_that_lies_aslant_is_not_asked_whether_a_common_fold_was_meant():
    """The second crease lies at 0.459 of the width, close to 4/9, which nobody meant."""
    corner = "fold the point 1/4 up the right edge to the point 1/3 along the top edge from the left"
    assert questions(corner, "fold left edge to right edge") == ["", ""]


def test_a_fold_along_an_old_crease_says_so_and_opening_says_nothing():
    assert echoes("fold left edge to right edge", "open", "fold left edge to right edge") == [
        "crease at 1/2 of the width; 2 panels of 1/2",
        "",
        "no new crease; still 2 panels of 1/2",
    ]


def test_creases_the_other_way_are_told_of_the_height():
    gates = ("fold both edges to middle", "fold top and bottom edges to middle")
    assert echoes(*gates)[1] == (
        "creases at 1/4 and 3/4 of the height; 4 panels of 1/16, 4 panels of 1/8 and 1 panel of 1/4"
    )


@pytest.mark.parametrize(
    ("steps", "gate"),
    [
        (("fold left edge to middle", "fold right edge to middle"), "fold left and right edges to middle"),
        (("fold right edge to middle", "fold left edge to middle"), "fold left and right edges to middle"),
        (("fold top edge to middle", "fold bottom edge to middle"), "fold top and bottom edges to middle"),
    ],
)
def test_edge_to_middle_and_then_the_other_edge_to_middle_is_not_fourths(steps, gate):
    """The second is measured on the folded sheet: creases at 1/4 and 13/16 [computed]."""
    first, second = questions(*steps)
    assert first == ""
    assert second.startswith("did you mean fourths?")
    assert f"'{step_sentence(parse_step(gate))}'" in second


def test_the_second_of_two_edges_to_the_middle_creases_at_13_of_16():
    assert echoes("fold left edge to middle", "fold right edge to middle")[1].startswith(
        "crease at 13/16 of the width"
    )


@pytest.mark.parametrize(
    ("step", "instead"),
    [
        ("fold left edge to 1/3", "fold at 1/3 moving left"),
        ("fold bottom edge to 1/3", "fold at 1/3 moving bottom"),
        ("fold right edge to 2/3", "fold at 2/3 moving right"),
    ],
)
def test_an_edge_carried_to_a_third_creases_at_a_sixth(step, instead):
    (question,) = questions(step)
    assert question.startswith("did you mean thirds?")
    assert "at 1/6 from it" in question
    assert f"'{step_sentence(parse_step(instead))}'" in question


@pytest.mark.parametrize(
    ("step", "parts"),
    [
        ("fold at 33/100 moving left", "thirds"),
        ("fold at 34/100 moving left", "thirds"),
        ("fold at 49/100 moving top", "halves"),
        ("fold at 21/100 moving left", "fifths"),
    ],
)
def test_a_crease_close_to_a_common_fraction_is_asked_about(step, parts):
    (question,) = questions(step)
    assert question.startswith(f"did you mean {parts}?")


@pytest.mark.parametrize(
    "steps",
    [
        EIGHTHS,
        ("fold both edges to middle", "fold top and bottom edges to middle"),
        ("fold left edge to middle", "open", "fold right edge to middle", "open"),
        ("fold at 1/3 moving left", "fold right edge to 1/2"),
        ("pleat width into 3", "pleat height into 5", "open"),
        ("pleat width into 7", "open", "pleat height into 11"),
        ("fold at 1/4 moving left", "fold at 2/3 moving top"),
        ("fold bottom left corner to top right corner", "fold along (0, 0) (1, 1) moving (0, 1)"),
        ("turn over", "turn left", "fold left edge to middle"),
        ("fold at 1/3 moving left", "open", "fold left edge to 1/3", "open"),
    ],
    ids=range(10),
)
def test_common_folds_are_not_asked_about(steps):
    assert set(questions(*steps)) == {""}
