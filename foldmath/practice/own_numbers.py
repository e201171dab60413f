"""A pupil's own numbers: takes a lesson and a pupil, gives the seed by which they are chosen."""

from hashlib import sha256

from foldmath.lesson.lesson import Lesson
from foldmath.lesson.roster import Pupil

SEED_DIGITS = 8
"""Hexadecimal digits of a pupil's seed."""


def pupil_seed(lesson: Lesson, pupil: Pupil) -> int:
    """Give the seed of a pupil's numbers: it depends on the lesson's seed and the pupil, on nobody else."""
    told = f"{lesson.rules.seed}|{pupil.label}"
    return int(sha256(told.encode()).hexdigest()[:SEED_DIGITS], 16)
