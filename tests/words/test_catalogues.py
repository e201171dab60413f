"""Phrases are said in the words of a language, and old catalogues are compiled anew."""

import os
from pathlib import Path

import pytest

from foldmath.phrases import counted, phrase
from foldmath.words import catalogues, languages, saying
from foldmath.words.languages import read_beside, spoken, terminal_language
from foldmath.words.saying import say

SPANISH = """
msgid ""
msgstr ""
"Language: es\\n"
"Content-Type: text/plain; charset=utf-8\\n"
"Plural-Forms: nplurals=2; plural=(n != 1);\\n"

msgid "{count} panel of {side}"
msgid_plural "{count} panels of {side}"
msgstr[0] "{count} parte de {side}"
msgstr[1] "{count} partes de {side}"

msgid "the width"
msgstr "lo ancho"
"""


@pytest.fixture
def locale(tmp_path, monkeypatch) -> Path:
    """A folder with one Spanish catalogue."""
    folder = tmp_path / "es" / "LC_MESSAGES"
    folder.mkdir(parents=True)
    (folder / "foldmath.po").write_text(SPANISH, encoding="utf-8")
    monkeypatch.setattr(languages, "LOCALE", tmp_path)
    catalogues.catalogue.cache_clear()
    saying._changed.cache_clear()
    yield folder
    catalogues.catalogue.cache_clear()
    saying._changed.cache_clear()


def panels(count):
    return counted("{count} panel of {side}", "{count} panels of {side}", count, side=phrase("the width"))


@pytest.mark.parametrize(("count", "said"), [(1, "1 parte de lo ancho"), (4, "4 partes de lo ancho")])
def test_a_phrase_and_the_phrases_in_it_are_said_in_one_language(locale, count, said):
    assert say(panels(count), "es") == said


@pytest.mark.parametrize(("count", "said"), [(1, "1 panel of the width"), (4, "4 panels of the width")])
def test_a_text_without_a_translation_is_said_as_it_is_written(locale, count, said):
    assert say(panels(count), "en-US") == said == str(panels(count))


def test_words_that_are_no_phrase_stay_as_they_are(locale):
    assert say("lessons/seed-trays.toml", "es") == "lessons/seed-trays.toml"


def test_a_catalogue_is_compiled_beside_its_source(locale):
    say(panels(1), "es")
    assert (locale / "foldmath.mo").is_file()


def test_a_compiled_catalogue_older_than_its_source_is_compiled_anew(locale):
    say(panels(1), "es")
    source, compiled = locale / "foldmath.po", locale / "foldmath.mo"
    source.write_text(SPANISH.replace("lo ancho", "el ancho"), encoding="utf-8")
    os.utime(compiled, (1, 1))
    catalogues.catalogue.cache_clear()
    assert say(phrase("the width"), "es") == "el ancho"
    assert compiled.stat().st_mtime >= source.stat().st_mtime


def test_a_compiled_catalogue_as_young_as_its_source_is_read_as_it_is(locale):
    say(panels(1), "es")
    source, compiled = locale / "foldmath.po", locale / "foldmath.mo"
    source.write_text(SPANISH.replace("lo ancho", "el ancho"), encoding="utf-8")
    os.utime(source, (compiled.stat().st_mtime,) * 2)
    catalogues.catalogue.cache_clear()
    assert say(phrase("the width"), "es") == "lo ancho"


@pytest.mark.parametrize(
    ("wanted", "language"),
    [
        ("es_MX.UTF-8", "es"),
        ("en_GB", "en-GB"),
        ("en_AU.UTF-8", "en-US"),
        ("en-us", "en-US"),
        ("C", None),
        ("fr_FR.UTF-8", None),
    ],
)
def test_a_language_is_found_by_its_name_or_by_its_first_part(wanted, language):
    assert spoken(wanted) == language


@pytest.mark.parametrize(
    ("wanted", "own", "language"),
    [
        ("", "en-GB", "en-GB"),
        ("es", "en-GB", "es"),
        ("en", "en-GB", "en-GB"),
        ("en", "es", "en-US"),
        ("en-US", "en-GB", "en-US"),
    ],
)
def test_a_tongue_alone_is_read_as_it_is_spoken_where_the_lesson_is(wanted, own, language):
    assert read_beside(wanted, own) == language


def test_the_terminal_speaks_the_first_language_that_is_set():
    assert terminal_language({"LANG": "es_US.UTF-8", "LC_ALL": "en_GB.UTF-8"}) == "en-GB"
    assert terminal_language({"LANG": "es_US.UTF-8", "FOLDMATH_LANGUAGE": "en-GB"}) == "en-GB"
    assert terminal_language({"LANG": "es_US.UTF-8", "LC_ALL": ""}) == "es"
    assert terminal_language({"LANG": "tlh"}) == terminal_language({}) == "en-US"


def test_every_language_but_american_english_has_a_catalogue():
    have = {path.parents[1].name.replace("_", "-") for path in languages.LOCALE.glob("*/*/*.po")}
    assert have == set(languages.languages()) - {"en-US"}
