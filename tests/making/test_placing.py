"""A set is in its place whole, beside what the teacher put there; or nothing is changed."""

import errno
import os
import stat
from pathlib import Path

import pytest
from making.placed_sets import NAMES, names_in, run_of, set_of

from foldmath.errors import CannotWrite
from foldmath.making.sets import exchanging, leftovers, placing
from foldmath.making.sets.file_set import Access, FileSet, OtherSet
from foldmath.making.sets.manifest import MANIFEST, Origin, read_manifest
from foldmath.making.sets.placing import place, place_part


@pytest.fixture(params=["in one step", "in two renames"])
def way(request, monkeypatch):
    """Exchange folders in one step where this system can, and as others must."""
    if request.param == "in two renames":
        monkeypatch.setattr(exchanging, "_renameat2", lambda: None)
    return request.param


def rights(path: Path) -> int:
    return stat.S_IMODE(path.stat().st_mode)


# The set.


def test_a_set_lies_in_its_folder_with_its_manifest_and_nothing_else_anywhere(tmp_path):
    placed = place(set_of("first", tmp_path / "out"))
    folder = tmp_path / "out" / "seed-trays"
    assert placed.files == tuple(folder / name for name in NAMES)
    assert placed.notes == ()
    assert run_of(folder) == "first"
    assert names_in(folder) == set(NAMES)
    assert os.listdir(tmp_path / "out") == ["seed-trays"]


def test_a_set_takes_the_place_of_the_one_before_it(tmp_path, way):
    place(set_of("first", tmp_path))
    place(set_of("second", tmp_path))
    assert run_of(tmp_path / "seed-trays") == "second"
    assert names_in(tmp_path) == {f"seed-trays/{name}" for name in (*NAMES, MANIFEST)}


def test_a_file_that_the_new_set_does_not_have_goes_with_the_old_one(tmp_path, way):
    more = set_of("first", tmp_path, names=(*NAMES, "booklet.pdf", "old/plan.pdf"))
    place(more)
    place(set_of("second", tmp_path))
    assert names_in(tmp_path / "seed-trays") == set(NAMES)
    assert not (tmp_path / "seed-trays" / "old").exists()


def test_the_same_files_give_the_same_manifest(tmp_path):
    for out in ("one", "two"):
        place(set_of("first", tmp_path / out))
    one, two = ((tmp_path / out / "seed-trays" / MANIFEST).read_bytes() for out in ("one", "two"))
    assert one == two


@pytest.mark.parametrize(
    "text", [b"", b"[]", b"{}", b'{"files": 1}', b"[" * 100_000, b'{"lesson": 1, "version": "1"}', b"\xff"]
)
def test_a_manifest_that_cannot_be_used_is_none(tmp_path, text):
    (tmp_path / MANIFEST).write_bytes(text)
    assert read_manifest(tmp_path) is None


# What the teacher put there.


def test_files_and_folders_of_her_own_stay_as_they_are(tmp_path, way):
    folder = tmp_path / "seed-trays"
    place(set_of("first", tmp_path))
    (folder / "notes.txt").write_text("ask Bo about thirds", encoding="utf-8")
    (folder / "diagrams" / "photo.png").write_bytes(b"photo")
    (folder / "scans" / "empty").mkdir(parents=True)
    (folder / "scans" / "locked").mkdir(mode=0o700)
    (folder / "scans" / "locked" / "one.pdf").write_bytes(b"scan")
    (folder / "link").symlink_to("notes.txt")
    number = (folder / "notes.txt").stat().st_ino
    assert place(set_of("second", tmp_path)).notes == ()
    assert run_of(folder) == "second"
    own = {"notes.txt", "diagrams/photo.png", "scans/locked/one.pdf", "link"}
    assert names_in(folder) == {*NAMES, *own}
    assert (folder / "scans" / "empty").is_dir()
    assert rights(folder / "scans" / "locked") == 0o700
    assert (folder / "link").readlink() == Path("notes.txt")
    assert (folder / "notes.txt").stat().st_ino == number


def test_a_page_that_she_changed_is_kept_under_another_name_and_she_is_told(tmp_path, way):
    folder = tmp_path / "seed-trays"
    for run, written in (("first", "mine"), ("second", "mine too")):
        place(set_of(run, tmp_path))
        (folder / "worksheet.pdf").write_text(written, encoding="utf-8")
    (note,) = place(set_of("first", tmp_path)).notes
    assert str(note).endswith("worksheet.pdf was changed after it was made; as you left it, it is now "
                         "worksheet (kept 2).pdf")  # fmt: skip
    assert run_of(folder) == "first"
    assert (folder / "worksheet (kept).pdf").read_text("utf-8") == "mine"
    assert (folder / "worksheet (kept 2).pdf").read_text("utf-8") == "mine too"


