"""A pupil's own numbers: takes a lesson and a pupil, gives the seed by which they are chosen."""

from hashlib import sha256

from foldmath.lesson.lesson import Lesson
from foldmath.lesson.roster import Pupil

SEED_DIGITS = 8
"""Hexadecimal digits of a pupil's seed."""


def pupil_seed(lesson: Lesson, pupil: Pupil) -> int:
    """Give the seed of a pupil's numbers: it depends on the lesson's seed and the pupil, on nobody else.

    Pupils of one name are told apart by their order in the list, not by their lines: so nobody's numbers
    change when others join the class or leave it.
    """
    told = f"{lesson.rules.seed}|{pupil.label}"
    if pupil.namesake > 1:
        told += f"|{pupil.namesake}"
    return int(sha256(told.encode()).hexdigest()[:SEED_DIGITS], 16)
