"""What the desk shows and the terminal says goes through the catalogues: all of it in a made-up language."""

import json
import re
from contextlib import suppress
from pathlib import Path

import pytest
from pseudo_language import (
    PSEUDO,
    lesson_in_pseudo,
    plain_english,
    strings_in,
    texts_of_page,
    write_language,
)

from foldmath.cli import main
from foldmath.cli.arguments import COMMANDS
from foldmath.cli.terminal import argparse_words
from foldmath.desk.app import desk_app
from foldmath.desk.shelf.shelf import Shelf
from foldmath.desk.visits.desk import Desk
from foldmath.making.order import Part
from foldmath.words import languages
from foldmath.words.catalogues import catalogue

SITE = "http://127.0.0.1:5000"
ROSTER = "name,level\nAda,guided\nBo,core\n"


@pytest.fixture(scope="module", autouse=True)
def spoken(tmp_path_factory):
    """Add the made-up language to the others, and have the terminal speak it."""
    locale = tmp_path_factory.mktemp("locale")
    write_language(locale)
    # argparse reads what is compiled, so it is compiled in this folder too.
    catalogue.cache_clear()
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(languages, "LOCALE", locale)
        patch.setenv("FOLDMATH_LANGUAGE", PSEUDO)
        patch.setattr(argparse_words, "LOCALE", locale)
        patch.setenv("COLUMNS", "200")
        patch.setenv("LANGUAGE", "")
        yield


@pytest.fixture(scope="module")
def folder(tmp_path_factory) -> Path:
    folder = tmp_path_factory.mktemp("desk").resolve()
    lesson_in_pseudo("seed-trays", folder)
    (folder / "classes").mkdir()
    (folder / "classes" / "4b.csv").write_text(ROSTER, encoding="utf-8")
    return folder


@pytest.fixture(scope="module")
def visitor(folder, picture_process):
    desk = Desk(shelf=Shelf(folder), port=5000, language=PSEUDO, pictures=picture_process)
    client = desk_app(desk, lambda: None).test_client()
    client.get(f"/open/{desk.entry}", base_url=SITE)
    return client


PARTS = sorted((part.value for part in Part), key=len, reverse=True)
STEPS = ("fold left edge to right edge", "fold top edge to bottom edge", "open")
"""As the teacher wrote them, in English."""

PLACES = (
    "/",
    "/new",
    "/check",
    "/check?claim=4+×+1/2+=+8",
    "/check?claim=1/2+of+1/4+=+1/8",
    "/parts",
    "/parts?parts=5&paper=letter&along=width",
    "/lesson/seed-trays/fold",
    "/lesson/seed-trays/practice",
    "/lesson/seed-trays/print",
    "/lesson/seed-trays/project",
    "/lesson/seed-trays/mark",
    "/lesson/seed-trays/mark?kept=4b",
    "/lesson/seed-trays/text",
)


@pytest.mark.parametrize("place", PLACES)
def test_no_page_of_the_desk_says_plain_english(visitor, folder, place):
    answer = visitor.get(place, base_url=SITE)
    assert answer.status_code == 200
    texts = texts_of_page(answer.get_data(as_text=True))
    own = [" ".join((folder / "seed-trays.toml").read_text("utf-8").split()), *STEPS]
    assert len(texts) > 10
    assert plain_english(texts, own) == []


@pytest.mark.parametrize("part", ["paper", "hands", "step/1", "step/3"])
def test_nothing_that_the_folding_page_is_told_is_plain_english(visitor, part):
    told = json.loads(visitor.get(f"/lesson/seed-trays/fold/{part}", base_url=SITE).get_data())
    told.pop("digest", None)
    assert plain_english([text for words in strings_in(told) for text in texts_of_page(words)], STEPS) == []


@pytest.mark.parametrize(
    "command", [(), *((name,) for name in COMMANDS)], ids=lambda words: " ".join(words) or "foldmath"
)
def test_no_help_says_plain_english(command, capsys):
    with pytest.raises(SystemExit):
        main([*command, "--help"])
    said = re.sub(rf"^ +({'|'.join(COMMANDS)}) ", "", capsys.readouterr().out, flags=re.MULTILINE)
    assert plain_english(said.splitlines(), [", ".join(languages.languages())]) == []


@pytest.mark.parametrize(
    "words",
    [
        "trace {lesson}",
        "trace {lesson} --details",
        "check 4×1/2=8 {lesson}",
        "check 1/2×1/4=1/8",
        "explain {lesson} --step 3",
        "plan 2/3×4/5",
        "plan --panels 24",
        "parts 5",
        "trace none.toml",
        "trace",
        "explan",
        "make {lesson} --only worksheets",
        "make {lesson} --language fr",
        "check 4+",
    ],
)
def test_no_answer_of_the_terminal_is_plain_english(words, folder, capsys, monkeypatch):
    monkeypatch.chdir(folder)
    with suppress(SystemExit):
        main([word.format(lesson=folder / "seed-trays.toml") for word in words.split(" ")])
    said = capsys.readouterr()
    listed = (", ".join(words) for words in (COMMANDS, [part.value for part in Part], languages.languages()))
    assert (
        plain_english(
            [*said.out.splitlines(), *said.err.splitlines()],
            [*listed, *PARTS, *STEPS, *words.split(" "), "es"],
        )
        == []
    )
