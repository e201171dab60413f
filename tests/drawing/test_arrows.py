"""The picture beside a prediction shows where the paper will fold, and how it will travel."""

from itertools import pairwise

import pytest
from hypothesis import assume, example, given, settings
from hypothesis import strategies as st
from lessons_in_words import paper_after
from pictured import distance, inside, mirrored, of_kind, spots_of, strokes
from strategies import edge_folds, folded, folds_at, gates, point_folds, sheets, step_lists

from foldmath.drawing.look import PENS
from foldmath.drawing.scenes import Area, Meaning
from foldmath.drawing.sheets.folded_sheets import folded_sheet
from foldmath.lesson.grammar.sentences import parse_step
from foldmath.paper.moments.performing import perform
from foldmath.paper.refusals import StepRefused
from foldmath.paper.state import Sheet, open_sheet
from foldmath.paper.steps import Edge, FoldEdge, FoldPoint
from foldmath.plane.lines import Point
from foldmath.plane.numbers import exact

NEARLY = pytest.approx
SLIP_MM = 5.0
"""Upper layers are drawn a little beside where they lie."""


def before(sentence, *steps):
    return folded_sheet(paper_after(*steps), parse_step(sentence), 80, 80)


MOST_PARTS_CROSSED = 10
"""The zigzag of a fan of so many parts or fewer begins in the first and ends in the last."""


def shafts(scene):
    return [stroke for stroke in strokes(scene, Meaning.ARROW, Meaning.ARROW_BEHIND) if stroke.bends]


def heads(scene):
    return [stroke for stroke in strokes(scene, Meaning.ARROW) if not stroke.bends]


@given(
    sheets,
    st.lists(st.one_of(edge_folds, folds_at), max_size=2),
    st.one_of(edge_folds, folds_at, gates),
)
@settings(max_examples=60, deadline=None)
def test_an_arrow_sets_out_on_the_paper_and_ends_on_its_mirror_image(sheet, steps, step):
    state = folded(sheet, steps)
    scene = folded_sheet(state, step, 80, 80)
    lines = strokes(scene, Meaning.VALLEY, Meaning.MOUNTAIN)
    arrows = shafts(scene)
    assert len(arrows) == len(lines) > 0
    for line, arrow in zip(lines, arrows, strict=True):
        start, _, end = arrow.spots
        assert distance(mirrored(start, line), end) == NEARLY(0, abs=1e-6)
        assert any(inside(start, area.spots, SLIP_MM) for area in of_kind(scene, Area))


@given(sheets, step_lists, st.one_of(point_folds, edge_folds))
@settings(max_examples=60, deadline=None)
@example(
    Sheet(exact(1, 2), exact(2), "in"),
    [FoldEdge(Edge.TOP, exact(0))],
    FoldPoint(Point(exact(0), exact(0)), Point(exact(1, 2), exact(2, 3))),
)
def test_no_arrow_and_no_fold_line_leaves_the_picture(sheet, steps, step):
    state = folded(sheet, steps)
    try:
        perform(step, state)
    except StepRefused:
        assume(False)
    scene = folded_sheet(state, step, 80, 80)
    for mark in strokes(scene, Meaning.VALLEY, Meaning.MOUNTAIN, Meaning.ARROW):
        for x, y in spots_of(mark):
            assert 0 <= x <= scene.width_mm
            assert 0 <= y <= scene.height_mm


@pytest.mark.parametrize("sentence", ["fold top edge to bottom edge", "fold bottom edge to 1/3"])
def test_an_arrow_on_a_paper_strip_is_flat_enough_for_its_picture(sentence):
    strip = Sheet(exact(1), exact(11), "in")
    scene = folded_sheet(open_sheet(strip), parse_step(sentence), 38, 80)
    (arrow,) = shafts(scene)
    assert all(0 < x < scene.width_mm for x, _ in spots_of(arrow))
    assert arrow.spots[1].x > scene.width_mm / 2


@pytest.mark.parametrize(
    ("sentence", "rightwards", "upwards"),
    [
        ("fold left edge to right edge", 1, 0),
        ("fold right edge to left edge", -1, 0),
        ("fold top edge to bottom edge", 0, -1),
        ("fold at 1/3 moving bottom", 0, 1),
    ],
)
def test_the_arrow_points_the_way_the_edge_travels(sentence, rightwards, upwards):
    (arrow,) = shafts(before(sentence))
    start, _, end = arrow.spots
    assert (end.x > start.x + 1) - (end.x < start.x - 1) == rightwards
    assert (end.y > start.y + 1) - (end.y < start.y - 1) == upwards


