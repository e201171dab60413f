"""How the paper lies while a lesson is being read, for sentences whose meaning depends on it."""

from collections.abc import Sequence
from typing import Any

from foldmath.paper.lengths import read_length
from foldmath.paper.moments.performing import perform
from foldmath.paper.refusals import StepRefused
from foldmath.paper.sizes import ORIENTATIONS, PaperSize, sheet
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


def as_it_lies(table: dict[str, Any], paper: PaperSize) -> tuple[Sheet, str]:
    """Lay the paper as the file says; if it does not, on the long side, or as its measures are given."""
    orientation = table.get("orientation")
    if orientation not in ORIENTATIONS:
        orientation = "landscape"
        if isinstance(measures := table["paper"], dict) and "orientation" not in table:
            width, height = read_length(measures["width"]), read_length(measures["height"])
            orientation = "portrait" if width.in_millimetres < height.in_millimetres else "landscape"
    return sheet(paper, orientation), orientation
