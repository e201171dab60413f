"""Every way to fold equal parts comes true on the model."""

from fractions import Fraction
from functools import cache

import pytest
from paper.laws import breaches

from foldmath.errors import Unreadable
from foldmath.lesson.grammar.step_parser import step_in
from foldmath.paper.moments.moment import crease_places
from foldmath.paper.moments.performing import perform
from foldmath.paper.sizes import paper_named, sheet
from foldmath.paper.state import open_sheet
from foldmath.paper.steps import Axis
from foldmath.plane.numbers import ZERO, denominator, exact, numerator
from foldmath.planning.parts.equal_parts import FEWEST_PARTS, MOST_PARTS, Kind, ways
from foldmath.planning.parts.instructions import vertices
from foldmath.words.steps import step_sentence

MILLIMETRE = exact(1)
PARTS = range(FEWEST_PARTS, MOST_PARTS + 1)
SHEETS = {
    "letter": sheet(paper_named("letter"), "landscape"),
    "A4": sheet(paper_named("A4"), "portrait"),
    "square": sheet(paper_named("origami"), "portrait"),
}
SIDES = [
    ("letter", Axis.WIDTH),
    ("letter", Axis.HEIGHT),
    ("A4", Axis.HEIGHT),
    ("square", Axis.WIDTH),
]
CASES = [(name, parts, axis) for name, axis in SIDES for parts in PARTS]


@cache
def found(name, parts, axis, wanted_mm=MILLIMETRE):
    return ways(SHEETS[name], parts, axis, wanted_mm)


def fraction(number) -> Fraction:
    return Fraction(numerator(number), denominator(number))


def length_mm(way) -> Fraction:
    side = way.sheet.width if way.direction.axis is Axis.WIDTH else way.sheet.height
    return fraction(side) * (Fraction(254, 10) if way.sheet.unit == "in" else 1)


def full_creases(state, axis) -> set[Fraction]:
    """Give where creases cross the whole sheet, told by the model."""
    return {fraction(place.at) for place in crease_places(state) if place.axis is axis}


@pytest.mark.parametrize(("name", "parts", "axis"), CASES)
def test_an_exact_way_ends_with_creases_at_every_part(name, parts, axis):
    exact_ways = [way for way in found(name, parts, axis) if not way.nearness]
    assert exact_ways
    for way in exact_ways:
        wanted = [Fraction(part, parts) for part in range(1, parts)]
        assert set(wanted) <= full_creases(way.parted, axis)
        assert [fraction(crease) for crease in way.creases] == wanted


@pytest.mark.parametrize(("name", "parts", "axis"), CASES)
def test_a_way_that_nears_ends_with_every_crease_as_near_as_wanted(name, parts, axis):
    for way in found(name, parts, axis):
        if way.nearness:
            creases = full_creases(way.parted, axis)
            for part in range(1, parts):
                off = min(abs(crease - Fraction(part, parts)) for crease in creases)
                assert off * length_mm(way) <= 1


@pytest.mark.parametrize(("name", "parts", "axis"), CASES)
def test_the_landmark_of_an_exact_way_is_a_vertex_at_a_part_of_the_side(name, parts, axis):
    for way in found(name, parts, axis):
        if way.kind in (Kind.CROSSING, Kind.CORNER):
            side = way.sheet.width if axis is Axis.WIDTH else way.sheet.height
            assert way.landmark.at in vertices(way.finding[-1].after)
            assert way.landmark.fraction == way.direction.along(way.landmark.at) / side
            assert parts % denominator(way.landmark.fraction) == 0


@pytest.mark.parametrize(("name", "parts", "axis"), CASES)
def test_instructions_hand_the_paper_on_and_do_what_they_say(name, parts, axis):
    for way in found(name, parts, axis):
        if way.nearness:
            continue
        state = open_sheet(way.sheet)
        for instruction in (*way.finding, *way.finishing):
            assert instruction.before == state
            for step in instruction.steps:
                state = perform(step, state)
            assert instruction.after == state
        assert state.folds == 0


