"""A lesson that is taken in another language has its author's translations as its own words."""

import pytest

from foldmath.lesson.files.built_in import built_in_lessons
from foldmath.lesson.proving import prove
from foldmath.lesson.reading import lesson_in
from foldmath.lesson.retold import retold
from foldmath.making.languages import said_in

TEXTS = {name: path.read_text("utf-8") for name, path in built_in_lessons().items()}


def told(lesson):
    """Give the words of a lesson that its author chose."""
    words = {*map(str, lesson.vocabulary), *map(str, lesson.trade_words)}
    return lesson.title, lesson.notes, words, [str(written.item.text) for written in lesson.items]


@pytest.mark.parametrize("name", TEXTS)
def test_a_retold_lesson_folds_alike_and_says_what_its_translation_says(name):
    text = retold(TEXTS[name], "es", "en-US")
    first, now = (prove(lesson_in(one, f"{name}.toml")) for one in (TEXTS[name], text))
    assert now.lesson.language == "es"
    assert now.states == first.states
    assert told(now.lesson) == told(said_in(first, "es").lesson)
    assert "translated" not in text


def test_a_lesson_keeps_its_words_in_a_language_that_it_has_none_in():
    assert retold(TEXTS["seed-trays"], "en-GB", "en-US") == TEXTS["seed-trays"]
