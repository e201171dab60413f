"""``make`` and ``draw`` say what they wrote; a lesson that fails does not stop the others."""

import pytest
from conftest import LESSONS
from page_reading import pages_of

import foldmath.drawing.rendering.recorder  # noqa: F401  matplotlib comes once, and not to every picture_process anew
from foldmath import making as rooms
from foldmath.cli import main
from foldmath.cli.doors import making
from foldmath.errors import CannotWrite
from foldmath.making.sets import placing
from foldmath.making.sets.manifest import MANIFEST

SEED_TRAYS = str(LESSONS / "seed-trays.toml")
TILE_PANELS = str(LESSONS / "tile-panels.toml")
PAPERS = {
    *(f"worksheet{level}.pdf" for level in ("-guided", "", "-stretch")),
    *(f"answer-key{level}.pdf" for level in ("-guided", "", "-stretch")),
    "exit-ticket.pdf",
    "teacher-plan.pdf",
    "slides.pdf",
    "slides-reveals.pdf",
    "templates.pdf",
}


def test_make_writes_the_pages_and_the_diagrams_and_says_so(tmp_path, capsys):
    assert main(["make", SEED_TRAYS, "--out", str(tmp_path)]) == 0
    folder = tmp_path / "seed-trays"
    papers = list(folder.glob("*.pdf"))
    assert {path.name for path in papers} == PAPERS
    assert all(path.read_bytes().startswith(b"%PDF") for path in papers)
    diagrams = list((folder / "diagrams").glob("*.svg"))
    out = capsys.readouterr().out
    assert all(f"wrote {path}" in out for path in papers)
    assert f"wrote {len(diagrams)} diagrams (SVG) in {folder / 'diagrams'}" in out


def test_make_echoes_every_step_in_fractions_of_the_whole_sheet(tmp_path, capsys):
    main(["make", SEED_TRAYS, "--out", str(tmp_path), "--only", "templates"])
    lines = capsys.readouterr().out.splitlines()
    assert lines[0] == "Seed trays"
    assert lines[3] == (
        "  3.  fold left edge to right edge:  creases at 1/4 and 3/4 of the width; 8 panels of 1/8"
    )
    assert lines[4] == "  4.  open"


def test_make_asks_where_a_common_fold_was_just_missed(tmp_path, capsys):
    lesson = tmp_path / "gate.toml"
    lesson.write_text(
        'title = "Gate"\ngrade = 5\npaper = "letter"\n'
        'steps = ["fold left edge to middle", "fold right edge to middle"]\n',
        encoding="utf-8",
    )
    assert main(["make", str(lesson), "--out", str(tmp_path)]) == 0
    assert "did you mean fourths?" in capsys.readouterr().out


def test_output_is_the_folder_if_none_is_named(tmp_path, monkeypatch, capsys):
    monkeypatch.chdir(tmp_path)
    assert main(["make", SEED_TRAYS]) == 0
    assert (tmp_path / "output" / "seed-trays" / "worksheet.pdf").is_file()
    assert "wrote output/seed-trays/worksheet.pdf" in capsys.readouterr().out


def test_of_several_lessons_one_that_fails_does_not_stop_the_others(tmp_path, capsys):
    bad = tmp_path / "bad.toml"
    bad.write_text('title = "Bad"\ngrade = 5\npaper = "letter"\nsteps = ["fold him"]\n', encoding="utf-8")
    words = ["make", SEED_TRAYS, str(bad), TILE_PANELS, "--only", "templates", "--out", str(tmp_path / "out")]
    assert main(words) == 1
    assert {path.name for path in (tmp_path / "out").iterdir()} == {"seed-trays", "tile-panels"}
    said = capsys.readouterr()
    errors = [line for line in said.err.splitlines() if not line.endswith("…")]
    assert errors[0] == f"{bad}:4:16: 'him' is not a word that steps use"
    assert "Traceback" not in said.err
    assert "Tile panels" in said.out


def test_a_lesson_that_is_not_there_is_one_error(tmp_path, capsys):
    assert main(["make", str(tmp_path / "seed.toml"), "--out", str(tmp_path)]) == 1
    said = capsys.readouterr()
    assert said.out == ""
    assert "there is no such file" in said.err


@pytest.mark.parametrize(("paper", "width"), [("letter", 612), ("a4", 595.2756)])
def test_pages_are_laid_out_for_the_paper_that_is_asked_for(tmp_path, paper, width):
    assert main(["make", SEED_TRAYS, "--out", str(tmp_path), "--paper", paper]) == 0
    (first, *_) = pages_of(tmp_path / "seed-trays" / "worksheet.pdf")
    assert first["width"] == pytest.approx(width)


def test_a_paper_that_pages_are_not_laid_out_for_is_refused_with_those_that_are(tmp_path, capsys):
    assert main(["make", SEED_TRAYS, "--out", str(tmp_path), "--paper", "foolscap"]) == 2
    said = capsys.readouterr()
    assert "foolscap" in said.err
    assert "--paper letter, or --paper A4" in said.err
    assert list(tmp_path.iterdir()) == []


# Files that cannot be written.


