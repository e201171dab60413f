"""The commands and the way in. Nothing heavy is imported here: ``--help`` must be instant."""

import argparse
import os
import sys
from collections.abc import Callable, Sequence

from foldmath import __version__
from foldmath.cli.command import Commands
from foldmath.cli.desk_commands import desk, new
from foldmath.cli.exchange_commands import export, import_
from foldmath.cli.marking_commands import mark
from foldmath.cli.page_commands import booklet, draw, make, project
from foldmath.cli.planning_commands import parts, plan
from foldmath.cli.telling_commands import check, explain, trace
from foldmath.cli.terminal.argparse_words import speak_in
from foldmath.cli.terminal.speaking import spoken
from foldmath.phrases import phrase
from foldmath.words.languages import terminal_language

# So mypy knows it too; typing itself is slow to import, and help must be quick.
TYPE_CHECKING = False
if TYPE_CHECKING:
    from typing import Any, NoReturn

FIRST_STEPS = phrase("""\
foldmath folds a sheet of paper exactly, and prints the fraction lesson that the folds show.

Open the desk, and do all of it in the browser, by pointing:

    foldmath desk

Or begin a lesson here, change its words as you like, and make its pages:

    foldmath new seed-beds --from seed-trays
    foldmath make seed-beds.toml

Then open output/seed-beds/worksheet.pdf, and answer-key.pdf beside it.

    foldmath --help         says what else there is
""")

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
    """A parser whose refusals name the help that would do, or the option that was meant."""

    def parse_known_args(self, args: "Any" = None, namespace: "Any" = None) -> "Any":
        """Refuse here what this command does not take: the list of all commands knows no option of it."""
        known, others = super().parse_known_args(args, namespace)
        if others:
            wrong = spoken(phrase("unrecognized arguments: %s")) % " ".join(others)
            self._refuse(wrong, self._meant(others[0]))
        return known, others

    def error(self, message: str) -> "NoReturn":
        self._refuse(message, "")

    def _meant(self, word: str) -> str:
        """Give the option that is spelt most like a word; empty where none is."""
        from difflib import get_close_matches

        # Without the dashes, which make every two options a little alike.
        options = {option[2:]: option for option in self._option_string_actions if option.startswith("--")}
        near = get_close_matches(word.lstrip("-"), options, n=1)
        return options[near[0]] if near else ""

    def _refuse(self, message: str, instead: str) -> "NoReturn":
        remedy = phrase("try:  {remedy}", remedy=instead or f"{self.prog} --help")
        self.exit(2, f"foldmath: {message}\n    {spoken(remedy)}\n")


def refuse_unknown(word: str) -> "NoReturn":
    """Leave, offering the nearest command for a misspelt one."""
    # Imported here, since a slip is seldom and the way in must be quick.
    from difflib import get_close_matches

    near = get_close_matches(word, COMMANDS, n=2)
    # Letters in another order are the commonest slip, a lost ending the next: "maek" and "mak" are make.
    near.sort(key=lambda name: (sorted(name) != sorted(word), not name.startswith(word)))
    wrong = phrase(
        "there is no command {word}; there are {commands}", word=repr(word), commands=", ".join(COMMANDS)
    )
    remedy = phrase("try:  {remedy}", remedy=f"foldmath {near[0]}" if near else "foldmath --help")
    print(f"foldmath: {spoken(wrong)}\n    {spoken(remedy)}", file=sys.stderr)
    raise SystemExit(2)


class _Summary:
    """A command in the list of all: its options are told by its own help, and need not be made for this."""

    def __init__(self, **_: object) -> None:
        pass

    def __getattr__(self, name: str) -> Callable[..., "_Summary"]:
        return lambda *_, **__: self


def parser(words: Sequence[str]) -> argparse.ArgumentParser:
    """Give the parser of the command that words begin with, or of the list of all.

    It speaks the language of the terminal.
    """
    speak_in(terminal_language(os.environ))
    top = _Parser(
        prog="foldmath",
        description=spoken(
            phrase("Fold one sheet of paper exactly, and print the fraction lesson that the folds show.")
        ),
        epilog=spoken(phrase("example:  {words}", words="foldmath make lessons/seed-trays.toml")),
    )
    # Python 3.11 says no help of its own for this in another language.
    shown = spoken(phrase("show program's version number and exit"))
    top.add_argument("--version", action="version", version=f"foldmath {__version__}", help=shown)
    command = next((word for word in words if not word.startswith("-")), None)
    kind: Any = _Summary if command is None else _Parser
    commands = top.add_subparsers(dest="command", metavar="COMMAND", parser_class=kind)
    for name in [command] if command in COMMANDS else COMMANDS:
        COMMANDS[name](commands)
    return top
