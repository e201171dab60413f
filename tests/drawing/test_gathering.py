"""A sheet that is pushed together in a picture stays paper: no panel bends or stretches, no hinge parts."""

from itertools import combinations, pairwise
from math import dist

import pytest
from creased import A4_UPRIGHT, LETTER, ring_sheet
from hypothesis import given
from hypothesis import strategies as st
from pictured import corners_of, inside, of_kind, spots_of, strokes
from strategies import often_enough

from foldmath.drawing.booklets.closed_booklets import closed_booklet, trimmed_sides
from foldmath.drawing.booklets.gathering import fan_walls, fanned, leafed, pushed, walls
from foldmath.drawing.booklets.gathering_pictures import closing, fan, pushing, to_and_fro
from foldmath.drawing.booklets.perspective import Eye, Point3D, Wall, from_back_to_front
from foldmath.drawing.scenes import Area, Figure, Meaning, Scene, Star, Tone
from foldmath.lesson.booklet.forms import all_forms
from foldmath.lesson.grammar.sentences import parse_step
from foldmath.measured import as_float
from foldmath.paper.booklet.gathering import booklet
from foldmath.paper.booklet.ring import ring
from foldmath.paper.folding.hinges import hinges
from foldmath.paper.moments.performing import perform
from foldmath.paper.state import open_sheet
from foldmath.paper.steps import Axis, Pleat
from foldmath.plane.numbers import exact

NEARLY = pytest.approx
shares = st.floats(0, 1)
sizes = st.integers(2, 5)


def stood(sheet, k, pose, *, level=True):
    state = ring_sheet(sheet, k, level=level)
    found = ring(state, 1)
    return state, walls(state, found, pose(found))


POSES = {
    "flat": lambda found: pushed(found, 0.0),
    "square boxes": lambda found: pushed(found, 0.5),
    "closed boxes": lambda found: pushed(found, 1.0),
    "fan": lambda found: fanned(found, 50.0),
    "leaves": lambda found: leafed(found, -50.0, 30.0),
}
poses = pytest.mark.parametrize("pose", POSES.values(), ids=POSES)
papers = pytest.mark.parametrize(("sheet", "level"), [(LETTER, True), (A4_UPRIGHT, False)])


def flat_distance(one, other):
    return dist([as_float(one.x), as_float(one.y)], [as_float(other.x), as_float(other.y)])


def assert_rigid(state, upright):
    """Every two corners of a panel are as far apart as on the sheet: its sides and right angles are kept."""
    assert sorted(wall.panel for wall in upright) == list(range(len(state.panels)))
    for wall in upright:
        corners = state.panels[wall.panel].corners
        for one, other in combinations(range(len(corners)), 2):
            told = flat_distance(corners[one], corners[other])
            assert dist(wall.corners[one], wall.corners[other]) == NEARLY(told)


def assert_hinged(state, upright):
    """Both panels of a hinge have it in the same place."""
    place = {
        (wall.panel, corner): at
        for wall in upright
        for corner, at in zip(state.panels[wall.panel].corners, wall.corners, strict=True)
    }
    for hinge in hinges(state.panels):
        for end in (hinge.start, hinge.end):
            assert dist(place[hinge.one, end], place[hinge.other, end]) == NEARLY(0, abs=1e-9)


@poses
@papers
def test_no_panel_bends_and_no_hinge_parts_in_any_pose(pose, sheet, level):
    for k in (2, 3):
        state, upright = stood(sheet, k, pose, level=level)
        assert_rigid(state, upright)
        assert_hinged(state, upright)


@given(sizes, shares)
@often_enough
def test_nothing_bends_however_far_the_ends_are_pushed(k, share):
    state, upright = stood(LETTER, k, lambda found: pushed(found, share))
    assert_rigid(state, upright)
    assert_hinged(state, upright)


def test_a_slit_that_is_a_little_too_long_is_pushed_together_alike():
    state = ring_sheet(LETTER, 2, beyond=(exact(1, 30), exact(1, 40)))
    upright = walls(state, ring(state, 1), pushed(ring(state, 1), 0.5))
    assert_rigid(state, upright)
    assert_hinged(state, upright)


@pytest.mark.parametrize("k", [2, 3, 4])
def test_the_slit_opens_into_one_square_box_for_every_four_inner_panels(k):
    found = ring(ring_sheet(LETTER, k), 1)
    width = as_float(found.grid.width)
    front, back = pushed(found, 0.5)
    opened = [dist(one, other) for one, other in zip(front, back, strict=True)]
    assert opened == NEARLY([width * 2**0.5 if 0 < j < 2 * k and j % 2 == 0 else 0 for j in range(2 * k + 1)])


