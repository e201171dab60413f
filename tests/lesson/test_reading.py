"""A sound lesson file is read as it is written; what is no lesson file is refused at once."""

import os
from pathlib import Path

import pytest

from foldmath.errors import LessonRefused, Problem
from foldmath.lesson.files.text import LARGEST_FILE
from foldmath.lesson.files.toml_reading import MOST_DEPTH
from foldmath.lesson.files.wanted import MOST_STEPS
from foldmath.lesson.lesson import Lesson, PracticeRules
from foldmath.lesson.reading import read_lesson
from foldmath.paper.moments.performing import perform
from foldmath.paper.state import Sheet
from foldmath.paper.steps import Edge, FoldEdge, Open
from foldmath.plane.numbers import ONE, ZERO, exact
from foldmath.statements.items import ItemKind

SOUND = (
    'title = "Seed trays"\ngrade = 5\npaper = "letter"\nsteps = ["fold left edge to right edge", "open"]\n'
)


@pytest.fixture
def lesson_file(tmp_path):
    return tmp_path / "seed-trays.toml"


def read(lesson_file: Path, text: str | bytes) -> Lesson:
    lesson_file.write_bytes(text if isinstance(text, bytes) else text.encode())
    return read_lesson(lesson_file)


def refusal(path: Path) -> Problem:
    with pytest.raises(LessonRefused) as caught:
        read_lesson(path)
    (problem,) = caught.value.problems
    assert problem.file == str(path)
    return problem


def test_a_lesson_holds_what_its_file_says(lesson_file):
    lesson = read(
        lesson_file,
        SOUND + 'practice = ["2/3 × 4/5", "3/4 x 1/2"]\nvocabulary = ["panel "]\nnotes = "Fold once."\n'
        'language = "en-GB"\norientation = "portrait"\n',
    )
    assert (lesson.title, lesson.grade, lesson.paper, lesson.language) == ("Seed trays", 5, "letter", "en-GB")
    assert lesson.sheet == Sheet(exact(17, 2), exact(11), "in")
    assert lesson.orientation == "portrait"
    assert [step.step for step in lesson.steps] == [FoldEdge(Edge.LEFT, ONE), Open()]
    assert [(step.line, step.column) for step in lesson.steps] == [(4, 11), (4, 43)]
    assert [item.product.value for item in lesson.practice] == [exact(8, 15), exact(3, 8)]
    assert [(item.line, item.column) for item in lesson.practice] == [(5, 14), (5, 27)]
    assert (lesson.vocabulary, lesson.notes) == (("panel",), ("Fold once.",))


def test_practice_may_be_rules_with_or_without_products(lesson_file):
    lesson = read(
        lesson_file,
        SOUND
        + 'practice = { denominators = [2, 3, 4], count = 8, seed = 7, kinds = ["shade", "Missing-Factor"], '
        'products = ["2/3 × 4/5"] }\n',
    )
    kinds = (ItemKind.SHADE, ItemKind.MISSING_FACTOR)
    assert lesson.rules == PracticeRules(denominators=(2, 3, 4), count=8, seed=7, kinds=kinds)
    assert [(item.text, item.line) for item in lesson.practice] == [("2/3 × 4/5", 5)]


def test_rules_may_stand_in_a_table_of_their_own(lesson_file):
    lesson = read(lesson_file, SOUND + "[practice]\nseed = 3\n")
    assert lesson.rules == PracticeRules(seed=3)
    assert lesson.practice == ()


def test_a_list_of_products_leaves_the_rules_to_the_grade(lesson_file):
    assert read(lesson_file, SOUND + 'practice = ["2/3 × 4/5"]\n').rules == PracticeRules()


def test_several_slips_in_the_rules_are_all_told_in_their_places(lesson_file):
    lesson_file.write_text(
        SOUND + 'practice = { count = 0, seed = "x", kinds = ["shad"], products = ["2/0"] }\n'
    )
    with pytest.raises(LessonRefused) as caught:
        read_lesson(lesson_file)
    assert [(problem.line, problem.column) for problem in caught.value.problems] == [
        (5, 22),
        (5, 32),
        (5, 46),
        (5, 68),
    ]


def test_a_sheet_lies_on_its_long_side_if_the_file_does_not_say(lesson_file):
    assert read(lesson_file, SOUND).sheet == Sheet(exact(11), exact(17, 2), "in")


def test_a_measured_sheet_lies_as_it_is_measured(lesson_file):
    lesson = read(lesson_file, SOUND.replace('"letter"', '{ width = "8 1/2 in", height = "32 in" }'))
    assert lesson.sheet == Sheet(exact(17, 2), exact(32), "in")
    assert (lesson.orientation, lesson.paper) == ("portrait", "8 1/2 × 32 in")


