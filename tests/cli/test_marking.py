"""``mark`` in a shell: sheets are written and marked, files with names are private, slips are refused."""

import csv
import shutil
import stat
import subprocess
from pathlib import Path

import pytest
from conftest import LESSONS
from page_reading import text_of

from foldmath.cli import main

LESSON = str(LESSONS / "seed-trays.toml")
ROSTER = "name,level\nAnn,guided\nBo,core\nCem,core\n"
FILES = {"marks.csv", "marks.ods", "class-report.pdf", "notes-to-pupils.pdf", "next.toml", "next-roster.csv"}
SOFFICE = shutil.which("soffice")


@pytest.fixture
def folder(tmp_path) -> Path:
    (tmp_path / "4b.csv").write_text(ROSTER, encoding="utf-8")
    return tmp_path


def mark(folder: Path, *words: str) -> int:
    return main(["mark", LESSON, "--class", str(folder / "4b.csv"), *words])


def fill(sheet: Path, answers: dict[str, dict[str, str]]) -> None:
    """Type answers into a sheet, by pupil and column."""
    with sheet.open(encoding="utf-8-sig", newline="") as stream:
        rows = list(csv.reader(stream))
    for row in rows[2:]:
        for column, text in answers.get(row[0], {}).items():
            row[rows[1].index(column)] = text
    with sheet.open("w", encoding="utf-8", newline="") as stream:
        csv.writer(stream).writerows(rows)


def filled(folder: Path, answers: dict[str, dict[str, str]]) -> str:
    sheet = folder / "answers.csv"
    assert mark(folder, "--blank", str(sheet)) == 0
    fill(sheet, answers)
    return str(sheet)


def made(folder: Path) -> Path:
    (only,) = (folder / "out" / "seed-trays").iterdir()
    return only


ANSWERS = {"Bo": {"1": "22/15", "2": "5/4"}, "Ann": {"1": "15-Aug"}}


@pytest.mark.parametrize(("own", "told"), [((), True), (("--own-numbers",), False)])
def test_a_sheet_for_a_class_with_pages_of_its_own_says_how_to_ask_for_these(folder, own, told, capsys):
    out, sheet = ("--out", str(folder / "out")), str(folder / "answers.csv")
    assert main(["make", LESSON, "--class", str(folder / "4b.csv"), *out]) == 0
    assert mark(folder, "--blank", sheet, *own, *out) == 0
    assert ("--own-numbers writes a sheet for these" in capsys.readouterr().out) is told


def test_a_sheet_for_a_class_without_pages_of_its_own_says_nothing_of_them(folder, capsys):
    assert mark(folder, "--blank", str(folder / "answers.csv"), "--out", str(folder / "out")) == 0
    assert "own-numbers" not in capsys.readouterr().out


def test_a_class_is_marked_as_one_private_set(folder, capsys):
    assert mark(folder, "--answers", filled(folder, ANSWERS), "--out", str(folder / "out")) == 0
    said = capsys.readouterr().out
    assert "left open: B6, Ann: 15-Aug" in said
    place = made(folder)
    assert place.name.startswith("marks-2")
    assert place.name.endswith("-4b")
    assert {path.name for path in place.iterdir() if not path.name.startswith(".")} == FILES
    assert {stat.S_IMODE(path.stat().st_mode) for path in place.iterdir()} == {0o600}
    assert (place / "next-roster.csv").read_text("utf-8-sig").splitlines()[2] == "Bo,guided"
    assert main(["trace", str(place / "next.toml")]) == 0


def test_labels_stand_for_names_everywhere(folder, capsys):
    words = ("--answers", filled(folder, ANSWERS), "--labels", "--out", str(folder / "out"))
    capsys.readouterr()
    assert mark(folder, *words) == 0
    assert "Ann" not in capsys.readouterr().out
    for name in ("marks.csv", "next-roster.csv"):
        text = (made(folder) / name).read_text("utf-8-sig")
        assert "Student 2" in text
        assert "Bo" not in text


def test_a_blank_sheet_is_private_and_never_written_over(folder):
    sheet = folder / "answers.ods"
    assert mark(folder, "--blank", str(sheet)) == 0
    assert stat.S_IMODE(sheet.stat().st_mode) == 0o600
    before = sheet.read_bytes()
    assert mark(folder, "--blank", str(sheet)) == 1
    assert sheet.read_bytes() == before


