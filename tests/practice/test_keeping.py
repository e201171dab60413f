"""Items that a teacher keeps stay on the page, whatever else is chosen for it."""

from dataclasses import replace

import pytest
from practice.test_choosing import PROVED

from foldmath.lesson.kinds import CHOSEN_KINDS
from foldmath.lesson.lesson import Kept, PracticeRules
from foldmath.practice.choosing import choose
from foldmath.statements.items import ItemKind, Level

LESSON = "seed-trays"


def asks(level=Level.CORE, own=None, **rules):
    """Give what a page asks beside the products of the lesson."""
    proved = PROVED[LESSON]
    changed = replace(proved, lesson=replace(proved.lesson, rules=PracticeRules(**rules)))
    named = len(proved.lesson.practice)
    return [item.asks for item in choose(changed, level, seed=own)][named:]


@pytest.mark.parametrize("level", Level)
def test_a_page_on_which_all_that_is_kept_stands_already_is_not_changed(level):
    page = asks(level)
    assert asks(level, keep=(Kept(level, page[0]), Kept(level, page[-1]))) == page


@pytest.mark.parametrize("kind", [kind for kind in CHOSEN_KINDS if kind is not ItemKind.SHADE])
def test_an_item_of_every_kind_stays_when_all_numbers_are_others(kind):
    kept = asks(kinds=(kind,), count=3)[0]
    keep = (Kept(Level.CORE, kept),)
    assert all(kept in asks(keep=keep, seed=seed) for seed in range(5))
    assert kept in asks(keep=keep, without=frozenset({kept}))


def test_a_kept_item_takes_the_place_of_one_of_its_kind_and_the_page_grows_no_longer():
    usual = choose(PROVED[LESSON], Level.CORE)
    kept = next(each for each in asks(kinds=(ItemKind.STORY,), count=5) if each not in asks())
    page = asks(keep=(Kept(Level.CORE, kept),))
    (gone,) = set(asks()) - set(page)
    assert set(page) - set(asks()) == {kept}
    assert [item.kind for item in usual if item.asks == gone] == [ItemKind.STORY]


def test_more_may_be_kept_than_the_page_was_to_have():
    page = asks(count=12)
    assert set(asks(count=4, keep=tuple(Kept(Level.CORE, each) for each in page))) == set(page)


def test_what_is_kept_for_one_level_changes_no_other():
    page = asks(Level.CORE)
    for level in (Level.GUIDED, Level.STRETCH):
        assert asks(level, keep=tuple(Kept(Level.CORE, each) for each in page)) == asks(level)


def test_a_pupil_with_numbers_of_his_own_has_others():
    kept = asks()[0]
    assert asks(own=7, keep=(Kept(Level.CORE, kept),)) == asks(own=7)


def test_what_the_class_cannot_be_asked_stays_off_the_page():
    assert asks(keep=(Kept(Level.CORE, "apples"),)) == asks()
