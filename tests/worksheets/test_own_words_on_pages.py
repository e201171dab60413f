"""A teacher's own words on worksheets and keys: fractions stacked, her language, a model where one helps."""

from dataclasses import replace

import pytest
from lessons_in_words import EIGHTHS, proved
from making.test_languages import found_in
from own_words import BED, OAR, SOIL, having, own

from foldmath.errors import LessonRefused
from foldmath.lesson.lesson import PracticeRules
from foldmath.lesson.proving import prove
from foldmath.lesson.reading import read_lesson
from foldmath.making.languages import said_in
from foldmath.making.papers import papers
from foldmath.making.parts import class_worksheet
from foldmath.pages.markup.blocks import Picture, Stack, Text
from foldmath.pages.markup.reading import blocks_of
from foldmath.statements.items import ItemKind, Level
from foldmath.worksheets.item_pictures import item_picture
from foldmath.worksheets.picture_book import SIZES

LESSON = having(proved(*EIGHTHS), BED, SOIL)


def blocks(lesson, name="worksheet.pdf"):
    return blocks_of(papers(lesson, "letter", "regular").documents[name].html)


def words_in(part, language):
    return "".join(text.text for text in found_in(part, Text) if text.language == language)


def test_another_languages_page_says_her_words_in_hers_and_marks_them_so():
    theirs, hers = (words_in(blocks(said_in(LESSON, "es")), language) for language in ("", "en-US"))
    for words in ("Beans grow in ", "of the bed", "How much soil do 5 trays take?"):
        assert words in hers
        assert words not in theirs
    assert words_in(blocks(LESSON), "en-US") == ""


def test_her_fractions_are_set_as_the_page_sets_its_own():
    stacks = [
        "/".join(box.text for box in (*one.above, *one.below))
        for one in found_in(blocks(LESSON), Stack)
        if isinstance(one.above[0], Text)
    ]
    assert {"3/4", "2/3", "1/2"} <= set(stacks)


@pytest.mark.parametrize(
    ("item", "drawn"),
    [
        (BED, "beside"),
        (own("How much?", "5/6 × 1/4"), "below"),
        # Eleven columns would be narrower than a pencil can shade.
        (own("How much?", "5/11 × 1/4"), None),
        (SOIL, None),
    ],
)
def test_a_model_stands_beside_the_answer_or_across_the_column_as_its_cells_need(item, drawn):
    sizes = SIZES["regular"].models
    picture = item_picture(item, Level.CORE, sizes)
    assert (picture and ("beside" if picture.beside else "below")) == drawn
    if picture:
        assert picture.blank.width_mm <= sizes.column_width + 1


def test_two_of_her_items_take_the_place_of_the_sentence_that_is_true_or_false_and_one_does_not():
    bare = proved(*EIGHTHS)
    judged = [class_worksheet(having(bare, *items), Level.CORE).judged for items in ((), (BED,), (BED, OAR))]
    assert [one is None for one in judged] == [False, False, True]


def test_the_key_shades_the_model():
    key = blocks(LESSON, "answer-key.pdf")
    answers = {picture.answer_name for picture in found_in(key, Picture)}
    assert "column-3.4.2.3-ticks-shaded" in answers


@pytest.mark.parametrize("name", ["Olu", "ليلى"])
def test_a_name_from_right_to_left_stands_apart_in_its_line(name):
    rules = PracticeRules(kinds=(ItemKind.STORY,), seed=1, count=12)
    lesson = replace(proved(*EIGHTHS).lesson, names=(name,), rules=rules)
    html = (
        papers(replace(proved(*EIGHTHS), lesson=lesson), "letter", "regular").documents["worksheet.pdf"].html
    )
    assert f"<bdi>{name}</bdi>" in html


@pytest.mark.parametrize(
    ("line", "place"),
    [
        ('names = ["Ines", "\ue000"]', "5:18"),
        ('items = [{ text = "1/2 of \ue000?", sum = "1/2 × 3/4" }]', "5:19"),
        ('items = [{ text = "1/2 of it?", sum = "1/2 × 3/4", unit = "\ue000" }]', "5:59"),
    ],
)
def test_signs_that_are_no_letters_are_refused_where_they_stand(line, place, tmp_path):
    path = tmp_path / "lesson.toml"
    lines = [
        'title = "Trays"',
        "grade = 5",
        'paper = "letter"',
        'steps = ["fold left edge to right edge"]',
        line,
    ]
    path.write_text("\n".join(lines), encoding="utf-8")
    with pytest.raises(LessonRefused, match=f":{place}: the pages cannot print these words"):
        papers(prove(read_lesson(path)), "letter", "regular")
