"""Word problems: every telling of every story is sensible and right."""

import re
from collections import Counter
from fractions import Fraction

import pytest
from told_stories import every_telling

from foldmath.lesson.kinds import stories_for
from foldmath.plane.numbers import ZERO, exact, written
from foldmath.statements.checking.claims import check_claim
from foldmath.statements.items.item import ItemKind
from foldmath.statements.items.story import all_stories
from foldmath.statements.rules.tellings import NO_DIFFERENCE
from foldmath.statements.standards import Followed
from foldmath.statements.story_numbers import Asks, fillings
from foldmath.words.rules import what_it_tells, what_to_try

STORIES = all_stories()
NAMED = {story.name: story for story in STORIES}

each_story = pytest.mark.parametrize("story", STORIES, ids=lambda story: story.name)


def number(text: str) -> Fraction:
    return sum(map(Fraction, text.split()), Fraction(0))


def numbers_in(text: str) -> list[Fraction]:
    return [number(found) for found in re.findall(r"\d+ \d+/\d+|\d+/\d+|\d+", text)]


def test_there_are_stories_enough_in_places_enough():
    assert len(NAMED) == len(STORIES) >= 28
    assert len({story.scenario for story in STORIES}) >= 5
    assert min(Counter(story.scenario for story in STORIES).values()) >= 4


@pytest.mark.parametrize(
    ("followed", "grade", "kinds"),
    [
        (Followed.CCSS, 3, set()),
        (Followed.CCSS, 4, {Asks.PORTIONS}),
        (Followed.CCSS, 5, set(Asks) - {Asks.PORTIONS}),
        (Followed.CCSS, 6, set(Asks) - {Asks.PORTIONS}),
        (Followed.ENGLAND, 4, set()),
        (Followed.ENGLAND, 5, {Asks.PORTIONS}),
        (Followed.ENGLAND, 6, set(Asks) - {Asks.PORTIONS}),
    ],
)
def test_stories_follow_what_a_grade_multiplies(followed, grade, kinds):
    assert {story.asks for story in stories_for(grade, followed)} == kinds


@each_story
def test_every_story_can_be_told_in_several_ways(story):
    assert len(every_telling(story)) >= 5


@each_story
def test_the_working_is_true_and_ends_with_the_answer(story):
    for item in every_telling(story):
        verdict = check_claim(str(item.working))
        assert verdict.true
        assert str(item.working).endswith(f" = {item.answer}")
        assert str(item.working).startswith(item.asks)


@each_story
def test_numbers_stay_sensible(story):
    for item, filling in zip(every_telling(story), fillings(story.asks, story.ranges), strict=True):
        answer = number(str(item.answer))
        fractions = [value for value in map(number, map(str, item.shown)) if value.denominator > 1]
        assert all(0 < value < 1 for value in fractions)
        assert answer.denominator <= story.ranges.largest <= 24
        assert all(int(below) <= 24 for below in re.findall(r"/(\d+)", str(item.working)))
        if story.asks in (Asks.QUANTITY, Asks.FLEET, Asks.MINUTES):
            assert answer.denominator == 1
            total = filling.total
            assert 0 < answer < total
            assert (total * Fraction(filling.amount.text)).denominator == 1
        elif story.asks is not Asks.PORTIONS:
            assert answer < 1


@each_story
def test_hours_are_whole_minutes(story):
    if story.asks is Asks.MINUTES or story.ranges.steps == 60:
        for item in every_telling(story):
            minutes = [60 * value for value in numbers_in(str(item.working)) if value < 1]
            assert minutes[0].denominator == minutes[1].denominator == 1 or story.asks is Asks.PART
            answer = number(str(item.answer))
            assert (answer if story.asks is Asks.MINUTES else 60 * answer).denominator == 1


@pytest.mark.parametrize(
    ("name", "amount", "take"),
    [
        ("garden-beans", ("2/3", "5/6"), ("1/2", "3/4")),
        ("garden-tank", ("1/2", "7/8"), ("1/3", "3/4")),
        ("garden-weeds", ("1/2", "5/6"), ("1/2", "2/3")),
        ("boatyard-rope", ("1/2", "9/10"), ("1/3", "3/4")),
        ("boatyard-varnish", ("1/4", "7/8"), ("1/2", "2/3")),
        ("tiles-clay", ("1/2", "9/10"), ("1/4", "3/4")),
        ("tiles-table", ("1/4", "7/8"), ("1/4", "7/8")),
        ("ferry-channel", ("3/5", "9/10"), ("1/2", "3/4")),
        ("kitchen-milk", ("1/2", "3/4"), ("1/3", "1/2")),
    ],
)
def test_things_are_as_large_as_such_things_are(name, amount, take):
    for filling in fillings(NAMED[name].asks, NAMED[name].ranges):
        assert Fraction(amount[0]) <= Fraction(filling.amount.text) <= Fraction(amount[1])
        assert Fraction(take[0]) <= Fraction(filling.take.text) <= Fraction(take[1])


@each_story
def test_every_other_form_that_is_accepted_is_equal_and_written_otherwise(story):
    for item in every_telling(story):
        assert {number(str(form)) for form in item.accepted} <= {number(str(item.answer))}
        assert item.answer not in item.accepted
        assert len(set(item.accepted)) == len(item.accepted)
        if story.in_whole:
            assert number(dict(item.numbers)["in_whole"].text) * 60 == number(str(item.answer))


@each_story
def test_wrong_answers_are_wrong_differ_and_tell_something(story):
    for item in every_telling(story):
        values = [wrong.answer.value for wrong in item.wrong]
        assert 1 <= len(values) == len(set(values)) <= 3
        assert exact(*number(str(item.answer)).as_integer_ratio()) not in values
        assert all(value >= ZERO for value in values)
        for wrong in item.wrong:
            assert wrong.published is None
            assert what_it_tells(wrong.rule).endswith(".")
            assert what_to_try(wrong.rule)[-1] in ".?"


@each_story
def test_wrong_answers_of_counted_things_are_whole(story):
    if story.asks in (Asks.QUANTITY, Asks.FLEET, Asks.MINUTES):
        for item in every_telling(story):
            assert all(written(wrong.answer.value).isdecimal() for wrong in item.wrong)


def test_the_trap_of_a_part_and_a_part_of_a_unit_has_the_slip_that_it_sets():
    traps = [story for story in STORIES if story.asks is Asks.MORE]
    assert len(traps) >= 3
    for story in traps:
        assert story.stretch
        for item in every_telling(story):
            assert item.wrong[0].rule == NO_DIFFERENCE
            assert str(item.wrong[0].answer) == "0"


def test_stories_of_two_steps_are_for_stretch_and_others_for_all():
    for story in STORIES:
        item = every_telling(story)[0]
        assert item.stretch == story.stretch == (story.asks in (Asks.LEFT, Asks.MORE))
        assert item.kind is ItemKind.STORY
