"""A small class and its answers, for tests of marking."""

from collections.abc import Callable, Mapping
from dataclasses import replace
from pathlib import Path

from conftest import LESSONS

from foldmath.lesson.lesson import Kept, PracticeRules
from foldmath.lesson.proving import prove
from foldmath.lesson.reading import read_lesson
from foldmath.lesson.roster import Pupil
from foldmath.marking.asking.lesson_pages import LessonPages
from foldmath.marking.marked_class import MarkedClass, mark_class
from foldmath.marking.reading.sheet import AnswersSheet, blank_rows, read_sheet, written_csv
from foldmath.practice.own_numbers import pupil_seed
from foldmath.statements.items import Level

KEPT = {
    Level.CORE: (
        "count or size: 3 × 2 = 6",
        "1/5 ÷ 3",
        "3/4 × 5/6 = ",
        "mend 3/4 × 2/3 = 72/12",
        "explain 2/3 of 4/5 < 4/5",
    ),
    Level.STRETCH: ("5/4 × 7/8 ○ 7/8", "which fold: 2 × 1/6 + 2 × 1/3"),
}
"""What is marked, whatever else is chosen; one item more than usual, for one of every kind of answer."""

RULES = PracticeRules(count=7, keep=tuple(Kept(level, asks) for level in KEPT for asks in KEPT[level]))
PROVED = prove(replace(read_lesson(LESSONS / "seed-trays.toml"), rules=RULES))
PAGES = LessonPages(PROVED)

Rows = list[list[str]]


def seed(pupil: Pupil) -> int:
    return pupil_seed(PROVED.lesson, pupil)


def roster(levels: Mapping[str, Level]) -> tuple[Pupil, ...]:
    return tuple(Pupil(name, level) for name, level in levels.items())


def blank(levels: Mapping[str, Level], *, own: bool = False) -> Rows:
    """Give the rows of a blank sheet."""
    pupils = roster(levels)
    pages = [PAGES.own(one.level, seed(one)) if own else PAGES.of_class(one.level) for one in pupils]
    return blank_rows(list(zip([one.label for one in pupils], pages, strict=True)), "en-US")


def filled(answers: Mapping[str, Mapping[str, str]], *, level: Level = Level.CORE, own: bool = False) -> Rows:
    """Give the rows of a sheet in which answers were typed, by pupil and column."""
    rows = blank(dict.fromkeys(answers, level), own=own)
    for row in rows[2:]:
        for column, text in answers.get(row[0], {}).items():
            row[rows[1].index(column)] = text
    return rows


def read(folder: Path, rows: Rows, write: Callable[[Rows], bytes] = written_csv) -> AnswersSheet:
    """Write a sheet to a file and read it."""
    path = folder / "answers.csv"
    path.write_bytes(write(rows))
    return read_sheet(path)


def marked(
    folder: Path, rows: Rows, pupils: tuple[Pupil, ...] | None = None, *, own: bool = False
) -> MarkedClass:
    """Mark the class of a sheet."""
    return mark_class(read(folder, rows), pupils, PAGES, seed, own=own)
