"""What came and went over the weeks: takes the marks in a folder, gives each pupil's rules by day."""

import csv
import io
import re
from collections import defaultdict
from collections.abc import Iterable, Sequence
from datetime import date
from enum import Enum
from pathlib import Path

from foldmath.errors import FoldmathError, Problem
from foldmath.lesson.files.spreadsheet import TableRefused, file_content, problem
from foldmath.marking.reporting.marks_file import EITHER, HEADER
from foldmath.phrases import phrase
from foldmath.values import frozen

MARKS = "marks.csv"

LARGEST_MARKS = 64 * 1024 * 1024
"""Bytes; ten thousand pupils with fifteen answers each have about a tenth of this."""

_SET = re.compile(r"marks-(\d{4}-\d{2}-\d{2})(?:-(.+))?")


class NoMarks(FoldmathError):
    """A folder in which no marks lie."""


class State(Enum):
    """Where a pupil stands with a rule."""

    CAME = "came"
    """It is there on the last day, and was not on the first."""
    STAYS = "stays"
    """It is there on the first day and on the last, or on the only one."""
    WENT = "went"
    """It is not there on the last day, and was before."""


@frozen
class Day:
    """One lesson's marks: when, of which lesson, and how many answers of each pupil show each rule."""

    day: date
    lesson: str
    counts: dict[str, dict[str, int]]


@frozen
class Course:
    """One pupil and one rule over the days on which the pupil was there.

    Args:
        pupil: the name or label.
        rule: its name in the marks.
        answers: that show it, by day; None where the pupil was not there.
    """

    pupil: str
    rule: str
    answers: tuple[int | None, ...]

    @property
    def state(self) -> State:
        """What became of it."""
        there = [count for count in self.answers if count is not None]
        if not there[-1]:
            return State.WENT
        return State.STAYS if there[0] else State.CAME


@frozen
class ClassHistory:
    """A class over the weeks.

    Args:
        name: of the class; empty where the marks say none.
        days: in order.
        courses: of all pupils, by pupil and rule.
    """

    name: str
    days: tuple[Day, ...]
    courses: tuple[Course, ...]

    @property
    def rules(self) -> tuple[str, ...]:
        """All rules, those that most pupils ever followed first."""
        pupils: defaultdict[str, int] = defaultdict(int)
        for course in self.courses:
            pupils[course.rule] += 1
        return tuple(sorted(pupils, key=lambda rule: (-pupils[rule], rule)))

    def pupils_with(self, rule: str) -> tuple[int, ...]:
        """Count the pupils who show a rule, by day."""
        return tuple(sum(bool(counts.get(rule)) for counts in day.counts.values()) for day in self.days)


def read_history(folder: Path) -> tuple[ClassHistory, ...]:
    """Read all marks that lie in a folder, at any depth.

    Raises:
        NoMarks: there are none.
        TableRefused: a file of marks cannot be read; carries every ``Problem`` found.
    """
    classes: defaultdict[str, list[Day]] = defaultdict(list)
    problems: list[Problem] = []
    for path in sorted(folder.rglob(MARKS)):
        found = _SET.fullmatch(path.parent.name)
        if found:
            try:
                day = date.fromisoformat(found[1])
                classes[found[2] or ""].append(Day(day, path.parent.parent.name, _counts(path)))
            except TableRefused as refusal:
                problems += refusal.problems
    if problems:
        raise TableRefused(problems)
    if not classes:
        message = phrase("{folder}: no marks lie in this folder", folder=str(folder))
        raise NoMarks(message, phrase("the folder that was named by --out"))
    return tuple(_history(name, days) for name, days in sorted(classes.items()))


def _counts(path: Path) -> dict[str, dict[str, int]]:
    """Count by pupil and rule; where several explain an answer equally well, each is counted."""
    file = str(path)
    text = file_content(path, file, LARGEST_MARKS).decode("utf-8-sig", "replace")
    rows = list(csv.reader(io.StringIO(text)))
    if not rows or tuple(rows[0]) != HEADER:
        hint = ",".join(HEADER)
        raise TableRefused(
            [problem(file, 1, phrase("these are no marks"), ",".join(rows[0] if rows else []), hint)]
        )
    counts: dict[str, dict[str, int]] = {}
    for line, row in enumerate(rows[1:], start=2):
        if len(row) != len(HEADER):
            message = phrase("this row has {count} fields", count=len(row))
            raise TableRefused([problem(file, line, message, ",".join(row), ",".join(HEADER))])
        of_pupil = counts.setdefault(row[0], {})
        for rule in row[4].split(EITHER) if row[4] else ():
            of_pupil[rule] = of_pupil.get(rule, 0) + 1
    return counts


def _history(name: str, days: Sequence[Day]) -> ClassHistory:
    ordered = tuple(sorted(days, key=lambda day: (day.day, day.lesson)))
    pairs = dict.fromkeys(
        (pupil, rule) for day in ordered for pupil, counts in day.counts.items() for rule in counts
    )
    courses = [Course(pupil, rule, tuple(_answers(ordered, pupil, rule))) for pupil, rule in sorted(pairs)]
    return ClassHistory(name, ordered, tuple(courses))


def _answers(days: Iterable[Day], pupil: str, rule: str) -> Iterable[int | None]:
    for day in days:
        yield day.counts[pupil].get(rule, 0) if pupil in day.counts else None


def history_rows(histories: Sequence[ClassHistory]) -> list[tuple[str, ...]]:
    """Give the table of all classes: a row for a pupil, a rule and a day on which the pupil was there."""
    rows: list[tuple[str, ...]] = [("class", "pupil", "rule", "state", "day", "lesson", "answers")]
    rows += [
        (
            history.name,
            course.pupil,
            course.rule,
            course.state.value,
            f"{day.day:%Y-%m-%d}",
            day.lesson,
            f"{count}",
        )
        for history in histories
        for course in history.courses
        for day, count in zip(history.days, course.answers, strict=True)
        if count is not None
    ]
    return rows
