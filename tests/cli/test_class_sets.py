"""``make --class`` and ``--pupils``: a roster in, a class set out, and clear words for a wrong one."""

import stat

import pytest
from conftest import LESSONS
from page_reading import text_of

import foldmath.drawing.rendering.recorder  # noqa: F401  matplotlib comes once, and not to every picture_process anew
from foldmath.cli import main

SEED_TRAYS = str(LESSONS / "seed-trays.toml")


def made(tmp_path, *words: str) -> int:
    return main(["make", SEED_TRAYS, "--out", str(tmp_path / "out"), *words])


def test_a_roster_makes_a_set_and_its_key(tmp_path, capsys):
    roster = tmp_path / "roster.csv"
    roster.write_text("name,level\nAda,guided\nBo,\n", encoding="utf-8")
    assert made(tmp_path, "--class", str(roster)) == 0
    folder = tmp_path / "out" / "seed-trays" / "class-roster"
    teachers = {"exit-ticket.pdf", "teacher-plan.pdf", "slides.html", "slides.pdf", "templates.pdf"}
    assert {"class-worksheets.pdf", "class-key.pdf", *teachers} <= {path.name for path in folder.iterdir()}
    plan = "".join(text_of(folder / "teacher-plan.pdf"))
    assert "Ada" in plan
    assert "Bo" in plan
    assert f"wrote {folder / 'class-key.pdf'}" in capsys.readouterr().out
    assert {stat.S_IMODE(path.stat().st_mode) for path in folder.iterdir()} == {0o600}
    assert stat.S_IMODE(folder.stat().st_mode) == 0o700


def test_a_number_of_pupils_will_do(tmp_path):
    assert made(tmp_path, "--pupils", "3") == 0
    assert (tmp_path / "out" / "seed-trays" / "class-pupils-3" / "class-key.pdf").is_file()


@pytest.mark.parametrize("number", ["0", "-3", "100000"])
def test_a_number_of_pupils_no_class_has_is_refused(tmp_path, capsys, number):
    assert made(tmp_path, "--pupils", number) == 2
    assert "students" in capsys.readouterr().err
    assert not (tmp_path / "out").exists()


@pytest.mark.parametrize(
    ("roster", "where", "said"),
    [
        ("name,level\nAda,gided\n", "roster.csv:2", "guided"),
        ("pupil,level\nAda,core\n", "roster.csv:1", "name"),
        ("name,level\nA\u202ela,core\n", "roster.csv:2", "no shape"),
    ],
)
def test_a_wrong_roster_is_told_by_its_line_and_nothing_is_written(tmp_path, capsys, roster, where, said):
    path = tmp_path / "roster.csv"
    path.write_text(roster, encoding="utf-8")
    assert made(tmp_path, "--class", str(path)) != 0
    err = capsys.readouterr().err
    assert where in err
    assert said in err
    assert "Traceback" not in err
    assert not (tmp_path / "out").exists()


def test_a_roster_and_a_number_of_pupils_exclude_each_other(tmp_path, capsys):
    with pytest.raises(SystemExit) as stop:
        made(tmp_path, "--pupils", "3", "--class", "roster.csv")
    assert stop.value.code == 2
    assert "not allowed with" in capsys.readouterr().err


def test_large_print_is_laid_out_anew(tmp_path):
    assert made(tmp_path, "--large-print") == 0
