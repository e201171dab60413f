"""What the terminal is told, it is told in its own language, whichever command tells it."""

from gettext import NullTranslations

import pytest
from conftest import LESSONS

from foldmath.cli import main
from foldmath.words import saying


class Marked(NullTranslations):
    """A language whose every sentence begins with a sign of its own."""

    def gettext(self, message):
        return f"¡{message}"

    def ngettext(self, one, many, count):
        return f"¡{one if count == 1 else many}"


@pytest.mark.parametrize(
    "words",
    [
        ("trace", "none.toml"),
        ("explain", "none.toml"),
        ("make", "none.toml"),
        ("booklet", "none.toml"),
        ("draw", "none.toml"),
        ("project", "none.toml"),
        ("export", "none.toml"),
        ("import", "none.fold"),
        ("mark", "none.toml", "--answers", "none.csv"),
    ],
)
def test_every_command_says_what_is_wrong_in_the_language_of_the_terminal(
    words, capsys, monkeypatch, tmp_path
):
    monkeypatch.chdir(tmp_path)
    monkeypatch.setattr(saying, "catalogue", lambda _language: Marked())
    assert main([*words]) == 1
    told = capsys.readouterr().err
    assert told.startswith("¡none")
    assert "try:  ¡check the name" in told or "¡there is no such file" in told


@pytest.mark.parametrize(
    "words",
    [("trace",), ("explain",), ("check", "4 × 1/2 = 8")],
    ids=["trace", "explain", "check"],
)
def test_steps_of_a_lesson_in_english_are_told_in_the_language_of_the_terminal(words, capsys, monkeypatch):
    monkeypatch.setenv("FOLDMATH_LANGUAGE", "es")
    main([*words, str(LESSONS / "seed-trays.toml")])
    told = capsys.readouterr().out
    assert "dobla el borde izquierdo hasta el borde derecho" in told
    assert "fold left edge" not in told


def test_a_process_that_spoke_spanish_speaks_english_when_it_is_asked_to(capsys, monkeypatch):
    monkeypatch.setenv("LANGUAGE", "")

    def refused(language):
        monkeypatch.setenv("FOLDMATH_LANGUAGE", language)
        with pytest.raises(SystemExit, match="2"):
            main(["make", "seed-trays.toml", "--pupils", "3", "--only", "key"])
        return capsys.readouterr().err

    assert "no se permite" in refused("es")
    assert "not allowed with" in refused("en-US")


def test_data_keep_the_words_of_the_file(capsys, monkeypatch):
    monkeypatch.setenv("FOLDMATH_LANGUAGE", "es")
    main(["check", "4 × 1/2 = 8", str(LESSONS / "seed-trays.toml"), "--json"])
    main(["explain", str(LESSONS / "seed-trays.toml"), "--json"])
    assert capsys.readouterr().out.count('"sentence": "fold left edge to right edge"') == 4
