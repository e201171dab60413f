"""The shelf holds the lessons of one folder, and no name leads out of it."""

import os

import pytest

from foldmath.desk.shelf import shelf
from foldmath.desk.shelf.open_lesson import ChangedOutside, open_lesson, save
from foldmath.desk.shelf.shelf import NoSuchLesson, file_name
from foldmath.errors import CannotWrite

ABOVE = "../" * 8 + "etc/passwd"
SPELLINGS = [
    "..", ".", "...", "../outside", "..\\outside", "%2e%2e/outside", "%2e%2e%2foutside", "..%2foutside",
    "..%5coutside", "%252e%252e%252foutside", "..%c0%afoutside", "..%ef%bc%8foutside", "．．/outside",
    "..;/outside", "....//outside", "..../outside", "./../outside", "seed-trays/../../outside",
    "/etc/passwd", "//etc/passwd", "\\etc\\passwd", ABOVE, "file:///etc/passwd", "C:\\Windows\\win.ini",
    "C:outside", "\\\\server\\share\\x", "~/outside", "~root", "$HOME/x", "outside\x00", "outside%00",
    "outside.toml", "outside.toml/", "con", "nul", "aux.toml", "/dev/zero", "dev/stdin", "linked",
    "linked-folder/outside", "pipe", "seed-trays\n", " seed-trays", "seed-trays ", "SEED-TRAYS/..", "",
]  # fmt: skip


@pytest.fixture
def surrounded(desk, tmp_path_factory, seed_trays):
    """Lay beside the folder what must not be reached, and links, a pipe and a folder into it."""
    outside = tmp_path_factory.mktemp("beside") / "outside.toml"
    outside.write_text('title = "Secret"\n')
    (desk.folder / "linked.toml").symlink_to(outside)
    (desk.folder / "linked-folder").symlink_to(outside.parent)
    (desk.folder.parent / "outside.toml").write_text('title = "Secret"\n')
    os.mkfifo(desk.folder / "pipe.toml")
    (desk.folder / "folder.toml").mkdir()
    return desk


@pytest.mark.parametrize("name", SPELLINGS)
def test_no_spelling_of_a_name_leads_out_of_the_folder(surrounded, name):
    with pytest.raises(NoSuchLesson):
        surrounded.shelf.path(name)


@pytest.mark.parametrize("name", SPELLINGS)
@pytest.mark.parametrize("address", ["/lesson/{}/fold", "/lesson/{}/", "/static/{}"])
def test_no_address_leads_out_of_the_folder(surrounded, visitor, name, address):
    answer = visitor.get(address.format(name))
    assert answer.status_code < 500
    assert b"Secret" not in answer.data
    assert b"root:" not in answer.data


def test_the_forty_spellings_are_forty():
    assert len(set(SPELLINGS)) >= 40


def test_only_real_files_of_the_folder_are_lessons(surrounded):
    assert list(surrounded.shelf.lessons()) == ["seed-trays"]


@pytest.mark.parametrize(
    ("title", "name"),
    [
        ("Seed trays", "seed-trays"),
        ("../../etc", "etc"),
        ("2/3 × 4/5", "2-3-4-5"),
        ("…", "lesson"),
        ("Ñandú", "ñandú"),
    ],
)
def test_a_title_makes_the_name_of_a_file_in_the_folder(title, name):
    assert file_name(title) == name


def test_lessons_of_one_title_are_numbered(desk):
    assert [desk.shelf.lay("Seed trays", "") for _ in range(3)] == [
        "seed-trays",
        "seed-trays-2",
        "seed-trays-3",
    ]


def test_a_new_lesson_that_finds_no_room_leaves_no_part_of_it(desk, monkeypatch):
    def full(descriptor, _):
        os.close(descriptor)
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(shelf.os, "fdopen", full)
    with pytest.raises(CannotWrite, match="no space left"):
        desk.shelf.lay("Seed trays", "")
    assert list(desk.folder.iterdir()) == []


def test_a_lesson_that_is_taken_by_two_presses_at_once_is_laid_once(desk, monkeypatch):
    written = shelf._write_new

    def while_another_takes_it(path, text):
        monkeypatch.setattr(shelf, "_write_new", written)
        assert desk.shelf.take("seed-trays", "en-US") == "seed-trays"
        written(path, text)

    monkeypatch.setattr(shelf, "_write_new", while_another_takes_it)
    assert desk.shelf.take("seed-trays", "en-US") == "seed-trays"
    assert [path.name for path in desk.folder.iterdir()] == ["seed-trays.toml"]


def test_a_taken_lesson_is_taken_once_and_hers_is_kept(desk, seed_trays):
    seed_trays.write_text("mine")
    assert desk.shelf.take("seed-trays", "es") == "seed-trays"
    assert seed_trays.read_text() == "mine"


def test_what_is_saved_stands_in_the_file_and_nothing_beside_it(desk, seed_trays):
    opened = open_lesson(desk.shelf, "seed-trays")
    saved = save(opened, opened.text + "# more\n")
    assert seed_trays.read_text() == saved.text
    assert [path.name for path in desk.folder.iterdir()] == ["seed-trays.toml"]


def test_a_file_changed_outside_is_never_written_over(desk, seed_trays):
    opened = open_lesson(desk.shelf, "seed-trays")
    seed_trays.write_text(opened.text + "# by hand\n")
    with pytest.raises(ChangedOutside) as refused:
        save(opened, opened.text + "# at the desk\n")
    assert seed_trays.read_text() == refused.value.now.text == opened.text + "# by hand\n"


def test_a_lesson_taken_at_a_spanish_desk_is_in_spanish(visitor, desk):
    visitor.post("/language", data={"token": desk.form, "language": "es"})
    assert "Bandejas de semillas" in visitor.get("/").text
    visitor.post("/take/seed-trays", data={"token": desk.form})
    assert open_lesson(desk.shelf, "seed-trays").read().language == "es"
    assert "Bandejas de semillas" in visitor.get("/lesson/seed-trays/project").text


@pytest.mark.parametrize(
    ("came_from", "leads_to"),
    [
        ("/lesson/seed-trays/practice?level=stretch", "/lesson/seed-trays/practice?level=stretch"),
        ("/lesson/seed-trays/class", "/lesson/seed-trays/class"),
        ("/new/empty", "/"),
        ("/nowhere", "/"),
        ("//evil.example/new", "/"),
    ],
)
def test_who_chooses_a_language_stays_where_it_was_chosen(visitor, desk, seed_trays, came_from, leads_to):
    """A page that only a form leads to cannot be shown again, and no address leads to another site."""
    form = {"token": desk.form, "language": "es"}
    answer = visitor.post(
        "/language", data=form, headers={"Referer": f"http://127.0.0.1:{desk.port}{came_from}"}
    )
    assert answer.headers["Location"] == leads_to
    elsewhere = visitor.post("/language", data=form, headers={"Referer": "http://127.0.0.1.example/new"})
    assert elsewhere.headers["Location"] == "/"
