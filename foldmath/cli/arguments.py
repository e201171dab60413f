"""The words that each command takes. Nothing heavy is imported here: ``--help`` must be instant."""

import argparse
from collections.abc import Callable
from difflib import get_close_matches
from typing import Any, NoReturn

from foldmath import __version__

FIRST_STEPS = """\
foldmath folds a sheet of paper exactly, and prints the fraction lesson that the folds show.

First make the pages of a lesson:

    foldmath make lessons/seed-trays.toml

Then open output/seed-trays/worksheet.pdf, and answer-key.pdf beside it.
To write a lesson of your own, copy a file from lessons/ and change its words.

    foldmath --help         says what else there is
"""

COMMANDS = ("make", "project", "trace", "check", "draw")


class _Parser(argparse.ArgumentParser):
    """A parser that offers the nearest command for a misspelt one."""

    def error(self, message: str) -> NoReturn:
        found = message.partition("invalid choice: '")[2].partition("'")[0]
        near = get_close_matches(found, COMMANDS, n=1)
        hint = f"try:  foldmath {near[0]}" if near else f"try:  {self.prog} --help"
        if found:
            message = f"there is no command {found!r}; there are {', '.join(COMMANDS)}"
        self.exit(2, f"foldmath: {message}\n    {hint}\n")


def parser() -> argparse.ArgumentParser:
    """Give the parser of all commands."""
    top = _Parser(
        prog="foldmath",
        description="Fold one sheet of paper exactly, and print the fraction lesson that the folds show.",
        epilog="example:  foldmath make lessons/seed-trays.toml",
    )
    top.add_argument("--version", action="version", version=f"foldmath {__version__}")
    commands = top.add_subparsers(dest="command", metavar="COMMAND", parser_class=_Parser)
    _make(commands)
    _project(commands)
    _trace(commands)
    _check(commands)
    _draw(commands)
    return top


def _command(commands: Any, name: str, summary: str, example: str, door: Callable[..., int]) -> Any:
    command = commands.add_parser(
        name,
        help=summary,
        description=f"{summary[:1].upper()}{summary[1:]}.",
        epilog=f"example:  {example}",
    )
    command.set_defaults(door=door)
    return command


def _make(commands: Any) -> None:
    def door(arguments: argparse.Namespace) -> int:
        from foldmath.cli.making import make_class_sets, make_pages

        wanted = (arguments.lessons, arguments.out, arguments.paper)
        if arguments.roster is None and arguments.pupils is None:
            return make_pages(*wanted, large_print=arguments.large_print)
        return make_class_sets(
            *wanted,
            large_print=arguments.large_print,
            roster=arguments.roster,
            pupils=arguments.pupils or 0,
        )

    command = _command(
        commands,
        "make",
        "make the worksheets of three levels, their keys, the plan and the slides of lessons",
        "foldmath make lessons/seed-trays.toml --paper A4",
        door,
    )
    _lessons(command)
    _out(command)
    command.add_argument(
        "--paper",
        metavar="NAME",
        help="print on letter or A4 (if left out: letter for lessons in inches, A4 for millimetres)",
    )
    command.add_argument(
        "--large-print", action="store_true", help="lay all pupils' pages out anew at 18 points"
    )
    own = command.add_mutually_exclusive_group()
    own.add_argument(
        "--class",
        dest="roster",
        metavar="ROSTER.csv",
        help="print a set with every pupil's own numbers; columns: name or label, level",
    )
    own.add_argument("--pupils", type=int, metavar="N", help="the same for N pupils without a roster")


def _project(commands: Any) -> None:
    def door(arguments: argparse.Namespace) -> int:
        from foldmath.cli.projecting import project

        return project(arguments.lesson, arguments.out, opened=not arguments.no_open)

    command = _command(
        commands,
        "project",
        "write the slides of a lesson as one page, and open it in the browser",
        "foldmath project lessons/seed-trays.toml",
        door,
    )
    command.add_argument("lesson", metavar="LESSON", help="a lesson file, such as those in lessons/")
    _out(command)
    command.add_argument("--no-open", action="store_true", help="only write the page")


def _trace(commands: Any) -> None:
    def door(arguments: argparse.Namespace) -> int:
        from foldmath.cli.telling import tell_trace

        return tell_trace(arguments.lessons, as_json=arguments.json)

    command = _command(
        commands,
        "trace",
        "say what every step does: creases, panels, sizes, layers, sentences",
        "foldmath trace lessons/seed-trays.toml",
        door,
    )
    _lessons(command)
    command.add_argument("--json", action="store_true", help="as data, exact, for other programs")


def _check(commands: Any) -> None:
    def door(arguments: argparse.Namespace) -> int:
        from foldmath.cli.telling import tell_verdict

        return tell_verdict(arguments.claim, arguments.lesson, as_json=arguments.json)

    command = _command(
        commands,
        "check",
        "say whether a sentence is true and, if not, what was probably meant",
        'foldmath check "4 × 1/2 = 8" lessons/seed-trays.toml',
        door,
    )
    command.add_argument("claim", metavar="SENTENCE", help='such as "1/2 of 1/4 = 1/8", in quotes')
    command.add_argument("lesson", metavar="LESSON", nargs="?", help="say which of its steps shows it")
    command.add_argument("--json", action="store_true", help="as data, for other programs")


def _draw(commands: Any) -> None:
    def door(arguments: argparse.Namespace) -> int:
        from foldmath.cli.making import draw_diagrams

        return draw_diagrams(arguments.lessons, arguments.out)

    command = _command(
        commands,
        "draw",
        "save the diagrams of lessons as SVG and as PNG",
        "foldmath draw lessons/seed-trays.toml --out pictures",
        door,
    )
    _lessons(command)
    _out(command)


def _lessons(command: Any) -> None:
    command.add_argument(
        "lessons", metavar="LESSON", nargs="+", help="a lesson file, such as those in lessons/"
    )


def _out(command: Any) -> None:
    command.add_argument("--out", metavar="DIR", default="output", help="the folder to write in (output)")
