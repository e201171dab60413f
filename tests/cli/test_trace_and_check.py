"""``trace`` and ``check`` tell people in words, and other programs in data."""

import json

import pytest
from conftest import LESSONS

from foldmath.cli import main
from foldmath.lesson.trace import trace
from foldmath.making import proved_lesson

SEED_TRAYS = str(LESSONS / "seed-trays.toml")
TILE_PANELS = str(LESSONS / "tile-panels.toml")


def told(capsys):
    said = capsys.readouterr()
    assert said.err == ""
    return said.out


# Tracing.


def test_the_trace_of_one_lesson_is_one_object(capsys):
    assert main(["trace", SEED_TRAYS, "--json"]) == 0
    assert json.loads(told(capsys)) == trace(proved_lesson(LESSONS / "seed-trays.toml")[0])


def test_the_traces_of_several_lessons_are_a_list_in_their_order(capsys):
    assert main(["trace", TILE_PANELS, SEED_TRAYS, "--json"]) == 0
    assert [lesson["title"] for lesson in json.loads(told(capsys))] == ["Tile panels", "Seed trays"]


def test_of_several_traces_one_that_fails_is_left_out_and_told(tmp_path, capsys):
    missing = str(tmp_path / "none.toml")
    assert main(["trace", missing, SEED_TRAYS, "--json"]) == 1
    said = capsys.readouterr()
    assert [lesson["title"] for lesson in json.loads(said.out)] == ["Seed trays"]
    assert "there is no such file" in said.err


def test_figures_in_a_trace_are_written_as_they_are_read(capsys):
    main(["trace", SEED_TRAYS, "--json"])
    assert "4 × 2 = 8" in told(capsys)


def test_a_trace_for_people_is_a_table(capsys):
    assert main(["trace", SEED_TRAYS]) == 0
    out = told(capsys)
    assert out.startswith("Seed trays: one sheet, 11 by 8 1/2 in\n")
    assert "  3.  fold left edge to right edge\n      creases at 1/4 and 3/4 of the width" in out


# Checking.


@pytest.mark.parametrize(
    ("claim", "code"),
    [
        ("4 × 2 = 8", 0),
        ("1/2 of 1/4 = 1/8", 0),
        ("4 ÷ 1/2 = 8", 0),
        ("½ × ¼ < 1/2", 0),
        ("4 × 1/2 = 8", 1),
        ("1/3 + 1/3 = 2/6", 1),
        ("4 × = 8", 2),
        ("1/0 = 1", 2),
        ("four times two", 2),
        ("", 2),
    ],
)
def test_the_exit_code_is_0_for_true_1_for_false_2_for_unreadable(claim, code, capsys):
    assert main(["check", claim]) == code
    said = capsys.readouterr()
    assert bool(said.err) is (code == 2)
    assert bool(said.out) is (code != 2)
    assert "Traceback" not in said.err


def test_a_false_claim_is_answered_with_what_was_probably_meant(capsys):
    main(["check", "4 × 1/2 = 8"])
    out = told(capsys)
    assert "really:  4 × 1/2 = 2" in out
    for meant in ("4 × 2 = 8", "4 ÷ 1/2 = 8", "1/4 × 1/2 = 1/8"):
        assert f" {meant}\n" in out


def test_verdicts_are_data_for_other_programs(capsys):
    assert main(["check", "--json", "4 × 1/2 = 8"]) == 1
    false = json.loads(told(capsys))
    assert main(["check", "--json", "4 × 2 = 8"]) == 0
    true = json.loads(told(capsys))
    assert (true["true"], false["true"]) == (True, False)
    assert "4 × 2 = 8" in false["meant"]


def test_a_lesson_shows_in_which_step_the_claim_is_true(capsys):
    assert main(["check", "4 × 2 = 8", SEED_TRAYS]) == 0
    assert "step 3 shows it: fold left edge to right edge  (count: 4 × 2 = 8)" in told(capsys)


def test_a_lesson_shows_in_which_step_what_was_meant_is_true(capsys):
    assert main(["check", "4 × 1/2 = 8", SEED_TRAYS, "--json"]) == 1
    assert [
        (shown["step"], shown["about"], shown["shows"]) for shown in json.loads(told(capsys))["shown_by"]
    ] == [
        (3, "count", "4 × 2 = 8"),
        (3, "size", "1/4 × 1/2 = 1/8"),
    ]


