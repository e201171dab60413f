"""The command that marks answers, and the words that it takes."""

import argparse

from foldmath.cli.command import Commands, added, take_out, take_page_paper, take_students
from foldmath.cli.terminal.speaking import spoken
from foldmath.phrases import phrase


def _door(arguments: argparse.Namespace) -> int:
    """Tell the history, write a sheet, or mark one, whichever is asked for."""
    from foldmath.cli.doors.marking import mark_answers, write_blank

    if arguments.history is not None:
        from foldmath.cli.doors.marking_history import tell_history

        return tell_history(arguments.history, arguments.paper)
    who = (arguments.roster, arguments.pupils)
    if arguments.blank is not None:
        return write_blank(
            arguments.lesson,
            arguments.blank,
            *who,
            out=arguments.out,
            paper=arguments.paper,
            own_numbers=arguments.own_numbers,
        )
    return mark_answers(
        arguments.lesson,
        arguments.answers,
        *who,
        out=arguments.out,
        paper=arguments.paper,
        own_numbers=arguments.own_numbers,
        labels=arguments.labels,
    )


def mark(commands: Commands) -> None:
    """Add ``mark``."""
    command = added(
        commands,
        "mark",
        phrase("mark answers typed into a sheet, say what the wrong ones mean, and make the next lesson"),
        "foldmath mark lessons/seed-trays.toml --answers answers.ods --class roster.csv",
        _door,
    )
    command.add_argument(
        "lesson", metavar="LESSON", nargs="?", help=spoken(phrase("the lesson that was taught"))
    )
    _take_sheets(command)
    _take_pupils(command)
    take_out(command)
    take_page_paper(command)


def _take_sheets(command: argparse.ArgumentParser) -> None:
    """Take what is to be done: write a sheet, mark one, or tell the history of many."""
    one = command.add_mutually_exclusive_group()
    one.add_argument(
        "--blank", metavar="SHEET", help=spoken(phrase("write an answers sheet to fill in, .ods or .csv"))
    )
    one.add_argument(
        "--answers",
        metavar="SHEET",
        help=spoken(phrase("mark an answers sheet that is filled in, .ods or .csv")),
    )
    one.add_argument(
        "--history",
        metavar="FOLDER",
        help=spoken(phrase("show what came and went in all the marks of a folder")),
    )


def _take_pupils(command: argparse.ArgumentParser) -> None:
    """Take whose answers they are, and which pages they had."""
    who = command.add_mutually_exclusive_group()
    who.add_argument(
        "--class", dest="roster", metavar="ROSTER.csv", help=spoken(phrase("columns: name or label, level"))
    )
    take_students(who, phrase("N students without a roster"))
    command.add_argument(
        "--own-numbers",
        action="store_true",
        help=spoken(phrase("each student had a page of the class set, with numbers of their own")),
    )
    command.add_argument(
        "--labels", action="store_true", help=spoken(phrase("write Student 1, Student 2, … instead of names"))
    )
