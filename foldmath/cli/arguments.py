"""The commands and the way in. Nothing heavy is imported here: ``--help`` must be instant."""

import argparse
from collections.abc import Callable
from difflib import get_close_matches
from typing import NoReturn

from foldmath import __version__
from foldmath.cli.command import Commands
from foldmath.cli.desk_commands import desk, new
from foldmath.cli.exchange_commands import export, import_
from foldmath.cli.marking_commands import mark
from foldmath.cli.page_commands import booklet, draw, make, project
from foldmath.cli.planning_commands import parts, plan
from foldmath.cli.telling_commands import check, explain, trace

FIRST_STEPS = """\
foldmath folds a sheet of paper exactly, and prints the fraction lesson that the folds show.

Open the desk, and do all of it in the browser, by pointing:

    foldmath desk

Or begin a lesson here, change its words as you like, and make its pages:

    foldmath new seed-beds --from seed-trays
    foldmath make seed-beds.toml

Then open output/seed-beds/worksheet.pdf, and answer-key.pdf beside it.

    foldmath --help         says what else there is
"""

COMMANDS: dict[str, Callable[[Commands], None]] = {
    "desk": desk,
    "new": new,
    "make": make,
    "mark": mark,
    "booklet": booklet,
    "project": project,
    "trace": trace,
    "explain": explain,
    "check": check,
    "plan": plan,
    "parts": parts,
    "draw": draw,
    "export": export,
    "import": import_,
}
"""What adds each command, in the order in which a teacher comes to need them."""


class _Parser(argparse.ArgumentParser):
    """A parser that offers the nearest command for a misspelt one."""

    def error(self, message: str) -> NoReturn:
        of_commands, _, choice = message.partition("argument COMMAND: invalid choice: '")
        found = "" if of_commands else choice.partition("'")[0]
        near = get_close_matches(found, COMMANDS, n=2)
        # Letters in another order are the commonest slip: "maek" is make, not mark.
        near.sort(key=lambda name: sorted(name) != sorted(found))
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
    for add in COMMANDS.values():
        add(commands)
    return top
