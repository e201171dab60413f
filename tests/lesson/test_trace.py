"""The trace says exactly what every step does, in an order that does not depend on how it was folded."""

import json
from fractions import Fraction

import pytest
from hypothesis import given
from lessons_in_words import EIGHTHS, lesson, proved
from strategies import foldings, often_enough, sheets, step_lists

from foldmath.errors import LessonRefused
from foldmath.lesson.grammar.sentences import parse_step
from foldmath.lesson.proving import ProvedLesson, prove
from foldmath.lesson.trace import step_figures, table, trace
from foldmath.paper.moments.moment import Moment
from foldmath.paper.state import Sheet, open_sheet
from foldmath.paper.steps import Edge, FoldEdge
from foldmath.plane.numbers import ONE, exact
from foldmath.words.languages import DEFAULT
from foldmath.words.steps import step_sentence

HALVED = "fold left edge to right edge"


def steps_of(*sentences, **told):
    return trace(proved(*sentences, **told))["steps"]


def last_of(*sentences, **told):
    return steps_of(*sentences, **told)[-1]


def places(crease):
    return [crease["from"], crease["to"]]


def test_the_first_halving_of_letter_paper_is_traced_in_full():
    assert trace(proved(HALVED)) == {
        "title": "Seed trays",
        "sheet": {"width": "11", "height": "17/2", "unit": "in"},
        "steps": [
            {
                "step": "fold left edge to right edge",
                "canonical": step_sentence(FoldEdge(Edge.LEFT, ONE)),
                "panels": [
                    {
                        "corners": [["0", "0"], ["11/2", "0"], ["11/2", "17/2"], ["0", "17/2"]],
                        "area": "1/2",
                        "shaded": 0,
                    },
                    {
                        "corners": [["11/2", "0"], ["11", "0"], ["11", "17/2"], ["11/2", "17/2"]],
                        "area": "1/2",
                        "shaded": 0,
                    },
                ],
                "new_panels": 1,
                "sizes": {"1/2": 2},
                "layers": 2,
                "folded": {"width": "11/2", "height": "17/2", "area": "1/2"},
                "creases": [
                    {"from": ["11/2", "0"], "to": ["11/2", "17/2"], "fold": "valley", "folded": True}
                ],
                "sentences": [
                    {"about": "count", "text": "1 × 2 = 2"},
                    {"about": "size", "text": "1 × 1/2 = 1/2", "of": "1/2 of 1 = 1/2"},
                    {"about": "whole", "text": "2 × 1/2 = 1"},
                ],
            }
        ],
    }


@pytest.mark.parametrize(
    "sentence",
    ["dobla el borde izquierdo hasta el borde derecho", "pleat width into 3", "fold at 1/3 moving left"],
)
def test_a_step_is_told_as_written_and_in_one_english_wording_that_reads_back(sentence):
    (step,) = steps_of(sentence)
    assert step["step"] == sentence
    assert parse_step(step["canonical"]) == parse_step(sentence)
    assert step["canonical"].startswith(("fold", "pleat"))


def test_a_trace_is_plain_data_that_json_keeps():
    told = trace(proved(*EIGHTHS, "open", "fold left edge to 1/3", "pleat height into 5"))
    assert json.loads(json.dumps(told, ensure_ascii=False)) == told


# The order of corners, panels and creases.


def height_then_left(point):
    x, y = map(Fraction, point)
    return y, x


@given(sheets, step_lists)
@often_enough
def test_corners_run_counter_clockwise_from_the_lowest_then_leftmost(sheet, steps):
    for move in foldings(open_sheet(sheet), steps):
        for panel in step_figures("", Moment(*move))["panels"]:
            corners = [tuple(map(Fraction, corner)) for corner in panel["corners"]]
            assert min(panel["corners"], key=height_then_left) == panel["corners"][0]
            turned = sum(
                x * next_y - next_x * y
                for (x, y), (next_x, next_y) in zip(corners, corners[1:] + corners[:1], strict=True)
            )
            whole = Fraction(str(sheet.width)) * Fraction(str(sheet.height))
            assert turned / 2 / whole == Fraction(panel["area"]) > 0


