"""The commands that give lessons to other programs and take them back, and the words that each takes."""

import argparse

from foldmath.cli.command import Commands, added, take_lessons, take_out, whole_number
from foldmath.cli.terminal.speaking import spoken
from foldmath.phrases import phrase


def export(commands: Commands) -> None:
    """Add ``export``."""

    def door(arguments: argparse.Namespace) -> int:
        from foldmath.cli.doors.exchanging import export_lessons

        return export_lessons(arguments.lessons, arguments.to, arguments.out)

    command = added(
        commands,
        "export",
        phrase("write the folding of lessons in the open FOLD format, or their diagrams as SVG or PNG"),
        "foldmath export lessons/seed-trays.toml --to fold",
        door,
    )
    take_lessons(command)
    command.add_argument(
        "--to", metavar="FORMAT", default="fold", help=spoken(phrase("fold, svg or png (fold)"))
    )
    take_out(command)


def import_(commands: Commands) -> None:
    """Add ``import``."""

    def door(arguments: argparse.Namespace) -> int:
        from foldmath.cli.doors.exchanging import import_pattern

        return import_pattern(arguments.file, arguments.out, arguments.grade)

    command = added(
        commands,
        "import",
        phrase("find the folds that make a crease pattern in the FOLD format, and write them as a lesson"),
        "foldmath import pattern.fold --out my-lesson.toml",
        door,
    )
    command.add_argument(
        "file", metavar="PATTERN.fold", help=spoken(phrase("a crease pattern in the FOLD format"))
    )
    command.add_argument(
        "--out",
        metavar="LESSON.toml",
        help=spoken(phrase("the lesson file to write; if left out, it is printed")),
    )
    command.add_argument(
        "--grade", type=whole_number, metavar="N", help=spoken(phrase("the grade of the lesson, 3 to 6"))
    )
