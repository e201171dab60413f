"""Pictures of equal parts: dots lie where they should, fractions hide nothing, old creases are whole."""

import pytest

from foldmath.drawing.scenes import Area, Figure, Meaning, Star, Stroke, Tone
from foldmath.drawing.sheets.dot_labels import half_size
from foldmath.drawing.sheets.parts_pictures import DOT_RADIUS_MM, fold_with_dot, parted_sheet, sheet_to_cut
from foldmath.lesson.grammar.sentences import parse_step
from foldmath.paper.moments.moment import crease_places
from foldmath.paper.moments.performing import perform
from foldmath.paper.state import Sheet, open_sheet
from foldmath.paper.steps import Axis, Edge, FoldAt, FoldEdge, Open
from foldmath.plane.lines import Point
from foldmath.plane.numbers import exact

LETTER = Sheet(exact(11), exact(17, 2), "in")
ROOM = (54.0, 36.0)
PLACES = [(across, up) for across in range(5) for up in range(5)]


def marks_of(scene, kind):
    return [mark for mark in scene.marks if isinstance(mark, kind)]


def whole_of(scene):
    (whole,) = (mark.spots for mark in marks_of(scene, Stroke) if mark.meaning is Meaning.WHOLE)
    return whole


def middle_of_dot(scene):
    (dot,) = (mark.spots for mark in marks_of(scene, Area) if mark.tone is Tone.INK)
    return sum(spot.x for spot in dot) / len(dot), sum(spot.y for spot in dot) / len(dot)


def creased(*steps):
    state = open_sheet(LETTER)
    for step in steps:
        state = perform(step, state)
    return state


@pytest.mark.parametrize(("across", "up"), PLACES)
def test_a_dot_lies_at_its_share_of_the_sheet_as_drawn(across, up):
    place = Point(LETTER.width * exact(across, 4), LETTER.height * exact(up, 4))
    scene = fold_with_dot(open_sheet(LETTER), None, (place, exact(1, 5)), *ROOM)
    corner, _, opposite, _ = whole_of(scene)
    share = (across / 4, up / 4)
    assert middle_of_dot(scene) == pytest.approx(
        [start + part * (end - start) for start, end, part in zip(corner, opposite, share, strict=True)]
    )


def test_a_dot_stays_at_its_place_on_the_table_when_the_paper_beside_it_is_folded():
    place = Point(LETTER.width * exact(1, 5), LETTER.height)
    folded = creased(FoldEdge(Edge.RIGHT, exact(1, 5)))
    scene = fold_with_dot(folded, FoldEdge(Edge.RIGHT, exact(1, 3)), (place, exact(1, 5)), *ROOM)
    corner, right, *_ = whole_of(scene)
    assert middle_of_dot(scene)[0] == pytest.approx(corner.x + (right.x - corner.x) / 5)


@pytest.mark.parametrize(("across", "up"), PLACES)
def test_the_fraction_of_a_dot_hides_neither_the_dot_nor_the_star_and_stays_in_the_picture(across, up):
    place = Point(LETTER.width * exact(across, 4), LETTER.height * exact(up, 4))
    fold = FoldEdge(Edge.LEFT, exact(1))
    scene = fold_with_dot(open_sheet(LETTER), fold, (place, exact(3, 11)), *ROOM)
    (figure,) = marks_of(scene, Figure)
    (star,) = marks_of(scene, Star)
    half_width, half_height = half_size(3, 11)
    for middle, radius in ((middle_of_dot(scene), DOT_RADIUS_MM), (star.middle, star.radius_mm)):
        across_off, up_off = abs(figure.middle.x - middle[0]), abs(figure.middle.y - middle[1])
        assert across_off >= half_width + 0.9 * radius or up_off >= half_height + 0.9 * radius
    assert half_width <= figure.middle.x <= scene.width_mm - half_width
    assert half_height <= figure.middle.y <= scene.height_mm - half_height


def test_the_square_is_cut_out_along_a_heavy_line_from_edge_to_edge_and_not_along_the_slanted_crease():
    slanted = parse_step("fold along (0, 0) (17/22, 1) moving (0, 1)")
    upright = parse_step("fold at 17/22 moving right")
    scene = sheet_to_cut(creased(slanted, Open(), upright, Open()), 54, 36)
    (cut,) = (stroke for stroke in marks_of(scene, Stroke) if stroke.meaning is Meaning.CUT)
    whole = whole_of(scene)
    assert {round(spot.y, 6) for spot in cut.spots} == {round(spot.y, 6) for spot in whole}
    assert len({round(spot.x, 6) for spot in cut.spots}) == 1
    share = (cut.spots[0].x - whole[0].x) / (whole[1].x - whole[0].x)
    assert share == pytest.approx(17 / 22)


def test_an_old_crease_is_one_line_however_many_cross_it():
    thirds = [step for part in (1, 2, 3) for step in (FoldAt(exact(part, 4), Edge.LEFT), Open())]
    state = creased(*thirds, FoldEdge(Edge.BOTTOM, exact(1)), Open())
    lines = [
        mark
        for mark in marks_of(fold_with_dot(state, None, None, *ROOM), Stroke)
        if mark.meaning is Meaning.CREASE
    ]
    assert len(lines) == len(crease_places(state)) == 4


@pytest.mark.parametrize("axis", Axis)
@pytest.mark.parametrize("parts", [3, 12])
def test_the_parted_sheet_has_a_heavy_line_and_a_fraction_for_every_crease(parts, axis):
    creases = tuple(exact(part, parts) for part in range(1, parts))
    scene = parted_sheet(open_sheet(LETTER), axis, creases, 112.0, 90.0)
    heavy = [mark for mark in marks_of(scene, Stroke) if mark.meaning is Meaning.OUTLINE]
    figures = marks_of(scene, Figure)
    assert len(heavy) == len(figures) == parts - 1
    for line, figure in zip(heavy, figures, strict=True):
        along = 0 if axis is Axis.WIDTH else 1
        assert line.spots[0][along] == pytest.approx(line.spots[1][along])
        assert figure.middle[along] == pytest.approx(line.spots[0][along])
