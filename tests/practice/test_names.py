"""Names that a lesson lends stand in its stories in turn, and change nothing else."""

from dataclasses import replace

import pytest
from practice.test_choosing import PROVED

from foldmath.lesson.lesson import PracticeRules
from foldmath.practice.choosing import choose
from foldmath.statements.items import ItemKind, Level
from foldmath.worksheets.version_code import version_code

NAMES = ("Ines", "Olu", "Żaneta", "นารี", "نور")
STORIES = PracticeRules(kinds=(ItemKind.STORY,), count=6)


def lesson(names=NAMES, rules=STORIES):
    proved = PROVED["seed-trays"]
    return replace(proved, lesson=replace(proved.lesson, names=names, rules=rules))


def told_of(level=Level.CORE, seed=None, **changed):
    items = choose(lesson(**changed), level, seed=seed)
    return [item.name for item in items if item.kind is ItemKind.STORY]


@pytest.mark.parametrize(("level", "first"), [(Level.GUIDED, 0), (Level.CORE, 1), (Level.STRETCH, 2)])
def test_stories_have_them_in_turn_and_each_level_begins_with_another(level, first):
    told = told_of(level)
    assert told == [NAMES[(first + place) % len(NAMES)] for place in range(len(told))]


def test_pupils_with_numbers_of_their_own_begin_where_their_numbers_say():
    assert told_of(seed=7)[:2] == ["Żaneta", "นารี"]
    assert told_of(seed=7) == told_of(seed=7)


def test_without_names_nobody_has_one_and_with_them_all_else_is_the_same():
    assert set(told_of(names=())) == {""}
    bare, named = (choose(lesson(names=names), Level.CORE) for names in ((), NAMES))
    assert [item.asks for item in bare] == [item.asks for item in named]


def test_pages_printed_before_a_name_came_are_marked_after_it_so_names_change_no_code():
    codes = {version_code(lesson(names=names).lesson, Level.CORE) for names in ((), NAMES, NAMES[::-1])}
    assert len(codes) == 1
