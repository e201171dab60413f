"""The answers sheet: a blank one says what is asked, and a filled one is read cell by cell."""

import pytest
from marking_a_class import PAGES, blank, filled, read

from foldmath.marking.reading.sheet import (
    AnswersRefused,
    blank_rows,
    place,
    read_sheet,
    written_csv,
    written_ods,
)
from foldmath.statements.items import Level


def test_a_blank_sheet_says_what_an_empty_cell_means_and_what_is_asked():
    rows = blank({"Ann": Level.CORE, "Bo": Level.CORE})
    assert rows[0] == ["empty", "right"]
    assert rows[1][:9] == ["student", *"12345678"]
    folds = [f"F{number} {asked}" for number in (1, 2, 3) for asked in ("panels", "of")]
    assert rows[1][9:] == [*folds, "T1 panels", "T1 of", "T2", "code"]
    assert rows[2][:3] == ["asks", "2/3 × 4/5", "3/4 × 1/2"]
    assert rows[2][8].startswith("true or false: ")
    assert [row[0] for row in rows[3:]] == ["Ann", "Bo"]
    assert {row[-1] for row in rows[2:]} == {PAGES.code(Level.CORE)}
    assert not any(cell for row in rows[3:] for cell in row[1:-1])


@pytest.mark.parametrize(
    ("language", "heads"),
    [
        ("en-GB", ["empty", "right", "pupil", "asks"]),
        ("es", ["vacío", "bien", "estudiante", "pregunta"]),
    ],
)
def test_a_sheet_speaks_the_language_of_its_teacher_and_is_read_in_every_one(tmp_path, language, heads):
    rows = blank_rows([("Ann", PAGES.of_class(Level.CORE))], language)
    assert [*rows[0], rows[1][0], rows[2][0]] == heads
    sheet = read(tmp_path, rows)
    assert sheet.empty_is_right
    assert [row.label for row in sheet.rows] == ["Ann"]
    assert sheet.columns == tuple(rows[1][1:-1])


def test_each_level_has_a_row_of_what_it_asks():
    heads = [row[0] for row in blank({"Ann": Level.STRETCH, "Bo": Level.GUIDED})]
    assert heads[2:] == ["to talk about, not marked", "asks (guided)", "asks (stretch)", "Ann", "Bo"]


@pytest.mark.parametrize("write", [written_csv, written_ods], ids=["csv", "ods"])
def test_what_a_class_talks_about_is_named_above_the_answers_and_is_no_pupil(tmp_path, write):
    rows = blank({"Ann": Level.STRETCH, "Bo": Level.GUIDED, "Cem": Level.CORE})
    guided, stretch = (PAGES.of_class(level) for level in (Level.GUIDED, Level.STRETCH))
    assert rows[2][1] == f"item {guided.talked} (guided) and item {stretch.talked} (stretch)"
    assert not [page for page in (guided, stretch) if str(page.talked) in page.by_column]
    assert [row.label for row in read(tmp_path, rows, write).rows] == ["Ann", "Bo", "Cem"]


def test_own_numbers_are_said_above_each_pupil():
    rows = blank({"Ann": Level.CORE, "Bo": Level.CORE}, own=True)
    assert [row[0] for row in rows[2:]] == ["asks", "Ann", "asks", "Bo"]
    assert rows[2] != rows[4]


@pytest.mark.parametrize("write", [written_csv, written_ods], ids=["csv", "ods"])
def test_a_filled_sheet_is_read_cell_by_cell(tmp_path, write):
    sheet = read(tmp_path, filled({"Ann": {"1": "8/12", "T2": "1/7"}, "Bo": {}}), write)
    ann, bo = sheet.rows
    assert (ann.label, ann.code) == ("Ann", PAGES.code(Level.CORE))
    assert {column: (cell.text, cell.place) for column, cell in ann.cells.items()} == {
        "1": ("8/12", "B4"),
        "T2": ("1/7", "R4"),
    }
    assert bo.cells == {}
    assert sheet.empty_is_right


def test_columns_may_stand_in_any_order_and_some_may_be_left_out(tmp_path):
    rows = [["empty", "not done"], ["pupil", "T2", "1"], ["Ann", "1/7", "8/12"]]
    sheet = read(tmp_path, rows)
    assert sheet.columns == ("T2", "1")
    assert not sheet.empty_is_right
    assert sheet.rows[0].cells["1"].place == "C3"


@pytest.mark.parametrize(
    ("rows", "message"),
    [
        ([["pupil", "1"], ["Ann", "8/15"]], "line one does not say what an empty cell means"),
        ([["empty", "wrong"], ["pupil", "1"], ["Ann", "8/15"]], "line one does not say"),
        ([["name", "level"], ["Ann", "core"]], "this is no answers sheet, by its first two lines"),
        ([["empty", "right"]], "fewer than two lines"),
        ([["empty", "right"], ["name", "1"], ["Ann", "8/15"]], "the first column is not called student"),
        ([["empty", "right"], ["pupil", "1", "1"], ["Ann"]], "cell C2: two columns are called 1"),
        ([["empty", "right"], ["pupil", "1"], ["Ann", "8/15", "3"]], "cell C3: no column"),
        ([["empty", "right"], ["pupil", "1"], ["", "8/15"]], "cell A3: this row has no name"),
        ([["empty", "right"], ["pupil", "1"], ["asks", "2/3 × 4/5"]], "no students"),
    ],
)
def test_a_sheet_that_cannot_be_used_is_refused_with_the_cell(tmp_path, rows, message):
    with pytest.raises(AnswersRefused, match=message):
        read(tmp_path, rows)


def test_an_empty_file_is_answered_by_what_writes_a_sheet_to_fill_in(tmp_path):
    (tmp_path / "answers.csv").write_bytes(b"\r\n")
    with pytest.raises(AnswersRefused, match="this file is empty") as refused:
        read_sheet(tmp_path / "answers.csv")
    assert "--blank answers.ods" in str(refused.value.problems[0].hint)


@pytest.mark.parametrize(("index", "name"), [(0, "A7"), (25, "Z7"), (26, "AA7"), (701, "ZZ7"), (702, "AAA7")])
def test_a_cell_is_named_as_spreadsheets_name_it(index, name):
    assert place(7, index) == name


def test_a_line_of_bytes_that_are_no_text_is_refused_by_its_number(tmp_path):
    path = tmp_path / "answers.csv"
    path.write_bytes(b"empty,right\npupil,1,code\nasks,2/3 \xc3\x97 4/5,VYFX75\nAnn\xff,8/15,VYFX75\n")
    with pytest.raises(AnswersRefused, match=r"answers\.csv:4: this line is not UTF-8 text"):
        read_sheet(path)
