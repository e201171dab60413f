"""A pupil's page in parts says what it says as one document, and what comes again is rendered once."""

from itertools import groupby

import pytest
from conftest import LESSONS

from foldmath.making import proved_lesson
from foldmath.pages.markup.blocks import Columns
from foldmath.pages.markup.reading import blocks_of
from foldmath.statements.items import Level
from foldmath.worksheets.folding_part import folding_part
from foldmath.worksheets.picture_book import SIZES, folding_pictures
from foldmath.worksheets.pupil_pages import PupilPages
from foldmath.worksheets.rendering import html
from foldmath.worksheets.worksheet import with_items

PROVED = {path.stem: proved_lesson(path)[0] for path in sorted(LESSONS.glob("*.toml"))}
lessons = pytest.mark.parametrize("name", PROVED)


def sheets(name, *pupils):
    """Give the worksheets of pupils at every level, with numbers of their own."""
    made = PROVED[name]
    folding = folding_part(made)
    return [
        with_items(folding, made, level, SIZES["regular"].models, seed=seed, pupil=pupil)
        for seed, pupil in enumerate(pupils)
        for level in Level
    ]


def pages(name, look):
    return PupilPages(look, tuple(folding_pictures(PROVED[name], folding_part(PROVED[name]), look)))


def blocks_in(parts):
    """Read the parts of a page; those in columns stand together."""
    for in_columns, some in groupby(parts, key=lambda part: part.in_columns):
        blocks = blocks_of(f"<html><body>{''.join(part.html for part in some)}</body></html>")
        yield from (Columns(blocks),) if in_columns else blocks


@lessons
@pytest.mark.parametrize("look", SIZES)
def test_the_parts_of_a_page_are_its_blocks(name, look):
    in_parts = pages(name, look)
    for sheet in sheets(name, "Ada", "Bo"):
        whole = blocks_of(html(sheet, look, key=False))
        assert tuple(blocks_in(in_parts.parts(sheet))) == whole


def test_pupils_of_one_level_share_all_but_their_names_and_numbers():
    in_parts = pages("seed-trays", "regular")
    first, *_, second = (in_parts.parts(sheet) for sheet in sheets("seed-trays", "Ada", "Bo")[:4])
    assert first[0] != second[0]
    assert first[1].html is second[1].html


def test_the_guided_have_a_folding_part_of_their_own():
    in_parts = pages("seed-trays", "regular")
    guided, core, _ = (in_parts.parts(sheet)[1] for sheet in sheets("seed-trays", "Ada"))
    assert guided != core
