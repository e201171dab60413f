"""A teacher's own words stand last on the pages that she names, and the page grows no longer for them."""

from dataclasses import replace

import pytest
from own_words import BED, OAR, SOIL, having, own
from practice.test_choosing import PROVED

from foldmath.lesson.lesson import Kept, PracticeRules
from foldmath.practice.choosing import choose, places
from foldmath.statements.items import ItemKind, Level, make_shade
from foldmath.worksheets.version_code import version_code

LESSON = PROVED["seed-trays"]


def chosen(proved, level=Level.CORE, own_numbers=None):
    return choose(proved, level, seed=own_numbers)


@pytest.mark.parametrize("own_numbers", [None, 7])
@pytest.mark.parametrize("level", Level)
def test_they_come_last_in_her_order_on_every_page_pupils_own_numbers_or_not(level, own_numbers):
    page = chosen(having(LESSON, SOIL, BED), level, own_numbers)
    assert page[-2:] == (SOIL, BED)
    # Two have the places of what is chosen; beside an example one is chosen, and there is room for two.
    assert len(page) == len(chosen(LESSON, level, own_numbers)) + (level is Level.GUIDED)


def test_they_stand_only_on_the_levels_that_they_name():
    proved = having(LESSON, BED, levels=(Level.GUIDED,))
    assert BED in chosen(proved, Level.GUIDED)
    for level in (Level.CORE, Level.STRETCH):
        assert chosen(proved, level) == chosen(LESSON, level)


def test_a_story_gives_way_first_then_what_got_the_last_place_and_all_else_stays():
    usual, one, two = (chosen(made) for made in (LESSON, having(LESSON, SOIL), having(LESSON, SOIL, OAR)))
    (story,) = set(usual) - set(one)
    assert story.kind is ItemKind.STORY
    assert {item.kind for item in set(one) - set(two)} == {ItemKind.COUNT_OR_SIZE}
    assert set(two) - {SOIL, OAR} < set(one) - {SOIL} < set(usual)


def test_what_works_out_the_same_is_exchanged_for_another_of_its_kind():
    (mended,) = (item for item in chosen(LESSON) if item.kind is ItemKind.MEND)
    same = own("How much?", str(mended.working.claims[0].asked))
    (other,) = (item for item in chosen(having(LESSON, same)) if item.kind is ItemKind.MEND)
    assert other.asks != mended.asks


def test_her_products_and_what_she_keeps_never_give_way():
    products = [make_shade(written.product).asks for written in LESSON.lesson.practice]
    kept = [item.asks for item in chosen(LESSON) if item.asks not in products]
    rules = PracticeRules(keep=tuple(Kept(Level.CORE, asks) for asks in kept))
    keeping = replace(LESSON, lesson=replace(LESSON.lesson, rules=rules))
    page = chosen(having(keeping, BED, SOIL))
    assert [item.asks for item in page] == [*products, *kept, BED.asks, SOIL.asks]


@pytest.mark.parametrize(("level", "count"), [(Level.GUIDED, 2), (Level.CORE, 4), (Level.STRETCH, 4)])
def test_only_chosen_items_have_places_to_give(level, count):
    assert places(LESSON.lesson, level) == count
    many = [own(f"Tray {number}?", f"{number} × 1/2") for number in range(2, 3 + count)]
    products = len(LESSON.lesson.practice)
    assert len(chosen(having(LESSON, *many), level)) == products + count + 1


def test_other_words_another_unit_or_other_levels_give_all_pages_other_codes():
    def code(*items, levels=tuple(Level)):
        lesson = having(LESSON, *items, levels=levels).lesson
        codes = {version_code(lesson, level)[:-1] for level in Level}
        assert len(codes) == 1
        return codes.pop()

    other_unit = own(str(BED.text), str(BED.sum), "beds")
    told = [code(), code(BED), code(OAR), code(BED, OAR), code(other_unit), code(BED, levels=(Level.CORE,))]
    assert len(set(told)) == len(told)
