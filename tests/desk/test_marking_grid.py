"""Answers are typed into a grid: each cell is marked as it is typed, and the class as by the command."""

import re
from html import unescape

import pytest

from foldmath.desk.classes.typed_lists import typed_pupils
from foldmath.lesson.proving import prove
from foldmath.lesson.reading import read_lesson
from foldmath.marking.asking.lesson_pages import LessonPages
from foldmath.practice.own_numbers import pupil_seed
from foldmath.statements.items import Level
from foldmath.words.saying import say

TWO_AT_CORE = {"class": "4b", "pupils": "Ada\nBo"}
AWAY = {"en-US": "absent", "en-GB": "absent", "es": "ausente"}
CLASS = {"class": "4b", "pupils": "Ada Reed, guided\nBo Marsh\n"}
GRID = {"class": "4b", "label": ["Ada Reed", "Bo Marsh"], "level": ["guided", "core"]}


def pages_of_pupils(desk):
    """Give the page of each of two pupils with numbers of their own, as marking asks it."""
    proved = prove(read_lesson(desk.folder / "seed-trays.toml"))
    pupils = typed_pupils(TWO_AT_CORE["pupils"], "4b")
    return {
        pupil.label: LessonPages(proved).own(pupil.level, pupil_seed(proved.lesson, pupil))
        for pupil in pupils
    }


@pytest.fixture
def cell(visitor, desk, seed_trays):
    def typed(answer, column="1", level="core", seed=""):
        values = {"level": level, "seed": seed, "column": column, "answer": answer}
        headers = {"X-Foldmath-Token": desk.form, "Accept": "application/json"}
        return visitor.post("/lesson/seed-trays/mark/cell", json=values, headers=headers)

    return typed


@pytest.mark.parametrize(
    ("answer", "verdict"),
    [("8/15", "RIGHT"), ("16/30", "ANOTHER_FORM"), ("6/8", "WRONG"), ("8/", "UNREAD"), ("", "NOT_DONE")],
)
def test_a_cell_is_marked_as_it_is_typed(cell, answer, verdict):
    assert cell(answer).json["verdict"] == verdict


@pytest.mark.parametrize("language", AWAY)
def test_who_was_away_is_typed_with_the_word_that_the_page_names(visitor, desk, seed_trays, language):
    visitor.post("/language", data={"token": desk.form, "language": language})
    page = visitor.post("/lesson/seed-trays/mark", data={"token": desk.form, **CLASS}).text
    (note,) = re.findall(r'<p class="note">([^<]* Tab [^<]*)</p>', page)
    assert f" {AWAY[language]} " in note
    answers = {"0-0": AWAY[language]}
    done = visitor.post("/lesson/seed-trays/mark/done", data={"token": desk.form, **GRID, **answers}).text
    # The lesson is in English, whatever the desk speaks.
    assert re.search(r"<h2>[^<]*\b1 (student|pupil|estudiante)\b", done)


def test_a_wrong_cell_says_why(cell):
    assert "Adds tops and bottoms" in cell("6/8").json["says"]


@pytest.mark.parametrize(
    "values", ["core", [], {}, {"level": "core"}, {"level": 1, "column": [], "answer": {}}]
)
def test_a_cell_without_its_parts_is_refused(visitor, desk, seed_trays, values):
    headers = {"X-Foldmath-Token": desk.form, "Accept": "application/json"}
    answer = visitor.post("/lesson/seed-trays/mark/cell", json=values, headers=headers)
    assert answer.status_code == 422


@pytest.mark.parametrize(("column", "level"), [("99", "core"), ("1", "expert")])
def test_a_cell_that_no_page_has_is_refused(cell, column, level):
    assert cell("1/2", column, level).status_code == 422


def test_the_grid_has_a_named_cell_for_each_pupil_and_each_item_of_the_pupils_level(
    visitor, desk, seed_trays
):
    page = visitor.post("/lesson/seed-trays/mark", data={"token": desk.form, **CLASS}).text
    named = re.findall(r'aria-label="(Ada Reed|Bo Marsh), ([^"]+)"', page)
    for pupil in ("Ada Reed", "Bo Marsh"):
        columns = [column for name, column in named if name == pupil]
        assert {"1", "2", "Fold 1: panels"} <= set(columns)
        assert len(columns) == len(set(columns))


