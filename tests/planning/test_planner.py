"""Plans do what was wanted: folded in the exact model, shaded, counted, and ranked as they say."""

from dataclasses import replace
from itertools import pairwise, permutations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from foldmath.lesson.proving import prove
from foldmath.lesson.reading import lesson_in
from foldmath.paper.sizes import paper_named, sheet
from foldmath.paper.steps import Axis, Edge, FoldBothEdges, FoldEdge, Open, OpenLast, Pleat, TurnOver
from foldmath.plane.numbers import exact
from foldmath.planning import ranking
from foldmath.planning.folding_steps import sayings
from foldmath.planning.plan_lesson import Class, lesson_text
from foldmath.planning.plan_words import figures, smallest_said, why
from foldmath.planning.planner import Limits, NoPlan, plan
from foldmath.planning.ranking import Priority, Reason, priority_of
from foldmath.planning.strip import FINEST, Move, lying
from foldmath.planning.strip_search import even_target
from foldmath.planning.trials import Trials
from foldmath.planning.wanted import orders_of, wanted_panels, wanted_product, wanted_sizes
from foldmath.planning.ways import ways_to
from foldmath.tolerance.accuracy import accuracy
from foldmath.tolerance.assumed.spread import default_spread
from foldmath.tolerance.assumed.stock import DEFAULT_STOCK
from foldmath.words.languages import DEFAULT

LETTER = paper_named("letter")
LANDSCAPE = sheet(LETTER, "landscape")
GRADE_FIVE = default_spread(5)
CLASS = Class(grade=5, size=LETTER, orientation="landscape", spread=GRADE_FIVE)
UNLIMITED = 4096


def planned(wanted, limits=Limits(), size=LETTER, best=5):
    return plan(wanted, size, "landscape", GRADE_FIVE, DEFAULT_STOCK, limits=limits, best=best)


def first(wanted, limits=Limits()):
    return planned(wanted, limits).ranked[0].plan


def folded(ranked):
    """The open sheet after a plan."""
    return Trials(LANDSCAPE).moments(ranked.plan.steps)[-1].after


# What plans make.

PROPER = st.integers(2, 5).flatmap(lambda below: st.tuples(st.integers(1, below), st.just(below)))


@settings(max_examples=8, deadline=None)
@given(PROPER, PROPER)
def test_the_first_plan_of_a_product_shows_it_by_panels_shaded_twice(one, other):
    wanted = wanted_product(f"{one[0]}/{one[1]} × {other[0]}/{other[1]}")
    text = lesson_text(wanted, planned(wanted, best=1).ranked[0], CLASS, DEFAULT)
    panels = prove(lesson_in(text, "planned.toml")).states[-1].panels
    assert len(panels) == one[1] * other[1]
    assert {panel.area for panel in panels} == {exact(1, one[1] * other[1])}
    assert sum(panel.shaded == 2 for panel in panels) == one[0] * other[0]


@pytest.mark.parametrize("language", [DEFAULT, "es", "en-GB"])
def test_a_planned_lesson_is_in_the_language_that_it_was_planned_in_and_the_usual_one_is_not_said(language):
    wanted = wanted_product("1/2 × 2/3")
    text = lesson_text(wanted, planned(wanted, best=1).ranked[0], CLASS, language)
    assert lesson_in(text, "planned.toml").language == language
    assert ("language =" in text) is (language != DEFAULT)


@pytest.mark.parametrize("number", [2, 3, 5, 6, 10, 12])
def test_every_plan_for_equal_panels_makes_so_many_and_all_alike(number):
    for ranked in planned(wanted_panels(number)).ranked:
        assert {panel.area for panel in folded(ranked).panels} == {exact(1, number)}


def test_every_plan_for_panels_of_given_sizes_makes_just_those():
    for sizes in ("1/6, 1/6, 2/3", "1/12, 1/4, 1/6, 1/2", "1/7, 2/7, 4/7"):
        wanted = sorted(exact(*map(int, size.split("/"))) for size in sizes.split(","))
        for ranked in planned(wanted_sizes(sizes)).ranked:
            assert sorted(panel.area for panel in folded(ranked).panels) == wanted


def test_every_plan_ends_with_the_sheet_open():
    for ranked in planned(wanted_panels(12)).ranked:
        assert folded(ranked).folds == 0


