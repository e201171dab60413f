"""The key of a class warns of a mistake an item, by the codes of its plan; once of what all are asked."""

import pytest
from conftest import LESSONS

from foldmath.making import proved_lesson
from foldmath.making.papers import Masters
from foldmath.practice.choosing import on_every_page
from foldmath.statements.items import Level, MendItem, OwnItem
from foldmath.statements.rules.folds import ALL_SHADED, COUNT_FOR_SIZE
from foldmath.statements.rules.operations import ADD_INSTEAD, KEEP_COMMON_DENOMINATOR
from foldmath.worksheets.class_key import ClassKey
from foldmath.worksheets.picture_book import SIZES
from foldmath.worksheets.worksheet import with_items

CODED = (ADD_INSTEAD, COUNT_FOR_SIZE)
SEEDS = range(4)


@pytest.fixture(scope="module", params=["seed-trays", "sail-cloth", "tile-race", "plank-marks"])
def lesson(request):
    proved, _ = proved_lesson(LESSONS / f"{request.param}.toml")
    return Masters(proved, "letter", "regular")


def key_of(masters, coded=CODED):
    proved = masters.proved.lesson
    own = tuple(written.item for written in proved.items)
    return ClassKey(coded, tuple(on_every_page(proved)), own, masters.ticket)


@pytest.fixture(scope="module")
def sheets(lesson):
    size = SIZES["regular"].models
    return [
        with_items(lesson.folding, lesson.proved, level, size, seed=seed) for level in Level for seed in SEEDS
    ]


def test_every_page_begins_with_the_products_that_are_warned_of_once(lesson, sheets):
    shared = on_every_page(lesson.proved.lesson)
    for sheet in sheets:
        assert [placed.item.product for placed in sheet.items[: len(shared)]] == shared
        numbers = [mistake.number for mistake in key_of(lesson).mistakes(sheet)]
        assert all(number > len(shared) for number in numbers)
        assert len(set(numbers)) == len(numbers)


def test_of_a_pupils_own_item_the_likeliest_wrong_answer_with_a_code_is_told(lesson, sheets):
    for sheet in sheets:
        told = {mistake.number: mistake for mistake in key_of(lesson).mistakes(sheet)}
        for number, placed in enumerate(sheet.items, start=1):
            coded = [wrong for wrong in placed.item.wrong if wrong.rule in CODED]
            if number in told and not isinstance(placed.item, MendItem):
                assert (told[number].answer, told[number].rule) == (coded[0].answer, coded[0].rule)
            elif number > len(on_every_page(lesson.proved.lesson)) and number not in told:
                assert not coded or isinstance(placed.item, OwnItem)


def test_of_a_mistake_to_correct_its_reason_is_told_whether_it_has_a_code_or_not(lesson, sheets):
    for sheet in sheets:
        reasons = {mistake.number: mistake.rule for mistake in key_of(lesson, ()).mistakes(sheet)}
        mended = {
            number: placed.item.rule
            for number, placed in enumerate(sheet.items, start=1)
            if isinstance(placed.item, MendItem)
        }
        assert reasons == mended


def test_of_what_all_are_asked_every_wrong_answer_with_a_code_is_told():
    masters = Masters(proved_lesson(LESSONS / "sail-cloth.toml")[0], "letter", "regular")
    key = key_of(masters, (KEEP_COMMON_DENOMINATOR, ADD_INSTEAD, ALL_SHADED))
    told = [[str(wrong.answer) for wrong in answers] for answers in key.of_shared]
    assert [answers[:2] for answers in told] == [["90/15", "19/15"], ["120/20", "23/20"]]
    assert all({wrong.rule for wrong in answers} == {*key.coded} for answers in key.of_shared)
    ((own, answers),) = key.of_own
    assert (str(own.answer), [str(wrong.answer) for wrong in answers]) == ("3/10", ["30/10", "11/10"])
    assert [str(wrong.answer) for wrong in key.of_ticket] == ["12/6", "7/6"]