@pytest.mark.parametrize(
    ("steps", "share"),
    [
        (("fold left edge to right edge",), 1 / 2),
        # A third lies over the next one, and ends at the middle of what is left.
        (("fold at 1/3 moving left",), 3 / 4),
        (("fold at 1/4 moving left",), 1 / 2),
        # A crease that lies open is no edge.
        (("fold left edge to right edge", "open"), 1 / 2),
    ],
)
def test_an_arrow_crosses_the_middle_of_its_line_but_beside_a_flap_that_ends_there(steps, share):
    scene = before("fold at 1/4 moving bottom", *steps)
    (arrow,), (line,) = shafts(scene), strokes(scene, Meaning.VALLEY)
    (left, _), (right, _) = line.spots
    assert arrow.spots[0].x == NEARLY(left + share * (right - left), abs=1)


def test_a_corner_that_is_folded_carries_its_arrow_from_corner_to_corner():
    scene = before("fold bottom left corner to top right corner")
    (arrow,), (whole,) = shafts(scene), strokes(scene, Meaning.WHOLE)
    assert arrow.spots[0] == NEARLY(whole.spots[0])
    assert arrow.spots[-1] == NEARLY(whole.spots[2])


def test_a_fold_over_has_a_valley_line_and_an_open_head():
    scene = before("fold left edge to right edge")
    assert len(strokes(scene, Meaning.VALLEY)) == 1
    (head,) = heads(scene)
    assert not head.closed


def test_a_fold_behind_has_a_mountain_line_and_a_hollow_half_head():
    scene = before("fold left edge to right edge, behind")
    assert strokes(scene, Meaning.VALLEY) == []
    assert len(strokes(scene, Meaning.MOUNTAIN)) == 1
    (head,) = heads(scene)
    assert head.closed


def test_the_tip_of_the_head_is_the_end_of_the_arrow():
    scene = before("fold left edge to right edge")
    (arrow,), (head,) = shafts(scene), heads(scene)
    assert arrow.spots[-1] in head.spots


def test_a_gate_has_two_lines_and_two_arrows_that_meet_in_the_middle():
    scene = before("fold both edges to middle")
    (left, right) = shafts(scene)
    assert left.spots[0].x < left.spots[-1].x < right.spots[-1].x < right.spots[0].x


@given(st.integers(2, 12), st.sampled_from(["width", "height"]))
@settings(max_examples=25, deadline=None)
def test_a_pleat_shows_all_its_lines_valley_first_and_one_zigzag(parts, axis):
    scene = before(f"pleat {axis} into {parts}")
    lines = strokes(scene, Meaning.VALLEY, Meaning.MOUNTAIN)
    assert len(lines) == parts - 1
    order = [line.meaning for line in sorted(lines, key=lambda line: line.spots[0][axis == "height"])]
    assert order == [(Meaning.VALLEY, Meaning.MOUNTAIN)[crease % 2] for crease in range(parts - 1)]
    zigzag, head = strokes(scene, Meaning.ARROW)
    assert not zigzag.bends
    along, across = (1, 0) if axis == "height" else (0, 1)
    assert [spot[along] for spot in zigzag.spots] == sorted(spot[along] for spot in zigzag.spots)
    sways = [one[across] < other[across] for one, other in pairwise(zigzag.spots)]
    assert len(sways) >= 3
    assert all(one != other for one, other in pairwise(sways))
    assert zigzag.spots[-1] in head.spots
    if parts <= MOST_PARTS_CROSSED:
        creases = [line.spots[0][along] for line in lines]
        assert zigzag.spots[0][along] <= min(creases) <= max(creases) <= zigzag.spots[-1][along]


def test_the_arrow_of_paper_that_goes_behind_is_broken():
    over, behind = (shafts(before(f"fold left edge to right edge{how}"))[0] for how in ("", " behind"))
    assert (over.meaning, behind.meaning) == (Meaning.ARROW, Meaning.ARROW_BEHIND)
    assert not PENS[over.meaning].dashes_mm
    assert PENS[behind.meaning].dashes_mm


def test_opening_and_turning_have_no_arrow():
    for step in ("open", "turn over", "turn left"):
        scene = folded_sheet(paper_after("fold left edge to right edge"), parse_step(step), 80, 80)
        assert strokes(scene, Meaning.ARROW, Meaning.VALLEY, Meaning.MOUNTAIN) == []
