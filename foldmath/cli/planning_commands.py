"""The commands that find out how to fold something, and the words that each takes."""

import argparse

from foldmath.cli.command import (
    Commands,
    added,
    sentence,
    take_large_print,
    take_out,
    take_sheet,
    whole_number,
)
from foldmath.cli.terminal.speaking import spoken
from foldmath.phrases import phrase


def plan(commands: Commands) -> None:
    """Add ``plan``."""

    def door(arguments: argparse.Namespace) -> int:
        from foldmath.cli.doors.planning import tell_plans

        return tell_plans(
            arguments.product,
            paper=arguments.paper,
            orientation=arguments.orientation,
            grade=arguments.grade,
            panels=arguments.panels,
            sizes=arguments.sizes,
            max_layers=arguments.max_layers,
            size_at_least=arguments.size_at_least,
            folds=arguments.folds,
            stock=arguments.stock,
            best=arguments.best,
            with_details=arguments.details,
            write=arguments.write,
            picture=arguments.picture,
            choose=arguments.choose,
        )

    command = added(
        commands,
        "plan",
        phrase("find foldings for a product, for equal panels or for sizes, best first"),
        'foldmath plan "2/3 × 4/5" --paper letter --grade 5',
        door,
    )
    _wanted(command)
    take_sheet(command)
    _take_limits(command)
    _told(command)


def _take_limits(command: argparse.ArgumentParser) -> None:
    command.add_argument(
        "--grade", type=whole_number, default=5, metavar="N", help=spoken(phrase("the grade, 3 to 6 (5)"))
    )
    command.add_argument(
        "--stock", metavar="NAME", help=spoken(phrase('the kind of paper, such as "copy 20 lb"'))
    )
    command.add_argument(
        "--max-layers", type=whole_number, metavar="N", help=spoken(phrase("the most layers to allow"))
    )
    command.add_argument(
        "--size-at-least", metavar="SIZE", help=spoken(phrase("the smallest panel to allow, such as 40x40mm"))
    )
    command.add_argument(
        "--folds", type=whole_number, metavar="N", help=spoken(phrase("the most folds to allow"))
    )


def _wanted(command: argparse.ArgumentParser) -> None:
    command.add_argument(
        "product",
        metavar="PRODUCT",
        nargs="?",
        type=sentence,
        help=spoken(phrase('such as "2/3 × 4/5", in quotes')),
    )
    command.add_argument(
        "--panels",
        type=whole_number,
        metavar="N",
        help=spoken(phrase("this many equal panels instead of a product")),
    )
    command.add_argument(
        "--sizes", metavar="LIST", help=spoken(phrase('or panels of these sizes, such as "1/6, 1/6, 2/3"'))
    )


def _told(command: argparse.ArgumentParser) -> None:
    command.add_argument(
        "--best", type=whole_number, default=5, metavar="N", help=spoken(phrase("how many plans to list (5)"))
    )
    command.add_argument(
        "--choose",
        type=whole_number,
        default=1,
        metavar="N",
        help=spoken(phrase("which plan to write or draw (1)")),
    )
    command.add_argument(
        "--write", metavar="FILE.toml", help=spoken(phrase("write the chosen plan as a lesson"))
    )
    command.add_argument(
        "--picture", metavar="FILE.svg", help=spoken(phrase("draw where its creases will fall, as bands"))
    )
    command.add_argument(
        "--details", action="store_true", help=spoken(phrase("with the figures of every crease"))
    )


def parts(commands: Commands) -> None:
    """Add ``parts``."""

    def door(arguments: argparse.Namespace) -> int:
        from foldmath.cli.doors.parts import tell_parts

        return tell_parts(
            arguments.parts,
            arguments.paper,
            arguments.orientation,
            arguments.along,
            arguments.accuracy,
            arguments.out,
            large_print=arguments.large_print,
        )

    command = added(
        commands,
        "parts",
        phrase("show ways to fold equal parts, such as fifths, without a ruler, as words and as a page"),
        'foldmath parts 5 --paper letter --accuracy "1 mm"',
        door,
    )
    command.add_argument(
        "parts", type=whole_number, metavar="N", help=spoken(phrase("how many equal parts, 3 to 12"))
    )
    take_sheet(command)
    along = spoken(phrase("the side to divide (width)"))
    command.add_argument("--along", choices=("width", "height"), default="width", help=along)
    command.add_argument(
        "--accuracy",
        metavar="LENGTH",
        default="1 mm",
        help=spoken(phrase("how far off a crease may be; says how often to repeat (1 mm)")),
    )
    take_large_print(command)
    take_out(command)
