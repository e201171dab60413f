"""The key of a class warns of a mistake an item, by the codes of its plan; once of what all are asked."""

from dataclasses import replace

import pytest
from conftest import LESSONS

from foldmath.lesson.numbered_pupils import called_in, pupils_without_roster
from foldmath.making import proved_lesson
from foldmath.making.languages import said_in
from foldmath.making.papers import Masters
from foldmath.pages.markup.reading import blocks_of
from foldmath.pages.page_shapes import upright
from foldmath.pages.pdf.fonts import register_fonts
from foldmath.pages.pdf.paginating import PAGE_WORDS, Copy, PageMaster, filled_pages
from foldmath.pages.pdf.rows import CellsInRow, Repeated
from foldmath.pages.pdf.setting import Compositor
from foldmath.pages.pdf.styles import style_sheet
from foldmath.pages.templating import render
from foldmath.practice.choosing import on_every_page
from foldmath.practice.own_numbers import pupil_seed
from foldmath.statements.items import Level, MendItem, OwnItem
from foldmath.statements.rules.folds import ALL_SHADED, COUNT_FOR_SIZE
from foldmath.statements.rules.operations import ADD_INSTEAD, KEEP_COMMON_DENOMINATOR
from foldmath.teachers_plan.after import grid_rules
from foldmath.teachers_plan.plan_steps import step_rows
from foldmath.worksheets.class_key import ClassKey, PupilsListed
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


def sheets_of_class(masters, size):
    """Give the worksheets of a class of so many pupils without a list."""
    proved = masters.proved
    models = SIZES["regular"].models
    for pupil in called_in(pupils_without_roster(size), proved.lesson.language):
        seed = pupil_seed(proved.lesson, pupil)
        yield with_items(masters.folding, proved, pupil.level, models, seed=seed, pupil=pupil.label)


def pages_of_key(masters, key, sheets):
    """Fill the pages of a class's key."""
    register_fonts()
    lesson = masters.proved.lesson
    setting = Compositor({}.__getitem__, style_sheet("regular"), lesson.language, answers=True)
    listed = PupilsListed(tuple(sheet.pupil for sheet in sheets), 0, len(sheets))
    told = {"ticket": masters.ticket, "folding": masters.folding, "key": key, "listed": listed}
    begun = setting.flowables(
        blocks_of(render("worksheets/class_key.html", lesson.language, lesson=lesson, **told))
    )
    heads = tuple(Repeated(row) for row in begun if isinstance(row, CellsInRow))
    rows_html = render("worksheets/class_key_rows.html", lesson.language, sheets=sheets, key=key)
    _, *rows = setting.anew(blocks_of(rows_html))
    for row in rows:
        row.heads = heads
    return filled_pages(Copy([*begun, *rows], PageMaster(upright(masters.page_paper), "", "", PAGE_WORDS)))


@pytest.mark.parametrize("language", ["en-US", "es"])
@pytest.mark.parametrize("paper", ["letter", "A4"])
@pytest.mark.parametrize("name", sorted(file.stem for file in LESSONS.glob("*.toml")))
def test_the_key_of_28_is_four_pages_at_most_and_what_it_warns_of_takes_one_of_them(name, paper, language):
    """Two leaves of paper, or a teacher who marks shuffles sheets [common practice, no source]."""
    masters = Masters(said_in(proved_lesson(LESSONS / f"{name}.toml")[0], language), paper, "regular")
    rules = grid_rules(masters.core, step_rows(masters.proved, masters.core))
    sheets = [*sheets_of_class(masters, 28)]
    warning = pages_of_key(masters, key_of(masters, rules), sheets)
    plain = pages_of_key(masters, replace(key_of(masters, ()), shared=(), own=()), sheets)
    assert len(warning) <= min(4, len(plain) + 1)