def one_error(said):
    """Give the only error said: one line, and a second with what to try."""
    lines = [line for line in said.err.splitlines() if not line.endswith("…")]
    assert len(lines) == 2
    assert "Traceback" not in said.err
    return lines


def test_a_file_in_the_way_of_the_folder_is_one_clear_error(tmp_path, capsys):
    (tmp_path / "out").write_bytes(b"mine")
    assert main(["make", SEED_TRAYS, "--out", str(tmp_path / "out")]) == 1
    wrong, hint = one_error(capsys.readouterr())
    assert wrong.endswith(f"{tmp_path / 'out'} is a file, not a folder")
    assert "another folder" in hint
    assert (tmp_path / "out").read_bytes() == b"mine"


@pytest.mark.parametrize("out", ["out", "out/pages/of/4b"])
def test_where_nothing_can_be_written_is_said_before_any_page_is_laid_out(out, tmp_path, monkeypatch, capsys):
    (tmp_path / "out").write_bytes(b"mine")
    roster = tmp_path / "4b.csv"
    roster.write_text("name,level\nAna,core\n")
    monkeypatch.setattr("foldmath.cli.doors.classes._crew", lambda _: 1 / 0)
    for classes in ([], ["--class", str(roster)]):
        assert main(["make", SEED_TRAYS, *classes, "--out", str(tmp_path / out)]) == 1
        wrong, _ = one_error(capsys.readouterr())
        assert f"nothing can be written there: {tmp_path / 'out'} is a file" in wrong


def test_a_folder_of_somebody_else_is_refused_before_any_page_is_laid_out(tmp_path, monkeypatch, capsys):
    monkeypatch.setattr("os.access", lambda place, _: place != tmp_path)
    assert main(["make", SEED_TRAYS, "--out", str(tmp_path / "pages")]) == 1
    wrong, _ = one_error(capsys.readouterr())
    assert wrong.endswith("nothing can be written there: permission denied")
    assert not (tmp_path / "pages").exists()


def test_a_folder_that_may_not_be_written_in_keeps_its_old_pages_whole(tmp_path, monkeypatch, capsys):
    main(["make", SEED_TRAYS, "--out", str(tmp_path), "--only", "templates"])
    pages = {path: path.read_bytes() for path in tmp_path.rglob("*") if path.is_file()}
    capsys.readouterr()

    def refuse(*folders):
        raise PermissionError(13, "Permission denied")

    monkeypatch.setattr(placing, "put_in_place_of", refuse)
    assert main(["make", SEED_TRAYS, "--out", str(tmp_path)]) == 1
    wrong, _ = one_error(capsys.readouterr())
    assert wrong.endswith(
        "seed-trays: the pages cannot be written: permission denied; nothing there was changed"
    )
    assert {path: path.read_bytes() for path in tmp_path.rglob("*") if path.is_file()} == pages


def test_pages_that_cannot_be_written_do_not_stop_the_next_lesson(tmp_path, monkeypatch, capsys):
    (tmp_path / "seed-trays").write_bytes(b"in the way")
    assert main(["make", SEED_TRAYS, TILE_PANELS, "--out", str(tmp_path)]) == 1
    assert (tmp_path / "tile-panels" / "worksheet.pdf").is_file()
    assert "seed-trays: the pages cannot be written" in capsys.readouterr().err


def test_stopping_the_command_is_no_traceback(tmp_path, monkeypatch, capsys):
    def stop(*given):
        raise KeyboardInterrupt

    monkeypatch.setattr(rooms, "make", stop)
    assert main(["make", SEED_TRAYS, "--out", str(tmp_path)]) == 130
    assert "stopped" in capsys.readouterr().err


def test_an_error_carries_its_own_exit_code(tmp_path, monkeypatch, capsys):
    def fail(*given):
        raise CannotWrite("no room")

    monkeypatch.setattr(rooms, "draw", fail)
    assert main(["draw", SEED_TRAYS]) == CannotWrite.exit_code == 1
    assert capsys.readouterr().err == "no room\n"


# Drawing, and progress.


def test_draw_saves_every_diagram_as_svg_and_png(tmp_path, capsys):
    assert main(["draw", SEED_TRAYS, "--out", str(tmp_path)]) == 0
    folder = tmp_path / "seed-trays" / "drawings"
    names = {suffix: {path.stem for path in folder.glob(f"*.{suffix}")} for suffix in ("svg", "png")}
    assert names["svg"] == names["png"]
    assert len(names["svg"]) > 8
    assert f"wrote {2 * len(names['svg'])} diagrams (PNG and SVG) in {folder}" in capsys.readouterr().out


def test_progress_is_told_once_the_work_takes_more_than_a_second(monkeypatch, capsys):
    now = [10.0]
    monkeypatch.setattr(making.time, "monotonic", lambda: now[0])
    progress = making.Progress("seed-trays.toml", 2, 3, began=10.0)
    progress("folding")
    assert capsys.readouterr().err == ""
    now[0] = 11.5
    progress("laying out pages")
    assert capsys.readouterr().err == "seed-trays.toml (2 of 3): laying out pages …\n"