def test_the_last_items_have_a_column_or_are_named_above_the_grid(visitor, desk, seed_trays):
    page = visitor.post("/lesson/seed-trays/mark", data={"token": desk.form, **CLASS}).text
    heads = re.findall(r'<th scope="col">([^<]*)</th>', page)
    assert heads[1:8] == list("1234567")
    assert [heads[8], heads[9], heads[-3]] == ["Fold 1: panels", "Fold 1: one panel is", "Ticket 1: panels"]
    assert "not marked here: item 5 (guided)." in page


def test_true_or_false_is_marked_by_what_the_sentence_is(cell, desk):
    pages = LessonPages(prove(read_lesson(desk.folder / "seed-trays.toml")))
    is_true = pages.of_class(Level.CORE).by_column["7"].true
    for answer, says in (("t", True), ("true", True), ("f", False), ("false", False)):
        assert cell(answer, column="7").json["verdict"] == ("RIGHT" if says is is_true else "WRONG")
    assert cell("8", column="7").json["verdict"] == "UNREAD"


def test_the_class_is_marked_as_by_the_command_in_files_for_her_alone(visitor, desk, seed_trays):
    answers = {"0-0": "6/8", "1-0": "8/15", "empty": "right"}
    answer = visitor.post("/lesson/seed-trays/mark/done", data={"token": desk.form, **GRID, **answers})
    assert answer.status_code == 200
    (made,) = (desk.folder / "seed-trays").glob("marks-*-4b")
    assert {"marks.csv", "class-report.pdf", "next.toml"} <= {path.name for path in made.iterdir()}
    assert "6/8" in (made / "marks.csv").read_text("utf-8-sig")
    assert not [path for path in desk.folder.rglob("*4b*") if path.stat().st_mode & 0o77]


def cells(page):
    return dict(re.findall(r'<input name="(\d+-\d+)"[^>]* value="([^"]*)"', page))


def test_the_answers_stand_there_again_when_they_are_marked_and_another_day(visitor, desk, seed_trays):
    answers = {"0-0": "6/8", "1-0": "8/15", "1-2": "c, s", "empty": "not done"}
    marked = visitor.post("/lesson/seed-trays/mark/done", data={"token": desk.form, **GRID, **answers}).text
    again = visitor.post("/lesson/seed-trays/mark", data={"token": desk.form, "answers": "4b"}).text
    for page in (marked, again):
        typed = {name: value for name, value in cells(page).items() if value}
        assert typed == {name: value for name, value in answers.items() if name != "empty"}
        assert 'value="not done" checked' in page
    assert re.findall(r'name="level" value="(\w+)"', again) == ["guided", "core"]
    assert "<option>4b</option>" in visitor.get("/lesson/seed-trays/mark").text


@pytest.mark.parametrize("blocked", ["classes", "seed-trays"])
def test_answers_that_cannot_be_written_stand_there_again_with_the_reason(visitor, desk, seed_trays, blocked):
    (desk.folder / blocked).write_text("a file where a folder should be")
    answers = {"0-0": "6/8", "1-0": "8/15", "empty": "not done"}
    answer = visitor.post("/lesson/seed-trays/mark/done", data={"token": desk.form, **GRID, **answers})
    assert answer.status_code == 422
    assert {name: value for name, value in cells(answer.text).items() if value} == {
        "0-0": "6/8",
        "1-0": "8/15",
    }
    assert 'value="not done" checked' in answer.text
    assert "cannot be written" in answer.text


def test_answers_to_another_lesson_are_not_offered(visitor, desk, seed_trays):
    kept = desk.folder / "classes"
    kept.mkdir()
    (kept / "tile-panels-4b-answers.csv").write_text("x")
    assert "<option>" not in visitor.get("/lesson/seed-trays/mark").text


@pytest.mark.parametrize("name", ["../../x", "/etc/x", "..", "a/b"])
def test_the_name_of_a_class_leads_nowhere_else(visitor, desk, seed_trays, name):
    outside = set(desk.folder.parent.iterdir())
    visitor.post("/lesson/seed-trays/mark/done", data={"token": desk.form, **GRID, "class": name})
    assert set(desk.folder.parent.iterdir()) == outside
    assert {path.name for path in desk.folder.iterdir()} == {"seed-trays.toml", "seed-trays", "classes"}


