"""The class list: takes a spreadsheet of names and levels, gives the pupils in its order.

Every slip is told with its line, and all at once. Names are kept as they are written; whether a page can
print them is asked where pages are made.
"""

from collections import Counter
from collections.abc import Iterable
from dataclasses import KW_ONLY, replace
from difflib import get_close_matches
from pathlib import Path
from typing import NamedTuple

from foldmath.errors import Problem
from foldmath.lesson.files.spreadsheet import (
    SAVE_AS,
    Row,
    Table,
    TableRefused,
    problem,
    problem_in_cell,
    read_table,
    table_in,
)
from foldmath.lesson.labels import has_shape, is_text, plain
from foldmath.lesson.list_words import (
    column_words,
    language_called,
    language_words,
    level_called,
    levels_offered,
)
from foldmath.phrases import Said, phrase
from foldmath.statements.items import Level
from foldmath.values import frozen
from foldmath.words.languages import languages

LABELS = ("label", "name")
"""The columns that say what is printed, the first one before the other where both are there."""

LEVEL, LANGUAGE = "level", "language"
MOST_PUPILS = 10_000
LONGEST_LABEL = 34
"""Signs; the name line of a page takes about as many."""

EXAMPLE = phrase("name,level")


class RosterRefused(TableRefused):
    """A class list that cannot be used; carries every ``Problem`` found in it."""


@frozen
class Pupil:
    """One page owner.

    Args:
        label: what is printed: a name, or whatever a teacher puts for it; two pupils may share one.
        level: of support.
        namesake: 1 for the first of this label in the class list, 2 for the second; 0 where there is no list.
        language: that the pupil reads, or its tongue alone; empty for the lesson's own.
        instead: what pages carry where no font has the signs of the label; else empty.
    """

    label: str
    level: Level
    namesake: int = 0
    _: KW_ONLY
    language: str = ""
    instead: str = ""

    @property
    def on_paper(self) -> str:
        """What pages carry: the label, or what stands for it."""
        return self.instead or self.label


def told_apart(pupils: Iterable[Pupil]) -> tuple[Pupil, ...]:
    """Count the pupils of one name, in the order of their list, so that each is somebody."""
    seen: Counter[str] = Counter()
    apart = []
    for pupil in pupils:
        seen[pupil.label] += 1
        apart.append(replace(pupil, namesake=seen[pupil.label]))
    return tuple(apart)


@frozen
class _Columns:
    """Where in a row a pupil's label, level and language stand; a list may have no levels, or languages."""

    label: int
    level: int | None
    language: int | None
    count: int


def read_roster(path: str | Path) -> tuple[Pupil, ...]:
    """Read a class list: a column ``name`` or ``label``, and where pupils have them ``level``, ``language``.

    Columns, levels and languages may be said in any of ours, such as ``nombre`` and ``con apoyo``. Other
    columns and blank rows are passed over, an empty level is core, an empty language the lesson's, and
    names may stand more than once.

    Raises:
        RosterRefused: the file or a row of it cannot be used; carries every ``Problem`` found.
    """
    file = str(path)
    try:
        table = read_table(Path(path), file)
    except TableRefused as refusal:
        raise RosterRefused(refusal.problems) from None
    return pupils_in(table)


def roster_in(content: bytes, file: str) -> tuple[Pupil, ...]:
    """Read a class list that lies in no file, as ``read_roster`` reads one.

    Args:
        content: as a spreadsheet saves it as text.
        file: what the list is called where a slip is told.

    Raises:
        RosterRefused: as ``read_roster``.
    """
    try:
        table = table_in(content, file)
    except TableRefused as refusal:
        raise RosterRefused(refusal.problems) from None
    return pupils_in(table)


def pupils_in(table: Table) -> tuple[Pupil, ...]:
    """Read the rows of a class list, as ``read_roster`` does.

    Raises:
        RosterRefused: as ``read_roster``.
    """
    file = table.file
    problems = list(table.problems)
    columns = _columns(table, problems)
    if columns is None:
        raise RosterRefused(problems)
    pupils = [_pupil(row, columns, file, problems) for row in table.rows[1:]]
    if not pupils and not problems:
        problems.append(
            Problem(
                file=file,
                message=phrase("this list has no students"),
                hint=phrase("write one student on each line"),
            )
        )
    if len(pupils) > MOST_PUPILS:
        message = phrase(
            "a class has at most {most} students, and this list has {count}",
            most=MOST_PUPILS,
            count=len(pupils),
        )
        problems.append(Problem(file=file, message=message, hint=phrase("give a shorter list")))
    if problems:
        raise RosterRefused(problems)
    return told_apart(pupil for pupil in pupils if pupil)


