"""What a class can be asked: takes a lesson and a level, gives the numbers and kinds of item that fit."""

from functools import lru_cache

from foldmath.lesson.kinds import reach
from foldmath.lesson.lesson import Lesson
from foldmath.lesson.proving import ProvedLesson
from foldmath.paper.steps import FoldStep
from foldmath.statements.items import Level, Reach
from foldmath.statements.items.which_fold import Sizes, sizes_of
from foldmath.statements.ratios import LARGEST_DENOMINATOR
from foldmath.statements.standards import Followed
from foldmath.values import frozen

DENOMINATORS = {
    3: (2, 3, 4, 6, 8),
    4: (2, 3, 4, 5, 6, 8, 10, 12),
    5: (2, 3, 4, 5, 6, 8, 9, 10, 12),
    6: (2, 3, 4, 5, 6, 8, 9, 10, 12),
}
"""Denominators by grade. Grade 3: Common Core State Standards for Mathematics (2010), footnote to 3.NF;
grade 4 from memory, without 100; later common practice, no source: nobody folds sevenths or elevenths."""

EASY_DENOMINATORS = (2, 3, 4, 5, 6, 8)
"""Those of pages with most support, where a lesson names none (common practice, no source)."""

LESSONS_KEPT = 16
"""All pupils of a class are asked from the same; a class has a level or three, and a language or two."""

FIRST_GRADE_WITH_POWERS = 6
"""Common Core State Standards for Mathematics (2010), 6.EE.A.1."""


@frozen
class EvenFold:
    """A fold of a lesson that cuts every one of ``before`` equal panels into ``parts``.

    Args:
        before: equal panels.
        parts: into how many each was cut.
        moment: the index of the step.
    """

    before: int
    parts: int
    moment: int | None


@frozen(kw_only=True)
class Scope:
    """What items may be chosen from.

    Args:
        grade, followed: of the class, and whose standards it follows.
        level: of support.
        denominators: that numbers are chosen with.
        named: whether the lesson itself names the denominators.
        folds: the lesson's folds that cut all panels alike, the last one first.
        made: the panel sizes that its steps make, which the page shows already.
    """

    grade: int
    followed: Followed
    level: Level
    denominators: tuple[int, ...]
    named: bool
    folds: tuple[EvenFold, ...]
    made: frozenset[Sizes] = frozenset()

    @property
    def reach(self) -> Reach:
        """How far the class has come in multiplying fractions."""
        return reach(self.grade, self.followed)

    @property
    def recorded(self) -> frozenset[int]:
        """How many panels its folds make: the first page counts them, so no item asks for as many again."""
        return frozenset(fold.before * fold.parts for fold in self.folds)

    @property
    def powers(self) -> bool:
        """Whether the class knows powers."""
        return self.grade >= FIRST_GRADE_WITH_POWERS


@lru_cache(maxsize=LESSONS_KEPT)
def scope_of(proved: ProvedLesson, level: Level) -> Scope:
    """Give what items may be chosen from for one level of a lesson."""
    lesson = proved.lesson
    return Scope(
        grade=lesson.grade,
        followed=lesson.followed,
        level=level,
        denominators=_denominators(lesson, level),
        named=bool(lesson.rules.denominators),
        folds=_even_folds(proved),
        made=frozenset(sizes_of(state) for state in proved.states),
    )


def _denominators(lesson: Lesson, level: Level) -> tuple[int, ...]:
    if lesson.rules.denominators:
        return tuple(sorted(lesson.rules.denominators))
    of_grade = DENOMINATORS[lesson.grade]
    if level is Level.GUIDED:
        return tuple(number for number in of_grade if number in EASY_DENOMINATORS)
    return of_grade


def _even_folds(proved: ProvedLesson) -> tuple[EvenFold, ...]:
    folds = []
    for index, moment in enumerate(proved.moments):
        before, after = len(moment.before.panels), len(moment.after.panels)
        if not isinstance(moment.step, FoldStep) or not 1 < after <= LARGEST_DENOMINATOR or after == before:
            continue
        if len(set(moment.parts)) == 1 and len(moment.sizes) == 1:
            folds.append(EvenFold(before, after // before, index))
    return tuple(reversed(folds))
