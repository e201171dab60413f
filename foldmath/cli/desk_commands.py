"""The commands that open the desk and begin a lesson, and the words that each takes."""

import argparse

from foldmath.cli.command import Commands, added, whole_number
from foldmath.cli.terminal.speaking import spoken
from foldmath.phrases import phrase


def desk(commands: Commands) -> None:
    """Add ``desk``."""

    def door(arguments: argparse.Namespace) -> int:
        from foldmath.cli.doors.desk import open_desk, write_starter

        if arguments.starter is not None:
            return write_starter(arguments.folder, arguments.starter)
        return open_desk(arguments.folder, arguments.port, open_browser=not arguments.no_browser)

    command = added(
        commands,
        "desk",
        phrase("open the desk in the browser: all of this by pointing"),
        "foldmath desk",
        door,
    )
    command.add_argument(
        "--folder",
        metavar="DIR",
        help=spoken(
            phrase("the folder of your lessons (foldmath, among your documents); made if it is not there")
        ),
    )
    command.add_argument(
        "--port", type=whole_number, metavar="N", default=0, help=spoken(phrase("listen here (any free)"))
    )
    command.add_argument("--no-browser", action="store_true", help=spoken(phrase("only print the address")))
    command.add_argument(
        "--starter",
        metavar="DIR",
        help=spoken(phrase("instead, write a file into DIR that opens the desk when double-clicked")),
    )


def new(commands: Commands) -> None:
    """Add ``new``."""

    def door(arguments: argparse.Namespace) -> int:
        from foldmath.cli.doors.desk import begin_lesson

        return begin_lesson(arguments.name, arguments.source)

    command = added(
        commands,
        "new",
        phrase("begin a lesson file: with one fold, or like another lesson"),
        "foldmath new seed-beds --from seed-trays",
        door,
    )
    command.add_argument(
        "name", metavar="NAME", help=spoken(phrase("the name of the new lesson; its file is NAME.toml"))
    )
    command.add_argument(
        "--from",
        dest="source",
        metavar="LESSON",
        help=spoken(phrase("one of the lessons that come along, by its name, or a lesson file")),
    )
