"""The commands that answer in words, and the words that each takes."""

import argparse

from foldmath.cli.command import Commands, added, sentence, take_lesson, take_lessons, whole_number
from foldmath.cli.terminal.speaking import spoken
from foldmath.phrases import phrase


def trace(commands: Commands) -> None:
    """Add ``trace``."""

    def door(arguments: argparse.Namespace) -> int:
        from foldmath.cli.doors.trace_and_check import tell_trace

        return tell_trace(arguments.lessons, as_json=arguments.json, with_details=arguments.details)

    command = added(
        commands,
        "trace",
        phrase("say what every step does: creases, panels, sizes, layers, sentences"),
        "foldmath trace lessons/seed-trays.toml",
        door,
    )
    take_lessons(command)
    command.add_argument(
        "--json", action="store_true", help=spoken(phrase("as exact data, for other programs"))
    )
    command.add_argument(
        "--details",
        action="store_true",
        help=spoken(
            phrase("with the figures of how far off every crease may be, and of other ways to fold it")
        ),
    )


def explain(commands: Commands) -> None:
    """Add ``explain``."""

    def door(arguments: argparse.Namespace) -> int:
        from foldmath.cli.doors.explaining import USUAL_OF_A_KIND, tell_explanations

        most = None if arguments.all or arguments.json else USUAL_OF_A_KIND
        return tell_explanations(arguments.lesson, arguments.step, most=most, as_json=arguments.json)

    command = added(
        commands,
        "explain",
        phrase("say everything true that a step shows, and the standard that each sentence meets"),
        "foldmath explain lessons/seed-trays.toml --step 3",
        door,
    )
    take_lesson(command)
    command.add_argument(
        "--step", type=whole_number, metavar="N", help=spoken(phrase("only this step, counted from 1"))
    )
    command.add_argument(
        "--all", action="store_true", help=spoken(phrase("all sentences, not only the best of each kind"))
    )
    command.add_argument(
        "--json", action="store_true", help=spoken(phrase("all of them as data, for other programs"))
    )


def check(commands: Commands) -> None:
    """Add ``check``."""

    def door(arguments: argparse.Namespace) -> int:
        from foldmath.cli.doors.trace_and_check import tell_verdict

        return tell_verdict(arguments.claim, arguments.lesson, as_json=arguments.json)

    command = added(
        commands,
        "check",
        phrase("say whether a sentence is true and, if not, what was probably meant"),
        'foldmath check "4 × 1/2 = 8" lessons/seed-trays.toml',
        door,
    )
    command.add_argument(
        "claim",
        metavar="SENTENCE",
        type=sentence,
        help=spoken(phrase('such as "1/2 of 1/4 = 1/8", in quotes')),
    )
    command.add_argument(
        "lesson", metavar="LESSON", nargs="?", help=spoken(phrase("say which of its steps shows it"))
    )
    command.add_argument("--json", action="store_true", help=spoken(phrase("as data, for other programs")))
