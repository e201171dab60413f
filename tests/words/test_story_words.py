"""Word problems in words: every language words every story, so that its numbers lead to the answer."""

import re
from dataclasses import replace
from fractions import Fraction
from types import SimpleNamespace

import pytest
from told_stories import every_telling

from foldmath.statements.items.story import StoryItem, all_stories
from foldmath.statements.story_numbers import Asks
from foldmath.words.authored import table
from foldmath.words.languages import languages
from foldmath.words.stories import StoryWords, story_words

STORIES = {story.name: story for story in all_stories()}
MOST_WORDS = 12
"""A sentence that pupils read has no more (common practice, no source)."""

UNITS = {
    "en-US": {"m", "m²", "L", "kg", "km", "cup", "cups", "minute", "minutes"},
    "en-GB": {"m", "m²", "L", "kg", "km", "minute", "minutes"},
    "es": {"m", "m²", "L", "kg", "km", "de taza", "taza", "tazas", "minuto", "minutos"},
}
COUNTED = {
    "en-US": {"boat": "boats", "tile": "tiles", "seat": "seats", "bike": "bikes", "card": "cards"},
    "es": {
        "barco": "barcos",
        "azulejo": "azulejos",
        "asiento": "asientos",
        "bicicleta": "bicicletas",
        "tarjeta": "tarjetas",
    },
}
COUNTED["en-GB"] = COUNTED["en-US"]
WHOLE_AND_FRACTION = {
    "en-US": (r"\bwhole\b|\ban hour\b", r"\bfraction\b"),
    "en-GB": (r"\bwhole\b|\ban hour\b", r"\bfraction\b"),
    "es": (r"\btod[oa]\b|\bde hora\b", r"\bfracción\b"),
}
VOWELS = "aeiou"
SOUNDS_OF_VOWELS = {"hour"}
"""Begins with a consonant that is not heard."""

in_each_language = pytest.mark.parametrize("language", languages())
each_story = pytest.mark.parametrize("story", STORIES.values(), ids=STORIES)


def number(text: str) -> Fraction:
    return sum(map(Fraction, text.split()), Fraction(0))


def numbers_in(text: str) -> list[Fraction]:
    return [number(found) for found in re.findall(r"\d+ \d+/\d+|\d+/\d+|\d+", text)]


def told(story, language) -> list[tuple[StoryItem, SimpleNamespace]]:
    """Give every telling with its words as they are read."""
    return [(item, read(story_words(item, language))) for item in every_telling(story)]


def read(words: StoryWords) -> SimpleNamespace:
    return SimpleNamespace(
        sentences=tuple(map(str, words.sentences)),
        unit=str(words.unit),
        answer=str(words.answer),
        also=str(words.also or ""),
    )


@in_each_language
def test_every_language_words_every_story_and_no_other(language):
    assert table(language, "stories.toml").keys() == STORIES.keys()


RIGHT = {
    Asks.PORTIONS: lambda n: n[0] * n[1],
    Asks.PART: lambda n: n[0] * n[1],
    Asks.AREA: lambda n: n[0] * n[1],
    Asks.QUANTITY: lambda n: n[0] * n[1],
    Asks.FLEET: lambda n: n[0] * n[1] * n[2],
    Asks.MINUTES: lambda n: n[0] * n[1] * 60,
    Asks.LEFT: lambda n: n[0] * (1 - n[1]),
    Asks.MORE: lambda n: n[2] - n[0] * n[1],
}
"""The answers, from the numbers in the order in which a story tells them."""


@in_each_language
@each_story
def test_the_answer_follows_from_the_numbers_that_are_told(story, language):
    for item, words in told(story, language):
        seen = [value for sentence in words.sentences for value in numbers_in(sentence)]
        assert number(str(item.answer)) == RIGHT[story.asks](seen)
        assert numbers_in(words.answer) == [number(str(item.answer))]
        assert {number(str(shown)) for shown in item.shown} == set(seen)


@in_each_language
@each_story
def test_sentences_are_short_and_end_as_they_should(story, language):
    for _, words in told(story, language):
        *before, question = words.sentences
        assert question.endswith("?")
        assert all(sentence.endswith(".") for sentence in [*before, words.answer])
        for sentence in (*words.sentences, words.answer):
            assert len(sentence.split()) <= MOST_WORDS, sentence
            assert sentence[0].isupper() or sentence[0] in "¿" or sentence[0].isdecimal()
            assert not re.search(r"[{}|]|\s\s", sentence)


@each_story
def test_a_question_in_spanish_opens_and_closes_with_its_sign(story):
    for _, words in told(story, "es"):
        assert "".join(re.findall("[¿?¡!]", " ".join(words.sentences))) == "¿?"