@given(sheets, step_lists)
@often_enough
def test_panels_stand_in_the_order_of_their_first_corner_and_creases_of_their_ends(sheet, steps):
    for move in foldings(open_sheet(sheet), steps):
        told = step_figures("", Moment(*move))
        firsts = [height_then_left(panel["corners"][0]) for panel in told["panels"]]
        assert firsts == sorted(firsts)
        ends = [[height_then_left(end) for end in places(crease)] for crease in told["creases"]]
        assert all(start < end for start, end in ends)
        assert ends == sorted(ends)
        assert len({tuple(pair) for pair in ends}) == len(ends)


@given(sheets, step_lists)
@often_enough
def test_areas_and_sizes_add_up_to_the_whole_sheet(sheet, steps):
    for move in foldings(open_sheet(sheet), steps):
        told = step_figures("", Moment(*move))
        assert sum(Fraction(panel["area"]) for panel in told["panels"]) == 1
        assert sum(Fraction(area) * count for area, count in told["sizes"].items()) == 1
        assert list(told["sizes"]) == sorted(told["sizes"], key=Fraction)
        assert 0 < Fraction(told["folded"]["area"]) <= 1
        assert told["layers"] * Fraction(told["folded"]["area"]) >= 1


@given(sheets, step_lists)
@often_enough
def test_every_number_is_written_in_lowest_terms(sheet, steps):
    for move in foldings(open_sheet(sheet), steps):
        told = step_figures("", Moment(*move))
        numbers = [number for panel in told["panels"] for corner in panel["corners"] for number in corner]
        numbers += [panel["area"] for panel in told["panels"]] + list(told["folded"].values())
        assert [str(Fraction(number)) for number in numbers] == numbers


def test_creases_are_split_where_they_cross():
    crossing = last_of(HALVED, "open", "fold top edge to bottom edge", "open")["creases"]
    assert [places(crease) for crease in crossing] == [
        [["11/2", "0"], ["11/2", "17/4"]],
        [["0", "17/4"], ["11/2", "17/4"]],
        [["11/2", "17/4"], ["11", "17/4"]],
        [["11/2", "17/4"], ["11/2", "17/2"]],
    ]


def test_creases_are_split_where_their_kind_changes():
    """One fold through layers facing both ways leaves both kinds."""
    level = [
        (places(crease), crease["fold"])
        for crease in last_of(HALVED, "fold top edge to bottom edge")["creases"]
        if crease["from"][1] == crease["to"][1]
    ]
    assert level == [
        ([["0", "17/4"], ["11/2", "17/4"]], "mountain"),
        ([["11/2", "17/4"], ["11", "17/4"]], "valley"),
    ]


# Which way is left, and what is over.


@pytest.mark.parametrize(
    ("turn", "height"), [("turn left", "51/8"), ("turn right", "17/8")], ids=["left", "right"]
)
def test_turning_left_is_counter_clockwise(turn, height):
    """After a turn to the left the top edge lies at the left; after one to the right, the bottom edge."""
    (crease,) = last_of(turn, "fold at 1/4 moving left")["creases"]
    assert places(crease) == [["0", height], ["11", height]]


def test_top_and_bottom_are_those_of_the_box_as_the_paper_lies_after_a_diagonal_too():
    """Over the diagonal of 4 × 3, the top left corner lands at (72/25, -21/25) [computed]."""
    card = Sheet(exact(4), exact(3), "in")
    steps = ("fold along (0, 0) (1, 1) moving (0, 1)", "fold top edge to bottom edge")
    slanted, folded_again = steps_of(*steps, sheet=card)
    assert slanted["folded"]["height"] == "96/25"
    level = [places(crease) for crease in folded_again["creases"] if crease["from"][1] == crease["to"][1]]
    assert level == [[["36/25", "27/25"], ["4", "27/25"]]]