def test_the_ends_come_nearer_with_every_push_until_all_backs_meet():
    found = ring(ring_sheet(LETTER, 3), 1)
    lengths = [strips.front[-1].x - strips.front[0].x for strips in (pushed(found, t / 8) for t in range(9))]
    assert all(one > other for one, other in pairwise(lengths))
    closed = pushed(found, 1.0)
    backs = [strip[joint] for strip in closed for joint in (1, 3, 5)]
    assert all(dist(back, (0, 0)) == NEARLY(0, abs=1e-9) for back in backs)


@pytest.mark.parametrize("k", [2, 3])
def test_turned_leaves_are_the_leaves_of_the_booklet_in_order(k):
    state = ring_sheet(LETTER, k)
    made = booklet(state, 1)
    upright = {wall.panel: wall for wall in walls(state, ring(state, 1), leafed(ring(state, 1), -40.0, 20.0))}
    tips = []
    for leaf in made.leaves:
        feet = [upright[made.page(number).panel] for number in (leaf.front, leaf.back)]
        ends = {tuple(round(length, 6) for length in end) for wall in feet for end in (wall.start, wall.end)}
        assert len(ends) == 2
        tips.append(max(ends, key=lambda end: dist(end, (0, 0, 0))))
    assert all(one[1] < other[1] for one, other in pairwise(tips))


def test_a_pleat_stands_as_a_fan_that_keeps_its_panels():
    state = perform(Pleat(Axis.WIDTH, 4), open_sheet(LETTER))
    upright = fan_walls(state, booklet(state), 50.0)
    assert_rigid(state, upright)
    assert_hinged(state, upright)
    # The first crease is a valley: seen from before, it is farther off than the edges beside it.
    feet = [wall.start.y for wall in upright] + [upright[-1].end.y]
    assert feet[1] > feet[0] == NEARLY(feet[2])


def upright_wall(panel, start, end):
    places = (Point3D(*start, 0), Point3D(*end, 0), Point3D(*end, 1), Point3D(*start, 1))
    return Wall(panel, places, places[0], places[1])


def test_what_is_nearer_is_painted_later():
    eye = Point3D(0, -10, 3)
    far, near = upright_wall(0, (-1, 2), (1, 2)), upright_wall(1, (-1, 0), (1, 0))
    slanted = upright_wall(2, (-1, 1.8), (1, 0.2))
    assert from_back_to_front([near, slanted, far], eye) == [far, slanted, near]


def test_of_two_panels_back_to_back_the_one_that_is_seen_is_painted_later():
    eye = Point3D(0, -10, 3)
    towards, away = upright_wall(0, (-1, 0), (1, 0)), upright_wall(1, (1, 0), (-1, 0))
    assert towards.before(eye) > 0 > away.before(eye)
    assert from_back_to_front([towards, away], eye) == [away, towards]


@given(sizes, st.floats(0.02, 0.98))
@often_enough
def test_no_wall_is_painted_over_one_that_hides_it(k, share):
    """Checked by sight lines: of two walls on one line from the eye, the nearer comes later."""
    eye = Point3D(-2.0, -18.0, 12.0)
    _, upright = stood(LETTER, k, lambda found: pushed(found, share))
    painted = from_back_to_front(upright, eye)
    for step in range(-20, 21):
        aim = (step * 0.27 + 0.013, 0.0)
        met = [(far, order) for order, wall in enumerate(painted) if (far := met_at(eye, aim, wall))]
        nearer = sorted(met, reverse=True)
        for (one, first), (other, second) in pairwise(nearer):
            assert one - other < 1e-6 or first < second


def met_at(eye, aim, wall):
    """Give how far along the line from the eye to a point of the floor a wall's foot is met, or None."""
    dx, dy = aim[0] - eye.x, aim[1] - eye.y
    wx, wy = wall.end.x - wall.start.x, wall.end.y - wall.start.y
    cross = dx * wy - dy * wx
    if abs(cross) < 1e-9:
        return None
    sx, sy = wall.start.x - eye.x, wall.start.y - eye.y
    far, share = (sx * wy - sy * wx) / cross, (sx * dy - sy * dx) / cross
    return far if 0 < share < 1 and far > 0 else None


def test_perspective_makes_what_is_farther_smaller_and_keeps_uprights_straight():
    eye = Eye(Point3D(0, -10, 5), Point3D(0, 0, 0))

    def height(y):
        low, high = eye.sees(Point3D(1, y, 0)), eye.sees(Point3D(1, y, 1))
        return dist(low, high)

    assert height(0) > height(1) > height(5)
    assert eye.sees(Point3D(0, 0, 0)) == NEARLY((0, 0))
    low, middle, high = (eye.sees(Point3D(2, 1, z)) for z in (0, 1, 2))
    assert (middle.x - low.x) * (high.y - low.y) == NEARLY((high.x - low.x) * (middle.y - low.y))


