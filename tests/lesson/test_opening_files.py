"""Only files are read, whole and not too large; what else lies under a name is told and not waited for."""

import os
import socket
import sys

import pytest

from foldmath.errors import FoldmathError, LessonRefused
from foldmath.fold_format.fold_json import pattern_frame
from foldmath.fold_format.refolding.lesson_writing import imported_lesson
from foldmath.lesson.files.opening import MOST_NEIGHBOURS, Hindrance, Unread, file_bytes, files_in
from foldmath.lesson.files.text import LARGEST_FILE
from foldmath.lesson.reading import read_lesson
from foldmath.lesson.roster import read_roster

POSIX = pytest.mark.skipif(sys.platform == "win32", reason="pipes and devices lie among files on POSIX alone")


def hindrance(path, largest=10):
    with pytest.raises(Unread) as caught:
        file_bytes(path, largest)
    return caught.value.hindrance


def as_pipe(path):
    os.mkfifo(path)


def as_socket(path):
    with socket.socket(socket.AF_UNIX) as bound:
        bound.bind(str(path))


def as_device(path):
    path.symlink_to("/dev/zero")


@pytest.mark.parametrize("name", ["4b.csv", "answers.ODS"])
def test_a_class_list_in_a_lessons_place_is_told_to_be_none(name, tmp_path):
    (tmp_path / name).write_bytes(b"name,level\nAna,core\n")
    with pytest.raises(LessonRefused, match="such as a class list") as refused:
        read_lesson(tmp_path / name)
    assert "ends in .toml" in str(refused.value.problems[0].hint)


@pytest.mark.parametrize(
    ("name", "told", "mend"),
    [
        ("worksheet.pdf", "a page or a picture", "the lesson file that it was made from"),
        ("answer-key.docx", "a page or a picture", "the lesson file that it was made from"),
        ("step-01.SVG", "a page or a picture", "the lesson file that it was made from"),
        ("sheet.fold", "a crease pattern", "foldmath import"),
    ],
)
def test_what_is_known_by_its_name_is_told_even_where_it_is_too_large_or_no_text(name, told, mend, tmp_path):
    (tmp_path / name).write_bytes(b"\xff" * (LARGEST_FILE + 1))
    with pytest.raises(LessonRefused, match=told) as refused:
        read_lesson(tmp_path / name)
    assert mend in str(refused.value.problems[0].hint)


@pytest.mark.parametrize("name", ["lesson.toml", "worksheet.pdf", "sheet.fold"])
def test_another_file_in_a_lists_place_is_told_once_to_be_none(name, tmp_path):
    (tmp_path / name).write_text('steps = ["open", "open"]\n"a" = "b"\n"c" = "d"\n', "utf-8")
    with pytest.raises(FoldmathError, match="this is no list in rows and columns") as refused:
        read_roster(tmp_path / name)
    assert len(refused.value.problems) == 1


def test_the_ending_of_a_name_makes_no_lesson_near(tmp_path):
    (tmp_path / "z.toml").write_text('steps = ["open"]', "utf-8")
    (tmp_path / "seed-beds.toml").write_text('steps = ["open"]', "utf-8")
    for wanted, hint in (("none.toml", "check the name of the file"), ("sed-beds", "seed-beds.toml")):
        with pytest.raises(LessonRefused) as refused:
            read_lesson(tmp_path / wanted)
        assert str(refused.value.problems[0].hint).endswith(hint)


@pytest.mark.parametrize("name", ["none.pdf", "folder.pdf"])
def test_what_is_not_there_or_no_file_is_told_so_whatever_its_name(name, tmp_path):
    (tmp_path / "folder.pdf").mkdir()
    with pytest.raises(LessonRefused, match=r"there is no such file|this is a folder"):
        read_lesson(tmp_path / name)


def test_a_file_is_read_whole_up_to_the_limit(tmp_path):
    path = tmp_path / "ten"
    path.write_bytes(b"\r\n\x1a4567890")
    assert file_bytes(path, 10) == b"\r\n\x1a4567890"
    assert hindrance(path, 9) is Hindrance.TOO_LARGE


def test_what_is_no_file_is_told_by_kind(tmp_path):
    assert hindrance(tmp_path) is Hindrance.FOLDER
    assert hindrance(tmp_path / "none") is Hindrance.MISSING
    (tmp_path / "file").touch()
    assert hindrance(tmp_path / "file" / "below") is Hindrance.MISSING
    assert hindrance(tmp_path / ("n" * 5000)) is Hindrance.REFUSED
    assert hindrance(tmp_path / "a\0b") is Hindrance.REFUSED


@POSIX
@pytest.mark.parametrize("lay", [as_pipe, as_socket, as_device])
@pytest.mark.parametrize("reader", [read_lesson, read_roster, imported_lesson])
def test_no_reader_waits_for_a_pipe_or_reads_a_device(reader, lay, tmp_path):
    lay(tmp_path / "it.toml")
    with pytest.raises(FoldmathError, match="this is not a file"):
        reader(tmp_path / "it.toml")


@POSIX
def test_a_pipe_that_takes_the_place_of_a_file_is_not_waited_for(tmp_path, monkeypatch):
    path = tmp_path / "lesson.toml"
    path.touch()
    as_file = path.stat()
    path.unlink()
    os.mkfifo(path)
    monkeypatch.setattr("pathlib.Path.stat", lambda *_path, **_how: as_file)
    assert hindrance(path) is Hindrance.NO_FILE


@POSIX
def test_a_broken_link_is_not_offered_its_own_name(tmp_path):
    (tmp_path / "seed-trays.toml").symlink_to(tmp_path / "gone.toml")
    with pytest.raises(LessonRefused) as refused:
        read_lesson(tmp_path / "seed-trays.toml")
    assert f"this link leads to a file that is not there: {tmp_path / 'gone.toml'}" in str(refused.value)
    with pytest.raises(LessonRefused) as refused:
        read_lesson(tmp_path / "seed-tray.toml")
    assert f"try:  {tmp_path}" not in str(refused.value)


@POSIX
@pytest.mark.parametrize("lay", [as_pipe, as_device])
def test_what_lies_beside_a_lesson_is_not_waited_for(lay, tmp_path):
    lay(tmp_path / "a.toml")
    (tmp_path / "pages.toml").write_text("[[booklet.pages]]\n", encoding="utf-8")
    lesson = 'title = "T"\ngrade = 5\npaper = "letter"\nsteps = ["fold left edge to middle"]\n'
    booklet = '[booklet]\nform = "eight-page"\npages = "page"\n'
    (tmp_path / "lesson.toml").write_text(lesson + booklet, encoding="utf-8")
    with pytest.raises(LessonRefused, match='pages = "pages"'):
        read_lesson(tmp_path / "lesson.toml")
    with pytest.raises(LessonRefused, match="there is no such file"):
        read_lesson(tmp_path / "none.toml")


def test_a_folder_of_thousands_of_files_is_not_read_through(tmp_path):
    for number in range(MOST_NEIGHBOURS + 50):
        (tmp_path / f"{number}.toml").touch()
    assert len(files_in(tmp_path, ".toml")) == MOST_NEIGHBOURS


def test_a_crease_pattern_is_refused_as_other_files_are(tmp_path):
    with pytest.raises(FoldmathError) as refused:
        pattern_frame(tmp_path / "none.fold")
    assert str(refused.value) == "there is no such file\n    try:  check the name of the file"
