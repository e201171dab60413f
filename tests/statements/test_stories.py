"""Word problems: every telling of every story is sensible, right, and said in plain words."""

import re
from collections import Counter
from fractions import Fraction
from functools import cache
from random import Random

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from foldmath.lesson.kinds import stories_for
from foldmath.plane.numbers import ZERO, exact, written
from foldmath.statements.checking.claims import check_claim
from foldmath.statements.items.item import ItemKind
from foldmath.statements.items.story import StoryItem, all_stories, every_telling, tell
from foldmath.statements.rules.tellings import NO_DIFFERENCE
from foldmath.statements.story_numbers import Asks, fillings
from foldmath.words.rules import what_it_tells, what_to_try

LANGUAGES = ("en-US", "en-GB")
STORIES = [story for language in LANGUAGES for story in all_stories(language)]
BRITISH = {story.name: story for story in all_stories("en-GB")}
IDS = [f"{story.name}-{language}" for language in LANGUAGES for story in all_stories(language)]
UNITS = {"m", "m²", "L", "kg", "km", "cup", "cups", "minute", "minutes"}
COUNTED = {"boat": "boats", "tile": "tiles", "seat": "seats", "bike": "bikes", "card": "cards"}
VOWELS = "aeiou"
SOUNDS_OF_VOWELS = {"hour"}
"""Begins with a consonant that is not heard."""

tellings_of = cache(every_telling)
each_story = pytest.mark.parametrize("story", STORIES, ids=IDS)


def number(text: str) -> Fraction:
    return sum(map(Fraction, text.split()), Fraction(0))


def numbers_in(text: str) -> list[Fraction]:
    return [number(found) for found in re.findall(r"\d+ \d+/\d+|\d+/\d+|\d+", text)]


def words_of(item: StoryItem) -> tuple[str, ...]:
    return (*item.sentences, item.answer_sentence)


def test_there_are_stories_enough_in_places_enough():
    for language in LANGUAGES:
        stories = all_stories(language)
        assert len({story.name for story in stories}) == len(stories) >= 28
        assert len({story.scenario for story in stories}) >= 5
        assert min(Counter(story.scenario for story in stories).values()) >= 4


@pytest.mark.parametrize(
    ("language", "grade", "kinds"),
    [
        ("en-US", 3, set()),
        ("en-US", 4, {Asks.PORTIONS}),
        ("en-US", 5, set(Asks) - {Asks.PORTIONS}),
        ("en-US", 6, set(Asks) - {Asks.PORTIONS}),
        ("en-GB", 4, set()),
        ("en-GB", 5, {Asks.PORTIONS}),
        ("en-GB", 6, set(Asks) - {Asks.PORTIONS}),
    ],
)
def test_stories_follow_what_a_grade_multiplies(language, grade, kinds):
    assert {story.asks for story in stories_for(grade, language)} == kinds


@each_story
def test_every_story_can_be_told_in_several_ways(story):
    assert len(tellings_of(story)) >= 5


RIGHT = {
    Asks.PORTIONS: lambda n: n[0] * n[1],
    Asks.PART: lambda n: n[0] * n[1],
    Asks.AREA: lambda n: n[0] * n[1],
    Asks.QUANTITY: lambda n: n[0] * n[1],
    Asks.FLEET: lambda n: n[0] * n[1] * n[2],
    Asks.MINUTES: lambda n: n[0] * n[1] * 60,
    Asks.LEFT: lambda n: n[0] * (1 - n[1]),
    Asks.MORE: lambda n: n[2] - n[0] * n[1],
}
"""The answers, from the numbers in the order in which a story tells them."""


@each_story
def test_the_answer_follows_from_the_numbers_that_are_told(story):
    for item in tellings_of(story):
        told = [value for sentence in item.sentences for value in numbers_in(sentence)]
        assert number(item.answer) == RIGHT[story.asks](told)
        assert numbers_in(item.answer_sentence) == [number(item.answer)]
        assert {number(text) for text in item.shown} == set(told)


@each_story
def test_the_working_is_true_and_ends_with_the_answer(story):
    for item in tellings_of(story):
        verdict = check_claim(item.working)
        assert verdict.true
        assert item.working.endswith(f" = {item.answer}")
        assert item.working.startswith(item.asks)


@each_story
def test_numbers_stay_sensible(story):
    for item, filling in zip(tellings_of(story), fillings(story.asks, story.ranges), strict=True):
        answer = number(item.answer)
        fractions = [value for value in numbers_in(" ".join(item.sentences)) if value.denominator > 1]
        assert all(0 < value < 1 for value in fractions)
        assert answer.denominator <= story.ranges.largest <= 24
        assert all(int(below) <= 24 for below in re.findall(r"/(\d+)", item.working))
        if story.asks in (Asks.QUANTITY, Asks.FLEET, Asks.MINUTES):
            assert answer.denominator == 1
            total = filling.total
            assert 0 < answer < total
            assert (total * Fraction(filling.amount.text)).denominator == 1
        elif story.asks is not Asks.PORTIONS:
            assert answer < 1


@each_story
def test_hours_are_whole_minutes(story):
    if "hour" in " ".join(story.sentences):
        for item in tellings_of(story):
            minutes = [60 * value for value in numbers_in(item.working) if value < 1]
            assert minutes[0].denominator == minutes[1].denominator == 1 or story.asks is Asks.PART
            answer = number(item.answer)
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
    for filling in fillings(BRITISH[name].asks, BRITISH[name].ranges):
        assert Fraction(amount[0]) <= Fraction(filling.amount.text) <= Fraction(amount[1])
        assert Fraction(take[0]) <= Fraction(filling.take.text) <= Fraction(take[1])


