"""A crease pattern as a lesson: takes a FOLD file, gives the text of a lesson file that folds the same."""

import json
from pathlib import Path
from typing import NamedTuple

from foldmath.errors import FoldmathError, LessonRefused
from foldmath.fold_format.fold_arrays import arrays_of
from foldmath.fold_format.fold_json import pattern_frame
from foldmath.fold_format.refolding.crease_pattern import CreasePattern, crease_pattern
from foldmath.fold_format.refolding.refolding import refolded
from foldmath.fold_format.refolding.wanted_creases import WantedCreases
from foldmath.fold_format.refusals import PatternRefused
from foldmath.lesson.files.controls import is_control
from foldmath.lesson.proving import ProvedLesson, prove
from foldmath.lesson.reading import lesson_in
from foldmath.paper.lengths import Length
from foldmath.paper.measures import sides_said
from foldmath.paper.sizes import PaperRefused, PaperSize, all_papers, paper_measured
from foldmath.paper.state import Kind, Sheet
from foldmath.phrases import Said, phrase
from foldmath.plane.numbers import written
from foldmath.words.steps import step_sentence

LONGEST_TITLE = 80
USUAL_GRADE = 5


class Imported(NamedTuple):
    """A lesson made from a crease pattern.

    Args:
        text: of the lesson file.
        proved: the lesson, every step done.
        remarks: what had to be chosen or left out; may be empty.
    """

    text: str
    proved: ProvedLesson
    remarks: tuple[Said, ...]


def imported_lesson(path: Path, grade: int = USUAL_GRADE) -> Imported:
    """Find the straight folds that make a crease pattern, and write them down as a lesson.

    The lesson is read and proved again, and its creases are held against those of the file.

    Raises:
        PatternRefused: the file holds no crease pattern that straight folds of one sheet make.
    """
    try:
        pattern = crease_pattern(arrays_of(pattern_frame(path)))
        steps = [step_sentence(step) for step in refolded(pattern)]
        text = _lesson_text(pattern, path.stem, grade, steps)
        proved = _proved(text)
        _require_same_creases(pattern, proved)
    except PatternRefused as refusal:
        raise refusal.in_file(str(path)) from None
    return Imported(text, proved, _remarks(pattern))


def _lesson_text(pattern: CreasePattern, name: str, grade: int, steps: list[str]) -> str:
    title = next(filter(None, map(_one_line, (pattern.title, name))), "Crease pattern")
    lines = [
        "# The folds of a crease pattern, read from a FOLD file.",
        "",
        f"title = {_quoted(title)}",
        f"grade = {grade}",
        *_paper_lines(pattern.sheet),
        "steps = [",
        *(f"  {_quoted(step)}," for step in steps),
        "]",
    ]
    return "\n".join(lines) + "\n"


def _one_line(words: str) -> str:
    plain = (" " if is_control(sign) else sign for sign in words)
    return " ".join("".join(plain).split())[:LONGEST_TITLE].strip()


def _quoted(words: str) -> str:
    """Write a basic string of TOML, whose escapes are those of JSON."""
    return json.dumps(words, ensure_ascii=False)


def _paper_lines(sheet: Sheet) -> list[str]:
    size = _measured(sheet)
    orientation = "landscape" if sheet.width >= sheet.height else "portrait"
    known = next(
        (
            paper
            for paper in all_papers()
            if (paper.width, paper.height, paper.unit) == (size.width, size.height, size.unit)
        ),
        None,
    )
    if known is None:
        sides = [f'"{written(side)} {sheet.unit}"' for side in (sheet.width, sheet.height)]
        return [f"paper = {{ width = {sides[0]}, height = {sides[1]} }}"]
    return [f"paper = {_quoted(known.name)}", f'orientation = "{orientation}"']


def _measured(sheet: Sheet) -> PaperSize:
    try:
        return paper_measured(Length(sheet.width, sheet.unit), Length(sheet.height, sheet.unit))
    except PaperRefused as refusal:
        raise PatternRefused(refusal.message, refusal.hint) from None


def _proved(text: str) -> ProvedLesson:
    try:
        return prove(lesson_in(text, "the lesson"))
    except LessonRefused as refusal:
        problem = refusal.problems[0]
        raise PatternRefused(
            phrase("its folds cannot be written as a lesson: {message}", message=problem.message),
            problem.hint or phrase("use a simpler pattern"),
        ) from None


def _require_same_creases(pattern: CreasePattern, proved: ProvedLesson) -> None:
    """Hold the creases that were folded against those that were wanted: none more, none less, none other."""
    wanted, made = WantedCreases(pattern.creases), proved.states[-1].creases
    in_place = wanted.gain(made, turned=False) is not None
    cuts = wanted.spans_along(crease for crease in made if crease.kind is Kind.CUT)
    wanted.make(made)
    if not in_place or wanted.missing or cuts != set(wanted.cuts):
        raise FoldmathError(phrase("the lesson found has other creases than the file, so it is not written"))


def _remarks(pattern: CreasePattern) -> tuple[Said, ...]:
    remarks: list[Said] = []
    if not pattern.measured:
        sides = sides_said(pattern.sheet.width, pattern.sheet.height, pattern.sheet.unit)
        remarks.append(phrase("the file has no unit; the sheet is taken as {sides}", sides=sides))
    if pattern.flat_edges:
        remarks.append(phrase("flat edges (F or J) left out: {flat_edges}", flat_edges=pattern.flat_edges))
    if any(crease.kind is None for crease in pattern.creases):
        remarks.append(phrase("unassigned creases (U) are folded whichever way the folds go"))
    return tuple(remarks)
