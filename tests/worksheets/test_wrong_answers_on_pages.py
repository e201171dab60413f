"""What a key warns of, a pupil can write where the page asks for it."""

import re
from dataclasses import replace

import pytest
from conftest import LESSONS

from foldmath.making import proved_lesson
from foldmath.pages.markup.blocks import Box, Columns, Paragraph, Row, Stack, Together
from foldmath.pages.markup.reading import blocks_of
from foldmath.practice.candidates import candidates
from foldmath.practice.scope import scope_of
from foldmath.statements.answers import Folds, Sorting
from foldmath.statements.expressions import Claim, Comparison
from foldmath.statements.items import ItemKind, Level, SameSizeItem
from foldmath.statements.items.mend import make_mend_count, make_mend_doubling
from foldmath.statements.ratios import Ratio
from foldmath.worksheets.folding_part import folding_part
from foldmath.worksheets.item_pictures import item_picture
from foldmath.worksheets.picture_book import SIZES
from foldmath.worksheets.rendering import items_html
from foldmath.worksheets.worksheet import PlacedItem, with_items

A_NUMBER = r"\d+(?:/\d+)?"


def places(blocks):
    """Count the places where a number belongs: a box by itself, or boxes above and below one bar."""
    found = 0
    for block in blocks:
        match block:
            case Paragraph(runs=runs):
                found += sum(isinstance(run, Box) or has_box(run) for run in runs)
            case Row(cells=cells):
                found += sum(places(cell.blocks) for cell in cells)
            case Together(blocks=within) | Columns(blocks=within):
                found += places(within)
    return found


def has_box(run):
    return isinstance(run, Stack) and any(isinstance(part, Box) for part in (*run.above, *run.below))


def can_be_written(wrong, item, blocks, html):
    match wrong:
        case Claim():
            return places(blocks) == len(re.findall(A_NUMBER, str(wrong)))
        case Ratio():
            below = item.same.denominator if isinstance(item, SameSizeItem) else wrong.denominator
            return places(blocks) > 0 and wrong.denominator == below
        case Comparison():
            return places(blocks) == 1
        case Sorting(abouts):
            return places(blocks) == 2 * len(abouts)
        case Folds():
            return 'data-lines="' in html
    return False


@pytest.mark.parametrize("level", Level, ids=lambda level: level.value)
@pytest.mark.parametrize("name", ["plank-marks", "tile-race", "seed-trays"])
def test_every_wrong_answer_in_a_key_fits_what_the_page_prints_to_write_in(name, level):
    lesson = proved_lesson(LESSONS / f"{name}.toml")[0]
    scope = scope_of(lesson, level)
    groups = [group for kind in ItemKind if kind is not ItemKind.OWN for group in candidates(kind, scope)]
    items = [make() for group in groups for make in (group[0], group[len(group) // 2], group[-1])]
    sheet = with_items(folding_part(lesson), lesson, level, SIZES["regular"].models)
    placed = tuple(PlacedItem(item, item_picture(item, level, SIZES["regular"].models)) for item in items)
    shown = items_html(replace(sheet, items=placed))
    for item, html in zip(items, shown, strict=True):
        blocks = blocks_of(f"<html><body>{html}</body></html>")
        unfit = [one.answer for one in item.wrong if not can_be_written(one.answer, item, blocks, html)]
        assert not unfit, f"{item.asks}: {[*map(str, unfit)]}"


@pytest.mark.parametrize(("folds", "wrong"), [(3, ["4", "16"]), (4, ["32"]), (5, ["16", "64"])])
def test_doubling_is_left_out_once_or_begun_with_two_and_never_the_answer_that_is_to_be_corrected(
    folds, wrong
):
    item = make_mend_doubling(folds)
    assert [str(one.answer) for one in item.wrong] == wrong
    assert str(item.given) not in wrong


def test_a_count_that_is_corrected_in_its_answer_alone_fills_all_the_boxes():
    assert [str(one.answer) for one in make_mend_count(4, 2).wrong] == ["4 × 1/2 = 2"]