@pytest.mark.parametrize("parts", [3, 4, 6])
def test_a_fan_into_equal_parts_is_one_of_the_ways_and_takes_a_fold_less_than_its_parts(parts):
    for axis, ways in ways_to(even_target(parts), Trials(LANDSCAPE), GRADE_FIVE, UNLIMITED).by_axis.items():
        assert any(way.steps == (Pleat(axis, parts),) and way.folds == parts - 1 for way in ways)


@pytest.mark.parametrize("parts", range(2, 13))
def test_equal_parts_of_one_side_take_as_many_folds_as_doublings_that_reach_them(parts):
    """Each fold doubles the layers at most, and a fold through k layers makes k creases at most."""
    ways = ways_to(even_target(parts), Trials(LANDSCAPE), GRADE_FIVE, UNLIMITED).by_axis[Axis.WIDTH]
    assert min(way.folds for way in ways) == (parts - 1).bit_length()


# What they say of themselves.


def test_figures_are_those_of_the_folded_model():
    for ranked in planned(wanted_product("2/3 × 4/5")).ranked:
        moments = Trials(LANDSCAPE).moments(ranked.plan.steps)
        assert ranked.plan.layers == max(moment.after.table.layers for moment in moments)
        assert ranked.plan.off_mm == pytest.approx(accuracy(moments, GRADE_FIVE).worst_mm)


def test_plans_come_in_the_order_of_their_cost():
    keys = [ranked.plan.key for ranked in planned(wanted_product("2/3 × 4/5")).ranked]
    assert len(keys) > 1
    assert keys == sorted(keys)


def test_up_to_grade_5_comes_first_what_a_class_would_do():
    """A fan of 5, open, a fan of 3, open: six folds, and the fewest steps to say."""
    size, wanted = LETTER, wanted_product("2/3 × 4/5")
    found = plan(wanted, size, "landscape", GRADE_FIVE, DEFAULT_STOCK, priority=priority_of(5)).ranked
    assert sorted(step.parts for step in found[0].plan.steps if isinstance(step, Pleat)) == [3, 5]
    assert (len(found[0].plan.steps), found[0].reasons) == (4, (Reason.SOONEST_SAID,))
    fewer = [ranked for ranked in found if Reason.FOLDS in ranked.reasons]
    assert [ranked.plan.folds for ranked in fewer] == [5]


def best_for_a_class(wanted):
    made = plan(wanted, LETTER, "landscape", GRADE_FIVE, DEFAULT_STOCK, priority=Priority.STEPS)
    return made.ranked[0]


def halvings_and_fans(ranked):
    """Say of each fold whether it brings an edge to an edge, or into how many parts its fan goes."""
    folds = [step for step in ranked.plan.steps if not isinstance(step, Open | OpenLast)]
    return [step.parts if isinstance(step, Pleat) else type(step) for step in folds]


@pytest.mark.parametrize(
    ("panels", "folds", "reason"),
    [
        (3, [3], Reason.SOONEST_SAID),
        (4, [FoldEdge] * 2, Reason.LEAST_MEASURED),
        (5, [5], Reason.SOONEST_SAID),
        (6, [3, FoldEdge], Reason.LEAST_MEASURED),
        (8, [FoldEdge] * 3, Reason.LEAST_MEASURED),
        (9, [3, 3], Reason.SOONEST_SAID),
        (12, [FoldEdge, FoldEdge, 3], Reason.LEAST_MEASURED),
    ],
)
def test_up_to_grade_5_what_can_be_halved_is_halved_and_fans_go_into_odd_numbers(panels, folds, reason):
    best = best_for_a_class(wanted_panels(panels))
    assert halvings_and_fans(best) == folds
    assert best.reasons == (reason,)


def test_both_edges_go_to_the_middle_in_one_step_though_a_halving_shows_the_middle():
    assert halvings_and_fans(best_for_a_class(wanted_sizes("1/4, 1/4, 1/2"))) == [FoldBothEdges]


def test_a_side_is_folded_at_a_third_by_eye_before_it_is_at_a_sixth():
    """1/6 and 1/6 beside 2/3: over at 1/3, and the edge to that crease, which nobody has to measure."""
    first, second = (
        step for step in best_for_a_class(wanted_sizes("1/6, 1/6, 2/3")).plan.steps if step != Open()
    )
    assert (first.at, second.to) == (exact(1, 3), exact(1, 3))