def test_a_grid_without_pupils_is_refused(visitor, desk, seed_trays):
    assert visitor.post("/lesson/seed-trays/mark", data={"token": desk.form}).status_code == 422
    assert visitor.post("/lesson/seed-trays/mark/done", data={"token": desk.form}).status_code == 422


def rows_of(page):
    """Give the seeds of the rows, and what each cell asks, as the grid has them."""
    cells = re.findall(
        r'name="(\d+)-\d+"[^>]*data-column="(\w+)"[^>]*data-seed="(\d*)"[^>]*title="([^"]*)"', page
    )
    return {(row, column): (seed, unescape(asks)) for row, column, seed, asks in cells}


def test_answers_on_pages_of_their_own_are_marked_by_these(visitor, desk, seed_trays, cell):
    made = visitor.post("/lesson/seed-trays/class", data={"token": desk.form, **TWO_AT_CORE})
    assert made.status_code == 200
    # Pages with own numbers were made, so these are offered.
    assert 'name="own" value="1" checked' in visitor.get("/lesson/seed-trays/mark").text
    page = visitor.post("/lesson/seed-trays/mark", data={"token": desk.form, **TWO_AT_CORE, "own": "1"}).text
    rows = rows_of(page)
    own = pages_of_pupils(desk)
    for row, (pupil, asked) in enumerate(own.items()):
        (seed, asks) = rows[(f"{row}", "4")]
        assert asks == say(asked.by_column["4"].asks, "en-US")
        right = asked.by_column["4"].answer.text
        assert (pupil, cell(right, column="4", seed=seed).json["verdict"]) == (pupil, "RIGHT")
    one, other = (asked.by_column["4"].answer.text for asked in own.values())
    assert one != other
    assert cell(one, column="4", seed=rows[("1", "4")][0]).json["verdict"] == "WRONG"


def test_the_class_is_marked_by_pages_of_their_own_and_they_stand_there_again(visitor, desk, seed_trays):
    one = pages_of_pupils(desk)["Ada"].by_column["4"].answer.text
    grid = {"class": "4b", "label": ["Ada", "Bo"], "level": ["core", "core"], "own": "1"}
    first = visitor.post("/lesson/seed-trays/mark", data={"token": desk.form, **TWO_AT_CORE, "own": "1"}).text
    place = {found[1]: found[0] for found in re.findall(r'name="0-(\d+)"[^>]*data-column="(\w+)"', first)}[
        "4"
    ]
    answers = {f"0-{place}": one, f"1-{place}": one}
    done = visitor.post("/lesson/seed-trays/mark/done", data={"token": desk.form, **grid, **answers})
    assert done.status_code == 200
    (made,) = (desk.folder / "seed-trays").glob("marks-*-4b")
    verdicts = re.findall(
        r"^(Ada|Bo),4,[^,]*,(\w+)", (made / "marks.csv").read_text("utf-8-sig"), re.MULTILINE
    )
    assert verdicts == [("Ada", "right"), ("Bo", "wrong")]
    again = visitor.post("/lesson/seed-trays/mark", data={"token": desk.form, "answers": "4b"}).text
    assert (rows_of(again), cells(again)) == (rows_of(first), cells(done.text))


def test_pupils_who_read_another_language_read_it_in_their_notes_and_in_the_next_lesson(
    visitor, desk, seed_trays
):
    asked = {"class": "4b", "pupils": "Ada\nInés, guided, Spanish", "keep": "1"}
    page = visitor.post("/lesson/seed-trays/mark", data={"token": desk.form, **asked}).text
    assert re.findall(r'name="reads" value="(\w*)"', page) == ["", "es"]
    grid = {"class": "4b", "label": ["Ada", "Inés"], "level": ["core", "guided"], "reads": ["", "es"]}
    visitor.post("/lesson/seed-trays/mark/done", data={"token": desk.form, **grid})
    (made,) = (desk.folder / "seed-trays").glob("marks-*-4b")
    assert "Inés,core,es" in (made / "next-roster.csv").read_text("utf-8-sig")
    again = visitor.post("/lesson/seed-trays/mark", data={"token": desk.form, "answers": "4b"}).text
    assert re.findall(r'name="reads" value="(\w*)"', again) == ["", "es"]