def test_a_measured_sheet_turns_if_the_file_says_so(lesson_file):
    text = SOUND.replace('"letter"', '{ width = "24 in", height = "32 in" }') + 'orientation = "landscape"\n'
    assert read(lesson_file, text).sheet == Sheet(exact(32), exact(24), "in")


def test_sides_in_two_units_are_both_given_in_millimetres(lesson_file):
    lesson = read(lesson_file, SOUND.replace('"letter"', '{ width = "10 in", height = "20 cm" }'))
    assert lesson.sheet == Sheet(exact(254), exact(200), "mm")


@pytest.mark.parametrize(
    "variant",
    [
        SOUND.replace("\n", "\r\n"),
        b"\xef\xbb\xbf" + SOUND.encode(),
        SOUND.replace('"', "'"),
        SOUND.replace("[", "[ # a comment\n").replace("]", ",\n\n  ]"),
        '# a comment with ]["\n\n' + SOUND,
        SOUND.replace("title", '"ti\\u0074le"'),
        SOUND.rstrip("\n"),
    ],
    ids=[
        "CRLF",
        "byte order mark",
        "single quotes",
        "many lines",
        "comment",
        "escaped key",
        "no last newline",
    ],
)
def test_a_lesson_may_be_typed_in_many_ways(variant, lesson_file):
    lesson = read(lesson_file, variant)
    assert [step.step for step in lesson.steps] == [FoldEdge(Edge.LEFT, ONE), Open()]
    assert all(step.line and step.column for step in lesson.steps)


def test_a_missing_file_is_answered_by_the_nearest_one(lesson_file):
    lesson_file.write_text(SOUND)
    problem = refusal(lesson_file.with_name("seed-tray.toml"))
    assert (problem.line, problem.column) == (0, 0)
    assert "no such file" in str(problem.message)
    assert str(problem.hint) == str(lesson_file)