@pytest.mark.parametrize(
    ("sentence", "kind"),
    [(HALVED, "valley"), (f"{HALVED}, behind", "mountain")],
    ids=["over", "behind"],
)
def test_folding_over_makes_a_valley_and_behind_a_mountain_on_the_printed_side(sentence, kind):
    assert last_of(sentence)["creases"][0]["fold"] == kind


def test_on_the_back_of_the_paper_it_is_the_other_way_round():
    assert last_of("turn over", HALVED)["creases"][0]["fold"] == "mountain"
    assert last_of("turn over", f"{HALVED}, behind")["creases"][0]["fold"] == "valley"


def test_the_last_fold_along_a_crease_decides_its_kind_and_opening_keeps_it():
    *_, opened, folded_back = steps_of(HALVED, "open", f"{HALVED}, behind")
    assert (opened["creases"][0]["fold"], opened["creases"][0]["folded"]) == ("valley", False)
    assert (folded_back["creases"][0]["fold"], folded_back["creases"][0]["folded"]) == ("mountain", True)


# Opening.


def test_open_last_undoes_the_newest_fold_and_open_undoes_all():
    first, second, third, last, all_open = steps_of(*EIGHTHS, "open last", "open")
    assert last["folded"] == second["folded"] != third["folded"]
    assert all_open["folded"] == {"width": "11", "height": "17/2", "area": "1"}
    assert all_open["layers"] == 1
    assert len(all_open["panels"]) == 8
    assert not any(crease["folded"] for crease in all_open["creases"])
    assert first["layers"] == 2


def test_a_pleat_is_undone_as_one():
    opened = last_of("pleat width into 5", "open last")
    assert opened["layers"] == 1
    assert len(opened["creases"]) == 4


def test_turns_made_since_a_fold_stay_when_it_is_opened():
    opened = last_of(HALVED, "turn left", "open last")
    assert opened["folded"] == {"width": "17/2", "height": "11", "area": "1"}


@pytest.mark.parametrize("step", ["open", "open last"])
def test_opening_what_lies_open_is_refused(step):
    with pytest.raises(LessonRefused, match="nothing is folded"):
        prove(lesson("turn over", step))


def test_opening_and_turning_show_no_sentence_and_make_no_panel():
    for told in steps_of(HALVED, "turn over", "turn left", "open last")[1:]:
        assert told["sentences"] == []
        assert told["new_panels"] == 0


# Layers and panels.


def test_every_layer_folds_and_layers_are_counted_where_they_are_most():
    assert [step["layers"] for step in steps_of(*EIGHTHS)] == [2, 4, 8]
    assert last_of("fold left edge to middle", "fold right edge to 2/3")["layers"] == 2
    assert last_of("fold both edges to middle")["layers"] == 2
    assert last_of("fold at 1/3 moving left")["layers"] == 2


def test_creases_opened_earlier_are_flat_paper():
    told = last_of("pleat width into 4", "open", "fold top edge to bottom edge")
    assert told["layers"] == 2
    assert told["new_panels"] == 4


def test_folding_along_an_old_crease_adds_no_panel_and_says_so():
    told = last_of(HALVED, "open", "fold right edge to left edge")
    assert told["new_panels"] == 0
    assert len(told["panels"]) == 2
    assert [sentence["about"] for sentence in told["sentences"]] == ["whole"]


# Pleats and shading.


@pytest.mark.parametrize("parts", range(2, 13))
def test_a_pleat_creases_at_every_part_valley_first_and_is_compared_as_a_whole(parts):
    told = last_of(f"pleat width into {parts}")
    at = [Fraction(crease["from"][0]) / 11 for crease in told["creases"]]
    assert at == [Fraction(crease, parts) for crease in range(1, parts)]
    assert [crease["fold"] for crease in told["creases"]] == [
        ("valley", "mountain")[crease % 2] for crease in range(parts - 1)
    ]
    assert told["layers"] == parts
    assert told["sentences"] == [
        {"about": "count", "text": f"1 × {parts} = {parts}"},
        {"about": "size", "text": f"1 × 1/{parts} = 1/{parts}", "of": f"1/{parts} of 1 = 1/{parts}"},
        {"about": "whole", "text": f"{parts} × 1/{parts} = 1"},
    ]


