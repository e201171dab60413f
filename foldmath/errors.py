"""One tree of errors, and ``Problem``, a slip in a lesson file with its place and remedy."""

from foldmath.phrases import Phrase, Said, counted, phrase
from foldmath.values import frozen

LONGEST_SHOWN = 40
"""Characters of a typed word that an error shows."""


class FoldmathError(Exception):
    """Something the user can mend; shown in one place, as one message, with its exit code.

    Args:
        message: what is wrong.
        hint: the remedy, shown below it; empty if there is none.
    """

    exit_code = 1
    words = ""
    """What is wrong, as it was written; empty if something is missing."""

    def __init__(self, message: Said, hint: Said = "") -> None:
        super().__init__(message, hint)
        self.message = message
        self.hint = hint

    @property
    def heading(self) -> Said:
        """What stands first where the error is shown: what is wrong, and where if that is known."""
        return self.message

    def __str__(self) -> str:
        return _lines(self.heading, self.words, self.hint)


def _lines(heading: Said, words: str, hint: Said) -> str:
    here = f"\n    here: {words}" if words else ""
    remedy = f"\n    try:  {hint}" if hint else ""
    return f"{heading}{here}{remedy}"


@frozen(kw_only=True)
class Problem:
    """A slip in a file: where it stands, what is wrong, and the nearest thing that would work.

    Args:
        file: the path as the user gave it.
        message: what is wrong.
        line: counted from 1; 0 if the whole file is meant.
        column: counted from 1; 0 if the whole line is meant.
        words: the offending words, as written; empty if something is missing.
        hint: the remedy.
        cell: of a spreadsheet, by its letters and line; empty in other files.
    """

    file: str
    message: Said
    line: int = 0
    column: int = 0
    words: str = ""
    hint: Said = ""
    cell: str = ""

    @property
    def heading(self) -> Said:
        """What is wrong, behind the file, and the line and column that are known."""
        numbers = (str(number) for number in (self.line, self.column) if number)
        place: Said = ":".join([self.file, *numbers])
        if self.cell:
            return phrase(
                "{place}, cell {cell}: {message}", place=place, cell=self.cell, message=self.message
            )
        return phrase("{place}: {message}", place=place, message=self.message)

    def __str__(self) -> str:
        return _lines(self.heading, self.words, self.hint)


def _in_the_file(problem: Problem) -> tuple[str, int, int, str]:
    return problem.file, problem.line, problem.column, str(problem.message)


MOST_SHOWN = 20
"""So many slips of a file fill a terminal; who has mended them sees the next ones."""


class FileRefused(FoldmathError):
    """A file that cannot be used; carries every ``Problem`` found in it."""

    def __init__(self, problems: list[Problem]) -> None:
        self.problems = sorted(problems, key=_in_the_file)
        super().__init__("\n".join(str(problem) for problem in self.shown))

    @property
    def shown(self) -> list[Problem]:
        """The first of the problems, as many as are shown."""
        return self.problems[:MOST_SHOWN]

    @property
    def others(self) -> Phrase | None:
        """How many more there are; None if all are shown."""
        count = len(self.problems) - len(self.shown)
        return counted("and {count} more mistake", "and {count} more mistakes", count) if count else None

    def __str__(self) -> str:
        return "\n".join([*map(str, self.shown), *([str(self.others)] if self.others else [])])


class LessonRefused(FileRefused):
    """A lesson file that cannot be used."""


class BlockTooHigh(FoldmathError):
    """A block that no page has room for, such as the words of a hundred turns below one picture."""


class Unreadable(FoldmathError):
    """Words on the command line that cannot be read: a claim, a paper, an option."""

    exit_code = 2


class CannotWrite(FoldmathError):
    """A page that could not be put where it was wanted."""

    @classmethod
    def by(cls, file: object, error: OSError, hint: Said = "") -> "CannotWrite":
        """Say of a file, by its name, what the system reported, and how to mend it."""
        return cls(phrase("{file}: cannot be written: {why}", file=str(file), why=_reported(error)), hint)


class SurroundingsFailed(FoldmathError):
    """What the machine did not give: room to write, memory, a folder for passing files, an open terminal.

    Source:
        Its exit code is EX_IOERR of ``sysexits.h``, which came with 4.3BSD.
    """

    exit_code = 74

    @classmethod
    def by(cls, error: OSError | MemoryError) -> "SurroundingsFailed":
        """Say in one line what the system reported."""
        if isinstance(error, MemoryError):
            message = phrase("there is not enough memory for this")
            return cls(message, phrase("close other programs, or fold fewer panels"))
        message = phrase("the system refuses this: {reason}", reason=_reported(error))
        if error.filename:
            message = phrase("{place}: {message}", place=error.filename, message=message)
        return cls(message, phrase("make room, or check permissions"))


def _reported(error: OSError) -> str:
    return (error.strerror or str(error)).lower()