@pytest.mark.parametrize(
    ("words", "message", "code"),
    [
        (["mark"], "which lesson", 2),
        (["mark", LESSON], "which answers", 2),
        (["mark", LESSON, "--blank", "a.xlsx", "--pupils", "3"], ".ods or .csv", 2),
        (["mark", LESSON, "--blank", "a.ods"], "needs its students", 2),
        (["mark", LESSON, "--answers", "nowhere.ods"], "there is no such file", 1),
        (["mark", "--history", "nowhere"], "no marks lie in this folder", 1),
    ],
)
def test_what_cannot_be_done_is_said(words, message, code, capsys, tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    assert main(words) == code
    assert message in capsys.readouterr().err
    assert not list(tmp_path.iterdir())


def test_a_sheet_of_another_lesson_is_refused_and_nothing_is_written(folder, capsys):
    sheet = filled(folder, ANSWERS)
    other = str(LESSONS / "tile-panels.toml")
    words = [
        "mark",
        other,
        "--class",
        str(folder / "4b.csv"),
        "--answers",
        sheet,
        "--out",
        str(folder / "out"),
    ]
    assert main(words) == 1
    assert "no page of “Tile panels” has this code" in capsys.readouterr().err
    assert not (folder / "out").exists()


def test_history_tells_what_came_and_went(folder, capsys):
    assert mark(folder, "--answers", filled(folder, ANSWERS), "--out", str(folder / "out")) == 0
    earlier = made(folder).parent / "marks-2024-01-08-4b"
    shutil.copytree(made(folder), earlier)
    marks = (earlier / "marks.csv").read_text("utf-8-sig")
    (earlier / "marks.csv").write_text(marks.replace("add_instead", "keep_common_denominator"), "utf-8")
    capsys.readouterr()
    assert main(["mark", "--history", str(folder / "out")]) == 0
    rows = (folder / "out" / "history" / "history.csv").read_text("utf-8-sig").splitlines()
    assert any(row.startswith("4b,Bo,add_instead,came,2024-01-08,seed-trays,0") for row in rows)
    assert any(row.startswith("4b,Bo,keep_common_denominator,went,2024-01-08,seed-trays,2") for row in rows)
    assert (folder / "out" / "history" / "history.pdf").read_bytes().startswith(b"%PDF")
    assert main(["mark", "--history", str(folder / "out")]) == 0, "its own table is no marks"


@pytest.mark.skipif(SOFFICE is None, reason="LibreOffice is not installed here")
@pytest.mark.parametrize("kind", ["ods", "csv"])
def test_a_sheet_goes_through_a_spreadsheet_and_back(folder, kind):
    # LibreOffice Calc opens the blank sheet, a macro-free conversion saves it in its own way.
    sheet, saved = folder / f"answers.{kind}", folder / "saved"
    if kind == "csv":
        filled(folder, ANSWERS)
    else:
        from foldmath.lesson.files.spreadsheet import read_table
        from foldmath.marking.reading.sheet import written_ods

        filled(folder, ANSWERS)
        table = read_table(folder / "answers.csv", "answers.csv")
        sheet.write_bytes(written_ods([list(row.fields) for row in table.rows]))
    profile = f"-env:UserInstallation=file://{folder}/profile"
    command = [SOFFICE, "--headless", profile, "--convert-to", kind, "--outdir", str(saved), str(sheet)]
    subprocess.run(command, check=True, capture_output=True, timeout=120)
    assert mark(folder, "--answers", str(saved / f"answers.{kind}"), "--out", str(folder / "out")) == 0
    with (made(folder) / "marks.csv").open(encoding="utf-8-sig", newline="") as stream:
        marks = {(row["pupil"], row["item"]): row for row in csv.DictReader(stream)}
    if kind == "ods":
        assert marks["Bo", "1"]["answer"] == "22/15"
        assert marks["Bo", "1"]["rule"] == "add_instead"
        assert marks["Bo", "2"]["answer"] == "5/4"
    else:
        # A fraction that may be a day is a date after the round trip, and is asked about, never guessed.
        assert marks["Bo", "1"]["answer"] == "22/15"
        assert marks["Bo", "2"]["verdict"] in ("wrong", "unread")


def test_a_sheet_for_pages_on_a4_has_the_codes_at_their_feet_and_is_marked_as_such(folder):
    """The sheet's own codes are those of the pages that were printed: folded on other paper, others."""
    assert mark(folder, "--blank", str(folder / "a4.csv"), "--paper", "A4") == 0
    assert mark(folder, "--blank", str(folder / "letter.csv")) == 0
    assert (folder / "a4.csv").read_text("utf-8") != (folder / "letter.csv").read_text("utf-8")
    assert mark(folder, "--answers", str(folder / "a4.csv"), "--paper", "A4", "--out", str(folder)) == 0


def test_forty_students_who_thought_alike_fit_the_report_and_signs_that_steer_are_shown(tmp_path, capsys):
    names = [f"Student {number}" for number in range(40)]
    (tmp_path / "4b.csv").write_text("name\n" + "".join(f"{name}\n" for name in names), encoding="utf-8")
    wrong = {"1": "22/15", "2": "5/4", "4": "x \x1b[2J 8", "6": "\uffff"}
    answers = filled(tmp_path, dict.fromkeys(names, wrong))
    assert mark(tmp_path, "--answers", answers, "--out", str(tmp_path / "out")) == 0
    said = capsys.readouterr()
    assert "\x1b" not in said.out + said.err
    report = text_of(made(tmp_path) / "class-report.pdf")
    assert len(report) > 2
    assert all(any(name in page for page in report[1:]) for name in names)
    assert any("\\x1b[2J" in page for page in report)