@pytest.mark.parametrize("parts", PARTS)
def test_the_steps_of_exact_ways_read_back_as_sentences_of_the_step_language(parts):
    for way in found("square", parts, Axis.WIDTH):
        if not way.nearness:
            for instruction in (*way.finding, *way.finishing):
                for step in instruction.steps:
                    assert step_in(step_sentence(step)) == step


@pytest.mark.parametrize("parts", [5, 6])
def test_the_paper_obeys_the_laws_of_folding_after_every_way(parts):
    for way in found("letter", parts, Axis.HEIGHT):
        assert breaches(way.parted) == ()


@pytest.mark.parametrize(("name", "parts", "axis"), CASES)
def test_no_fold_goes_through_more_layers_than_children_crease_well(name, parts, axis):
    for way in found(name, parts, axis):
        for instruction in way.finishing:
            assert instruction.before.table.layers <= 4


@pytest.mark.parametrize("parts", [4, 8])
def test_halvings_alone_make_powers_of_two(parts):
    (way,) = found("letter", parts, Axis.WIDTH)
    assert way.kind is Kind.HALVINGS
    assert way.landmark is None
    assert 2 ** len(way.finishing) == parts


@pytest.mark.parametrize("parts", [3, 5, 6, 7, 9, 10, 11, 12])
def test_other_parts_can_be_folded_in_three_ways(parts):
    assert {way.kind for way in found("letter", parts, Axis.WIDTH)} == {
        Kind.CROSSING,
        Kind.CORNER,
        Kind.ERRORS,
    }


def test_a_square_is_made_first_only_where_the_sheet_is_none():
    (corner,) = (way for way in found("letter", 3, Axis.WIDTH) if way.kind is Kind.CORNER)
    assert corner.sheet.width == corner.sheet.height == SHEETS["letter"].height
    cut = crease_places(corner.squaring[-1].after)
    assert (Axis.WIDTH, corner.sheet.width / SHEETS["letter"].width) in {(p.axis, p.at) for p in cut}
    (corner,) = (way for way in found("square", 3, Axis.WIDTH) if way.kind is Kind.CORNER)
    assert corner.squaring == ()


def test_a_standing_sheet_is_squared_at_its_top():
    (corner,) = (way for way in found("A4", 5, Axis.HEIGHT) if way.kind is Kind.CORNER)
    places = {(place.axis, place.at) for place in crease_places(corner.squaring[-1].after)}
    assert (Axis.HEIGHT, exact(210, 297)) in places


@pytest.mark.parametrize("wanted", [exact(1, 10), exact(1, 2), exact(1), exact(5)])
@pytest.mark.parametrize("parts", [3, 5, 7, 9, 11, 12])
def test_the_rounds_told_are_the_fewest_that_are_enough(parts, wanted):
    (near,) = (way.nearness for way in found("letter", parts, Axis.WIDTH, wanted) if way.nearness)
    assert near.errors_mm[-1] <= wanted
    assert len(near.errors_mm) == near.rounds + 1
    assert near.rounds == 1 or near.errors_mm[-2] > wanted


def test_a_guess_is_off_by_a_quarter_of_a_part_at_most():
    (near,) = (way.nearness for way in found("letter", 5, Axis.WIDTH) if way.nearness)
    assert fraction(near.errors_mm[0]) == Fraction(254, 10) * 11 / 5 / 4


@pytest.mark.parametrize("parts", [-3, 0, 1, 2, 13, 100])
def test_other_numbers_of_parts_are_refused_with_the_nearest_that_works(parts):
    with pytest.raises(Unreadable, match=f"try:  foldmath parts {3 if parts < 3 else 12}"):
        found("letter", parts, Axis.WIDTH)


def test_the_easiest_exact_way_comes_first():
    assert found("square", 5, Axis.WIDTH)[0].kind is Kind.CORNER
    assert found("letter", 5, Axis.WIDTH)[0].kind is Kind.CROSSING
    assert all(crease > ZERO for crease in found("letter", 5, Axis.WIDTH)[0].creases)