@pytest.mark.parametrize("language", ["en-US", "en-GB"])
@each_story
def test_articles_fit_the_words_that_they_stand_before(story, language):
    for _, words in told(story, language):
        text = " ".join((*words.sentences, words.answer, words.unit)).lower()
        for article, word in re.findall(r"\b(an?) (\S+)", text):
            vowel = word[0] in VOWELS or word.rstrip("?.,") in SOUNDS_OF_VOWELS
            assert not word[0].isdecimal()
            assert (article == "an") == vowel, (article, word)


@in_each_language
@each_story
def test_a_question_asks_for_a_part_of_the_whole_or_for_a_unit_and_never_for_both(story, language):
    whole, fraction = WHOLE_AND_FRACTION[language]
    for _, words in told(story, language):
        of_the_whole = words.unit.startswith(("of ", "de ", "del ")) and words.unit not in UNITS[language]
        assert bool(re.search(whole, words.sentences[-1])) == of_the_whole
        assert bool(re.search(fraction, words.sentences[-1])) == of_the_whole
        counted = COUNTED[language]
        assert of_the_whole or words.unit in UNITS[language] | counted.keys() | set(counted.values())


@in_each_language
@each_story
def test_things_are_singular_where_there_is_at_most_one_and_plural_elsewhere(story, language):
    forms = COUNTED[language] | {"cup": "cups", "minute": "minutes", "minuto": "minutos", "taza": "tazas"}
    for item, words in told(story, language):
        text = " ".join((*words.sentences, words.answer))
        for found, word in re.findall(r"(\d+ \d+/\d+|\d+/\d+|\d+) (?:(?!de )\w+ )?(\w+)", text):
            if word in forms or word in forms.values():
                assert (word in forms) == (number(found) <= 1), (found, word)
        if words.unit in forms or words.unit in forms.values():
            assert (words.unit in forms) == (number(str(item.answer)) <= 1)


def test_units_in_words_are_spelt_as_the_language_spells_them():
    said = {
        language: " ".join(
            " ".join(words.sentences) for story in STORIES.values() for _, words in told(story, language)[:1]
        )
        for language in ("en-US", "en-GB")
    }
    for british, american in [("metres", "meters"), ("litres", "liters"), ("kilometres", "kilometers")]:
        assert british in said["en-GB"]
        assert american not in said["en-GB"]
        assert american in said["en-US"]
        assert british not in said["en-US"]
    assert "cup" not in said["en-GB"]


@pytest.mark.parametrize(
    ("language", "answer"),
    [("en-US", "The crew paints 18 boats."), ("es", "Se pintan 18 barcos.")],
)
def test_a_known_telling(language, answer):
    items = every_telling(STORIES["boatyard-paint"])
    (item,) = [
        item
        for item in items
        if {"36", "2/3", "3/4"} == set(map(str, item.shown)) and item.product.text == "3/4 × 2/3"
    ]
    assert str(story_words(item, language).answer) == answer
    assert str(item.answer) == "18"
    assert str(item.working) == "3/4 × 2/3 × 36 = 3/4 × 24 = 18"
    assert [str(wrong.answer) for wrong in item.wrong] == ["27", "24", "6"]


def test_minutes_may_be_told_as_a_part_of_an_hour():
    for name in ("garden-weeds", "kitchen-lid"):
        assert STORIES[name].asks is Asks.MINUTES
        for item, words in told(STORIES[name], "en-US"):
            assert words.also.endswith(" of an hour")
            assert number(words.also.split()[0]) * 60 == number(str(item.answer))


@in_each_language
def test_a_name_takes_the_place_of_anybody_and_the_numbers_stay(language):
    named = []
    for story in STORIES.values():
        item = every_telling(story)[0]
        bare, words = (read(story_words(replace(item, name=name), language)) for name in ("", "Olu"))
        for one, other in zip((*bare.sentences, bare.answer), (*words.sentences, words.answer), strict=True):
            assert numbers_in(one) == numbers_in(other)
            assert len(other.split()) <= MOST_WORDS
        assert "Olu" not in " ".join((*bare.sentences, bare.answer))
        named += [story] if "Olu" in " ".join(words.sentences) else []
    assert len(named) > len(STORIES) / 2


@pytest.mark.parametrize(
    ("language", "first"),
    [("en-US", "Olu waters 3 young plants."), ("es", "Olu riega 3 plantas pequeñas.")],
)
def test_a_known_telling_with_a_name(language, first):
    item = replace(every_telling(STORIES["garden-plants"])[0], name="Olu")
    assert read(story_words(item, language)).sentences[0] == first
