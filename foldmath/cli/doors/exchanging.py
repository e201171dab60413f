"""``export`` and ``import``: lessons as files in open formats, and a crease pattern back as a lesson."""

import shlex
import sys
from pathlib import Path

from foldmath.cli.terminal.data import print_toml
from foldmath.cli.terminal.new_files import require_ending, require_new, require_own_folders
from foldmath.cli.terminal.speaking import spoken, tell, tell_error, tell_written
from foldmath.errors import FoldmathError, Unreadable
from foldmath.making.sets.writing import put_in_place
from foldmath.phrases import counted, either, phrase

FOLD, PICTURES = "fold", ("svg", "png")


def export_lessons(lessons: list[str], to: str, out: str) -> int:
    """Write lessons in another format; give the exit code.

    Args:
        lessons: the lesson files.
        to: ``fold``, or ``svg`` or ``png`` for the diagrams that ``draw`` saves.
        out: the folder in which a folder of each lesson's name is made.

    Raises:
        Unreadable: there is no such format.
    """
    if to in PICTURES:
        from foldmath.cli.doors.making import draw_diagrams

        return draw_diagrams(lessons, out, (to,), f"export-{to}")
    if to != FOLD:
        raise Unreadable(
            phrase("--to {format}: there is no such format here", format=to),
            either(["--to fold", "--to svg", "--to png"]),
        )
    from foldmath.making import export_fold

    require_own_folders([Path(name) for name in lessons])
    code = 0
    for name in lessons:
        try:
            made = export_fold(Path(name), Path(out))
            for note in made.notes:
                tell(phrase("note: {note}", note=note))
            for file in made.files:
                tell_written(file)
        except FoldmathError as error:
            code = max(code, tell_error(error))
    return code


def import_pattern(file: str, write_to: str | None, grade: int | None = None) -> int:
    """Write the lesson that folds a crease pattern, or print it; give the exit code.

    Args:
        file: a FOLD file.
        write_to: the lesson file to write, which must be new; None to print it.
        grade: of the lesson, from 3 to 6; None for the usual one.

    Raises:
        PatternRefused: no sequence of straight folds makes the pattern.
        CannotWrite: there is a file of this name.
        Unreadable: there are no lessons for this grade.
    """
    from foldmath.fold_format.refolding.lesson_writing import USUAL_GRADE, imported_lesson

    grade = USUAL_GRADE if grade is None else grade
    _refuse_grade(grade, USUAL_GRADE)
    require_new(write_to)
    require_ending("--out", write_to, ".toml")
    found = imported_lesson(Path(file), grade)
    for remark in found.remarks:
        print(spoken(phrase("note: {remark}", remark=remark)), file=sys.stderr)
    if write_to is None:
        print_toml(found.text)
        return 0
    put_in_place({Path(write_to): found.text.encode()})
    steps = len(found.proved.lesson.steps)
    tell(counted("wrote {file}: {count} step", "wrote {file}: {count} steps", steps, file=write_to))
    tell(phrase("try:  {remedy}", remedy=f"foldmath trace {shlex.quote(write_to)}"))
    return 0


def _refuse_grade(grade: int, usual: int) -> None:
    """Refuse a grade that no lessons are for."""
    from foldmath.lesson.files.wanted import FIRST_GRADE, LAST_GRADE

    if not FIRST_GRADE <= grade <= LAST_GRADE:
        told = {"grade": grade, "first": FIRST_GRADE, "last": LAST_GRADE}
        wrong = phrase("--grade {grade}: lessons are for grades {first} to {last}", **told)
        raise Unreadable(wrong, f"--grade {usual}")
