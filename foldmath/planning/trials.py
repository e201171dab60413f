"""Foldings tried on one sheet: takes steps, gives what each does; what several begin with is folded once."""

from collections.abc import Sequence
from dataclasses import field

from foldmath.paper.moments.moment import Moment
from foldmath.paper.moments.performing import perform
from foldmath.paper.state import FoldedState, Sheet, open_sheet
from foldmath.paper.steps import Step
from foldmath.values import frozen


@frozen
class _Tried:
    """The paper after some steps, and what was tried from there."""

    state: FoldedState
    onward: dict[Step, tuple[Moment, "_Tried"]] = field(default_factory=dict)


class Trials:
    """One open sheet, and all that was tried on it."""

    def __init__(self, sheet: Sheet) -> None:
        self.sheet = sheet
        self._open = _Tried(open_sheet(sheet))

    def moments(self, steps: Sequence[Step]) -> list[Moment]:
        """Do steps on the open sheet.

        Raises:
            StepRefused: one cannot be done.
        """
        at, moments = self._open, []
        for step in steps:
            if step not in at.onward:
                after = perform(step, at.state)
                at.onward[step] = Moment(step, at.state, after), _Tried(after)
            moment, at = at.onward[step]
            moments.append(moment)
        return moments
