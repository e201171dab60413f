"""A file is put in place whole or not at all."""

import os
import stat

import pytest

from foldmath.errors import CannotWrite
from foldmath.making.sets import writing
from foldmath.making.sets.turns import beside
from foldmath.making.sets.writing import put_for_owner, put_in_place


def interrupted(error):
    def replace(source, target):
        raise error

    return replace


def test_files_are_written_with_the_folders_they_need(tmp_path):
    put_in_place({tmp_path / "a" / "b" / "one.pdf": b"1", tmp_path / "two.pdf": b"2"})
    assert (tmp_path / "a" / "b" / "one.pdf").read_bytes() == b"1"
    assert (tmp_path / "two.pdf").read_bytes() == b"2"


def test_an_old_file_is_replaced_and_nothing_else_is_left_beside_it(tmp_path):
    page = tmp_path / "page.pdf"
    page.write_bytes(b"old and longer")
    put_in_place({page: b"new"})
    assert page.read_bytes() == b"new"
    assert [path.name for path in tmp_path.iterdir()] == ["page.pdf"]


def test_a_new_file_may_be_read_by_those_whom_the_user_lets_read_new_files(tmp_path):
    page = tmp_path / "page.pdf"
    before = os.umask(0o027)
    try:
        put_in_place({page: b"new"})
        assert os.umask(0o027) == 0o027
    finally:
        os.umask(before)
    assert stat.S_IMODE(page.stat().st_mode) == 0o640


@pytest.mark.parametrize("mode", [0o600, 0o664])
def test_a_file_that_is_written_over_may_be_read_by_those_who_might_before_and_by_nobody_else(tmp_path, mode):
    lesson = tmp_path / "next.toml"
    lesson.write_bytes(b"names")
    lesson.chmod(mode)
    put_in_place({lesson: b"other names"})
    assert (lesson.read_bytes(), stat.S_IMODE(lesson.stat().st_mode)) == (b"other names", mode)


def test_a_link_to_a_file_stays_a_link_and_the_file_is_written(tmp_path):
    (tmp_path / "shared").mkdir()
    lesson, link = tmp_path / "shared" / "trays.toml", tmp_path / "trays.toml"
    lesson.write_bytes(b"old")
    link.symlink_to(lesson)
    put_in_place({link: b"new"})
    assert link.is_symlink()
    assert lesson.read_bytes() == b"new"


@pytest.mark.parametrize("error", [OSError(28, "No space left on device"), KeyboardInterrupt()])
def test_an_interrupted_run_leaves_the_old_file_whole_and_no_other(tmp_path, monkeypatch, error):
    page = tmp_path / "page.pdf"
    page.write_bytes(b"old")
    monkeypatch.setattr(writing.os, "replace", interrupted(error))
    with pytest.raises((CannotWrite, KeyboardInterrupt)):
        put_in_place({page: b"new"})
    with pytest.raises((OSError, KeyboardInterrupt)):
        put_for_owner(page, b"new")
    assert page.read_bytes() == b"old"
    assert [path.name for path in tmp_path.iterdir()] == ["page.pdf"]


def test_a_file_for_its_owner_takes_the_place_of_one_that_others_may_read_and_of_a_link(tmp_path):
    names, elsewhere, link = tmp_path / "4b.csv", tmp_path / "elsewhere.csv", tmp_path / "5c.csv"
    for path in (names, elsewhere):
        path.write_bytes(b"old")
        path.chmod(0o644)
    link.symlink_to(elsewhere)
    for path in (names, link):
        put_for_owner(path, b"new")
        assert (path.is_symlink(), path.read_bytes()) == (False, b"new")
        assert stat.S_IMODE(path.stat().st_mode) == 0o600
    assert elsewhere.read_bytes() == b"old"


def test_a_file_where_a_folder_is_needed_is_named_with_what_to_do(tmp_path):
    (tmp_path / "out").write_bytes(b"mine")
    with pytest.raises(CannotWrite) as caught:
        put_in_place({tmp_path / "out" / "page.pdf": b"new"})
    assert str(tmp_path / "out" / "page.pdf") in str(caught.value)
    assert "another folder" in str(caught.value)
    assert (tmp_path / "out").read_bytes() == b"mine"


def test_a_folder_where_a_file_is_needed_stays_as_it_is(tmp_path):
    (tmp_path / "page.pdf" / "kept").mkdir(parents=True)
    with pytest.raises(CannotWrite, match=r"page\.pdf: cannot be written"):
        put_in_place({tmp_path / "page.pdf": b"new"})
    assert (tmp_path / "page.pdf" / "kept").is_dir()
    assert [path.name for path in tmp_path.iterdir()] == ["page.pdf"]


def test_what_a_killed_run_left_is_gone_after_the_next(tmp_path):
    page = tmp_path / "page.pdf"
    for ending in ("-new", "-lock"):
        beside(page, ending).write_bytes(b"half a pa")
    put_in_place({page: b"new"})
    assert page.read_bytes() == b"new"
    assert [path.name for path in tmp_path.iterdir()] == ["page.pdf"]


def test_a_folder_that_nobody_may_write_in_is_named(tmp_path, monkeypatch):
    def refuse(path):
        raise PermissionError(13, "Permission denied")

    monkeypatch.setattr(writing, "turn", refuse)
    with pytest.raises(CannotWrite, match="cannot be written: permission denied"):
        put_in_place({tmp_path / "page.pdf": b"new"})
    assert list(tmp_path.iterdir()) == []
