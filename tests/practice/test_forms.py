"""Pupils with numbers of their own give many reasons: no form comes to more than a quarter of a class."""

from collections import Counter
from dataclasses import replace
from functools import cache

import pytest
from conftest import LESSONS

from foldmath.lesson.lesson import PracticeRules
from foldmath.lesson.numbered_pupils import pupils_without_roster
from foldmath.lesson.roster import Pupil
from foldmath.making import proved_lesson
from foldmath.practice.candidates import candidates
from foldmath.practice.choosing import MOST_FORMS, choose
from foldmath.practice.fold_candidates import all_of
from foldmath.practice.own_numbers import TURNS, pupil_seed
from foldmath.practice.scope import scope_of
from foldmath.statements.items import (
    BiggerOrSmallerItem,
    CountOrSizeItem,
    ExplainItem,
    Frame,
    ItemKind,
    Level,
    RepeatedHalvingItem,
)

OURS = sorted(path.stem for path in LESSONS.glob("*.toml"))
CLASS = 28
NAMES = "abcdefghijklmnop"


@cache
def proved(name):
    return proved_lesson(LESSONS / f"{name}.toml")[0]


def form(item):
    """Give what an item asks and the reason it wants, without its numbers; None of other kinds."""
    match item:
        case ExplainItem(frame=frame, statement=statement):
            return frame, statement.comparisons
        case BiggerOrSmallerItem(makes=makes, turned=turned):
            return makes, turned, item.compared == item.product.second, item.with_whole
        case CountOrSizeItem(answer=answer):
            return answer
    return None


def commonest(name, level, pupils, form=form):
    """Give the share of the commonest form of each kind of item among pupils."""
    forms = {}
    for pupil in pupils:
        for item in choose(proved(name), level, seed=pupil_seed(proved(name).lesson, pupil)):
            if form(item):
                forms.setdefault(item.kind, Counter())[form(item)] += 1
    return {kind: max(of_kind.values()) / of_kind.total() for kind, of_kind in forms.items()}


@pytest.mark.parametrize("level", Level)
@pytest.mark.parametrize("name", OURS)
def test_of_28_pupils_no_more_than_a_quarter_share_form_and_reason(name, level):
    shares = commonest(name, level, pupils_without_roster(CLASS))
    assert all(share <= 1 / 4 for share in shares.values())


def asked_stories(grade, **rules):
    """Give seed trays as a lesson of a grade that asks stories alone, and no product of its own."""
    rules = PracticeRules(denominators=(2, 3, 4, 6), count=6, kinds=(ItemKind.STORY,), **rules)
    lesson = replace(proved("seed-trays").lesson, grade=grade, practice=(), items=(), rules=rules)
    return replace(proved("seed-trays"), lesson=lesson)


def stories(asked, level, seed=None):
    """Give the stories of a page, each with the name of its frame."""
    return {item.asks: item.frame.name for item in choose(asked, level, seed=seed)}


@pytest.mark.parametrize("seed", [None, 1, 2, 3])
@pytest.mark.parametrize("level", Level)
@pytest.mark.parametrize("grade", [4, 5, 6])
def test_a_page_tells_no_story_twice_before_it_has_told_them_all(grade, level, seed):
    asked = asked_stories(grade)
    told = Counter(stories(asked, level, seed).values())
    assert told.total() > 2
    assert len(told) == min(len(candidates(ItemKind.STORY, scope_of(asked, level))), told.total())


def test_a_story_that_is_exchanged_gives_way_to_one_that_the_page_has_not():
    usual = stories(asked_stories(5), Level.CORE)
    for unwanted in usual:
        others = stories(asked_stories(5, without=frozenset({unwanted})), Level.CORE)
        assert set(usual) - set(others) == {unwanted}
        assert len(set(others.values())) == len(others) == len(usual)


def test_two_mistakes_to_correct_on_one_page_are_two():
    rules = PracticeRules(count=4, kinds=(ItemKind.MEND,))
    lesson = replace(proved("seed-trays").lesson, practice=(), items=(), rules=rules)
    for seed in range(4):
        items = choose(replace(proved("seed-trays"), lesson=lesson), Level.CORE, seed=seed)
        assert len({item.rule for item in items}) == len(items) == 4


def test_of_many_with_names_chance_gives_no_form_to_more_than_a_fifth():
    """In grade 3 there are 7 reasons at core, so a seventh of a class is meant to give each."""
    named = [Pupil(f"{first} {last}", Level.CORE) for first in NAMES for last in NAMES]
    assert commonest("plank-marks", Level.CORE, named)[ItemKind.EXPLAIN] < 1 / 5


def test_a_pupil_who_is_a_number_has_the_same_turn_in_every_class_and_a_name_has_none():
    lesson = proved("seed-trays").lesson
    turns = [pupil_seed(lesson, pupil) % TURNS for pupil in pupils_without_roster(CLASS)]
    assert turns == [*range(1, CLASS + 1)]
    assert pupil_seed(lesson, Pupil("Ines", Level.CORE)) % TURNS > CLASS


@pytest.mark.parametrize("name", OURS)
def test_every_number_of_forms_divides_the_turns(name):
    """Else pupils of different hundreds would not take turns alike."""
    for level in Level:
        for kind in (ItemKind.EXPLAIN, ItemKind.BIGGER_OR_SMALLER, ItemKind.COUNT_OR_SIZE, ItemKind.MEND):
            forms = len(candidates(kind, scope_of(proved(name), level)))
            assert forms <= MOST_FORMS
            assert forms == 0 or TURNS % forms == 0


def test_no_three_factors_come_to_more_than_a_quarter_of_a_class_at_stretch():
    def factors(item):
        return item.asks if isinstance(item, RepeatedHalvingItem) else None

    assert commonest("seed-trays", Level.STRETCH, pupils_without_roster(CLASS), factors).popitem()[1] < 1 / 4


@pytest.mark.parametrize("name", OURS)
def test_no_reason_at_stretch_turns_on_easier_numbers_than_one_at_core(name):
    core, stretch = (
        [make() for make in all_of(candidates(ItemKind.EXPLAIN, scope_of(proved(name), level)))]
        for level in (Level.CORE, Level.STRETCH)
    )
    assert min(item.difficulty for item in stretch) >= max(item.difficulty for item in core)
    assert "explain 1/2 = 2/4" not in {item.asks for item in stretch}


@pytest.mark.parametrize("name", OURS)
def test_what_a_glance_answers_is_asked_with_most_support_only(name):
    """Fewer panels of one size are less, and all of them are 1 [common practice, no source]."""
    for level in Level:
        asked = all_of(candidates(ItemKind.EXPLAIN, scope_of(proved(name), level)))
        frames = {make().frame for make in asked}
        easy = {Frame.FEWER_PANELS, Frame.ALL_PANELS} & frames
        assert bool(easy) == (level is Level.GUIDED and proved(name).lesson.grade < 5)


def test_three_times_a_third_is_not_set_beside_one():
    """It is 1 only when it is worked out, and that is not to be done."""
    of_kind = candidates(ItemKind.BIGGER_OR_SMALLER, scope_of(proved("tile-race"), Level.STRETCH))
    asked = {make().asks for make in all_of(of_kind)}
    assert not {"3 × 1/3 ○ 1", "1 ○ 3 × 1/3"} & asked
    assert {"3 × 2/5 ○ 1", "1 ○ 3 × 2/5"} <= asked
