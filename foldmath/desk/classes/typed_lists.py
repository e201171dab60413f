"""A class as it is typed, a pupil a line: takes the lines, gives the pupils.

A level and a language may stand behind the name, parted by commas, semicolons or tabs. A comma may part
a surname from first names too, as lists of offices do: what begins with a capital behind one is of the name.
A list with a line of heads, as it is copied from a spreadsheet, is read as one.
"""

import csv
from collections.abc import Sequence
from dataclasses import replace
from difflib import get_close_matches

from foldmath.errors import Problem
from foldmath.lesson.files.spreadsheet import Row, Table, lines_of, problem
from foldmath.lesson.labels import plain
from foldmath.lesson.list_words import (
    column_words,
    language_called,
    language_words,
    level_called,
    level_words,
    levels_offered,
)
from foldmath.lesson.roster import LABELS, LANGUAGE, LEVEL, Pupil, RosterRefused, pupils_in, roster_in
from foldmath.phrases import Said, phrase

HEADER = Row(line=0, text="", fields=("name", LEVEL, LANGUAGE))
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
    try:
        if _has_heads(text):
            return roster_in(text.encode(), class_name)
        return pupils_in(_lines(text, class_name))
    except RosterRefused as refusal:
        raise RosterRefused([replace(found, cell="") for found in refusal.problems]) from None


def _has_heads(text: str) -> bool:
    """Tell whether the first line names columns, the names of pupils among them, and no pupil."""
    first = next((words for words in lines_of(text) if words.strip()), "")
    heads = [column_words().get(plain(word).casefold()) for word in _parted(1, first.strip()).fields]
    return any(head in LABELS for head in heads)


def _lines(text: str, class_name: str) -> Table:
    """Give the lines as rows of a list, and what is not understood."""
    rows: list[Row] = []
    problems: list[Problem] = []
    for line, words in enumerate(lines_of(text), 1):
        if words.strip():
            _take_line(_parted(line, words.strip()), class_name, rows, problems)
    return Table(class_name, (HEADER, *rows), tuple(problems))


def _parted(line: int, words: str) -> Row:
    divider = next((divider for divider in DIVIDERS if divider in words), ",")
    parts = next(csv.reader([words], delimiter=divider, skipinitialspace=True))
    while len(parts) > 1 and not parts[-1].strip():
        parts.pop()
    return Row(line, words, tuple(part.strip() for part in parts), divider)


def _take_line(line: Row, class_name: str, rows: list[Row], problems: list[Problem]) -> None:
    """Add a pupil with what is said behind the name, or tell why the line is not understood."""
    *name, level, language = _told_apart(line.fields)
    *before, last = name
    if level or not before or (line.separator == "," and _is_of_a_name(last)):
        rows.append(replace(line, fields=(", ".join(name), level, language)))
    else:
        message = phrase('"{word}" is no level', word=last)
        problems.append(problem(class_name, line.line, message, line.text, _remedy(line.text, last)))


def _told_apart(fields: Sequence[str]) -> tuple[str, ...]:
    """Give the parts of a name, then level and language, in whichever order these stand; empty if unsaid.

    What stands behind a level is a language, though it may be none of ours.
    """
    name, level, language = [*fields], "", ""
    if len(name) > 2 and level_called(name[-2]) and not level_called(name[-1]):
        language = name.pop()
    while len(name) > 1 and (not language or not level):
        if not level and level_called(name[-1]):
            level = name.pop()
        elif not language and language_called(name[-1]):
            language = name.pop()
        else:
            break
    return *name, level, language


def _is_of_a_name(word: str) -> bool:
    """Tell whether a word behind a comma is the rest of a name; scripts without capitals write names too."""
    if not word[:1].isalpha() or word[:1].islower():
        return False
    return not get_close_matches(word.casefold(), [*level_words(), *language_words()], n=1, cutoff=ALMOST)


def _remedy(words: str, last: str) -> Said:
    return phrase(
        "{levels} after the comma; if it belongs to the name, quotes round the whole name: {name}",
        levels=levels_offered(last),
        name=f'"{words.replace(chr(34), "")}"',
    )