def test_booklet_makes_the_booklet_alone_and_tells_the_teacher_what_room_it_has(tmp_path, capsys):
    assert main(["booklet", str(LESSONS / "fraction-diary.toml"), "--out", str(tmp_path)]) == 0
    made = {path.name for path in (tmp_path / "fraction-diary" / "booklet").iterdir()}
    assert made == {"booklet.pdf", "booklet-key.pdf", "booklet-folding.pdf", MANIFEST}
    notes = [line for line in capsys.readouterr().out.splitlines() if line.startswith("note: ")]
    assert any("room for" in note for note in notes)


def test_booklet_of_a_lesson_without_one_writes_nothing(tmp_path, capsys):
    assert main(["booklet", SEED_TRAYS, "--out", str(tmp_path)]) == 1
    assert "no [booklet]" in capsys.readouterr().err
    assert list(tmp_path.iterdir()) == []


# Parts, and one folder for each lesson.


def parts_made(tmp_path, *words):
    assert main(["make", SEED_TRAYS, "--out", str(tmp_path), *words]) == 0
    return {path.name: path.read_bytes() for path in (tmp_path / "seed-trays").glob("*.*")}


def test_only_the_parts_that_are_named_are_made(tmp_path):
    alone = parts_made(tmp_path, "--only", "worksheet, Key")
    assert set(alone) == {name for name in PAPERS if name.startswith(("worksheet", "answer"))} | {MANIFEST}
    more = parts_made(tmp_path, "--only", "slides")
    assert set(more) == {*alone, "slides.html", "slides.pdf", "slides-reveals.pdf"}
    whole = parts_made(tmp_path)
    assert {name: whole[name] for name in more if name != MANIFEST} == {
        name: more[name] for name in more if name != MANIFEST
    }


@pytest.mark.parametrize(
    ("words", "reason"), [(("--paper", "A4"), "other options"), (("--large-print",), "other options")]
)
def test_parts_that_would_not_match_the_others_are_refused_before_any_work(tmp_path, capsys, words, reason):
    before = parts_made(tmp_path, "--only", "worksheet")
    capsys.readouterr()
    assert main(["make", SEED_TRAYS, "--out", str(tmp_path), "--only", "key", *words]) == 1
    said = capsys.readouterr()
    assert reason in said.err
    assert "without --only" in said.err
    assert before == {path.name: path.read_bytes() for path in (tmp_path / "seed-trays").glob("*.*")}


def test_parts_of_a_lesson_that_was_changed_since_are_refused(tmp_path, capsys):
    lesson = tmp_path / "trays.toml"
    text = (LESSONS / "seed-trays.toml").read_text("utf-8")
    lesson.write_text(text, encoding="utf-8")
    assert main(["make", str(lesson), "--out", str(tmp_path), "--only", "worksheet"]) == 0
    lesson.write_text(text.replace("grade = 5", "grade = 4"), encoding="utf-8")
    assert main(["make", str(lesson), "--out", str(tmp_path), "--only", "key"]) == 1
    assert "as it was before it was changed" in capsys.readouterr().err


@pytest.mark.parametrize(
    ("words", "hint"), [("workshet", "--only worksheet"), ("", "--only worksheet,key"), ("x,key", "--only ")]
)
def test_a_part_that_there_is_not_is_refused_once_with_the_nearest(tmp_path, capsys, words, hint):
    assert main(["make", SEED_TRAYS, TILE_PANELS, "--out", str(tmp_path), "--only", words]) == 2
    said = capsys.readouterr().err
    assert hint in said
    assert "slides, templates" in said
    assert said.count("try:") == 1
    assert list(tmp_path.iterdir()) == []


def test_a_booklet_alone_of_a_lesson_without_one_is_refused(tmp_path, capsys):
    assert main(["make", SEED_TRAYS, "--out", str(tmp_path), "--only", "booklet"]) == 1
    assert "no [booklet]" in capsys.readouterr().err
    assert list(tmp_path.iterdir()) == []


def test_a_class_set_is_always_made_whole(tmp_path, capsys):
    with pytest.raises(SystemExit, match="2"):
        main(["make", SEED_TRAYS, "--out", str(tmp_path), "--pupils", "3", "--only", "key"])
    assert "not allowed with" in capsys.readouterr().err


@pytest.mark.parametrize("command", ["make", "booklet", "draw", "export"])
@pytest.mark.parametrize("name", ["seed-trays", "Seed-Trays"])
def test_lessons_that_would_share_a_folder_are_refused_before_any_is_read(tmp_path, capsys, command, name):
    other = str(tmp_path / f"{name}.toml")
    assert main([command, SEED_TRAYS, other, "--out", str(tmp_path)]) == 2
    assert f"{SEED_TRAYS} and {other} have one name" in capsys.readouterr().err
    assert list(tmp_path.iterdir()) == []


def test_a_lesson_that_is_named_twice_is_refused(tmp_path, capsys):
    assert main(["make", SEED_TRAYS, SEED_TRAYS, "--out", str(tmp_path)]) == 2
    assert "is named twice" in capsys.readouterr().err
    assert list(tmp_path.iterdir()) == []