def test_a_claim_that_no_step_shows_says_so(capsys):
    assert main(["check", "3 × 3 = 9", SEED_TRAYS]) == 0
    assert "no step of the lesson shows it" in told(capsys)


def test_a_claim_with_a_lesson_that_is_not_there_is_one_error(tmp_path, capsys):
    assert main(["check", "4 × 2 = 8", str(tmp_path / "none.toml")]) == 1
    said = capsys.readouterr()
    assert said.out == ""
    assert "there is no such file" in said.err


def test_a_trace_tells_the_year_of_pupils_where_their_age_is_told_in_years(capsys, monkeypatch):
    monkeypatch.setenv("FOLDMATH_LANGUAGE", "en-GB")
    assert main(["trace", str(LESSONS / "seed-trays.toml")]) == 0
    assert "folded in year 6: " in capsys.readouterr().out


def test_a_trace_ends_with_how_far_off_the_worst_panel_may_be(capsys):
    assert main(["trace", str(LESSONS / "tile-panels.toml")]) == 0
    last = capsys.readouterr().out.strip().splitlines()[-1]
    assert last.startswith("folded in grade 5: the worst panel is about")
    assert "edge marks" in last


def test_the_figures_behind_it_name_every_crease_and_whose_hands_are_assumed(capsys):
    assert main(["trace", str(LESSONS / "tile-panels.toml"), "--details"]) == 0
    out = capsys.readouterr().out
    creases = ["1/3 of the width", "2/3 of the width", *(f"{part}/5 of the height" for part in range(1, 5))]
    assert all(f"crease at {crease}" in out for crease in creases)
    assert "Assumed for the grade" in out
    assert "as written; give edge marks at steps 1 and 3" in out


def test_paper_that_cannot_be_folded_so_has_no_figures_of_how_true_it_comes_out(tmp_path, capsys):
    lesson = tmp_path / "thick.toml"
    folds = '"fold left edge to right edge", "fold top edge to bottom edge", ' * 4
    lesson.write_text(
        f'title = "T"\ngrade = 5\npaper = "A4"\nstock = "1 mm"\nsteps = [{folds}]\n', encoding="utf-8"
    )
    assert main(["trace", str(lesson), "--details"]) == 0
    out = capsys.readouterr().out
    assert "cannot be folded" in out
    assert "worst panel" not in out


def test_a_sheet_that_is_not_folded_is_not_said_to_be_off(tmp_path, capsys):
    lesson = tmp_path / "flat.toml"
    lesson.write_text('title = "T"\ngrade = 5\npaper = "A4"\nsteps = ["turn over"]\n', encoding="utf-8")
    assert main(["trace", str(lesson)]) == 0
    assert "folded in grade" not in capsys.readouterr().out


@pytest.mark.parametrize("place", [0, 1, 2])
def test_the_worst_exit_code_of_several_lessons_is_given_wherever_it_stands(place, tmp_path, capsys):
    lessons = [SEED_TRAYS, SEED_TRAYS]
    lessons.insert(place, str(tmp_path / "none.toml"))
    assert main(["trace", *lessons]) == 1
    assert capsys.readouterr().out.count("Seed trays: one sheet") == 2


@pytest.mark.parametrize("codes", [(74, 1), (1, 74)])
@pytest.mark.parametrize(
    ("door", "words"),
    [
        ("trace_and_check", ("trace", "none.toml", "neither.toml")),
        ("making", ("make", "none.toml", "neither.toml")),
        ("exchanging", ("export", "none.toml", "neither.toml")),
        ("classes", ("make", "none.toml", "neither.toml", "--class", "list.csv")),
    ],
)
def test_of_several_refusals_the_worst_exit_code_is_given_and_not_the_last(
    door, words, codes, tmp_path, monkeypatch
):
    (tmp_path / "list.csv").write_text("name\nAda\n", encoding="utf-8")
    monkeypatch.chdir(tmp_path)
    told = iter(codes)
    monkeypatch.setattr(f"foldmath.cli.doors.{door}.tell_error", lambda _: next(told))
    assert main(list(words)) == 74
    assert list(told) == []
