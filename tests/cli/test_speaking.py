"""What the terminal is told, it is told in its own language, whichever command tells it."""

from gettext import NullTranslations

import pytest

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
