"""A lesson that is taken in another language has its author's translations as its own words."""

import pytest

from foldmath.lesson.files.built_in import built_in_lessons
from foldmath.lesson.proving import prove
from foldmath.lesson.reading import lesson_in
from foldmath.lesson.retold import retold
from foldmath.making.languages import said_in
from foldmath.words.steps import step_sentence

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
    assert [step.text for step in now.lesson.steps] == [
        step_sentence(step.step, "es") for step in first.lesson.steps
    ]


def test_comments_between_steps_stay_and_what_no_sentence_says_alone_stays_too():
    text = TEXTS["seed-trays"].replace(
        '"fold top edge to bottom edge",', '"fold in half",  # the longer side'
    )
    lines = retold(text, "es", "en-US").splitlines()
    assert '  "fold in half",  # the longer side' in lines
    assert '  "dobla el borde izquierdo hasta el borde derecho",' in lines


def test_a_lesson_keeps_its_words_in_a_language_that_it_has_none_in():
    assert retold(TEXTS["seed-trays"], "en-GB", "en-US") == TEXTS["seed-trays"]
