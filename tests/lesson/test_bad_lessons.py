"""Every slip in a lesson file gives one clear answer: where, what, and what would work."""

import re
from pathlib import Path
from typing import NamedTuple

import pytest

from foldmath.errors import LessonRefused, Problem
from foldmath.lesson.grammar.sentences import parse_step
from foldmath.lesson.grammar.suggestions import PATTERNS
from foldmath.lesson.proving import prove
from foldmath.lesson.reading import read_lesson

SOUND = {
    "title": 'title = "Seed trays"',
    "grade": "grade = 5",
    "paper": 'paper = "letter"',
    "steps": 'steps = ["fold left edge to right edge", "open"]',
}
MARK = "▸"


class BadLesson(NamedTuple):
    """One block of ``bad_lessons.txt``."""

    slip: str
    text: str
    line: int
    column: int
    message: str
    hint: str


def _bad_lesson(block: str) -> BadLesson:
    slip, *lines = block.rstrip("\n").split("\n")
    message, hint = lines[-2].removeprefix("! "), lines[-1].removeprefix("> ")
    changed = "\n".join(lines[:-2])
    key = re.match(rf"{MARK}?(\w*)", changed)[1]
    kept = [line for name, line in SOUND.items() if name != key]
    text = "\n".join([*kept, "" if changed.endswith(" =") else changed, ""])
    before, mark, _ = text.partition(MARK)
    line = before.count("\n") + 1 if mark else 0
    column = len(before) - before.rfind("\n") if mark else 0
    return BadLesson(slip, text.replace(MARK, ""), line, column, message, hint)


BAD_LESSONS = [
    _bad_lesson(block)
    for block in Path(__file__).with_name("bad_lessons.txt").read_text(encoding="utf-8").split("\n# ")[1:]
]


def refusal_of(path: Path) -> list[Problem]:
    with pytest.raises(LessonRefused) as caught:
        prove(read_lesson(path))
    assert type(caught.value) is LessonRefused
    assert "Traceback" not in str(caught.value)
    return caught.value.problems


def test_there_are_at_least_sixty_kinds_of_slip():
    assert len({case.slip for case in BAD_LESSONS}) == len(BAD_LESSONS) >= 60


@pytest.mark.parametrize("case", BAD_LESSONS, ids=lambda case: case.slip)
def test_a_slip_is_found_where_it_stands_with_a_remedy(case, tmp_path):
    path = tmp_path / "lesson.toml"
    path.write_text(case.text, encoding="utf-8")
    (problem,) = refusal_of(path)
    assert (problem.line, problem.column) == (case.line, case.column), problem
    assert case.message in str(problem.message)
    assert case.hint in str(problem.hint)
    assert problem.file == str(path)
    if problem.line:
        assert problem.words in case.text.split("\n")[problem.line - 1]


@pytest.mark.parametrize("case", BAD_LESSONS, ids=lambda case: case.slip)
def test_every_hint_that_looks_like_a_step_is_one(case, tmp_path):
    path = tmp_path / "lesson.toml"
    path.write_text(case.text, encoding="utf-8")
    first_words = {pattern.split()[0] for pattern in PATTERNS}
    for problem in refusal_of(path):
        hint = str(problem.hint)
        for sentence in [hint, *re.findall(r'"([^"]*)"', hint)]:
            if sentence.split() and sentence.split()[0] in first_words and "open the sheet" not in sentence:
                parse_step(sentence)


def test_all_slips_are_reported_at_once_in_the_order_of_the_file(tmp_path):
    path = tmp_path / "lesson.toml"
    path.write_text(
        'titel = "x"\ngrade = 9\npaper = "leter"\n'
        'steps = ["fold lef edge to right edge", "opn"]\npractice = ["2/3"]\n',
        encoding="utf-8",
    )
    problems = refusal_of(path)
    assert [problem.line for problem in problems] == [1, 2, 3, 4, 4, 5]


def test_of_a_sheet_that_is_not_known_no_fold_in_half_is_asked_which_side_moves(tmp_path):
    path = tmp_path / "lesson.toml"
    path.write_text('title = "x"\ngrade = 5\npaper = "leter"\nsteps = ["fold in half"]\n', encoding="utf-8")
    assert [problem.line for problem in refusal_of(path)] == [3]


@pytest.mark.parametrize("line_end", ["\n", "\r\n"])
def test_lines_are_counted_alike_whatever_ends_them(line_end, tmp_path):
    path = tmp_path / "lesson.toml"
    text = "\n".join([*SOUND.values(), 'orientation = "up"', ""])
    path.write_bytes(text.replace("\n", line_end).encode())
    assert [(problem.line, problem.column) for problem in refusal_of(path)] == [(5, 15)]