@each_story
def test_sentences_are_short_and_end_as_they_should(story):
    for item in tellings_of(story):
        *told, question = item.sentences
        assert question.endswith("?")
        assert all(sentence.endswith(".") for sentence in [*told, item.answer_sentence])
        for sentence in words_of(item):
            assert len(sentence.split()) <= 12, sentence
            assert sentence[0].isupper()
            assert not re.search(r"[{}|]|\s\s", sentence)


@each_story
def test_articles_fit_the_words_that_they_stand_before(story):
    for item in tellings_of(story):
        for article, word in re.findall(r"\b(an?) (\S+)", " ".join((*words_of(item), item.unit)).lower()):
            vowel = word[0] in VOWELS or word.rstrip("?.") in SOUNDS_OF_VOWELS
            assert not word[0].isdecimal()
            assert (article == "an") == vowel, (article, word)


@each_story
def test_a_question_asks_for_a_part_of_the_whole_or_for_a_unit_and_never_for_both(story):
    for item in tellings_of(story):
        of_the_whole = item.unit.startswith("of ")
        assert ("whole" in item.sentences[-1]) == ("fraction" in item.sentences[-1]) == of_the_whole
        assert of_the_whole or item.unit in UNITS | COUNTED.keys() | set(COUNTED.values())


@each_story
def test_things_are_singular_where_there_is_at_most_one_and_plural_elsewhere(story):
    forms = COUNTED | {"cup": "cups", "minute": "minutes"}
    for item in tellings_of(story):
        for found, word in re.findall(r"(\d+ \d+/\d+|\d+/\d+|\d+) (?:\w+ )?(\w+)", " ".join(words_of(item))):
            if word in forms or word in forms.values():
                assert (word in forms) == (number(found) <= 1), (found, word)
        if item.unit in forms or item.unit in forms.values():
            assert (item.unit in forms) == (number(item.answer) <= 1)


@each_story
def test_every_other_form_that_is_accepted_is_equal_and_written_otherwise(story):
    for item in tellings_of(story):
        forms = [form for form in item.accepted if not form.endswith(" of an hour")]
        assert {number(form) for form in forms} <= {number(item.answer)}
        hours = [number(form.split()[0]) * 60 for form in item.accepted if form not in forms]
        assert set(hours) <= {number(item.answer)}
        assert item.answer not in item.accepted
        assert len(set(item.accepted)) == len(item.accepted)


@each_story
def test_wrong_answers_are_wrong_differ_and_tell_something(story):
    for item in tellings_of(story):
        values = [wrong.answer.value for wrong in item.wrong]
        assert 1 <= len(values) == len(set(values)) <= 3
        assert exact(*number(item.answer).as_integer_ratio()) not in values
        assert all(value >= ZERO for value in values)
        for wrong in item.wrong:
            assert wrong.published is None
            assert what_it_tells(wrong.rule).endswith(".")
            assert what_to_try(wrong.rule)[-1] in ".?"


@each_story
def test_wrong_answers_of_counted_things_are_whole(story):
    if story.asks in (Asks.QUANTITY, Asks.FLEET, Asks.MINUTES):
        for item in tellings_of(story):
            assert all(written(wrong.answer.value).isdecimal() for wrong in item.wrong)


def test_the_trap_of_a_part_and_a_part_of_a_unit_has_the_slip_that_it_sets():
    traps = [story for story in all_stories("en-US") if story.asks is Asks.MORE]
    assert len(traps) >= 3
    for story in traps:
        assert story.stretch
        for item in tellings_of(story):
            assert item.wrong[0].rule == NO_DIFFERENCE
            assert item.wrong[0].answer.text == "0"


def test_stories_of_two_steps_are_for_stretch_and_others_for_all():
    for story in STORIES:
        item = tellings_of(story)[0]
        assert item.stretch == story.stretch == (story.asks in (Asks.LEFT, Asks.MORE))
        assert item.kind is ItemKind.STORY


def test_units_in_words_are_spelt_as_the_language_spells_them():
    said = {
        language: " ".join(" ".join(words_of(tellings_of(story)[0])) for story in all_stories(language))
        for language in LANGUAGES
    }
    for british, american in [("metres", "meters"), ("litres", "liters"), ("kilometres", "kilometers")]:
        assert british in said["en-GB"]
        assert american not in said["en-GB"]
        assert american in said["en-US"]
        assert british not in said["en-US"]


@given(index=st.integers(0, len(STORIES) - 1), seed=st.integers(0, 2**32))
@settings(max_examples=60)
def test_the_same_chance_tells_the_same_story_among_the_sensible_ones(index, seed):
    story = STORIES[index]
    item = tell(story, Random(seed))
    assert item == tell(story, Random(seed))
    assert item in tellings_of(story)


def test_known_tellings():
    said = {item.sentences: item for item in tellings_of(BRITISH["boatyard-paint"])}
    item = said[
        (
            "A boatyard looks after 36 boats.",
            "Now 2/3 of the boats are in the yard.",
            "The crew paints 3/4 of the boats in the yard.",
            "How many boats does the crew paint?",
        )
    ]
    assert (item.answer, item.unit, item.answer_sentence) == ("18", "boats", "The crew paints 18 boats.")
    assert item.working == "3/4 × 2/3 × 36 = 3/4 × 24 = 18"
    assert [wrong.answer.text for wrong in item.wrong] == ["27", "24", "6"]
    assert item.shown == {"36", "2/3", "3/4"}