@pytest.mark.parametrize(
    ("grade", "priority"),
    [(3, Priority.STEPS), (5, Priority.STEPS), (6, Priority.FOLDS)],
)
def test_from_grade_6_on_few_folds_matter_more_than_few_steps(grade, priority):
    assert priority_of(grade) is priority


@pytest.mark.parametrize("priority", Priority)
def test_every_plan_is_better_in_something_than_all_above_it(priority):
    made = plan(
        wanted_product("3/4 × 1/2"), LETTER, "landscape", GRADE_FIVE, DEFAULT_STOCK, priority=priority
    )
    plans = [ranked.plan for ranked in made.ranked]
    assert len(plans) > 2
    for number, plan_there in enumerate(plans[1:], start=1):
        above = plans[:number]
        assert (
            plan_there.folds < min(other.folds for other in above)
            or plan_there.layers < min(other.layers for other in above)
            or plan_there.off_whole_mm < min(other.off_whole_mm for other in above)
            or len(plan_there.steps) < min(len(other.steps) for other in above)
            or plan_there.openings < min(other.openings for other in above)
            or plan_there.narrow_mm > max(other.narrow_mm for other in above)
        )


def test_eighths_are_offered_folded_shut_as_well_so_that_each_fold_multiplies():
    shut = [ranked for ranked in planned(wanted_panels(8)).ranked if Reason.CLOSED in ranked.reasons]
    assert [ranked.plan.layers for ranked in shut] == [8]
    assert shut[0].plan.openings == 1


def test_folding_two_sides_apart_keeps_layers_apart():
    best = first(wanted_panels(8))
    assert best.layers == 4
    assert sum(isinstance(step, Open | OpenLast) for step in best.steps) == 2


def test_a_halving_alone_has_the_fewest_folds_and_its_line_says_so():
    halves = planned(wanted_product("1/2 × 1")).ranked[0]
    assert str(why(halves)).startswith("fewest folds")
    assert str(figures(halves, GRADE_FIVE)).startswith(
        "1 fold; 2 layers at most; smallest panel 5 1/2 × 8 1/2 in (140 × 216 mm); the worst panel is about"
    )


def test_where_paper_shows_no_mark_ticks_are_advised_at_that_step():
    told = str(figures(planned(wanted_product("1/3 × 1")).ranked[0], GRADE_FIVE))
    assert "by eye" in told
    assert told.endswith("with edge marks at step 1")


# Limits.


@pytest.mark.parametrize("layers", [2, 3, 4, 6])
def test_no_plan_has_more_layers_than_asked_for(layers):
    for ranked in planned(wanted_product("2/3 × 3/4"), Limits(layers=layers)).ranked:
        assert ranked.plan.layers <= layers


def test_fewer_layers_cost_more_folds():
    folds = [first(wanted_panels(8), Limits(layers=layers)).folds for layers in (8, 4, 3, 2)]
    assert all(fewer <= more for fewer, more in pairwise(folds))
    assert folds[0] < folds[-1]


def test_panels_are_at_least_as_large_as_asked_for_whichever_way_they_lie():
    least = (exact(40), exact(65))
    ranked = planned(wanted_panels(12), Limits(least_mm=least)).ranked
    for one in ranked:
        short, long = sorted(one.plan.smallest_mm)
        assert least[0] <= short
        assert least[1] <= long


def test_panels_that_this_paper_cannot_give_are_refused_with_the_largest_and_a_paper_that_can():
    with pytest.raises(NoPlan, match=r"at least 60 × 70 mm on letter; the largest is 55 × 71 mm") as refused:
        planned(wanted_product("2/3 × 4/5"), Limits(least_mm=(exact(60), exact(70))))
    assert str(refused.value.hint) == '--paper "tabloid"'
    planned(wanted_product("2/3 × 4/5"), Limits(least_mm=(exact(60), exact(70))), paper_named("tabloid"))


def test_too_few_folds_are_refused_with_the_number_that_would_do():
    with pytest.raises(NoPlan) as refused:
        planned(wanted_product("2/3 × 4/5"), Limits(folds=4))
    assert str(refused.value.hint) == "--folds 5"
    assert first(wanted_product("2/3 × 4/5"), Limits(folds=5)).folds == 5


def test_sizes_that_no_simple_fold_makes_are_refused():
    with pytest.raises(NoPlan, match="no folding found at simple parts"):
        planned(wanted_sizes("1/97, 96/97"))


