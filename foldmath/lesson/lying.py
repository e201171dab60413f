"""How the paper lies while a lesson is being read, for sentences whose meaning depends on it."""

from collections.abc import Sequence

from foldmath.paper.moments.performing import perform
from foldmath.paper.refusals import StepRefused
from foldmath.paper.state import FoldedState, Sheet, open_sheet
from foldmath.words.steps import WrittenStep


class PaperSoFar:
    """The paper as the steps that were read leave it; each step is done once, and only when it is asked for.

    What comes after a step that cannot be done does not matter: proving refuses that step.
    """

    def __init__(self, sheet: Sheet, steps: Sequence[WrittenStep]) -> None:
        self.state, self.steps = open_sheet(sheet), steps
        self.done, self.refused = 0, False

    def __call__(self) -> FoldedState:
        """Give the paper as it lies now."""
        try:
            while self.done < len(self.steps) and not self.refused:
                self.state = perform(self.steps[self.done].step, self.state)
                self.done += 1
        except StepRefused:
            self.refused = True
        return self.state
