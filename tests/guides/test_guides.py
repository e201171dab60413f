"""Guide sheets as exact values: fold lines, ticks, distances, strips, cuts.

Sizes on paper are [common practice, no source] unless one is named beside the test.
"""

from fractions import Fraction
from itertools import pairwise

import pytest
from guide_reading import (
    MEASURED,
    fraction,
    nearest_sixteenth,
    proved_case,
)
from hypothesis import example, given, settings
from hypothesis import strategies as st
from lessons_in_words import EIGHTHS, LETTER, proved
from strategies import foldings, often_enough, sheets, step_lists

from foldmath.drawing.scenes import Spot, Star
from foldmath.guides.composing import guide_pages
from foldmath.guides.marks.cuts import cuts
from foldmath.guides.marks.fold_lines import fold_lines
from foldmath.guides.marks.guide_sheet import guides
from foldmath.guides.marks.ticks import EdgeMark, edge_marks, ticks
from foldmath.guides.pieces.check_ruler import Ruler, ruler_marks
from foldmath.guides.pieces.letters import LETTERS, letters_for
from foldmath.guides.reading.distances import edge_lists
from foldmath.guides.reading.strips import longest_piece, strip_pieces
from foldmath.guides.sheets.free_places import Room, inside
from foldmath.guides.sheets.ruler_places import place_ruler
from foldmath.lesson.booklet.forms import all_forms
from foldmath.lesson.lesson import Lesson
from foldmath.lesson.proving import ProvedLesson
from foldmath.pages.pdf.exact import Disc, ExactPage, Rectangle, Words
from foldmath.pages.pdf.fonts import register_fonts
from foldmath.paper.lengths import MILLIMETRES
from foldmath.paper.state import Kind, Sheet, open_sheet
from foldmath.paper.steps import Edge, FoldAlong, FoldStep
from foldmath.plane.lines import Point, line_through
from foldmath.plane.numbers import HALF, ZERO, exact
from foldmath.plane.polygons import between
from foldmath.words.steps import WrittenStep

measured = pytest.mark.parametrize("case", MEASURED.values(), ids=MEASURED)


# Fold lines as values.


def lesson_of(paper: Sheet, moves) -> ProvedLesson:
    """Give a lesson of steps that were done."""
    steps = tuple(WrittenStep(text="", step=move.step, line=1, column=1) for move in moves)
    states = (open_sheet(paper), *(move.after for move in moves))
    return ProvedLesson(
        Lesson(file="f", title="t", grade=5, paper="p", sheet=paper, orientation="landscape", steps=steps),
        states,
    )


@often_enough
@given(sheets, step_lists)
def test_every_crease_is_on_one_fold_line_as_the_fold_that_first_made_it_left_it(paper, steps):
    moves = list(foldings(open_sheet(paper), steps))
    made = lesson_of(paper, moves)
    folds = [move.after for move in moves if isinstance(move.step, FoldStep)]
    lines = fold_lines(made)
    for crease in made.states[-1].creases:
        middle = between(crease.start, crease.end, HALF)
        (found,) = (
            (line.fold, piece.kind) for line in lines for piece in line.pieces if lies_on(middle, piece)
        )
        first = next(
            (number, earlier.kind)
            for number, state in enumerate(folds, start=1)
            for earlier in state.creases
            if lies_on(middle, earlier)
        )
        assert found == first


def lies_on(point, piece):
    on_line = line_through(piece.start, piece.end).side(point) == 0
    return on_line and piece.start < point < piece.end


@often_enough
@given(sheets, step_lists)
def test_a_fold_line_has_no_gap_and_changes_its_kind_from_piece_to_piece(paper, steps):
    for line in fold_lines(lesson_of(paper, list(foldings(open_sheet(paper), steps)))):
        for one, following in pairwise(line.pieces):
            assert one.end == following.start
            assert one.kind is not following.kind


def test_three_halvings_make_a_middle_a_cross_crease_and_two_quarter_lines():
    lines = fold_lines(proved(*EIGHTHS))
    assert [(line.fold, line.start, line.end) for line in lines] == [
        (1, Point(exact(11, 2), exact(0)), Point(exact(11, 2), exact(17, 2))),
        (2, Point(exact(0), exact(17, 4)), Point(exact(11), exact(17, 4))),
        (3, Point(exact(11, 4), exact(0)), Point(exact(11, 4), exact(17, 2))),
        (3, Point(exact(33, 4), exact(0)), Point(exact(33, 4), exact(17, 2))),
    ]


def test_a_fold_along_an_old_crease_makes_no_line_and_keeps_its_number():
    lines = fold_lines(
        proved(*EIGHTHS, "open", "fold left edge to right edge", "fold top edge to bottom edge")
    )
    assert {line.fold for line in lines} == {1, 2, 3}


