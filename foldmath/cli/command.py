"""One command of the shell, and the words that several commands take."""

import argparse
import os
from collections.abc import Callable, Sequence

from foldmath.cli.terminal.speaking import spoken
from foldmath.phrases import Said, phrase
from foldmath.words.languages import terminal_language, usual_paper

# So mypy knows it too; typing itself is slow to import, and help must be quick.
TYPE_CHECKING = False
if TYPE_CHECKING:
    Commands = argparse._SubParsersAction[argparse.ArgumentParser]
    """The commands added so far."""
else:
    Commands = argparse._SubParsersAction

MOST_FILES_MEANT = 1000
"""That one pattern names; more were hardly meant."""


def added(
    commands: Commands, name: str, summary: Said, example: str, door: Callable[..., int]
) -> argparse.ArgumentParser:
    """Add a command; its ``door`` is opened with the words that it took."""
    does = spoken(summary)
    command: argparse.ArgumentParser = commands.add_parser(
        name,
        help=does,
        description=f"{does[:1].upper()}{does[1:]}.",
        epilog=spoken(phrase("example:  {words}", words=example)),
    )
    command.set_defaults(door=door)
    return command


def whole_number(word: str) -> int:
    """Read the number that an option takes.

    Raises:
        ArgumentTypeError: it is none; argparse names the option.
    """
    try:
        return int(word)
    except ValueError:
        # Imported here, since help shows no wrong word, and errors are slow to import.
        from foldmath.errors import LONGEST_SHOWN

        wrong = phrase("{word} is not a whole number, such as 5", word=repr(word[:LONGEST_SHOWN]))
        raise argparse.ArgumentTypeError(spoken(wrong)) from None


def folder(word: str) -> str:
    """Read the name of a folder to write in.

    Raises:
        ArgumentTypeError: it is empty, as a variable of the shell is that was never set.
    """
    if not word.strip():
        raise argparse.ArgumentTypeError(spoken(phrase("a folder needs a name")))
    return word


def sentence(word: str) -> str:
    """Read a sentence as it was typed, in UTF-8 too where the shell's own language has ASCII letters only."""
    try:
        return os.fsencode(word).decode("utf-8")
    except UnicodeError:
        return word


class _FilesMeant(argparse.Action):
    """Takes names of files, and patterns such as ``lessons/*.toml``, which not every shell fills in."""

    def __call__(
        self,
        _parser: argparse.ArgumentParser,
        namespace: argparse.Namespace,
        values: str | Sequence[str] | None,
        _option_string: str | None = None,
    ) -> None:
        """Keep the names, those of a pattern in its place."""
        setattr(namespace, self.dest, [name for word in values or () for name in _files_meant(word)])


def _files_meant(word: str) -> list[str]:
    """Give the files that a pattern names, all of one folder; the word itself where it names none."""
    folder, name = os.path.split(word)
    if not any(sign in name for sign in "*?") or os.path.lexists(word):
        return [word]
    # Imported here, since hardly any command has a pattern, and help must be quick.
    from glob import escape, iglob
    from itertools import islice

    found = islice(iglob(os.path.join(escape(folder), name)), MOST_FILES_MEANT)
    return sorted(found) or [word]


def take_lessons(command: argparse.ArgumentParser) -> None:
    """Take one lesson or more."""
    command.add_argument(
        "lessons",
        metavar="LESSON",
        nargs="+",
        action=_FilesMeant,
        help=spoken(phrase("a lesson file, such as those in lessons/")),
    )


def take_lesson(command: argparse.ArgumentParser) -> None:
    """Take one lesson."""
    command.add_argument(
        "lesson", metavar="LESSON", help=spoken(phrase("a lesson file, such as those in lessons/"))
    )


def take_out(command: argparse.ArgumentParser) -> None:
    """Take the folder to write in."""
    command.add_argument(
        "--out",
        type=folder,
        metavar="DIR",
        default="output",
        help=spoken(phrase("the folder to write in (output)")),
    )


def take_page_paper(command: argparse.ArgumentParser) -> None:
    """Take the paper to print on."""
    command.add_argument(
        "--paper",
        metavar="NAME",
        help=spoken(
            phrase("print on letter or A4 (if left out: letter for lessons in inches, A4 for millimeters)")
        ),
    )


def take_students(who: "argparse._MutuallyExclusiveGroup", told: Said) -> None:
    """Take how many students a class without a list has; the other name is the one of before."""
    who.add_argument(
        "--students", "--pupils", dest="pupils", type=whole_number, metavar="N", help=spoken(told)
    )


def take_large_print(command: argparse.ArgumentParser) -> None:
    """Take the wish for large print."""
    command.add_argument(
        "--large-print",
        action="store_true",
        help=spoken(phrase("set every student page in 18-point type")),
    )


def take_sheet(command: argparse.ArgumentParser) -> None:
    """Take the sheet to fold; if it is left out, the one that is usual with the terminal's language."""
    usual = usual_paper(terminal_language(os.environ))
    command.add_argument(
        "--paper", metavar="NAME", default=usual, help=spoken(phrase("the sheet to fold (letter)"))
    )
    command.add_argument(
        "--orientation",
        choices=("landscape", "portrait"),
        default="landscape",
        help=spoken(phrase("which way it lies (landscape)")),
    )
