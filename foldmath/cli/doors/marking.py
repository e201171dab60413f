"""``mark``: a sheet to fill in, a filled one marked, and what all marks of a folder show."""

import os
import time
from collections import Counter
from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING

from foldmath.cli.doors.making import Progress
from foldmath.cli.terminal.new_files import require_new
from foldmath.cli.terminal.speaking import tell, tell_written
from foldmath.errors import CannotWrite, Unreadable
from foldmath.phrases import counted, phrase

if TYPE_CHECKING:
    from foldmath.lesson.roster import Pupil
    from foldmath.making.marks import Marked, Roster

SUFFIXES = (".ods", ".csv")
"""Of sheets; the first keeps 8/15 from becoming a date."""

VERDICTS = {
    "RIGHT": phrase("right"),
    "ANOTHER_FORM": phrase("right, in another form"),
    "WRONG": phrase("wrong"),
    "NOT_DONE": phrase("not done"),
    "UNREAD": phrase("left open"),
}
"""How each way in which an answer is marked is told."""

_OWN_PAGES_WERE_MADE = phrase(
    "pages with numbers of their own were made for this class; --own-numbers writes a sheet for these"
)

PRIVATE = 0o600
"""A sheet holds names: the user alone may read it."""


def write_blank(
    lesson: str | None,
    sheet: str,
    roster: str | None,
    pupils: int | None,
    *,
    out: str,
    paper: str | None,
    own_numbers: bool,
) -> int:
    """Write a sheet to fill in; give the exit code."""
    from foldmath.making.classes import CLASS_SET
    from foldmath.making.marks import blank_sheet

    path, target = _lesson(lesson), Path(sheet)
    if target.suffix.lower() not in SUFFIXES:
        raise Unreadable(phrase("--blank {file}: a sheet ends in .ods or .csv", file=sheet), "answers.ods")
    class_list = _roster(roster, pupils)
    if class_list is None:
        hint = phrase("--class roster.csv, or --students 28")
        raise Unreadable(phrase("an answers sheet needs its students"), hint)
    require_new(sheet)
    content = blank_sheet(path, class_list, paper=paper, own_numbers=own_numbers)(target.suffix.lower())
    try:
        target.parent.mkdir(parents=True, exist_ok=True)
        with open(target, "xb", opener=lambda name, how: os.open(name, how, PRIVATE)) as stream:
            stream.write(content)
    except OSError as error:
        raise CannotWrite.by(sheet, error) from error
    tell_written(target)
    name = Path(roster).stem if roster else f"pupils-{pupils}"
    if not own_numbers and (Path(out) / path.stem / f"{CLASS_SET}{name}").is_dir():
        tell(phrase("note: {note}", note=_OWN_PAGES_WERE_MADE))
    return 0


def mark_answers(
    lesson: str | None,
    answers: str | None,
    roster: str | None,
    pupils: int | None,
    *,
    out: str,
    paper: str | None,
    own_numbers: bool,
    labels: bool,
) -> int:
    """Mark a filled sheet, and make all that follows; give the exit code."""
    from foldmath.drawing.rendering.picture_process import PictureProcess
    from foldmath.making.marks import MarkOrder, mark

    path = _lesson(lesson)
    if answers is None:
        hint = phrase("--answers answers.ods; or --blank answers.ods for a sheet to fill in")
        raise Unreadable(phrase("nothing says which answers to mark"), hint)
    order = MarkOrder(
        answers=Path(answers),
        out=Path(out),
        day=date.today(),
        class_name=Path(roster).stem if roster else "",
        paper=paper,
        own_numbers=own_numbers,
        labels=labels,
    )
    progress = Progress(answers, 1, 1, time.monotonic())
    with PictureProcess() as pictures:
        made = mark(path, order, _roster(roster, pupils), pictures, progress)
    _tell(made)
    return 0


def _lesson(lesson: str | None) -> Path:
    if lesson is None:
        raise Unreadable(
            phrase("nothing says which lesson was taught"),
            "foldmath mark lessons/seed-trays.toml --answers answers.ods",
        )
    return Path(lesson)


def _roster(roster: str | None, pupils: int | None) -> "Roster | None":
    if roster is None and pupils is None:
        return None

    def read() -> "tuple[Pupil, ...]":
        from foldmath.lesson.numbered_pupils import pupils_without_roster
        from foldmath.lesson.roster import read_roster

        if roster is None:
            return pupils_without_roster(pupils or 0)
        return read_roster(Path(roster))

    return read


def _tell(made: "Marked") -> None:
    """Say how many answers were right, what was thought, what was left open, and where it all is."""
    evidence = made.evidence
    verdicts = Counter(answer.mark.verdict for pupil in evidence.marked.present for answer in pupil.answers)
    tell(counted("{count} student", "{count} students", len(evidence.pupils)))
    for verdict, count in verdicts.items():
        tell(phrase("{count}  {verdict}", count=f"{count:6}", verdict=VERDICTS[verdict.name]))
    for thought in evidence.thoughts:
        if thought.surely:
            print(f"{len(thought.surely):6}  {thought.explanation.code}")
    for note in made.notes:
        tell(phrase("note: {note}", note=note))
    for pupil, answer in evidence.unread:
        values = {"cell": answer.cell, "pupil": pupil.pupil.label, "typed": answer.answer}
        tell(phrase("left open: {cell}, {pupil}: {typed}: {why}", why=answer.mark.reason, **values))
    for path in made.files:
        tell_written(path)