def test_a_fold_over_stays_a_valley_though_gathering_the_booklet_turns_it_round():
    laid = proved(*all_forms()["eight-page"].landscape)
    (first,) = (line for line in fold_lines(laid) if line.fold == 1)
    assert {piece.kind for piece in first.pieces} == {Kind.VALLEY, Kind.CUT}
    gathered = {crease.kind for crease in laid.states[-1].creases if crease.start.y == crease.end.y}
    assert gathered == {Kind.MOUNTAIN, Kind.CUT}


def test_the_middle_of_a_fan_stays_a_mountain_fold_though_a_later_fold_goes_over_along_it():
    laid = proved("pleat width into 4", "open", "fold left edge to right edge", "open")
    assert [(line.fold, line.pieces[0].kind) for line in fold_lines(laid)] == [
        (1, Kind.VALLEY),
        (1, Kind.MOUNTAIN),
        (1, Kind.VALLEY),
    ]
    assert {crease.kind for crease in laid.states[-1].creases} == {Kind.VALLEY}


# Ticks and distances as values.


@often_enough
@given(sheets, step_lists)
def test_ticks_lie_7_to_15_mm_inside_the_edge_on_the_crease_that_ends_there(paper, steps):
    made = lesson_of(paper, list(foldings(open_sheet(paper), steps)))
    lines, unit = fold_lines(made), MILLIMETRES[paper.unit]
    for tick in ticks(paper, lines):
        assert any(
            line_through(line.start, line.end).side(end) == 0
            for line in lines
            for end in (tick.start, tick.end)
        )
        insets = [
            {side: distance * unit for side, distance in insets_of(paper, end).items()}
            for end in (tick.start, tick.end)
        ]
        assert any(
            min(one[side], other[side]) >= 7 and max(one[side], other[side]) <= 15
            for one, other in [insets]
            for side in one
        )


def insets_of(paper, point):
    return {
        Edge.LEFT: point.x,
        Edge.RIGHT: paper.width - point.x,
        Edge.BOTTOM: point.y,
        Edge.TOP: paper.height - point.y,
    }


@pytest.mark.parametrize("parts", range(2, 13))
@pytest.mark.parametrize("side", [Fraction(17), Fraction(36), Fraction(594) / Fraction("25.4")])
def test_inches_are_to_the_nearest_sixteenth_and_millimetres_to_the_nearest_tenth(parts, side):
    for part in range(1, parts):
        distance = side * Fraction("25.4") * part / parts
        mark = EdgeMark(
            Edge.BOTTOM, exact(part, parts), exact(distance.numerator, distance.denominator), (1,)
        )
        assert Fraction(str(mark.inches)) == nearest_sixteenth(distance)
        assert abs(Fraction(mark.tenths_mm, 10) - distance) <= Fraction(1, 20)


def test_a_sheet_in_fifths_and_thirds_is_marked_at_each_of_them_and_at_the_middle_of_every_edge():
    shares = {}
    for mark in edge_marks(LETTER, fold_lines(proved("pleat width into 5", "open", "pleat height into 3"))):
        shares.setdefault(mark.edge, []).append(str(fraction(mark.at)))
    fifths, thirds = ["1/5", "2/5", "1/2", "3/5", "4/5"], ["1/3", "1/2", "2/3"]
    assert shares == {Edge.LEFT: thirds, Edge.RIGHT: thirds, Edge.TOP: fifths, Edge.BOTTOM: fifths}


def test_opposite_edges_with_the_same_marks_share_a_list():
    lists = edge_lists(guides(proved_case(MEASURED["sail cloth on A2"])))
    assert [listed.name for listed in lists] == ["bottom_top", "left", "right"]
    assert [mark.at for mark in lists[2].marks] == [exact(1, 4), HALF, exact(3, 4)]
    assert [mark.folds for mark in lists[2].marks] == [(2,), (), (3,)]


@measured
def test_the_pieces_of_a_strip_cover_their_edge_once_and_each_fits_the_page(case):
    shown, longest = guides(proved_case(case)), longest_piece(case.page_paper)
    pieces = strip_pieces(shown, longest)
    for listed in edge_lists(shown):
        own = [piece for piece in pieces if piece.listed == listed]
        length = shown.sheet.width if listed.edges[0] in (Edge.BOTTOM, Edge.TOP) else shown.sheet.height
        assert own[0].start == 0
        assert own[-1].end == length * MILLIMETRES[shown.sheet.unit]
        assert all(one.end == other.start for one, other in pairwise(own))
        assert all(piece.end - piece.start <= longest for piece in own)
        assert {mark for piece in own for mark in piece.marks} == set(listed.marks)
    joins = [letter for piece in pieces for letter in piece.joins if letter]
    assert all(joins.count(letter) == 2 for letter in joins)