THIRDS_BY_FIFTHS = ("pleat width into 3", "open", "pleat height into 5", "open")


def test_shading_twice_shows_the_product_and_moves_no_figure():
    """2/3 × 4/5 = 8/15: Common Core State Standards for Mathematics (2010), 5.NF.B.4.a."""
    *_, opened, once, twice = steps_of(*THIRDS_BY_FIFTHS, "shade 4 of 5 up", "shade 2 of 3 across")
    assert once["sizes"] == twice["sizes"] == opened["sizes"] == {"1/15": 15}
    assert once["layers"] == twice["layers"] == 1
    assert once["sentences"] == [{"about": "shaded", "text": "12/15", "times": 1, "area": "4/5"}]
    assert twice["sentences"] == [{"about": "shaded", "text": "8/15", "times": 2, "area": "8/15"}]
    shaded = [panel["shaded"] for panel in twice["panels"]]
    assert [shaded.count(times) for times in (0, 1, 2)] == [1, 6, 8]
    assert [panel["shaded"] for panel in twice["panels"][:3]] == [2, 2, 1]


def test_shading_counts_panels_and_tells_the_fraction_of_the_sheet_apart():
    steps = ("fold at 1/3 moving left", "fold at 1/4 moving bottom", "open")
    with_halves = last_of(*steps, "pleat width into 3", "open", "shade 1 of 3 across")
    assert with_halves["sentences"] == [{"about": "shaded", "text": "2/6", "times": 1, "area": "1/3"}]


@pytest.mark.parametrize(
    ("steps", "message"),
    [
        ((HALVED, "shade 1 of 2 across"), "folded"),
        ((HALVED, "open", "shade 1 of 3 across"), "no creases at every 1/3"),
    ],
    ids=["folded", "no creases"],
)
def test_shading_needs_an_open_sheet_and_the_creases(steps, message):
    with pytest.raises(LessonRefused, match=message):
        proved(*steps)


def test_more_creases_than_the_shading_needs_may_be_there():
    assert last_of("pleat width into 6", "open", "shade 2 of 3 across")["sentences"][0]["area"] == "2/3"


# Limits.


def test_the_4097th_panel_is_refused_while_splitting():
    halvings = [HALVED, "fold top edge to bottom edge"] * 6
    assert len(last_of(*halvings)["panels"]) == 4096
    with pytest.raises(LessonRefused, match="more than 4096 panels"):
        proved(*halvings, HALVED)


def test_creases_that_make_numbers_explode_are_refused():
    slants = ("fold along (0, 1/7) (1, 5/11) moving (0, 0)", "fold along (0, 2/7) (1, 4/7) moving (0, 0)")
    with pytest.raises(LessonRefused, match="more than 512 binary digits"):
        proved(*slants * 4)


# The table that a person reads.


def test_the_table_says_each_step_with_its_creases_sizes_layers_and_sentences():
    told = table(proved(HALVED, "fold top edge to bottom edge", "open", "shade 1 of 2 across"), DEFAULT)
    assert told.startswith("Seed trays: one sheet, 11 by 8 1/2 in\n")
    for line in (
        "  2.  fold top edge to bottom edge",
        "      crease at 1/2 of the height; 4 panels of 1/4",
        "      lies 5 1/2 by 4 1/4 in, 4 layers at most",
        "        count  2 × 2 = 4 panels",
        "         size  1/2 of 1/2 = 1/4 of the sheet",
        "        whole  4 × 1/4 = 1",
        "      lies 11 by 8 1/2 in, 1 layer at most",
        "       shaded  2 of 4 panels shaded once, 1/2 of the sheet",
    ):
        assert line in told.splitlines()


SLANTED = ("fold along (0, 0) (1, 1) moving (0, 1)", HALVED)
"""On letter paper the second fold makes panels of 1/8, 773/4624, 1539/4624 and 3/8 [computed]."""


