"""``export`` writes lessons in open formats; ``import`` writes the lesson that folds a crease pattern."""

import json

import pytest
from conftest import LESSONS
from exchanged import crossing_lines, file_of

from foldmath.cli.doors.exchanging import export_lessons, import_pattern
from foldmath.errors import CannotWrite, Unreadable
from foldmath.fold_format.refusals import PatternRefused
from foldmath.lesson.reading import read_lesson

SEED_TRAYS = str(LESSONS / "seed-trays.toml")


def test_the_lesson_of_a_pattern_is_written_under_a_name_that_lessons_have(tmp_path):
    with pytest.raises(Unreadable, match=r"--out \S+/new\.toml"):
        import_pattern("pattern.fold", str(tmp_path / "new.pdf"))


def test_a_lesson_is_written_in_a_folder_of_its_own(tmp_path, capsys):
    assert export_lessons([SEED_TRAYS], "fold", str(tmp_path)) == 0
    written = tmp_path / "seed-trays" / "export-fold" / "seed-trays.fold"
    assert json.loads(written.read_text(encoding="utf-8"))["file_title"] == "Seed trays"
    assert capsys.readouterr().out == f"wrote {written}\n"


def test_a_lesson_that_cannot_be_used_does_not_stop_the_others(tmp_path, capsys):
    wrong = tmp_path / "wrong.toml"
    wrong.write_text('title = "Wrong"\n', encoding="utf-8")
    assert export_lessons([str(wrong), SEED_TRAYS], "fold", str(tmp_path)) == 1
    assert "wrong.toml" in capsys.readouterr().err
    assert (tmp_path / "seed-trays" / "export-fold" / "seed-trays.fold").exists()


def test_an_unknown_format_is_refused_with_those_that_there_are(tmp_path):
    with pytest.raises(Unreadable, match="--to svg"):
        export_lessons([SEED_TRAYS], "dxf", str(tmp_path))


def test_what_was_exported_is_imported_as_a_lesson(tmp_path, capsys):
    export_lessons([SEED_TRAYS], "fold", str(tmp_path))
    lesson = tmp_path / "again.toml"
    assert import_pattern(str(tmp_path / "seed-trays" / "export-fold" / "seed-trays.fold"), str(lesson)) == 0
    assert f"wrote {lesson}: 4 steps" in capsys.readouterr().out
    steps = [step.step for step in read_lesson(lesson).steps]
    assert steps == [step.step for step in read_lesson(SEED_TRAYS).steps]


def test_without_a_place_to_write_the_lesson_is_printed_alone(tmp_path, capsys):
    pattern = crossing_lines(8, 6, {4: "U"}, {})
    assert import_pattern(str(file_of(tmp_path, pattern)), None, grade=3) == 0
    told = capsys.readouterr()
    assert "grade = 3" in told.out
    assert told.out.endswith("]\n")
    assert told.err.startswith("note: unassigned creases")


def test_a_lesson_that_is_there_already_is_never_written_over(tmp_path):
    there = tmp_path / "there.toml"
    there.write_text("mine", encoding="utf-8")
    with pytest.raises(CannotWrite, match="already"):
        import_pattern(str(file_of(tmp_path, crossing_lines(8, 6, {4: "V"}, {}))), str(there))
    assert there.read_text(encoding="utf-8") == "mine"


def test_a_lesson_file_without_a_name_is_refused_as_such(tmp_path):
    with pytest.raises(CannotWrite, match="needs a name"):
        import_pattern(str(file_of(tmp_path, crossing_lines(8, 6, {4: "V"}, {}))), "")


def test_a_grade_without_lessons_is_refused(tmp_path):
    with pytest.raises(Unreadable, match="3 to 6"):
        import_pattern(str(file_of(tmp_path, crossing_lines(8, 6, {4: "V"}, {}))), None, grade=9)


def test_a_file_without_a_crease_pattern_writes_nothing(tmp_path):
    with pytest.raises(PatternRefused):
        import_pattern(str(file_of(tmp_path, "{}")), str(tmp_path / "new.toml"))
    assert not (tmp_path / "new.toml").exists()
