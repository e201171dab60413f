"""Class sets on trial: who chooses numbers for pupils of a lesson, and what a class gets."""

from collections.abc import Callable

from foldmath.drawing.rendering.picture_process import PictureProcess
from foldmath.lesson.proving import ProvedLesson
from foldmath.lesson.roster import Pupil
from foldmath.making.classes import Crew
from foldmath.making.classes.choosing import Chooser
from foldmath.making.classes.class_set import ClassPages, ClassSet
from foldmath.making.papers import Masters
from foldmath.pages.looks import REGULAR


def chooser_of(proved: ProvedLesson, picture_process: PictureProcess, paper: str = "letter") -> Chooser:
    """Give a chooser that knows no class yet."""
    return Chooser(Masters(proved, paper, REGULAR), picture_process)


def class_set(
    chooser: Chooser, pupils: tuple[Pupil, ...], crew: Crew, report_progress: Callable[[int], None]
) -> ClassSet:
    """Make the class set of a lesson."""
    return ClassPages(chooser, pupils, crew, report_progress).finished()