def test_the_table_tells_near_values_where_a_fraction_tells_no_size_and_exact_ones_beside_them():
    told = table(proved(*SLANTED), DEFAULT)
    assert "2 panels of 1/2" in told
    assert "2 × 1/2 = 1\n" in told
    assert "1 panel of 1/8, 1 panel of about 0.17, 1 panel of about 0.33 and 1 panel of 3/8" in told
    assert "size  1/4 of 1/2 = 1/8 of the sheet" in told
    assert "size  about 0.33 of 1/2 is about 0.17 of the sheet" in told
    assert "whole  the 4 panels together make 1 whole sheet" in told
    assert "4624" not in told


def test_of_the_whole_sheet_a_near_part_is_told_by_itself():
    told = table(proved("fold bottom left corner to the middle of the top edge"), DEFAULT)
    assert "size  about 0.3 of the sheet" in told


def test_the_trace_as_data_stays_exact():
    last = last_of(*SLANTED)
    assert last["sizes"] == {"1/8": 1, "773/4624": 1, "1539/4624": 1, "3/8": 1}
    assert {"about": "size", "text": "1/2 × 773/2312 = 773/4624", "of": "773/2312 of 1/2 = 773/4624"} in last[
        "sentences"
    ]


def test_the_table_says_its_steps_in_the_language_of_what_it_tells_of_them():
    told = table(proved(HALVED), "es").splitlines()
    assert "  1.  dobla el borde izquierdo hasta el borde derecho" in told
    assert "      doblez a 1/2 del ancho; 2 partes de 1/2" in told
    assert "      así mide 5 1/2 por 8 1/2 pulgadas, 2 capas como máximo" in told


@pytest.mark.parametrize(
    ("steps", "asked"),
    [((HALVED,), False), (("fold left edge to middle", "fold right edge to middle"), True)],
    ids=["common", "just missed"],
)
def test_the_trace_asks_only_where_a_common_fold_was_just_missed(steps, asked):
    made: ProvedLesson = proved(*steps)
    assert ("did_you_mean" in trace(made)["steps"][-1]) is asked
    assert ("did you mean" in table(made, DEFAULT)) is asked


SLIT_SHEET = (
    "pleat width into 4",
    "open",
    "fold top edge to bottom edge",
    "open",
    "slit at height 1/2 from 1/4 to 3/4",
)


def test_a_slit_is_traced_among_the_creases_and_as_cuts():
    before, traced = steps_of(*SLIT_SHEET)[-2:]
    middle = [["11/4", "17/4"], ["11/2", "17/4"]], [["11/2", "17/4"], ["33/4", "17/4"]]
    cut = [crease for crease in traced["creases"] if crease["fold"] == "cut"]
    assert [places(crease) for crease in cut] == list(middle)
    assert not any(crease["folded"] for crease in cut)
    assert [[line["from"], line["to"]] for line in traced["cuts"]] == list(middle)
    assert "cuts" not in before
    assert traced["panels"] == before["panels"]
    assert traced["sentences"] == []


def test_a_booklet_is_traced_page_by_page():
    traced = last_of(*SLIT_SHEET, "gather into booklet")
    made = traced["booklet"]
    assert made["page"] == {"width": "11/4", "height": "17/4"}
    assert [page["number"] for page in made["pages"]] == list(range(1, 9))
    assert {page["side"] for page in made["pages"]} == {"printed"}
    assert [page["top"] for page in made["pages"]] == ["up"] * 3 + ["down"] * 4 + ["up"]
    assert made["pages"][0]["panel"][0] == ["11/4", "0"]
    assert made["openings"] == [[2, 3], [4, 5], [6, 7]]
    assert made["leaves"] == [[1, 2], [3, 4], [5, 6], [7, 8]]
    assert (traced["layers"], traced["folded"]["area"]) == (8, "1/8")


def test_a_booklet_is_told_in_the_table():
    told = table(proved(*SLIT_SHEET, "gather into booklet", "open"), DEFAULT)
    assert "a cut 5 1/2 in long; still 8 panels of 1/8" in told
    assert "a booklet of 8 pages, each 2 3/4 by 4 1/4 in" in told