def test_another_programs_settings_are_offered_for_no_lesson(tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    (tmp_path / "seed-trays.toml").write_text('[project]\nname = "trays"\n')
    assert "check the name" in str(refusal(tmp_path / "seed-tray.toml").hint)
    assert "name a lesson file" in str(refusal(tmp_path).hint)
    (tmp_path / "seat-tray.toml").write_text(SOUND)
    assert str(refusal(tmp_path / "seed-tray.toml").hint) == str(tmp_path / "seat-tray.toml")


def test_a_missing_file_may_lie_in_the_folder_of_lessons(tmp_path):
    (tmp_path / "lessons").mkdir()
    (tmp_path / "lessons" / "seed-trays.toml").write_text(SOUND)
    assert str(refusal(tmp_path / "seed-trays").hint) == str(tmp_path / "lessons" / "seed-trays.toml")


def test_a_folder_is_no_lesson_but_may_hold_one(lesson_file):
    lesson_file.write_text(SOUND)
    problem = refusal(lesson_file.parent)
    assert "a folder" in str(problem.message)
    assert str(problem.hint) == str(lesson_file)


def test_a_pipe_is_not_waited_for(tmp_path):
    os.mkfifo(tmp_path / "pipe.toml")
    assert "not a file" in str(refusal(tmp_path / "pipe.toml").message)


def test_a_name_that_no_file_can_have_is_refused(tmp_path):
    assert refusal(tmp_path / ("x" * 5000)).message
    assert refusal(tmp_path / "a\0b").message


@pytest.mark.parametrize("text", ["", " \n\n", "\ufeff"])
def test_an_empty_file_is_refused(text, lesson_file):
    lesson_file.write_text(text, encoding="utf-8")
    assert "empty" in str(refusal(lesson_file).message)


def test_a_file_that_is_not_utf_8_is_refused_at_its_first_wrong_byte(lesson_file):
    lesson_file.write_bytes(b'title = "Seed trays"\nnotes = "caf\xe9"\n')
    problem = refusal(lesson_file)
    assert (problem.line, problem.column) == (2, 13)
    assert "byte 34 is 0xE9" in str(problem.message)
    assert problem.words == 'notes = "caf'
    assert "UTF-8" in str(problem.hint)


def test_a_file_in_utf_16_is_refused_as_not_utf_8(lesson_file):
    lesson_file.write_bytes(SOUND.encode("utf-16"))
    assert (refusal(lesson_file).line, refusal(lesson_file).column) == (1, 1)


def test_a_huge_file_is_refused_unread(lesson_file):
    lesson_file.write_bytes(b"#" * (LARGEST_FILE + 1))
    assert "larger than 256 KB" in str(refusal(lesson_file).message)


def test_too_many_steps_are_refused(lesson_file):
    lesson_file.write_text(SOUND.replace('"open"', '"open", ' * MOST_STEPS))
    assert f"1 to {MOST_STEPS}" in str(refusal(lesson_file).message)


@pytest.mark.parametrize(
    ("text", "column"),
    [("x = " + "[" * 5000, 5), ("x = " + "9" * 5000, 5)],
    ids=["deep lists", "a long number"],
)
def test_text_that_would_exhaust_the_reader_is_refused(text, column, lesson_file):
    lesson_file.write_text(text)
    problem = refusal(lesson_file)
    assert (problem.line, problem.column) == (1, column)
    assert "Traceback" not in str(problem)
    assert len(str(problem)) < 1000


def test_no_message_steers_the_terminal(lesson_file):
    for text in (
        'title = "\x1b[31m"',
        'steps = ["\\u001b[31m"]',
        '"\\u001b" = 1',
        'paper = "\\u001b"',
        "\x1b[2J = 1",
    ):
        lesson_file.write_text(text)
        with pytest.raises(LessonRefused) as caught:
            read_lesson(lesson_file)
        assert "\x1b" not in str(caught.value)


def deep_keys(count):
    return f"{SOUND}{'.'.join(['a'] * count)} = 1\n"


@pytest.mark.parametrize(
    ("text", "line", "column"),
    [
        (deep_keys(MOST_DEPTH + 2), 5, 1),
        (deep_keys(990), 5, 1),
        (deep_keys(30_000), 5, 1),
        (f"{SOUND}  [{'.'.join(['a'] * 30_000)}]\n", 5, 3),
        (f"{SOUND}a = {'[' * 30_000}", 5, 5),
        (f"{SOUND}notes = []\na = {'[' * 20 + ']' * 20}", 6, 5),
        (f"{SOUND}\n\na = {'{a.a=' * 9_000}", 7, 5),
    ],
)
def test_keys_and_lists_far_too_deep_are_refused_where_they_begin_to_be(lesson_file, text, line, column):
    lesson_file.write_text(text, encoding="utf-8")
    problem = refusal(lesson_file)
    assert "too deep" in str(problem.message)
    assert (problem.line, problem.column) == (line, column)
    assert str(MOST_DEPTH) in str(problem.hint)


@pytest.mark.parametrize(
    "notes",
    [
        f'"{"." * 400}"',
        f"'{'[' * 400}' # {'.' * 400}",
        f'"""{"{" * 200}\n\\"""{"." * 200}"""',
        f"""[{", ".join(["'1.5'"] * 40)}]""",
    ],
)
def test_dots_and_brackets_in_words_are_not_deep(lesson_file, notes):
    assert read(lesson_file, f"{SOUND}notes = {notes}\n").notes


def test_a_quote_that_is_never_closed_is_told_before_what_seems_deep_behind_it(lesson_file):
    for quote in ('"', "'", '"""', "'''"):
        lesson_file.write_text(f"{SOUND}notes = {quote}{'.' * 50}\n", encoding="utf-8")
        assert "closing quotes" in str(refusal(lesson_file).message)


@pytest.mark.parametrize("blanks", [" ", "\t", "= ", "='", ", "])
def test_a_line_of_many_blanks_is_read_no_slower_than_others(lesson_file, blanks):
    """Time that grows with the square of this line would be hours; whoever brings it back will notice."""
    lesson_file.write_text(f"{SOUND}notes = x{blanks * 25_000}y\n", encoding="utf-8")
    assert refusal(lesson_file).line == 5


@pytest.mark.parametrize(
    ("orientation", "steps", "halved"),
    [
        ("landscape", ["fold in half"], [FoldEdge(Edge.LEFT, ONE)]),
        ("portrait", ["fold in half"], [FoldEdge(Edge.TOP, ZERO)]),
        (
            "landscape",
            ["Fold in half.", "dobla en dos"],
            [FoldEdge(Edge.LEFT, ONE), FoldEdge(Edge.TOP, ZERO)],
        ),
        ("landscape", ["fold in half, behind"], [FoldEdge(Edge.LEFT, ONE, behind=True)]),
    ],
)
def test_a_fold_in_half_halves_the_longer_side_of_the_paper_as_it_lies(
    orientation, steps, halved, lesson_file
):
    text = f'title = "T"\ngrade = 5\npaper = "letter"\norientation = "{orientation}"\nsteps = {steps}\n'
    lesson = read(lesson_file, text.replace("'", '"'))
    assert [written.step for written in lesson.steps] == halved
    assert [written.text for written in lesson.steps] == steps


def test_of_folds_in_half_each_step_is_done_once_and_none_after_one_that_cannot_be_done(
    lesson_file, monkeypatch
):
    done = []

    def noted(step, state):
        done.append(step)
        return perform(step, state)

    monkeypatch.setattr("foldmath.lesson.lying.perform", noted)
    halves = ", ".join(['"fold in half"'] * 20)
    read(lesson_file, f'title = "T"\ngrade = 5\npaper = "letter"\nsteps = [{halves}]\n')
    assert len(done) == 13, "4,096 panels come of 12 folds, and the thirteenth is refused"
