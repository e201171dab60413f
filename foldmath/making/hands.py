"""What hands say to a lesson before its pages are made: paper that cannot be folded so is refused."""

from foldmath.errors import LessonRefused
from foldmath.lesson.proving import ProvedLesson, problem_at
from foldmath.phrases import Phrase
from foldmath.tolerance.limits import Severity, judged
from foldmath.tolerance.words import worded


def hard_for_hands(proved: ProvedLesson) -> tuple[Phrase, ...]:
    """Say which steps are hard for hands.

    Raises:
        LessonRefused: a step cannot be folded from this paper at all.
    """
    lesson = proved.lesson
    judgements = judged(proved.moments, lesson.stock)
    for judgement in judgements:
        if judgement.severity is Severity.IMPOSSIBLE:
            written = lesson.steps[judgement.step - 1]
            hint = worded("limits", "mend", before=str(judgement.step - 1))
            raise LessonRefused([problem_at(written, lesson, judgement.message, hint)])
    return tuple(judgement.message for judgement in judgements)
