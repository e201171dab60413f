"""A third language is a folder of words and a grammar: French, for one worksheet and its key."""

import re
import shutil
from pathlib import Path

import pikepdf
import pytest
from conftest import in_silence, printed_here
from page_reading import text_of

from foldmath.lesson.grammar.step_parser import step_in
from foldmath.lesson.grammar.suggestions import PATTERNS
from foldmath.making import Made, Order, make, parts, proved_lesson, said_in
from foldmath.making.order import Part
from foldmath.making.papers import papers
from foldmath.words import languages
from foldmath.words.saying import own_name
from foldmath.words.steps import step_sentence

FRENCH = Path(__file__).parent / "french"
"""The folder that was added, and a lesson that is written in it."""

LEVELS = ("-guided", "", "-stretch")

OTHER_WORDS = {"date", "fait", "pages", "six", "table", "plus", "page", "mm", "cm"}
"""French that is spelt as English is."""


@pytest.fixture(scope="module", autouse=True)
def folder_of_languages(tmp_path_factory):
    """Lay French beside the languages that are there."""
    locale = tmp_path_factory.mktemp("locale")
    for folder in languages.LOCALE.iterdir():
        (locale / folder.name).symlink_to(folder)
    shutil.copytree(FRENCH / "fr", locale / "fr")
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(languages, "LOCALE", locale)
        patch.setattr(parts, "begin", printed_here)
        yield


@pytest.fixture(scope="module")
def made(picture_process, tmp_path_factory) -> Made:
    parts = frozenset({Part.WORKSHEET, Part.KEY})
    order = Order(out=tmp_path_factory.mktemp("french"), parts=parts)
    return make(FRENCH / "semis.toml", order, picture_process, in_silence)


def words_of(text: str) -> set[str]:
    return {word.casefold() for word in re.findall(r"[^\W\d_]+(?:[’'][^\W\d_]+)*", text)}


def words_in(file: Path) -> set[str]:
    return words_of(file.read_text("utf-8"))


def test_the_language_is_found_by_its_folder_and_called_by_its_own_name():
    assert languages.named("fr-CA") == "fr"
    assert {language: own_name(language) for language in languages.languages()} == {
        "en-US": "English (US)",
        "en-GB": "English (UK)",
        "es": "Español",
        "fr": "Français",
    }


@pytest.mark.parametrize("pattern", PATTERNS)
def test_every_step_that_is_said_in_french_reads_back_as_itself(pattern):
    step = step_in(pattern)
    assert step_in(step_sentence(step, "fr"), "fr") == step


def test_the_worksheet_and_its_key_speak_french(made):
    texts = {path.name: " ".join(text_of(path)) for path in made.files}
    assert set(texts) == {f"{name}{level}.pdf" for name in ("worksheet", "answer-key") for level in LEVELS}
    sheet, key = texts["worksheet.pdf"], texts["answer-key.pdf"]
    for sentence in ("Plie le bord gauche sur le bord droit.", "je prédis", "Vrai ou faux ?", "page 1 sur"):
        assert sentence in sheet
    assert "2/3 de 4/5" in sheet
    for sentence in (
        "Corrigé",
        "Accepter toute réponse égale.",
        "Additionne les fractions au lieu de prendre",
    ):
        assert sentence in key
    assert "La caissette de semis : ce que disent les réponses" in key


def test_no_english_is_left_on_the_worksheet_and_its_key(made):
    english = words_in(languages.LOCALE / "en_US" / "common_words.txt")
    english |= words_in(languages.LOCALE / "en_US" / "teacher_words.txt")
    french = words_of(
        "".join(re.findall(r'msgstr.* "(.*)"', (FRENCH / "fr/LC_MESSAGES/foldmath.po").read_text("utf-8")))
    )
    french |= {
        word
        for name in ("rules.toml", "steps.toml", "fraction_names.toml")
        for word in words_in(FRENCH / "fr" / name)
    }
    found = {word for path in made.files for text in text_of(path) for word in words_of(text)}
    assert len(found) > 150
    assert sorted(found & (english - french - OTHER_WORDS)) == []


def test_every_file_says_that_it_is_french(made):
    for path in made.files:
        with pikepdf.open(path) as pdf:
            assert str(pdf.Root.Lang) == "fr"


def test_the_numbers_and_codes_are_those_of_every_language():
    proved = proved_lesson(FRENCH / "semis.toml")[0]
    french, english = (
        papers(said_in(proved, language), "A4", "regular").core for language in ("fr", "en-US")
    )
    assert french.code == english.code
    assert [placed.item for placed in french.items] == [placed.item for placed in english.items]
