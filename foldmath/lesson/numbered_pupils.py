"""Pupils without a class list: each is a number, and is called by it in the language of the page."""

from collections.abc import Iterable
from dataclasses import replace

from foldmath.errors import Unreadable
from foldmath.lesson.roster import MOST_PUPILS, Pupil
from foldmath.phrases import phrase
from foldmath.statements.items import Level
from foldmath.words.languages import DEFAULT, languages
from foldmath.words.saying import say


def called(number: int, language: str) -> str:
    """Say what a pupil without a name is called: ``Student 3``, ``Estudiante 3``."""
    return say(phrase("Student {number}", number=number), language)


def pupils_without_roster(count: int) -> tuple[Pupil, ...]:
    """Give pupils by number, all at core.

    Raises:
        Unreadable: there are none, or more than ``MOST_PUPILS``.
    """
    if not 1 <= count <= MOST_PUPILS:
        raise Unreadable(
            phrase(
                "--students {count}: a class has from 1 to {most} students",
                count=count,
                most=MOST_PUPILS,
            ),
            "--students 28",
        )
    return tuple(Pupil(called(number, DEFAULT), Level.CORE) for number in range(1, count + 1))


def called_in(pupils: Iterable[Pupil], language: str) -> tuple[Pupil, ...]:
    """Give the pupils as a language calls those without names; what stands in a list stays as it is."""
    return tuple(
        pupil
        if pupil.namesake or not (number := number_in(pupil.label))
        else replace(pupil, label=called(number, language))
        for pupil in pupils
    )


def number_in(label: str) -> int:
    """Read the number by which a pupil is called, in any of our languages; 0 if it is a name."""
    *_, last = label.split() or [""]
    if not last.isdecimal() or len(last) > len(str(MOST_PUPILS)):
        return 0
    number = int(last)
    return number if label in {called(number, language) for language in languages()} else 0
