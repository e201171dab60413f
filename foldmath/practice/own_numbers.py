"""A pupil's own numbers: takes a lesson and a pupil, gives the seed by which they are chosen."""

from hashlib import sha256

from foldmath.lesson.lesson import Lesson
from foldmath.lesson.numbered_pupils import number_in
from foldmath.lesson.roster import Pupil

SEED_DIGITS = 8
"""Hexadecimal digits of a pupil's seed."""

TURNS = 360_360
"""Pupils who are numbers take turns at the forms of an item, of which there are any number up to 15.

So no form comes to many of a class. Pupils with names are told apart by these alone, and chance deals them
forms: their places in the list would do it evenly, but a list put in another order would mark other pages.
"""

NAMELESS = "Pupil {number}"
"""What stands for the name of a pupil without one: the same whatever a page calls that pupil."""


def pupil_seed(lesson: Lesson, pupil: Pupil) -> int:
    """Give the seed of a pupil's numbers: it depends on the lesson's seed and the pupil, on nobody else.

    Pupils of one name are told apart by their order in the list, not by their lines: so nobody's numbers
    change when others join the class or leave it. Where a pupil is a number, that is the rest over ``TURNS``.
    """
    number = number_in(pupil.label)
    name = NAMELESS.format(number=number) if number else pupil.label
    told = f"{lesson.rules.seed}|{name}"
    if pupil.namesake > 1:
        told += f"|{pupil.namesake}"
    seed = int(sha256(told.encode()).hexdigest()[:SEED_DIGITS], 16)
    return seed - seed % TURNS + number if number else seed