def _columns(table: Table, problems: list[Problem]) -> _Columns | None:
    """Find the columns by the header; what is wrong with it is added to the problems."""
    if not table.rows:
        problems += (
            [] if problems else [Problem(file=table.file, message=phrase("this list is empty"), hint=EXAMPLE)]
        )
        return None
    header = table.rows[0]
    if any(found.line < header.line for found in problems):
        # What cannot be read stands where the header should be.
        return None
    typed = [plain(field).casefold() for field in header.fields]
    names = [column_words().get(word, word) for word in typed]
    label = next((name for name in LABELS if name in names), "")
    twice = next((name for name in (label, LEVEL, LANGUAGE) if name and names.count(name) > 1), "")
    lacking = (name for name in (LEVEL, LANGUAGE) if name not in names)
    missed = next((near for name in lacking if (near := _near(name, typed))), None)
    hint: Said
    if twice:
        message, hint = _said_twice([word for word, name in zip(typed, names, strict=True) if name == twice])
    elif not label:
        message = phrase("the first line has no column called name or label")
        hint = _mended(typed, next((near for name in LABELS[::-1] if (near := _near(name, typed))), None))
    elif missed:
        message = phrase("no column is called {wanted}, and one is called {found}", **missed._asdict())
        hint = _mended(typed, missed)
    else:
        level, language = (names.index(name) if name in names else None for name in (LEVEL, LANGUAGE))
        return _Columns(names.index(label), level, language, len(names))
    problems.append(problem(table.file, header.line, message, header.text, hint))
    return None


def _said_twice(words: list[str]) -> tuple[Said, Said]:
    """Tell that columns mean one thing, in one word or in the words of two languages."""
    one, other = words[:2]
    message = (
        phrase("two columns are called {name}", name=one)
        if one == other
        else phrase("the columns {one} and {other} mean the same", one=one, other=other)
    )
    return message, phrase("give one of them another name")


class _Near(NamedTuple):
    """A word that may head a column, and what stands there nearly like it."""

    wanted: str
    found: str


def _near(name: str, typed: list[str]) -> _Near | None:
    """Find a column under a word that is nearly one of its own; None where none is near."""
    ways = [word for word, column in column_words().items() if column == name]
    found = ((way, get_close_matches(way, typed, n=1, cutoff=0.7)) for way in ways)
    return next((_Near(way, near[0]) for way, near in found if near), None)


def _mended(typed: list[str], near: _Near | None) -> Said:
    """Give the header with its nearest word mended; an example if none is near."""
    return ",".join(near.wanted if word == near.found else word for word in typed) if near else EXAMPLE


def _pupil(row: Row, columns: _Columns, file: str, problems: list[Problem]) -> Pupil | None:
    """Read a row, or add to the problems what is wrong with it."""
    label, level = plain(_field(row, columns.label)), plain(_field(row, columns.level))
    language = plain(_field(row, columns.language))
    for field, slip in (
        (columns.count, _slip_of_row(row, columns)),
        (columns.label, _slip_of_label(label)),
        (columns.level or 0, _slip_of_level(level)),
        (columns.language or 0, _slip_of_language(language)),
    ):
        if slip:
            problems.append(problem_in_cell(file, row, field, slip.message, slip.hint))
            return None
    return Pupil(label, level_called(level) or Level.CORE, language=language_called(language) or "")


class _Slip(NamedTuple):
    """What is wrong with a row, and the remedy."""

    message: Said
    hint: Said


def _slip_of_row(row: Row, columns: _Columns) -> _Slip | None:
    """Find more fields than the header has: a name with a comma, most likely."""
    if not any(row.fields[columns.count :]):
        return None
    message = phrase("this row has more fields than the header, which has {count}", count=columns.count)
    return _Slip(message, phrase("put quotes round a name with a comma: {example}", example='"Oak, Ann"'))


def _slip_of_label(label: str) -> _Slip | None:
    """Find what keeps a label from being printed."""
    if not label:
        return _Slip(phrase("this row has no name"), phrase("write a name or a label, or take the row out"))
    if not is_text(label):
        return _Slip(phrase("this name is not UTF-8 text"), SAVE_AS)
    if len(label) > LONGEST_LABEL:
        figures = {"count": len(label), "most": LONGEST_LABEL}
        message = phrase("this name has {count} characters, and a page takes {most}", **figures)
        return _Slip(message, phrase("write a shorter label"))
    if not has_shape(label):
        hint = phrase("write it anew, or give a label")
        return _Slip(phrase("this name has signs that have no shape"), hint)
    return None


def _slip_of_level(words: str) -> _Slip | None:
    """Find a level that is none; where nothing is said, core is meant."""
    if not words or level_called(words):
        return None
    return _Slip(phrase("this level is none of guided, core, stretch"), levels_offered(words))


def _slip_of_language(words: str) -> _Slip | None:
    """Find a language in which no pages are; where nothing is said, the lesson's is meant."""
    if not words or language_called(words):
        return None
    near = get_close_matches(words.casefold(), language_words(), n=1, cutoff=0.8)
    near += get_close_matches(words, languages(), n=1, cutoff=0.4)
    known = ", ".join(languages())
    return _Slip(phrase("this language is none of {languages}", languages=known), near[0] if near else known)


def _field(row: Row, place: int | None) -> str:
    return row.fields[place] if place is not None and place < len(row.fields) else ""
