"""A lesson is begun from an empty sheet, from a wish or from another one, in browser and terminal alike."""

import re
import subprocess
import sys

import pytest
from markupsafe import escape

from foldmath.cli import main
from foldmath.cli.arguments import FIRST_STEPS
from foldmath.desk.choosing.wishes import wanted_in_words
from foldmath.desk.shelf.open_lesson import open_lesson
from foldmath.lesson.files.built_in import built_in_lessons
from foldmath.lesson.files.wanted import LONGEST_LINE
from foldmath.lesson.proving import prove
from foldmath.lesson.reading import read_lesson
from foldmath.planning.wanted import wanted_panels, wanted_product, wanted_sizes

SHEET = {"title": "Boat sails", "grade": "4", "paper": "A4", "orientation": "portrait"}


def test_an_empty_sheet_is_a_lesson_with_no_step_yet(visitor, desk):
    answer = visitor.post("/new/empty", data={"token": desk.form, **SHEET})
    assert answer.headers["Location"] == "/lesson/boat-sails/fold"
    table = open_lesson(desk.shelf, "boat-sails").table
    assert table == {"title": "Boat sails", "grade": 4, "paper": "A4", "orientation": "portrait", "steps": []}


def test_a_wish_is_answered_with_pictures_and_the_taken_way_is_a_lesson_that_shows_it(visitor, desk):
    wish = {**SHEET, "wish": "2/3 × 4/5", "grade": "5"}
    page = visitor.get("/new", query_string=wish).text
    assert page.count('<svg class="picture"') >= 6
    answer = visitor.post("/new/wish", data={"token": desk.form, **wish, "number": "0"})
    assert answer.headers["Location"] == "/lesson/boat-sails/fold"
    proved = prove(open_lesson(desk.shelf, "boat-sails").read())
    assert (proved.lesson.title, len(proved.states[-1].panels)) == ("Boat sails", 15)


@pytest.mark.parametrize("number", ["9", "-9", "x"])
def test_there_is_no_other_way_to_take(visitor, desk, number):
    wish = {**SHEET, "wish": "4 panels", "number": number}
    status = visitor.post("/new/wish", data={"token": desk.form, **wish}).status_code
    assert status == (303 if number == "x" else 404)


@pytest.mark.parametrize(
    ("wish", "remedy"),
    [
        ("2/3 ×", "2/3 × 4/5, or 24 panels, or 1/6, 1/6, 2/3"),
        ("apples", "2/3 × 4/5, or 24 panels, or 1/6, 1/6, 2/3"),
        ("2/3 = 4/5", "2/3 × 4/5, or 24 panels, or 1/6, 1/6, 2/3"),
        ("1 panel", "2 panels"),
        ("26 panels", "25 panels"),
        ("9" * 500, "144 panels"),
        ("13/12 × 1/2", "plan 1 × 1/2 and fold it on 1 sheet, and 1/12 × 1/2 on one more"),
        (",", "1/3, 2/3"),
        ("1/999983; 999982/999983", "1/6, 1/6, 2/3"),
    ],
)
def test_a_wish_that_no_sheet_fulfils_is_refused_with_one_that_the_same_field_takes(visitor, wish, remedy):
    """No word of it is the terminal's: no option, and no column of a field of one line."""
    answer = visitor.get("/new", query_string={**SHEET, "wish": wish})
    assert answer.status_code == 422
    told = re.search(r'<div id="slips" role="alert">(.*?)</div>', answer.text, re.DOTALL)[1]
    assert told.partition("<b>Try:</b> ")[2].partition("<")[0].strip() == remedy
    assert "--" not in told
    assert not re.search(r"column \d", told)
    assert f'name="title" maxlength="{LONGEST_LINE}" autocomplete="off" value="Boat sails"' in answer.text
    assert f'name="wish" value="{escape(wish)}"' in answer.text


@pytest.mark.parametrize(
    ("words", "wanted"),
    [
        ("2/3 × 4/5", wanted_product("2/3 × 4/5")),
        ("24 panels", wanted_panels(24)),
        ("24", wanted_panels(24)),
        ("1/6, 1/6, 2/3", wanted_sizes("1/6, 1/6, 2/3")),
        ("1/6; 1/6; 2/3", wanted_sizes("1/6, 1/6, 2/3")),
    ],
)
def test_a_wish_is_read_as_teachers_write_it(words, wanted):
    assert wanted_in_words(words) == wanted


def test_a_lesson_like_another_keeps_its_words_and_has_its_own_title(visitor, desk):
    answer = visitor.post("/new/like", data={"token": desk.form, **SHEET, "like": "seed-trays"})
    assert answer.status_code == 303
    old, new = built_in_lessons()["seed-trays"].read_text(), open_lesson(desk.shelf, "boat-sails").text
    assert new == old.replace('title = "Seed trays"', 'title = "Boat sails"')


