"""Proving a lesson: takes a ``Lesson``, gives every state of the paper, or says which step fails."""

from functools import cached_property
from itertools import pairwise

from foldmath.errors import LessonRefused, Problem
from foldmath.lesson.lesson import Lesson
from foldmath.paper.moments.moment import Moment
from foldmath.paper.moments.performing import perform
from foldmath.paper.refusals import StepRefused
from foldmath.paper.state import FoldedState, open_sheet
from foldmath.phrases import Said
from foldmath.values import frozen
from foldmath.words.steps import WrittenStep


@frozen(eq=False)
class ProvedLesson:
    """A lesson every step of which is possible; it is itself alone, since it is much to compare.

    Args:
        lesson: the lesson as it was read.
        states: the open sheet, then the paper after each step.
    """

    lesson: Lesson
    states: tuple[FoldedState, ...]

    @cached_property
    def moments(self) -> tuple[Moment, ...]:
        """What each step did."""
        return tuple(
            Moment(written.step, before, after)
            for written, (before, after) in zip(self.lesson.steps, pairwise(self.states), strict=True)
        )


def prove(lesson: Lesson) -> ProvedLesson:
    """Do every step of a lesson, from the open sheet.

    Raises:
        LessonRefused: a step cannot be done; its hint is the nearest sentence that works at that moment.
    """
    states = [open_sheet(lesson.sheet)]
    for written in lesson.steps:
        try:
            states.append(perform(written.step, states[-1]))
        except StepRefused as refusal:
            raise LessonRefused([_problem(lesson, written, refusal, states[-1])]) from None
    return ProvedLesson(lesson, tuple(states))


def _problem(lesson: Lesson, written: WrittenStep, refusal: StepRefused, state: FoldedState) -> Problem:
    # Imported here, since a lesson that folds well needs no remedies.
    from foldmath.lesson.remedies import remedy

    return problem_at(written, lesson, refusal.message, remedy(written.step, refusal, state, lesson.language))


def problem_at(written: WrittenStep, lesson: Lesson, message: Said, hint: Said) -> Problem:
    """Say what is wrong with a step, at its place in the lesson's file."""
    return Problem(
        file=lesson.file,
        line=written.line,
        column=written.column,
        message=message,
        words=written.text,
        hint=hint,
    )