def test_panels_exactly_as_large_as_asked_for_are_large_enough_and_a_hair_less_is_not():
    """A sheet of letter paper in 4 equal panels by two halvings: 11/2 × 17/4 in, 139.7 × 107.95 mm."""
    exactly = (exact(10795, 100), exact(1397, 10))
    quarters = planned(wanted_panels(4), Limits(least_mm=exactly)).ranked
    assert {tuple(sorted(ranked.plan.smallest_mm)) for ranked in quarters} == {exactly}
    more = (exactly[0] + exact(1, 1000), exactly[1])
    with pytest.raises(NoPlan):
        planned(wanted_panels(4), Limits(least_mm=more))


HALF_AND_HALF = (FoldEdge(Edge.LEFT, exact(1)), Open(), FoldEdge(Edge.LEFT, exact(1)), Open())
FEWER_STEPS = {
    "as many": (*HALF_AND_HALF, TurnOver()),
    "one fewer": HALF_AND_HALF,
    "two fewer": HALF_AND_HALF[:3],
    "three fewer": HALF_AND_HALF[:2],
}


@pytest.mark.parametrize(
    ("fewer", "told"),
    [("as many", False), ("one fewer", False), ("two fewer", True), ("three fewer", True)],
)
def test_a_plan_with_a_fold_more_is_praised_for_its_steps_if_it_saves_two_of_them(fewer, told):
    first = planned(wanted_panels(2), best=1).ranked[0].plan
    longest = replace(first, steps=FEWER_STEPS["as many"])
    other = replace(first, folds=first.folds + 1, steps=FEWER_STEPS[fewer])
    found = ranking.ranked([longest, other], Trials(LANDSCAPE), DEFAULT_STOCK, 5)
    reasons = {reason for one in found if one.plan is other for reason in one.reasons}
    assert (Reason.STEPS in reasons) is told


def test_the_notes_of_a_planned_product_count_all_panels_and_those_shaded_twice():
    wanted = wanted_product("2/3 × 4/5")
    text = lesson_text(wanted, planned(wanted, best=1).ranked[0], CLASS, DEFAULT)
    assert "Count the panels shaded twice: 8 of 15, so 8/15 of the whole sheet." in text


def test_the_notes_of_a_plan_are_for_the_class_and_its_figures_a_remark_of_the_file():
    plain = planned(wanted_panels(4)).ranked[-1]
    text = lesson_text(wanted_panels(4), plain, CLASS, DEFAULT)
    assert [line[:2] for line in text.splitlines() if "smallest panel" in line] == ["# "]
    assert "notes" not in text


def test_lengths_of_a_plan_are_told_by_the_ruler_that_goes_with_the_paper():
    sides = (exact(70), exact(108))
    assert str(smallest_said(sides, "in")) == "smallest panel 2 3/4 × 4 1/4 in (70 × 108 mm)"
    assert str(smallest_said(sides, "mm")) == "smallest panel 70 × 108 mm (2 3/4 × 4 1/4 in)"


@pytest.mark.parametrize(("parts", "said"), [(FINEST, True), (FINEST + 1, False)])
def test_a_line_is_named_by_a_part_as_fine_as_a_fan_may_be_and_no_finer(parts, said):
    points = tuple(range(parts + 1))
    assert lying(points, frozenset()).can_say(1) is said


@pytest.mark.parametrize(
    ("cells", "orders"), [([1], 1), ([1, 2], 2), ([1, 2, 3], 6), ([1, 1, 2, 2], 6), ([1, 1, 1, 3, 3], 10)]
)
def test_orders_of_parts_are_counted_by_the_multinomial_coefficient(cells, orders):
    """As itertools finds them, one by one."""
    assert orders_of(cells) == orders == len(set(permutations(cells)))


@pytest.mark.parametrize("axis", list(Axis))
@pytest.mark.parametrize(
    ("crossed", "length", "gate"),
    [((1, 3), 4, True), ((3, 9), 12, True), ((1, 2), 4, False), ((1, 3), 6, False)],
)
def test_folds_at_the_quarters_are_said_as_both_edges_to_the_middle_too(crossed, length, gate, axis):
    moves = tuple(Move(0, (line,)) for line in crossed)
    said = sayings(moves, axis, length)
    assert [steps for steps in said if FoldBothEdges(axis) in steps] == (
        [(FoldBothEdges(axis),)] if gate else []
    )