def test_a_changed_page_that_the_new_set_does_not_have_keeps_its_name(tmp_path):
    place(set_of("first", tmp_path, names=(*NAMES, "booklet.pdf")))
    (tmp_path / "seed-trays" / "booklet.pdf").write_bytes(b"mine")
    assert place(set_of("second", tmp_path)).notes == ()
    assert (tmp_path / "seed-trays" / "booklet.pdf").read_bytes() == b"mine"


def test_pages_that_are_not_made_again_go_and_she_is_told_once_by_their_folders(tmp_path, way):
    languages = ("es/worksheet.pdf", "es/answer-key.pdf", "en-US/worksheet.pdf", "booklet.pdf")
    place(set_of("first", tmp_path, names=languages))
    (note,) = place(set_of("second", tmp_path)).notes
    folder = tmp_path / "seed-trays"
    assert str(note) == f"no longer in {folder}, since not made this time: booklet.pdf, en-US and es"
    assert names_in(folder) == set(NAMES)


def test_of_more_than_three_pages_that_go_she_is_told_how_many(tmp_path):
    place(set_of("first", tmp_path, names=("a.pdf", "b.pdf", "c.pdf", "d.pdf")))
    (note,) = place(set_of("second", tmp_path)).notes
    assert str(note) == f"no longer in {tmp_path / 'seed-trays'}, since not made this time: 4 files"


def test_nothing_is_told_of_what_she_removed_or_kept_or_of_a_folder_that_is_made_again(tmp_path):
    folder = tmp_path / "seed-trays"
    place(set_of("first", tmp_path, names=(*NAMES, "booklet.pdf", "ticket.pdf", "diagrams/step-3.svg")))
    (folder / "booklet.pdf").unlink()
    (folder / "ticket.pdf").write_bytes(b"mine")
    assert place(set_of("second", tmp_path)).notes == ()
    assert names_in(folder) == {*NAMES, "ticket.pdf"}


def test_files_in_a_folder_without_a_manifest_are_all_hers(tmp_path, way):
    folder = tmp_path / "seed-trays"
    folder.mkdir()
    (folder / "worksheet.pdf").write_bytes(b"mine")
    (folder / "answer-key.pdf").write_bytes(set_of("first", tmp_path).files["answer-key.pdf"])
    place(set_of("first", tmp_path))
    assert names_in(folder) == {*NAMES, "worksheet (kept).pdf"}
    assert (folder / "worksheet (kept).pdf").read_bytes() == b"mine"


@pytest.mark.parametrize("hers", ["worksheet.pdf/one.txt", "diagrams"])
def test_a_folder_where_a_page_goes_and_a_file_where_a_folder_goes_are_kept_too(tmp_path, way, hers):
    folder = tmp_path / "seed-trays"
    (folder / hers).parent.mkdir(parents=True)
    (folder / hers).write_bytes(b"mine")
    place(set_of("first", tmp_path))
    kept = {"worksheet.pdf/one.txt": "worksheet (kept).pdf/one.txt", "diagrams": "diagrams (kept)"}[hers]
    assert (folder / kept).read_bytes() == b"mine"
    assert names_in(folder) == {*NAMES, kept}


@pytest.mark.parametrize("renamed_over", [False, True], ids=["written in place", "written anew"])
def test_what_she_saves_while_a_set_is_put_in_place_is_not_lost(tmp_path, way, monkeypatch, renamed_over):
    folder = tmp_path / "seed-trays"
    place(set_of("first", tmp_path))
    (folder / "notes.txt").write_bytes(b"before")
    exchange = placing.put_in_place_of

    def saved_just_before(*folders):
        if renamed_over:
            (folder / "new").write_bytes(b"just before")
            (folder / "new").rename(folder / "notes.txt")
        else:
            (folder / "notes.txt").write_bytes(b"just before")
        (folder / "later.txt").write_bytes(b"just before")
        exchange(*folders)

    monkeypatch.setattr(placing, "put_in_place_of", saved_just_before)
    place(set_of("second", tmp_path))
    assert run_of(folder) == "second"
    assert (folder / "later.txt").read_bytes() == b"just before"
    assert b"just before" in {path.read_bytes() for path in folder.glob("notes*.txt")}


