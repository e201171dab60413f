"""Pages in Spanish: short sentences of common words for pupils, and no English left."""

import re

import pytest
from conftest import LESSONS
from readability import MOST_WORDS, common_words, long_sentences, texts_of, uncommon_words
from told_stories import every_telling

from foldmath.making import proved_lesson, said_in
from foldmath.making.papers import papers
from foldmath.pages.markup.reading import blocks_of
from foldmath.statements.items.story import all_stories
from foldmath.words.languages import folder_of
from foldmath.words.stories import story_words

LANGUAGE = "es"
NOT_READ_OUT = ("note", "plan", "small", "lines", "bank")
"""How the names of styles begin that only teachers read, and of lists of words."""

TAUGHT = ("seed-trays", "tile-panels", "sail-cloth")


@pytest.fixture(scope="module", params=TAUGHT)
def read(request):
    """Give what pupils read on the worksheets, keys and ticket of a lesson, said in Spanish."""
    proved = said_in(proved_lesson(LESSONS / f"{request.param}.toml")[0], LANGUAGE)
    made = papers(proved, "letter", "regular")
    texts = {text for paper in made.documents.values() for text in texts_of(blocks_of(paper.html))}
    asked = (str(written.item.text) for written in proved.lesson.items)
    own = {word.lower().strip(".¿?") for text in (proved.lesson.title, *asked) for word in text.split()}
    return own, sorted(text for style, text in texts if not style.startswith(NOT_READ_OUT))


def test_no_sentence_that_a_pupil_reads_has_more_than_twelve_words(read):
    _, texts = read
    assert len(texts) > 60
    assert [sentence for text in texts for sentence in long_sentences(text, MOST_WORDS)] == []


def test_every_word_that_a_pupil_reads_is_common(read):
    own, texts = read
    allowed = common_words(LANGUAGE) | own
    assert {text: found for text in texts if (found := uncommon_words(text, allowed))} == {}


def test_every_word_of_every_story_is_common():
    texts = {
        str(text)
        for story in all_stories()
        for words in (story_words(item, LANGUAGE) for item in every_telling(story))
        for text in (*words.sentences, words.answer, words.unit)
    }
    assert {text: found for text in texts if (found := uncommon_words(text, common_words(LANGUAGE)))} == {}


def test_a_question_and_an_exclamation_open_as_they_close(read):
    _, texts = read
    for opens, closes in ("¿?", "¡!"):
        assert [text for text in texts if text.count(opens) != text.count(closes)] == []


def test_quotation_marks_are_those_of_school_print_in_mexico():
    """They are “…” there; «…» is Spain's (common practice, no source)."""
    written = [path for path in folder_of(LANGUAGE).rglob("*.*") if path.suffix in (".po", ".toml")]
    texts = {path.name: path.read_text(encoding="utf-8") for path in written}
    assert "“" in texts["foldmath.po"]
    assert [name for name, text in texts.items() if "«" in text or "»" in text] == []


def test_no_inch_is_an_english_word():
    """Nor where it is quoted as a lesson file may have it: "8.5 pulg"."""
    said = (folder_of(LANGUAGE) / "LC_MESSAGES" / "foldmath.po").read_text(encoding="utf-8")
    lines = [line for line in said.splitlines() if line.startswith("msgstr")]
    assert [line for line in lines if re.search(r"[\d})s;] in\b", line)] == []
