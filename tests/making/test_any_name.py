"""A class with names in many scripts: each on its own page, in the key, on the plan, and after marking."""

import csv
import re
from datetime import date
from pathlib import Path

import pytest
from conftest import LESSONS, in_silence
from page_reading import text_of
from pages.scripts import NAMES, printable

from foldmath.cli import main
from foldmath.cli.doors import classes
from foldmath.lesson.roster import Pupil, read_roster, told_apart
from foldmath.making import Access, Made, Order, proved_lesson
from foldmath.making.classes import Classroom, make_class
from foldmath.making.marks import MarkOrder, blank_sheet, mark
from foldmath.pages import names
from foldmath.pages.names import told_of_names, with_numbers_for_unprintable
from foldmath.pages.pdf.glyphs import Lack, lack_of
from foldmath.practice.own_numbers import pupil_seed
from foldmath.statements.items import Level
from foldmath.words.saying import say

LESSON = LESSONS / "seed-trays.toml"
STARRED = "Zed ★"
"""A name that no page prints, whatever is installed."""

WORDS = """
home_language = "ar"
words = { panel = "لوحة", crease = "خط الطي" }
"""


@pytest.fixture(scope="module")
def roster(tmp_path_factory) -> Path:
    path = tmp_path_factory.mktemp("list") / "4b.csv"
    path.write_text("name\n" + "".join(f"{name}\n" for name in (*NAMES.values(), STARRED)), "utf-8")
    return path


@pytest.fixture(scope="module")
def made(roster, tmp_path_factory, crew, picture_process) -> Made:
    order = Order(out=tmp_path_factory.mktemp("class"))
    classroom = Classroom("4b", read_roster(roster), Access.OWNER)
    return make_class(LESSON, order, classroom, crew, picture_process, in_silence)


@pytest.fixture(scope="module")
def marked(roster, tmp_path_factory, picture_process):
    folder = tmp_path_factory.mktemp("marked")
    answers = folder / "answers.csv"
    answers.write_bytes(blank_sheet(LESSON, lambda: read_roster(roster), own_numbers=True)(".csv"))
    with answers.open(encoding="utf-8-sig", newline="") as stream:
        rows = list(csv.reader(stream))
    for row in rows[2:]:
        row[rows[1].index("1")] = "22/15"
    with answers.open("w", encoding="utf-8", newline="") as stream:
        csv.writer(stream).writerows(rows)
    order = MarkOrder(answers=answers, out=folder / "out", day=date(2026, 11, 29), own_numbers=True)
    return mark(LESSON, order, None, picture_process, in_silence)


def paper(made, name: str) -> tuple[str, ...]:
    return text_of(next(path for path in made.files if path.name == name))


def stands_in(name: str, text: str) -> bool:
    """Tell whether all words of a name are found; a reader may part the halves of a Persian word."""
    return all(word in text for word in re.split("[ \u200c]", name))


@pytest.mark.parametrize("script", NAMES)
def test_a_name_stands_on_its_own_worksheet_in_the_key_and_on_the_plan(script, made):
    name = printable(script)
    firsts = [text for text in paper(made, "class-worksheets.pdf") if "Predict." in text]
    assert [stands_in(name, text) for text in firsts] == [
        other == name for other in (*NAMES.values(), STARRED)
    ]
    assert stands_in(name, " ".join(paper(made, "class-key.pdf")))
    assert stands_in(name, paper(made, "teacher-plan.pdf")[-1])


@pytest.mark.parametrize("script", NAMES)
def test_a_name_stands_in_the_report_and_on_the_strip_after_marking(script, marked):
    name = printable(script)
    assert stands_in(name, paper(marked, "class-report.pdf")[0])
    assert stands_in(name, " ".join(paper(marked, "notes-to-pupils.pdf")))


def test_a_page_whose_name_cannot_be_printed_carries_the_number_in_the_list(made, marked):
    number = f"#{len(NAMES) + 1}"
    for holder, files in ((made, ("class-worksheets.pdf", "class-key.pdf")), (marked, ("class-report.pdf",))):
        for file in files:
            assert number in " ".join(paper(holder, file))
            assert "Zed" not in " ".join(paper(holder, file))
    (note,) = [say(note, "en-US") for note in made.lacking if "letters alone" in say(note, "en-US")]
    assert note.startswith("1 name cannot be printed; its page has its number in the list, #16.")
    assert any("#16" in say(note, "en-US") for note in marked.notes)


def test_the_number_on_the_page_changes_nobodys_items():
    lesson = proved_lesson(LESSON)[0].lesson
    (pupil,) = with_numbers_for_unprintable([Pupil(STARRED, Level.CORE)])
    assert (pupil.on_paper, pupil.label) == ("#1", STARRED)
    assert pupil_seed(lesson, pupil) == pupil_seed(lesson, Pupil(STARRED, Level.CORE))


def test_two_pupils_of_one_name_in_any_script_have_different_numbers():
    lesson = proved_lesson(LESSON)[0].lesson
    for name in NAMES.values():
        first, second = told_apart([Pupil(name, Level.CORE)] * 2)
        assert pupil_seed(lesson, first) != pupil_seed(lesson, second)


def test_what_is_to_be_installed_is_told_for_each_thing_that_is_lacking(monkeypatch):
    lacks = {"Ann": None, "李": Lack.FONTS, "लता": Lack.LIBRARIES, "李明": Lack.FONTS}
    monkeypatch.setattr(names, "lack_of", lacks.__getitem__)
    pupils = with_numbers_for_unprintable(Pupil(name, Level.CORE) for name in lacks)
    assert [pupil.on_paper for pupil in pupils] == ["Ann", "#2", "#3", "#4"]
    fonts, libraries = (say(note, "en-US") for note in told_of_names(pupils))
    assert fonts.startswith("2 names cannot be printed; pages have their numbers in the list, #2, #4.")
    assert "fonts-noto-core" in fonts
    assert libraries.startswith("1 name cannot be printed; its page has its number in the list, #3.")
    assert "foldmath[scripts]" in libraries


def test_a_command_says_once_what_is_lacking_for_all_its_lessons(monkeypatch, tmp_path, capsys):
    proved = proved_lesson(LESSON)[0]
    pupils = with_numbers_for_unprintable([Pupil(STARRED, Level.CORE)])

    class Lacking:
        """A lesson whose class has a name that cannot be printed."""

        def __init__(self, *_):
            pass

        def in_turn(self, classes):
            made = Made(proved, (tmp_path / "key.pdf",), lacking=told_of_names(pupils))
            return [lambda: made for _ in classes]

    monkeypatch.setattr("foldmath.making.classes.ClassLesson", Lacking)
    lessons = ["a.toml", "b.toml", "c.toml"]
    asked = classes.Asked(pupils=2)
    assert classes.make_class_sets(lessons, "out", None, large_print=False, asked=asked) == 0
    assert capsys.readouterr().out.count("cannot be printed") == 1


def test_home_words_in_another_script_are_set_right_in_the_word_bank(tmp_path):
    for word in ("لوحة", "خط الطي"):
        if lack_of(word):
            pytest.skip("Arabic cannot be set here")
    path = tmp_path / "lesson.toml"
    path.write_text(WORDS + LESSON.read_text("utf-8"), "utf-8")
    assert main(["make", str(path), "--only", "worksheet", "--out", str(tmp_path)]) == 0
    (guided,) = tmp_path.rglob("worksheet-guided.pdf")
    assert all(stands_in(word, " ".join(text_of(guided))) for word in ("لوحة", "خط الطي"))
