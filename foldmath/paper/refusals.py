"""Why a step cannot be done on this paper: each kind names the fact, and what might be done is a value."""

from foldmath.errors import FoldmathError
from foldmath.paper.steps import Slit, Step
from foldmath.phrases import Said


class StepRefused(FoldmathError):
    """A step that cannot be done on this paper; each kind below names the fact.

    Args:
        message: what is wrong.
        hint: advice, where no one step would do; empty if there is none.
        instead: a step that would do in its place, as far as the fact tells; None if there is none.
    """

    def __init__(self, message: Said, hint: Said = "", instead: Step | None = None) -> None:
        super().__init__(message, hint)
        self.instead = instead


class NoPaperMoves(StepRefused):
    """A crease with no paper on both sides of it."""


class PointOffPaper(StepRefused):
    """A point that must lie on the paper, or in its box, and does not."""


class LineUndefined(StepRefused):
    """Points or positions that do not say which line is meant."""


class NothingFolded(StepRefused):
    """Opening a sheet that lies open already."""


class SheetNotOpen(StepRefused):
    """Shading a sheet that is still folded."""


class PanelAcrossLine(StepRefused):
    """Shading parts whose creases have not been made."""


class NoCreaseThere(StepRefused):
    """A slit along which some layer has no crease."""


class SheetParted(StepRefused):
    """A cut that would part the sheet in two."""


class NotABooklet(StepRefused):
    """Paper that cannot be gathered into a booklet as it lies."""


class SlitTooShort(NotABooklet):
    """A slit that leaves a hinge, so that the ring of panels round it cannot close.

    Args:
        message: what is wrong.
        needed: the slit to cut first.
    """

    def __init__(self, message: Said, needed: Slit) -> None:
        super().__init__(message)
        self.needed = needed


class SlitTooLong(NotABooklet):
    """A slit that runs to an end of the sheet, so that an end leaf comes apart.

    Args:
        message: what is wrong.
        needed: the slit that is long enough.
        room: how far past each end of it the slit may run, with its unit.
    """

    def __init__(self, message: Said, needed: Slit, room: Said) -> None:
        super().__init__(message)
        self.needed = needed
        self.room = room


class BookletClosed(StepRefused):
    """Anything but opening, once the sheet is a booklet."""


class TooManyPanels(StepRefused):
    """More panels than a sheet may have."""


class TooMuchFolding(StepRefused):
    """More panels folded one by one than any class would fold."""


class NumbersTooLong(StepRefused):
    """Exact coordinates that outgrow the stated number of bits."""
