"""Foldings tried on one sheet: takes steps, gives what each does and how true all come out.

What several foldings begin with is folded once, and its errors are followed once.
"""

from collections.abc import Iterator, Sequence
from dataclasses import field

from foldmath.paper.moments.moment import Moment
from foldmath.paper.moments.performing import perform
from foldmath.paper.state import FoldedState, Sheet, open_sheet
from foldmath.paper.steps import Step
from foldmath.tolerance.accuracy import Accuracy
from foldmath.tolerance.assumed.spread import Spread
from foldmath.tolerance.landmarks.freezing import Freezing
from foldmath.values import frozen


@frozen
class _Tried:
    """The paper after some steps, their errors, and what was tried from there."""

    state: FoldedState
    freezing: Freezing
    onward: dict[Step, tuple[Moment, "_Tried"]] = field(default_factory=dict)


class Trials:
    """One open sheet, and all that was tried on it."""

    def __init__(self, sheet: Sheet) -> None:
        self.sheet = sheet
        self._open = _Tried(open_sheet(sheet), Freezing(sheet))

    def moments(self, steps: Sequence[Step]) -> list[Moment]:
        """Do steps on the open sheet.

        Raises:
            StepRefused: one cannot be done.
        """
        return [moment for moment, _ in self._tried(steps)]

    def accuracy(self, steps: Sequence[Step], spread: Spread) -> Accuracy:
        """Work out how true steps come out, at least one.

        Raises:
            StepRefused: one cannot be done.
        """
        *_, (_, last) = self._tried(steps)
        return Accuracy(last.freezing.done(), spread)

    def _tried(self, steps: Sequence[Step]) -> Iterator[tuple[Moment, _Tried]]:
        at = self._open
        for number, step in enumerate(steps):
            if step not in at.onward:
                moment = Moment(step, at.state, perform(step, at.state))
                at.onward[step] = moment, _Tried(moment.after, at.freezing.after(number, moment))
            moment, at = at.onward[step]
            yield moment, at