def test_where_files_cannot_be_linked_they_are_copied(tmp_path, monkeypatch):
    def refuse(*given, **more):
        raise OSError(errno.EPERM, "Operation not permitted")

    monkeypatch.setattr(os, "link", refuse)
    place(set_of("first", tmp_path))
    (tmp_path / "seed-trays" / "notes.txt").write_bytes(b"mine")
    (tmp_path / "seed-trays" / "link").symlink_to("nowhere")
    place(set_of("second", tmp_path))
    assert (tmp_path / "seed-trays" / "notes.txt").read_bytes() == b"mine"
    assert (tmp_path / "seed-trays" / "link").readlink() == Path("nowhere")


# Sets beside one another.


def test_the_sets_of_a_class_stay_when_the_pages_of_the_lesson_are_made_anew(tmp_path, way):
    place(set_of("first", tmp_path, "class-4b"))
    place(set_of("first", tmp_path))
    place(set_of("second", tmp_path))
    place(set_of("second", tmp_path, "class-5a"))
    folder = tmp_path / "seed-trays"
    runs = {name: run_of(folder / name) for name in ("", "class-4b", "class-5a")}
    assert runs == {"": "second", "class-4b": "first", "class-5a": "second"}


def test_a_folder_that_is_elsewhere_by_a_link_is_changed_there(tmp_path, way):
    (tmp_path / "disk" / "trays").mkdir(parents=True)
    (tmp_path / "seed-trays").symlink_to(tmp_path / "disk" / "trays")
    place(set_of("first", tmp_path))
    place(set_of("second", tmp_path))
    assert (tmp_path / "seed-trays").is_symlink()
    assert run_of(tmp_path / "disk" / "trays") == "second"
    assert os.listdir(tmp_path / "disk") == ["trays"]


# A part of a set.


def part(run: str, out: Path, *names: str) -> FileSet:
    return set_of(run, out, names=names)


def test_a_part_is_made_anew_and_the_rest_is_kept_as_it_is(tmp_path, way):
    folder = tmp_path / "seed-trays"
    place(set_of("first", tmp_path))
    whole = (folder / MANIFEST).read_bytes()
    (folder / "diagrams" / "step-1.svg").write_bytes(b"mine")
    numbers = {name: (folder / name).stat().st_ino for name in NAMES}
    (folder / "answer-key.pdf").unlink()
    placed = place_part(part("first", tmp_path, "answer-key.pdf"))
    assert placed.files == (folder / "answer-key.pdf",)
    assert names_in(folder) == set(NAMES)
    assert (folder / MANIFEST).read_bytes() == whole
    assert (folder / "diagrams" / "step-1.svg").read_bytes() == b"mine"
    assert (folder / "worksheet.pdf").stat().st_ino == numbers["worksheet.pdf"]


def test_a_part_of_another_run_is_refused_with_what_to_do(tmp_path):
    place(set_of("first", tmp_path))
    with pytest.raises(OtherSet, match="without --only"):
        place_part(part("second", tmp_path, "answer-key.pdf"))
    assert run_of(tmp_path / "seed-trays") == "first"


@pytest.mark.parametrize(
    ("origin", "reason"),
    [
        (Origin("second"), "before it was changed"),
        (Origin("first", {"paper": "A4"}), r"other options \(letter, not A4\)"),
        (Origin("first", {"paper": "letter"}, "99"), "by foldmath .*, and this is 99"),
    ],
)
def test_the_refusal_says_what_differs(tmp_path, origin, reason):
    files = {"worksheet.pdf": b"1", "answer-key.pdf": b"1"}
    lesson = tmp_path / "seed-trays"
    place(FileSet(lesson_folder=lesson, files=files, origin=Origin("first", {"paper": "letter"})))
    with pytest.raises(OtherSet, match=reason):
        place_part(FileSet(lesson_folder=lesson, files={"worksheet.pdf": b"2"}, origin=origin))
    assert (lesson / "worksheet.pdf").read_bytes() == b"1"


def test_a_part_may_be_all_there_is(tmp_path):
    place_part(part("first", tmp_path, "answer-key.pdf"))
    place_part(part("first", tmp_path, "worksheet.pdf"))
    assert names_in(tmp_path / "seed-trays") == {"answer-key.pdf", "worksheet.pdf"}


# Who may read it.


def test_files_with_pupils_names_are_the_users_alone(tmp_path):
    named = FileSet(
        lesson_folder=tmp_path / "seed-trays",
        name="class-4b",
        files={"class-worksheets.pdf": b"Ada", "more/key.pdf": b"Ada"},
        origin=Origin("first"),
        access=Access.OWNER,
    )
    before = os.umask(0o022)
    try:
        for _ in range(2):
            place(named)
            (tmp_path / "seed-trays" / "class-4b").chmod(0o755)
        place(named)
    finally:
        os.umask(before)
    folder = tmp_path / "seed-trays" / "class-4b"
    assert rights(folder) == rights(folder / "more") == 0o700
    assert {rights(folder / name) for name in ("class-worksheets.pdf", "more/key.pdf", MANIFEST)} == {0o600}


