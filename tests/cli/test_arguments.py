"""The command says what to do first, and what was probably meant."""

import json

import pytest
from conftest import LESSONS

from foldmath import __version__
from foldmath.cli import main
from foldmath.cli.arguments import COMMANDS


def refused(words, capsys):
    with pytest.raises(SystemExit) as caught:
        main(words)
    return caught.value.code, capsys.readouterr()


def test_without_words_it_says_what_to_do_first(capsys):
    assert main([]) == 0
    said = capsys.readouterr()
    assert "foldmath desk" in said.out
    assert "foldmath --help" in said.out
    assert said.err == ""


@pytest.mark.parametrize("command", [(), *((command,) for command in COMMANDS)], ids=" ".join)
def test_every_help_has_an_example_of_its_own_command(command, capsys):
    code, said = refused([*command, "--help"], capsys)
    assert code == 0
    assert f"example: foldmath {' '.join(command)}" in said.out


def test_the_help_names_every_command(capsys):
    _, said = refused(["--help"], capsys)
    assert all(f"    {command} " in said.out for command in COMMANDS)


@pytest.mark.parametrize(
    ("words", "choices"),
    [
        (["parts", "5", "--along", "depth"], "'width', 'height'"),
        (["plan", "1/2 × 1/2", "--orientation", "up"], "'landscape', 'portrait'"),
    ],
)
def test_a_wrong_choice_of_an_option_is_not_taken_for_a_command(words, choices, capsys):
    code, said = refused(words, capsys)
    assert code == 2
    assert "there is no command" not in said.err
    assert choices in said.err


@pytest.mark.parametrize(
    ("typed", "meant"), [("maek", "make"), ("mak", "make"), ("mar", "mark"), ("trase", "trace")]
)
def test_a_misspelt_command_gets_the_nearest_one(typed, meant, capsys):
    code, said = refused([typed, "x.toml"], capsys)
    assert code == 2
    assert f"there is no command '{typed}'" in said.err
    assert f"try:  foldmath {meant}" in said.err


def test_a_command_like_no_other_gets_the_help(capsys):
    code, said = refused(["xyzzy"], capsys)
    assert code == 2
    assert "try:  foldmath --help" in said.err


@pytest.mark.parametrize(
    ("words", "remedy"),
    [
        (["make"], "foldmath make --help"),
        (["check"], "foldmath check --help"),
        (["trace", "--xyz", "x"], "foldmath trace --help"),
        (["plan", "24", "panels"], "--panels"),
        (["mark", "x.toml", "x.csv"], "foldmath mark --help"),
        (["mark", "x.toml", "answers.csv"], "--answers"),
        (["make", "x", "--papr", "A4"], "--paper"),
        (["make", "x", "--clases=lists"], "--classes"),
        (["make", "x", "--out", ""], "foldmath make --help"),
        (["--vershun"], "--version"),
        (["make", "x", "--bogus"], "foldmath make --help"),
        (["mark", "x.toml", "--blank", "a.ods", "--answers", "b.ods"], "foldmath mark --help"),
    ],
)
def test_words_that_a_command_does_not_take_are_refused_in_two_lines(words, remedy, capsys):
    code, said = refused(words, capsys)
    assert code == 2
    assert said.out == ""
    assert said.err.splitlines()[1:] == [f"    try:  {remedy}"]


def test_the_version_is_told(capsys):
    code, said = refused(["--version"], capsys)
    assert (code, said.out.strip()) == (0, f"foldmath {__version__}")


@pytest.mark.parametrize(
    "option", [["plan", "--panels"], ["plan", "--folds"], ["explain", "a.toml", "--step"], ["parts"]]
)
@pytest.mark.parametrize("word", ["x", "", "3.5", "9" * 5000])
def test_a_word_that_is_no_whole_number_is_told_in_plain_words(option, word, capsys):
    code, said = refused([*option, word], capsys)
    assert code == 2
    assert "is not a whole number, such as 5" in said.err
    assert f"try:  foldmath {option[0]} --help" in said.err
    assert len(said.err) < 200


def test_a_pattern_that_the_shell_left_names_the_files_of_its_folder(tmp_path, monkeypatch, capsys):
    """The shells of Windows leave ``*`` and ``?`` to the programs."""
    lesson = (LESSONS / "seed-trays.toml").read_text("utf-8")
    folder = tmp_path / "grade [5]"
    folder.mkdir()
    for name in ("b.toml", "a.toml", "notes.txt", ".hidden.toml", "a1.toml"):
        (folder / name).write_text(lesson.replace("Seed trays", name), encoding="utf-8")
    for pattern, names in (("*.toml", ["a.toml", "a1.toml", "b.toml"]), ("?.toml", ["a.toml", "b.toml"])):
        assert main(["trace", str(folder / pattern), "--json"]) == 0
        assert [lesson["title"] for lesson in json.loads(capsys.readouterr().out)] == names
    monkeypatch.chdir(folder)
    assert main(["trace", "*.toml", "b.toml", "--json"]) == 0
    assert len(json.loads(capsys.readouterr().out)) == 4


def test_a_pattern_that_names_nothing_is_refused_as_it_was_typed(tmp_path, capsys):
    assert main(["trace", str(tmp_path / "*.toml")]) == 1
    assert f"{tmp_path}/*.toml: there is no such file" in capsys.readouterr().err


def test_a_file_whose_name_looks_like_a_pattern_is_that_file(tmp_path, capsys):
    for name in ("a?.toml", "ab.toml"):
        (tmp_path / name).write_bytes((LESSONS / "seed-trays.toml").read_bytes())
    assert main(["trace", str(tmp_path / "a?.toml"), "--json"]) == 0
    assert json.loads(capsys.readouterr().out)["title"] == "Seed trays"
