"""One command of the shell, and the words that several commands take."""

import argparse
import os
from collections.abc import Callable
from typing import Any, TypeAlias

from foldmath.errors import LONGEST_SHOWN

Commands: TypeAlias = "argparse._SubParsersAction[Any]"
"""The commands added so far."""


def added(
    commands: Commands, name: str, summary: str, example: str, door: Callable[..., int]
) -> argparse.ArgumentParser:
    """Add a command; its ``door`` is opened with the words that it took."""
    command: argparse.ArgumentParser = commands.add_parser(
        name,
        help=summary,
        description=f"{summary[:1].upper()}{summary[1:]}.",
        epilog=f"example:  {example}",
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
        raise argparse.ArgumentTypeError(
            f"{word[:LONGEST_SHOWN]!r} is not a whole number, such as 5"
        ) from None


def sentence(word: str) -> str:
    """Read a sentence as it was typed, in UTF-8 too where the shell's own language has ASCII letters only."""
    try:
        return os.fsencode(word).decode("utf-8")
    except UnicodeError:
        return word


def take_lessons(command: argparse.ArgumentParser) -> None:
    """Take one lesson or more."""
    command.add_argument(
        "lessons", metavar="LESSON", nargs="+", help="a lesson file, such as those in lessons/"
    )


def take_lesson(command: argparse.ArgumentParser) -> None:
    """Take one lesson."""
    command.add_argument("lesson", metavar="LESSON", help="a lesson file, such as those in lessons/")


def take_out(command: argparse.ArgumentParser) -> None:
    """Take the folder to write in."""
    command.add_argument("--out", metavar="DIR", default="output", help="the folder to write in (output)")


def take_page_paper(command: argparse.ArgumentParser) -> None:
    """Take the paper to print on."""
    command.add_argument(
        "--paper",
        metavar="NAME",
        help="print on letter or A4 (if left out: letter for lessons in inches, A4 for millimetres)",
    )


def take_large_print(command: argparse.ArgumentParser) -> None:
    """Take the wish for large print."""
    command.add_argument(
        "--large-print", action="store_true", help="lay all pupils' pages out anew at 18 points"
    )


def take_sheet(command: argparse.ArgumentParser) -> None:
    """Take the sheet to fold."""
    command.add_argument("--paper", metavar="NAME", default="letter", help="the sheet to fold (letter)")
    command.add_argument(
        "--orientation", choices=("landscape", "portrait"), default="landscape", help="as it lies (landscape)"
    )