def test_other_files_may_be_read_by_those_whom_the_user_lets_read_new_files(tmp_path):
    before = os.umask(0o027)
    try:
        place(set_of("first", tmp_path))
    finally:
        os.umask(before)
    folder = tmp_path / "seed-trays"
    assert (rights(folder), rights(folder / "worksheet.pdf")) == (0o750, 0o640)
    folder.chmod(0o705)
    place(set_of("second", tmp_path))
    assert rights(folder) == 0o705


# Nothing is changed.


def everything(folder: Path) -> dict[str, bytes]:
    return {
        path.relative_to(folder).as_posix(): path.read_bytes() for path in folder.rglob("*") if path.is_file()
    }


@pytest.mark.parametrize("failing", ["_write", "carry_over", "put_in_place_of"])
@pytest.mark.parametrize(
    ("error", "said"),
    [
        (OSError(errno.ENOSPC, "No space left on device"), "make room on this disk"),
        (PermissionError(errno.EACCES, "Permission denied"), "another folder"),
        (OSError(errno.ENAMETOOLONG, "File name too long"), "a shorter name"),
    ],
)
def test_a_set_that_cannot_be_written_leaves_all_as_it_was(tmp_path, monkeypatch, failing, error, said):
    place(set_of("first", tmp_path))
    (tmp_path / "seed-trays" / "notes.txt").write_bytes(b"mine")
    before = everything(tmp_path)

    def fail(*given):
        raise error

    monkeypatch.setattr(placing, failing, fail)
    with pytest.raises(CannotWrite, match=f"(?s)seed-trays: the pages cannot be written: .*{said}") as caught:
        place(set_of("second", tmp_path))
    assert "nothing there was changed" in str(caught.value)
    assert everything(tmp_path) == before


def test_a_signal_leaves_one_run_whole_and_nothing_beside_it(tmp_path, monkeypatch, way):
    place(set_of("first", tmp_path))
    (tmp_path / "seed-trays" / "notes.txt").write_bytes(b"mine")
    exchange, mend = placing.put_in_place_of, leftovers.mend

    def stopped(*folders):
        exchange(*folders)
        raise KeyboardInterrupt

    monkeypatch.setattr(placing, "put_in_place_of", stopped)
    with pytest.raises(KeyboardInterrupt):
        place(set_of("second", tmp_path))
    assert run_of(tmp_path / "seed-trays") == "second"

    def stopped_again(folder):
        monkeypatch.setattr(placing, "mend", mend)
        raise KeyboardInterrupt

    monkeypatch.setattr(placing, "mend", stopped_again)
    with pytest.raises(KeyboardInterrupt):
        place(set_of("first", tmp_path))
    assert run_of(tmp_path / "seed-trays") == "first"
    assert os.listdir(tmp_path) == ["seed-trays"]
    assert (tmp_path / "seed-trays" / "notes.txt").read_bytes() == b"mine"


@pytest.mark.parametrize("where", ["out", "out/seed-trays"])
def test_a_file_in_the_way_of_the_folder_stays_and_is_told_of(tmp_path, where):
    (tmp_path / where).parent.mkdir(exist_ok=True)
    (tmp_path / where).write_bytes(b"mine")
    with pytest.raises(CannotWrite, match="out/seed-trays: the pages cannot be written: ") as caught:
        place(set_of("first", tmp_path / "out"))
    assert f"{tmp_path / where} is a file, not a folder;" in str(caught.value)
    assert str(caught.value.hint) == "another folder"
    assert everything(tmp_path) == {where: b"mine"}


def test_a_folder_that_cannot_take_another_ones_name_is_left_as_it_was(tmp_path, monkeypatch):
    place(set_of("first", tmp_path))
    monkeypatch.setattr(exchanging, "_renameat2", lambda: None)
    rename = os.rename

    def refuse(source, target):
        if Path(target).name == "seed-trays" and Path(source).name != "old":
            raise PermissionError(errno.EACCES, "Permission denied")
        rename(source, target)

    monkeypatch.setattr(exchanging.os, "rename", refuse)
    with pytest.raises(CannotWrite, match="permission denied"):
        place(set_of("second", tmp_path))
    assert run_of(tmp_path / "seed-trays") == "first"
    assert os.listdir(tmp_path) == ["seed-trays"]
