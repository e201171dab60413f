"""A class as it is typed, a pupil a line: takes the lines, gives the pupils.

A level may stand behind the name, parted from it by a comma, a semicolon or a tab. A comma may part a surname
from first names too, as lists of offices do: what begins with a capital behind one belongs to the name.
"""

import csv
from dataclasses import replace
from difflib import get_close_matches

from foldmath.errors import Problem
from foldmath.lesson.files.spreadsheet import Row, Table, lines_of, problem
from foldmath.lesson.list_words import level_called, level_words, levels_offered
from foldmath.lesson.roster import LEVEL, Pupil, RosterRefused, pupils_in
from foldmath.phrases import Said, phrase

HEADER = Row(line=0, text="", fields=("name", LEVEL))
"""What a spreadsheet would say of such lines."""

DIVIDERS = (";", "\t", ",")
"""The first that stands in a line parts it: with another one there, a comma belongs to the name."""

ALMOST = 0.9
"""From here on a capital is no name but a level misspelt: Gided, but neither Guido nor Corey."""


def typed_pupils(text: str, class_name: str) -> tuple[Pupil, ...]:
    """Read a class as a teacher types it.

    Raises:
        RosterRefused: it cannot be used; carries every ``Problem`` found in it, by its line and no cell.
    """
    rows: list[Row] = []
    problems: list[Problem] = []
    for line, words in enumerate(lines_of(text), 1):
        if words.strip():
            _take_line(_parted(line, words.strip()), class_name, rows, problems)
    try:
        return pupils_in(Table(class_name, (HEADER, *rows), tuple(problems)))
    except RosterRefused as refusal:
        raise RosterRefused([replace(found, cell="") for found in refusal.problems]) from None


def _parted(line: int, words: str) -> Row:
    divider = next((divider for divider in DIVIDERS if divider in words), ",")
    parts = next(csv.reader([words], delimiter=divider, skipinitialspace=True))
    while len(parts) > 1 and not parts[-1].strip():
        parts.pop()
    return Row(line, words, tuple(part.strip() for part in parts), divider)


def _take_line(line: Row, class_name: str, rows: list[Row], problems: list[Problem]) -> None:
    """Add a pupil with a level or none, or tell why the line is not understood."""
    *before, last = line.fields
    if before and level_called(last):
        rows.append(replace(line, fields=(", ".join(before), last)))
    elif not before or (line.separator == "," and _is_of_a_name(last)):
        rows.append(replace(line, fields=(", ".join(line.fields), "")))
    else:
        message = phrase('"{word}" is no level', word=last)
        problems.append(problem(class_name, line.line, message, line.text, _remedy(line.text, last)))


def _is_of_a_name(word: str) -> bool:
    """Tell whether a word behind a comma is the rest of a name; scripts without capitals write names too."""
    if not word[:1].isalpha() or word[:1].islower():
        return False
    return not get_close_matches(word.casefold(), level_words(), n=1, cutoff=ALMOST)


def _remedy(words: str, last: str) -> Said:
    return phrase(
        "{levels} after the comma; if it belongs to the name, quotes round the whole name: {name}",
        levels=levels_offered(last),
        name=f'"{words.replace(chr(34), "")}"',
    )