# Cuts as values.

START, ENDS = (exact(11, 2), exact(17, 4)), {(exact(11, 4), exact(17, 4)), (exact(33, 4), exact(17, 4))}


@pytest.mark.parametrize(
    "steps",
    [
        ("open", "slit at height 1/2 from 1/4 to 3/4"),
        ("open", "fold left edge to right edge", "slit at height 1/2 from left edge to 1/2"),
        ("open", "fold left edge to right edge behind", "slit at height 1/2 from left edge to 1/2", "open"),
    ],
    ids=["told on the open sheet", "from the folded edge", "folded behind"],
)
def test_a_booklets_slit_starts_at_its_middle_and_stops_at_the_next_creases(steps):
    (cut,) = cuts(proved(*EIGHTHS, *steps))
    assert cut.begins == (START,)
    assert set(cut.stops) == ENDS == {cut.start, cut.end}


def test_a_slit_from_the_edge_of_the_sheet_starts_there():
    (cut,) = cuts(proved(*EIGHTHS, "open", "slit at height 1/2 from left edge to 1/4"))
    assert cut.begins == ((exact(0), exact(17, 4)),)
    assert cut.stops == ((exact(11, 4), exact(17, 4)),)


# Room on the page.


@settings(often_enough, max_examples=8)
@example([FoldAlong(Point(ZERO, HALF), Point(HALF, ZERO), Point(ZERO, ZERO), False)])
@given(step_lists)
def test_whatever_is_folded_no_number_star_or_ring_is_within_6_mm_of_the_edge(steps):
    made = lesson_of(LETTER, list(foldings(open_sheet(LETTER), steps)))
    pages = [page for page in guide_pages(made, "letter") if isinstance(page, ExactPage)]
    for page, mark in [(sheet, mark) for sheet in pages for mark in sheet.marks]:
        if isinstance(mark, Disc | Star):
            (x, y), reach = mark.middle, mark.radius_mm + 6
            assert reach <= x <= page.width_mm - reach
            assert reach <= y <= page.height_mm - reach


AREA = Rectangle(6.0, 6.0, 106.0, 76.0)
on_area = st.builds(Spot, st.floats(0, 112), st.floats(0, 82))
lines_on_area = st.lists(st.tuples(on_area, on_area).filter(lambda ends: ends[0] != ends[1]), max_size=6)


@often_enough
@given(lines_on_area, st.floats(2, 40), st.floats(2, 30))
def test_a_place_found_free_lies_in_the_area_and_no_line_runs_through_it(lines, width, height):
    place = Room(AREA, lines).first_free(width, height)
    if place is None:
        assert lines
        return
    assert AREA.holds(place)
    for (x, y), (end_x, end_y) in lines:
        for step in range(201):
            across, up = x + (end_x - x) * step / 200, y + (end_y - y) * step / 200
            assert not (place.left < across < place.right and place.bottom < up < place.top)


def test_where_lines_leave_only_one_gap_the_place_is_found_in_it():
    level = [(Spot(0.0, y), Spot(112.0, y)) for y in (16.0, 26.0, 51.0, 61.0)]
    place = Room(AREA, level).first_free(30.0, 20.0)
    assert place.bottom >= 26
    assert place.top <= 51


@pytest.mark.parametrize(
    ("columns_mm", "inches", "crossed"), [(120, 4, False), (110, 2, False), (70, 2, False), (40, 4, True)]
)
def test_the_ruler_is_whole_where_no_line_crosses_it_else_half_and_crossed_where_not_even_half_is_free(
    columns_mm, inches, crossed
):
    upright = [(Spot(x, 0.0), Spot(x, 200.0)) for x in range(0, 300, columns_mm)]
    level = [(Spot(0.0, y), Spot(300.0, y)) for y in range(0, 200, 45)]
    room = Room(Rectangle(0.0, 0.0, 280.0, 180.0), upright + level)
    lying = place_ruler(room, Ruler())
    assert lying.ruler.reach.inches == inches
    assert any(inside(line, lying.place) for line in room.lines) == crossed


@pytest.mark.parametrize("look", LETTERS)
@pytest.mark.parametrize(("language", "named"), [("en-US", "in"), ("en-GB", "in"), ("es", "pulg")])
def test_the_ruler_names_its_inches_as_its_reader_does_inside_its_place(look, language, named):
    register_fonts()
    ruler = letters_for(look, language).ruler
    place = Rectangle(0.0, 0.0, ruler.width_mm, ruler.height_mm)
    marks = [mark for mark in ruler_marks(place, turned=False, ruler=ruler) if isinstance(mark, Words)]
    assert {mark.text for mark in marks if mark.text.isalpha()} == {"mm", named}
    assert all(mark.at.x + mark.width_mm < place.right for mark in marks if mark.text.isalpha())