@pytest.mark.parametrize("change", [{"title": " "}, {"grade": "2"}, {"grade": "7"}, {"paper": "vellum"}])
def test_what_no_lesson_can_have_is_refused_and_nothing_is_written(visitor, desk, change):
    answer = visitor.post("/new/empty", data={"token": desk.form, **SHEET, **change})
    assert (answer.status_code, desk.shelf.lessons()) == (422, {})
    assert "<form" in answer.text
    assert 'value="portrait" selected' in answer.text


@pytest.mark.parametrize(
    ("address", "field"), [("/new/empty", "title"), ("/new/like", "title"), ("/new/wish", "wish")]
)
def test_the_field_that_is_refused_has_the_keys_and_what_is_wrong_follows_it(visitor, desk, address, field):
    wrong = {**SHEET, "title": "", "wish": "1 panel", "like": "seed-trays"}
    page = visitor.post(address, data={"token": desk.form, **wrong}).text
    (marked,) = re.findall(
        r'<input name="(\w+)"[^>]* aria-invalid="true" aria-describedby="slips" autofocus', page
    )
    assert marked == field
    assert page.index('id="slips"') - page.index(f'<input name="{field}"') < 300


def test_the_first_steps_that_the_command_tells_work_in_an_empty_folder(tmp_path, monkeypatch):
    """A user of pip has no lessons lying about."""
    monkeypatch.chdir(tmp_path)
    told = re.findall(r"^    foldmath (.*)$", str(FIRST_STEPS), re.MULTILINE)
    assert told[0] == "desk"
    for words in told[1:3]:
        command = [sys.executable, "-m", "foldmath", *words.split()]
        assert subprocess.run(command, capture_output=True, check=False).returncode == 0
    page = re.search(r"open (\S+),", str(FIRST_STEPS))[1]
    assert (tmp_path / page).is_file()


def test_a_new_lesson_in_the_terminal_has_one_fold_or_is_like_another(tmp_path, monkeypatch, capsys):
    monkeypatch.chdir(tmp_path)
    assert main(["new", "seed-beds"]) == main(["new", "trays", "--from", "seed-trays"]) == 0
    begun, like = read_lesson("seed-beds.toml"), read_lesson("trays.toml")
    assert (begun.title, len(prove(begun).states[-1].panels)) == ("Seed beds", 2)
    assert (like.title, like.practice[0].text) == ("Trays", "2/3 × 4/5")
    assert main(["new", "seed-beds"]) == 1
    assert "there already" in capsys.readouterr().err


def test_a_misspelt_lesson_to_begin_from_is_refused_with_the_nearest(tmp_path, monkeypatch, capsys):
    monkeypatch.chdir(tmp_path)
    assert main(["new", "beds", "--from", "sed-trays"]) == 2
    assert "--from seed-trays" in capsys.readouterr().err
    assert list(tmp_path.iterdir()) == []


@pytest.mark.parametrize(
    ("language", "paper", "step"),
    [
        ("en-US", "letter", "fold the left edge to the right edge"),
        ("en-GB", "A4", "fold the left edge to the right edge"),
        ("es", "letter", "dobla el borde izquierdo hasta el borde derecho"),
    ],
)
def test_a_new_lesson_is_in_the_terminals_language_and_on_the_paper_that_goes_with_it(
    tmp_path, monkeypatch, language, paper, step
):
    monkeypatch.chdir(tmp_path)
    monkeypatch.setenv("FOLDMATH_LANGUAGE", language)
    assert main(["new", "beds"]) == 0
    begun = read_lesson("beds.toml")
    assert (begun.language, begun.paper, begun.steps[0].text) == (language, paper, step)
    assert len(prove(begun).states[-1].panels) == 2


def test_a_lesson_to_begin_from_needs_a_name(tmp_path, monkeypatch, capsys):
    monkeypatch.chdir(tmp_path)
    assert main(["new", "beds", "--from", ""]) == 2
    assert "there is no lesson of this name" in capsys.readouterr().err


def test_a_name_that_no_disk_takes_is_refused_for_its_length(tmp_path, monkeypatch, capsys):
    monkeypatch.chdir(tmp_path)
    assert main(["new", "n" * 300]) == 1
    assert "try:  a shorter name" in capsys.readouterr().err
    assert list(tmp_path.iterdir()) == []


@pytest.mark.parametrize("name", ["", ".", "..", " ", ".toml", "beds/"])
def test_a_lesson_without_a_name_is_not_begun(name, tmp_path, monkeypatch, capsys):
    monkeypatch.chdir(tmp_path)
    assert main(["new", name]) == 2
    assert "needs a letter or a figure" in capsys.readouterr().err
    assert list(tmp_path.iterdir()) == []
