"""The paper as the steps of a lesson leave it: takes a lesson's text, gives every line, done or refused.

Nothing is thrown away: a step that cannot be done keeps its line, with why not and what to do instead, and
the paper is shown as the steps before it leave it.
"""

from collections.abc import Sequence
from dataclasses import replace
from functools import cached_property, lru_cache
from typing import NamedTuple

from foldmath.desk.shelf.open_lesson import NothingFolded, OpenLesson
from foldmath.errors import LessonRefused
from foldmath.lesson.grammar.refusals import StepUnreadable
from foldmath.lesson.grammar.sentences import written_step
from foldmath.lesson.lesson import Lesson
from foldmath.lesson.proving import ProvedLesson
from foldmath.lesson.remedies import remedy
from foldmath.paper.moments.moment import Moment
from foldmath.paper.moments.performing import perform
from foldmath.paper.refusals import StepRefused
from foldmath.paper.state import FoldedState, Sheet, open_sheet
from foldmath.phrases import Said
from foldmath.values import frozen
from foldmath.words.steps import WrittenStep

STATES_KEPT = 256
"""An act changes one step; the others are done already. A lesson goes through 30,000 panels at most."""


@frozen
class StepSlip:
    """Why a line is no step that can be done.

    Args:
        message: what is wrong.
        words: the words it is about.
        hint: what to do instead; empty if that is not known.
        instead: whether the hint is a whole sentence that would do in its place.
    """

    message: Said
    words: str
    hint: Said
    instead: bool


@frozen
class Line:
    """One line of the list of steps.

    Args:
        text: as written.
        slip: why it cannot be done; None if it is done, or waits for one before it.
        waits: whether a step before it cannot be done.
    """

    text: str
    slip: StepSlip | None = None
    waits: bool = False


@frozen(kw_only=True)
class PaperNow:
    """A lesson as far as its steps can be done.

    Args:
        lesson: with the steps that are done.
        lines: all its steps, in order.
        states: the open sheet, then the paper after each step that is done.
    """

    lesson: Lesson
    lines: tuple[Line, ...]
    states: tuple[FoldedState, ...]

    @property
    def state(self) -> FoldedState:
        """The paper as it lies."""
        return self.states[-1]

    @property
    def texts(self) -> list[str]:
        """The steps as they are written."""
        return [line.text for line in self.lines]

    @property
    def done(self) -> int:
        """How many steps are done: the next one comes after them."""
        return len(self.states) - 1

    @property
    def proved(self) -> ProvedLesson:
        """The lesson, its steps as far as they are done."""
        return ProvedLesson(self.lesson, self.states)

    @cached_property
    def moments(self) -> tuple[Moment, ...]:
        """What each step did."""
        return self.proved.moments


def paper_now(opened: OpenLesson) -> PaperNow:
    """Do the steps of a lesson, up to the first that cannot be done.

    Raises:
        LessonRefused: it has slips elsewhere than in its steps, or a step that is no text at all.
    """
    steps = opened.table.get("steps")
    if not (isinstance(steps, list) and all(isinstance(step, str) for step in steps)):
        opened.read()
    texts = list(map(str, steps)) if isinstance(steps, list) else []
    return done_from(_but_for_its_steps(opened), texts)


def _but_for_its_steps(opened: OpenLesson) -> Lesson:
    try:
        return opened.read()
    except (LessonRefused, NothingFolded):
        return opened.without_steps()


def done_from(lesson: Lesson, texts: Sequence[str]) -> PaperNow:
    """Do steps that were written, from the open sheet of a lesson."""
    states = [open_sheet(lesson.sheet)]
    lines: list[Line] = []
    steps: list[WrittenStep] = []
    for number, text in enumerate(texts):
        if len(steps) < number:
            unreadable = _readable(text, states[-1])
            lines.append(Line(text, unreadable if isinstance(unreadable, StepSlip) else None, waits=True))
            continue
        done = _done(lesson.sheet, tuple(texts[: number + 1]), lesson.language)
        lines.append(Line(text, done if isinstance(done, StepSlip) else None))
        if isinstance(done, Done):
            steps.append(done.written)
            states.append(done.state)
    return PaperNow(lesson=replace(lesson, steps=tuple(steps)), lines=tuple(lines), states=tuple(states))


class Done(NamedTuple):
    """A step that was done, and the paper after it."""

    written: WrittenStep
    state: FoldedState


@lru_cache(maxsize=STATES_KEPT)
def _done(sheet: Sheet, texts: tuple[str, ...], language: str) -> Done | StepSlip:
    """Do the last of some steps, all of the others being possible."""
    before = _done(sheet, texts[:-1], language) if len(texts) > 1 else None
    assert not isinstance(before, StepSlip)
    state = before.state if before else open_sheet(sheet)
    written = _readable(texts[-1], state)
    if isinstance(written, StepSlip):
        return written
    try:
        return Done(written, perform(written.step, state))
    except StepRefused as refusal:
        hint = remedy(written.step, refusal, state, language)
        return StepSlip(refusal.message, written.text, hint, _is_sentence(hint))


def _readable(text: str, state: FoldedState) -> WrittenStep | StepSlip:
    try:
        return written_step(text, lies=lambda: state)
    except StepUnreadable as refusal:
        return StepSlip(refusal.message, refusal.words, refusal.hint, _is_sentence(refusal.hint))


def _is_sentence(hint: Said) -> bool:
    """Tell whether a remedy is one sentence that would do: only trying tells it from advice."""
    if not isinstance(hint, str) or not hint:
        return False
    try:
        written_step(hint)
    except StepUnreadable:
        return False
    return True
