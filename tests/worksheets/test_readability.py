"""Every page can be read: short sentences, of common words and the lesson's own."""

import re
import tomllib
from importlib.resources import files
from pathlib import Path

import pytest
from conftest import printed_here
from readability import (
    MOST_WORDS,
    common_words,
    long_sentences,
    sentences_of,
    teacher_words,
    texts_of,
    uncommon_words,
    words_in,
)
from told_stories import every_telling

from foldmath.lesson.lesson import Lesson
from foldmath.making import Order, make, parts
from foldmath.pages import printing
from foldmath.pages.markup.reading import blocks_of
from foldmath.statements.items.story import all_stories
from foldmath.statements.rules import RULES
from foldmath.words.rules import what_it_tells, what_to_try
from foldmath.words.stories import story_words

LESSONS = sorted((Path(__file__).parents[2] / "lessons").glob("*.toml"))
FOR_TEACHERS = ("note", "plan", "small", "lines")
"""How the names of styles begin that are only for what teachers read: on lines, only the key has words."""

LISTS = ("plan", "bank")
"""How the names of styles begin whose words are lists more than sentences."""

READ_ELSEWHERE = ("templates.pdf", "booklet.pdf", "booklet-key.pdf")
"""Files whose words do not come through paragraphs; the tests of guides and booklets read them."""

QUOTED = ("plan-notice",)
"""Styles of words that are not ours to shorten: a licence asks for them."""

SOURCES = tuple(
    source["short"]
    for source in tomllib.loads(
        files("foldmath.statements.rules").joinpath("published_answers.toml").read_text(encoding="utf-8")
    )["sources"].values()
)
"""Names of people and journals, which are written as they are."""


def test_a_sentence_ends_at_its_stop_and_a_decimal_point_is_none():
    assert sentences_of("Fold. Open and count! Is it 2.5? Yes") == (
        "Fold.",
        "Open and count!",
        "Is it 2.5?",
        "Yes",
    )


def test_signs_are_no_words_and_a_fraction_is_one():
    assert words_in("A pupil writes 4 × 1/2 = 8.") == 6
    assert words_in("□ × □ = □ panels") == 1


def test_a_sentence_of_thirteen_words_is_too_long_and_one_of_twelve_is_not():
    twelve = " ".join(["fold"] * 12) + "."
    assert long_sentences(f"Open. {twelve}") == ()
    assert long_sentences(f"Open. fold {twelve}") == (f"fold {twelve}",)


def test_uncommon_words_are_named_once_in_small_letters():
    allowed = {"fold", "the", "edge", "class"}
    assert uncommon_words("Fold the Parchment, the 3 parchment sheets’ edge", allowed) == (
        "parchment",
        "sheets",
    )


def test_codes_and_possessives_are_no_words_of_their_own():
    assert uncommon_words("The class’s edge: 5.NF.B.4, 7RDFN, LDDTV. m²", {"the", "edge", "class"}) == ("m²",)


def test_a_paragraph_is_read_whole_with_its_fractions_and_answers():
    html = (
        "<html><body><section><p class='item'>Find <math><mfrac><mn>2</mn><mn>3</mn></mfrac></math> of it."
        "<br/>Then <b>stop</b>: <output>8</output></p><table><thead><tr><td><p>Head</p></td></tr></thead>"
        "<tr><td>Cell</td></tr></table></section></body></html>"
    )
    assert [words for _, words in texts_of(blocks_of(html))] == [
        "Find 2/3 of it. Then stop: 8",
        "Head",
        "Cell",
    ]


@pytest.mark.parametrize("words", [common_words, teacher_words])
def test_word_lists_hold_small_letters_only(words):
    assert all(word == word.lower() for word in words())
    assert len(words()) > 500


@pytest.fixture(scope="module", params=LESSONS, ids=lambda path: path.stem)
def read(request, tmp_path_factory, picture_process):
    """Give a lesson, and the words of every paragraph of every page made of it, each with its style."""
    documents, doing = [], []

    def reading(html):
        documents.append(html)
        return blocks_of(html)

    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(printing, "blocks_of", reading)
        patch.setattr(parts, "begin", printed_here)
        out = tmp_path_factory.mktemp("readable")
        made = make(request.param, Order(out=out, paper="letter"), picture_process, doing.append)
    pdfs = [file for file in made.files if file.suffix == ".pdf" and file.name not in READ_ELSEWHERE]
    assert len(documents) >= len(pdfs) > 0
    texts = {
        (style, without_sources(text)) for html in documents for style, text in texts_of(blocks_of(html))
    }
    return made.proved.lesson, sorted((style, text) for style, text in texts if style not in QUOTED)


def without_sources(text: str) -> str:
    for source in SOURCES:
        text = text.replace(source, "")
    return text


def lessons_own_words(lesson: Lesson) -> set[str]:
    told = " ".join([lesson.title, lesson.paper, *lesson.vocabulary, *lesson.notes])
    return set(re.findall(r"[^\W\d_]+", told.lower()))


TALLY = re.compile(r"\d+ panels? of [\d/]+(, \d+ of [\d/]+)*")
"""Panels counted by size, as on a slide: a list of figures and no sentence."""


@pytest.mark.sweep("seed-trays")
def test_no_sentence_on_any_page_has_more_than_twelve_words(read):
    lesson, texts = read
    said = [text for style, text in texts if not style.startswith(LISTS) and text not in lesson.notes]
    said = [text for text in said if not TALLY.fullmatch(text)]
    assert [sentence for text in said for sentence in long_sentences(text, MOST_WORDS)] == []


@pytest.mark.sweep("seed-trays")
def test_every_word_that_a_pupil_reads_is_common_or_the_lessons_own(read):
    lesson, texts = read
    allowed = common_words() | lessons_own_words(lesson) | {"key"}
    for_pupils = [text for style, text in texts if not style.startswith(FOR_TEACHERS)]
    assert len(for_pupils) >= 90
    assert {text: found for text in for_pupils if (found := uncommon_words(text, allowed))} == {}


@pytest.mark.sweep("seed-trays")
def test_every_word_that_a_teacher_reads_is_common_of_the_trade_or_the_lessons_own(read):
    lesson, texts = read
    allowed = teacher_words() | lessons_own_words(lesson)
    for_teachers = [text for style, text in texts if style.startswith(FOR_TEACHERS)]
    assert {text: found for text in for_teachers if (found := uncommon_words(text, allowed))} == {}


@pytest.mark.parametrize("language", ["en-US", "en-GB"])
def test_every_word_of_every_story_is_common(language):
    texts = {
        str(text)
        for story in all_stories()
        for words in (story_words(item, language) for item in every_telling(story))
        for text in (*words.sentences, words.answer, words.unit)
    }
    assert {text: found for text in texts if (found := uncommon_words(text, common_words()))} == {}


def test_what_wrong_answers_tell_is_short_and_of_common_words():
    told = [text for rule in RULES for text in (what_it_tells(rule), what_to_try(rule))]
    assert {text: found for text in told if (found := uncommon_words(text, teacher_words()))} == {}
    assert [sentence for text in told for sentence in long_sentences(text)] == []
