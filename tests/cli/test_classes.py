"""``make`` for lessons and classes: a set each, none made twice, and what fails does not stop the others."""

import io
import sys

import pytest
from conftest import LESSONS

import foldmath.drawing.rendering.recorder  # noqa: F401  matplotlib comes once, and not to every picture_process anew
from foldmath.cli import main
from foldmath.cli.doors import classes
from foldmath.cli.terminal.bar import Bar

LISTS = {"4a": "name\nAda\nBo\n", "4b": "name,level\nCem,guided\n"}
LESSON = str(LESSONS / "seed-trays.toml")
OTHER = str(LESSONS / "tile-panels.toml")


@pytest.fixture
def lists(tmp_path):
    folder = tmp_path / "lists"
    folder.mkdir()
    for name, text in LISTS.items():
        (folder / f"{name}.csv").write_text(text, encoding="utf-8")
    return folder


def made(tmp_path, *words: str) -> int:
    return main(["make", *words, "--out", str(tmp_path / "out")])


def sets(tmp_path):
    return sorted(
        path.relative_to(tmp_path / "out").as_posix()
        for path in tmp_path.glob("out/*/class-*")
        if (path / "class-key.pdf").is_file()
    )


def test_every_lesson_is_made_for_every_list_of_a_folder_and_no_set_twice(tmp_path, lists, capsys):
    (lists / "notes.txt").write_text("no list")
    assert made(tmp_path, LESSON, OTHER, "--classes", str(lists)) == 0
    every = [f"{lesson}/class-{name}" for lesson in ("seed-trays", "tile-panels") for name in LISTS]
    assert sets(tmp_path) == every
    out = capsys.readouterr().out
    assert f"wrote {tmp_path / 'out' / every[0]}: 2 students" in out
    assert f"wrote {tmp_path / 'out' / every[1]}: 1 student\n" in out
    key = tmp_path / "out" / every[0] / "class-key.pdf"
    when = key.stat().st_mtime_ns
    assert made(tmp_path, LESSON, OTHER, "--classes", str(lists)) == 0
    assert capsys.readouterr().out.count("this set is there already") == len(every)
    assert key.stat().st_mtime_ns == when
    (tmp_path / "out" / every[1] / "class-key.pdf").write_bytes(b"hers")
    assert made(tmp_path, LESSON, "--classes", str(lists)) == 0
    out = capsys.readouterr().out
    assert f"{every[0]}: this set is there already" in out
    assert "it is now class-key (kept).pdf" in out


def test_lists_of_a_folder_come_in_the_order_of_their_classes_and_what_programs_leave_there_is_no_list(
    tmp_path,
):
    for name in ("10a", "4b", "4a", "Oak", ".4c", "~$4b"):
        (tmp_path / f"{name}.csv").write_text("name\nAda\n")
    found = classes._rosters(classes.Asked(folder=str(tmp_path)))
    assert [path.stem for path in found] == ["4a", "4b", "10a", "Oak"]


def test_whoever_stops_a_command_for_classes_is_told_that_it_goes_on(tmp_path, lists, monkeypatch, capsys):
    def stop(*_):
        raise KeyboardInterrupt

    monkeypatch.setattr("foldmath.making.classes.ClassLesson", stop)
    assert made(tmp_path, LESSON, "--classes", str(lists)) == 130
    assert "the same command makes the others" in capsys.readouterr().err


class Watched(io.StringIO):
    """Standard error where someone looks on."""

    def isatty(self):
        return True


def test_the_bar_names_the_lesson_and_the_class_that_is_made(monkeypatch):
    monkeypatch.setattr("sys.stderr", Watched())
    with Bar(48) as bar:
        bar.of("seed-trays, 4a")(24)
        bar.tell(lambda: None)
        assert "seed-trays, 4a:  50 %" in sys.stderr.getvalue()


def test_a_list_or_a_lesson_that_cannot_be_used_is_told_once_and_the_others_are_made(tmp_path, lists, capsys):
    wrong_list, wrong_lesson = lists / "4c.csv", tmp_path / "wrong.toml"
    wrong_list.write_text("name,level\nDana,gided\n")
    wrong_lesson.write_text("title = 1\n")
    named = [str(lists / f"{name}.csv") for name in (*LISTS, "4c")]
    assert made(tmp_path, str(wrong_lesson), LESSON, "--class", *named) == 1
    assert sets(tmp_path) == ["seed-trays/class-4a", "seed-trays/class-4b"]
    err = capsys.readouterr().err
    assert err.count("4c.csv:2") == 1
    assert err.count("wrong.toml:1") == 1


def test_two_lists_of_one_name_are_refused(tmp_path, lists, capsys):
    again = tmp_path / "4A.csv"
    again.write_text("name\nAda\n")
    assert made(tmp_path, LESSON, "--class", str(lists / "4a.csv"), str(again)) == 2
    assert "have one name" in capsys.readouterr().err


@pytest.mark.parametrize(("name", "remedy"), [("4a.csv", "--class "), ("4z", "a folder with a list")])
def test_lists_of_a_folder_that_is_none_are_refused(name, remedy, tmp_path, lists, capsys):
    assert made(tmp_path, LESSON, "--classes", str(lists / name)) == 2
    wrong, hint = capsys.readouterr().err.splitlines()
    assert wrong.endswith("this is no folder")
    assert remedy in hint


def test_a_folder_that_is_named_for_a_list_is_told_how_to_name_all_of_its_lists(tmp_path, lists, capsys):
    assert made(tmp_path, LESSON, "--class", str(lists)) == 2
    assert f"--classes {lists}" in capsys.readouterr().err.splitlines()[1]
    assert sets(tmp_path) == []


def test_a_list_that_is_named_twice_is_refused_as_a_file(tmp_path, lists, capsys):
    assert made(tmp_path, LESSON, "--class", *[str(lists / "4a.csv")] * 2) == 2
    assert "each file once" in capsys.readouterr().err


def test_a_folder_without_lists_is_refused(tmp_path, capsys):
    assert made(tmp_path, LESSON, "--classes", str(tmp_path)) == 2
    assert "no class lists" in capsys.readouterr().err


@pytest.mark.parametrize("beside", [(), ("--editable",), ("--only", "key")])
def test_a_cluster_is_refused_where_no_class_is_named(tmp_path, capsys, beside):
    assert made(tmp_path, LESSON, *beside, "--cluster", "tls://scheduler.example:8786") == 2
    assert "no class is named" in capsys.readouterr().err


def test_whether_names_are_sent_to_a_cluster_is_said_before_it_is_asked(tmp_path, lists, monkeypatch, capsys):
    monkeypatch.setattr("foldmath.making.classes.cluster._client", lambda _: 1 / 0)
    with pytest.raises(ZeroDivisionError):
        made(tmp_path, LESSON, "--classes", str(lists), "--cluster", "tcp://10.0.0.7:8786")
    assert "no names are sent there" in capsys.readouterr().out
