"""The short code at the foot of every page, which ties a worksheet to its key."""

from dataclasses import replace
from hashlib import sha256

from foldmath.lesson.lesson import Lesson, WrittenItem
from foldmath.practice.choosing import CHOOSING
from foldmath.statements.items import Level

ALPHABET = "ACDEFHJKLMNPRTUVWXY34679"
"""Letters and figures that are not taken for one another in a pupil's hand."""

LENGTH = 5


LEVEL_SIGNS = {Level.GUIDED: "2", Level.CORE: "5", Level.STRETCH: "8"}
"""The last sign of a code tells a teacher the level, and nobody else."""


ANY_PAPER = "letter"
"""On which paper a page's sentence to judge is chosen: a lesson asks the same on every other."""


def _levels(own: WrittenItem) -> str:
    return ", ".join(level.value for level in own.levels)


def version_code(lesson: Lesson, level: Level, own: str = "", version: int = CHOOSING) -> str:
    """Give the code of a worksheet: one for one lesson, level and numbers, else almost surely another.

    Names in stories change no number, so pages with other names have the same code, and are marked alike.
    Five signs of 24 make 7,962,624 codes; a sixth tells the level.

    Args:
        lesson: the lesson.
        level: of support.
        own: what a pupil's own numbers were chosen by; empty for the class's.
        version: of the choosing, so that a page that was chosen otherwise is known by its code.
    """
    told = "\n".join(
        (
            str(version),
            lesson.as_written.title,
            str(lesson.grade),
            lesson.paper,
            lesson.orientation,
            lesson.followed.value,
            *(step.text for step in lesson.steps),
            *(item.text for item in lesson.practice),
            # Sets are written in another order by every run, so what is exchanged is told in its own.
            repr(replace(lesson.rules, without=frozenset())),
            own,
            *sorted(lesson.rules.without),
            *(f"{kept.level.value}: {kept.asks}" for kept in lesson.rules.keep),
            *(f"{_levels(own)}: {own.item.asks}{own.item.unit}" for own in lesson.as_written.items),
        )
    )
    number = int.from_bytes(sha256(told.encode()).digest(), "big")
    code = ""
    for _ in range(LENGTH):
        number, place = divmod(number, len(ALPHABET))
        code += ALPHABET[place]
    return code + LEVEL_SIGNS[level]
