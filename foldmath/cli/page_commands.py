"""The commands that write pages, slides and pictures, and the words that each takes."""

import argparse

from foldmath.cli.command import (
    Commands,
    added,
    take_large_print,
    take_lesson,
    take_lessons,
    take_out,
    take_page_paper,
    take_students,
)
from foldmath.cli.terminal.speaking import spoken
from foldmath.phrases import phrase
from foldmath.words.languages import languages


def make(commands: Commands) -> None:
    """Add ``make``."""

    def door(arguments: argparse.Namespace) -> int:
        from foldmath.cli.doors.classes import Asked, make_class_sets
        from foldmath.cli.doors.making import make_editable, make_pages

        wanted = (arguments.lessons, arguments.out, arguments.paper)
        said = {"large_print": arguments.large_print, "language": arguments.language}
        asked = Asked(
            rosters=tuple(arguments.rosters),
            folder=arguments.classes,
            pupils=arguments.pupils,
            cluster=arguments.cluster,
        )
        if asked.of_classes:
            return make_class_sets(*wanted, **said, asked=asked)
        if arguments.editable:
            return make_editable(*wanted, **said)
        return make_pages(*wanted, **said, only=arguments.only)

    command = added(
        commands,
        "make",
        phrase("make the worksheets of three levels, their keys, the plan and the slides of lessons"),
        "foldmath make lessons/seed-trays.toml --paper A4",
        door,
    )
    take_lessons(command)
    take_out(command)
    take_page_paper(command)
    take_large_print(command)
    _take_languages(command)
    _take_class_or_parts(command)


def _take_languages(command: argparse.ArgumentParser) -> None:
    """Take the languages that pages speak."""
    command.add_argument(
        "--language",
        metavar="LANGUAGES",
        help=spoken(
            phrase(
                "the language of the pages, in place of the lesson's own: {languages}; several, divided by "
                "commas, get a folder each",
                languages=", ".join(languages()),
            )
        ),
    )


def _take_class_or_parts(command: argparse.ArgumentParser) -> None:
    """Take classes, which always get whole sets, or the parts of the lesson's pages to make."""
    own = command.add_mutually_exclusive_group()
    _take_class_lists(own)
    take_students(own, phrase("the same for N students without a roster"))
    command.add_argument(
        "--cluster",
        metavar="ADDRESS",
        help=spoken(phrase("have the workers of this Dask scheduler lay out the pages of classes")),
    )
    own.add_argument(
        "--only",
        metavar="PARTS",
        help=spoken(
            phrase(
                "make only these, divided by commas, and keep the others that match them: worksheet, "
                "key, exit-ticket, teacher-plan, slides, templates, booklet, diagrams"
            )
        ),
    )
    own.add_argument(
        "--editable",
        action="store_true",
        help=spoken(
            phrase("make worksheets and keys once more as Word files (.docx), to change before printing")
        ),
    )


def _take_class_lists(own: "argparse._MutuallyExclusiveGroup") -> None:
    """Take class lists, by their names or by their folder's."""
    own.add_argument(
        "--class",
        dest="rosters",
        nargs="+",
        action="extend",
        default=[],
        metavar="ROSTER.csv",
        help=spoken(
            phrase(
                "make a set in which every student has numbers of their own, for each of these lists; "
                "columns: name or label, level, language"
            )
        ),
    )
    own.add_argument(
        "--classes",
        metavar="FOLDER",
        help=spoken(phrase("the same for every list (.csv) in a folder")),
    )


def booklet(commands: Commands) -> None:
    """Add ``booklet``."""

    def door(arguments: argparse.Namespace) -> int:
        from foldmath.cli.doors.making import make_booklets

        return make_booklets(
            arguments.lessons, arguments.out, arguments.paper, large_print=arguments.large_print
        )

    command = added(
        commands,
        "booklet",
        phrase(
            "make only the booklet that a lesson's sheet becomes, its key, and the page that "
            "shows the folding"
        ),
        "foldmath booklet lessons/tile-race.toml",
        door,
    )
    take_lessons(command)
    take_out(command)
    take_page_paper(command)
    take_large_print(command)


def project(commands: Commands) -> None:
    """Add ``project``."""

    def door(arguments: argparse.Namespace) -> int:
        from foldmath.cli.doors.projecting import project

        return project(arguments.lesson, arguments.out, opened=not arguments.no_open)

    command = added(
        commands,
        "project",
        phrase("write the slides of a lesson as one page, and open it in the browser"),
        "foldmath project lessons/seed-trays.toml",
        door,
    )
    take_lesson(command)
    take_out(command)
    command.add_argument("--no-open", action="store_true", help=spoken(phrase("only write the page")))


def draw(commands: Commands) -> None:
    """Add ``draw``."""

    def door(arguments: argparse.Namespace) -> int:
        from foldmath.cli.doors.making import draw_diagrams

        return draw_diagrams(arguments.lessons, arguments.out)

    command = added(
        commands,
        "draw",
        phrase("save the diagrams of lessons as SVG and as PNG"),
        "foldmath draw lessons/seed-trays.toml --out pictures",
        door,
    )
    take_lessons(command)
    take_out(command)