def all_pictures() -> dict[str, Scene]:
    made = {}
    for name, state in {"8": ring_sheet(LETTER, 2), "12": ring_sheet(A4_UPRIGHT, 3, level=False)}.items():
        made |= {f"{name} pushed {n}": scene for n, scene in enumerate(pushing(state, None, 57, 35))}
        made[f"{name} fan"] = to_and_fro(state, None, 57, 35)
        made[f"{name} leaves"] = closing(state, None, 57, 35)
        made[f"{name} closed"] = closed_booklet(state, booklet(state), 57, 35)
    pleated = perform(Pleat(Axis.WIDTH, 3), open_sheet(LETTER))
    made["pleat"] = fan(pleated, booklet(pleated), 57, 35)
    return made


PICTURES = all_pictures()
pictures = pytest.mark.parametrize("scene", PICTURES.values(), ids=PICTURES)


@pictures
def test_no_ink_leaves_the_picture(scene):
    for mark in scene.marks:
        for x, y in spots_of(mark):
            assert 0 <= x <= scene.width_mm
            assert 0 <= y <= scene.height_mm


@pictures
def test_numbers_stand_whole_on_one_panel_and_clear_of_the_star(scene):
    figures, stars = of_kind(scene, Figure), of_kind(scene, Star)
    for figure in figures:
        assert any(
            all(inside(corner, area.spots) for corner in corners_of(figure)) for area in of_kind(scene, Area)
        )
        for star in stars:
            low, high = spots_of(star)
            assert not any(
                low.x < x < high.x and low.y < y < high.y for x, y in [*corners_of(figure), figure.middle]
            )


def test_the_numbers_of_the_strip_are_those_of_the_bottom_row():
    flat, boxes, _ = pushing(ring_sheet(LETTER, 2), None, 57, 35)
    for scene in (flat, boxes):
        in_order = sorted(of_kind(scene, Figure), key=lambda figure: figure.middle.x)
        assert [figure.numerator for figure in in_order] == ["8", "1", "2", "3"]


def test_the_cover_says_where_page_one_is():
    flat, *_ = pushing(ring_sheet(LETTER, 2), 3, 57, 35)
    in_order = sorted(of_kind(flat, Figure), key=lambda figure: figure.middle.x)
    assert [figure.numerator for figure in in_order] == ["6", "7", "8", "1"]


def test_the_inside_of_the_box_is_the_back_of_the_sheet_and_its_rim_is_the_cut():
    flat, boxes, _ = pushing(ring_sheet(LETTER, 2), None, 57, 35)
    seen = [area.tone for area in of_kind(boxes, Area)]
    assert seen[:2] == [Tone.BACK_SIDE] * 2
    assert seen.count(Tone.PRINTED_SIDE) == 4
    assert len(strokes(boxes, Meaning.CUT)) == len(strokes(flat, Meaning.CUT)) == 4


def test_two_arrows_push_at_the_ends_from_outside():
    for scene in pushing(ring_sheet(LETTER, 2), None, 57, 35):
        left, right = strokes(scene, Meaning.ARROW)
        paper = [spot.x for area in of_kind(scene, Area) for spot in area.spots]
        assert max(x for x, _ in left.spots) == left.spots[0].x < min(paper)
        assert min(x for x, _ in right.spots) == right.spots[0].x > max(paper)


@pytest.mark.parametrize(
    ("form", "sides"),
    [
        ("four-page", ()),
        ("eight-page-signature", ("bottom",)),
        ("sixteen-page-signature", ("right", "top")),
    ],
)
def test_signatures_are_trimmed_along_the_folds_that_are_not_their_back(form, sides):
    state = open_sheet(LETTER)
    for sentence in all_forms()[form].landscape[:-1]:
        state = perform(parse_step(sentence), state)
    made = booklet(state)
    assert trimmed_sides(state, made) == sides
    plain, trimmed = (closed_booklet(state, made, 86, 50, trimming=on) for on in (False, True))
    assert len(strokes(trimmed, Meaning.CUT)) == len(sides)
    assert not strokes(plain, Meaning.CUT)
    # A picture as narrow as the paper and its scissors.
    narrow = closed_booklet(state, made, 40, 90, trimming=True)
    outlines = [spot for mark in strokes(narrow, Meaning.OUTLINE) for spot in mark.spots]
    assert all(0 < x < 40 and 0 < y < 90 for x, y in outlines)
